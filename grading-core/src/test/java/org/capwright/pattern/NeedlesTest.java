package org.capwright.pattern;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.capwright.geometry.Point;
import org.capwright.geometry.Points;
import org.junit.jupiter.api.Test;

/** Needles of a rectangle of 100 by 60 mm, worked out by hand. */
class NeedlesTest {

    private static CutLine line(double... coordinates) {
        List<Point> points = new ArrayList<>();
        for (int i = 0; i < coordinates.length; i += 2) {
            points.add(new Point(coordinates[i], coordinates[i + 1]));
        }
        return new CutLine(
                Points.of(points), IntStream.range(0, points.size()).boxed().toList());
    }

    private static CutLine blunted(CutLine line) {
        return Needles.blunted(line, 10, point -> false);
    }

    /** The point at (140, 42) is 4 degrees wide. Cut across the hollow above it 340 square mm are added, below it 800. */
    @Test
    void aPointThatStandsOutIsMadeBroadWhereLessIsAdded() {
        CutLine needle = line(0, 0, 100, 0, 100, 40, 140, 42, 100, 43, 100, 60, 0, 60);
        assertEquals(line(0, 0, 100, 0, 100, 40, 140, 42, 100, 60, 0, 60), blunted(needle));
    }

    @Test
    void theSideBelowIsTakenWhereItIsLess() {
        CutLine needle = line(0, 0, 100, 0, 100, 17, 140, 18, 100, 20, 100, 60, 0, 60);
        assertEquals(line(0, 0, 100, 0, 140, 18, 100, 20, 100, 60, 0, 60), blunted(needle));
    }

    /** Two degrees wide, each side leaning by 1 in 57: 1 mm wide 28.5 mm from its end, 0.2 mm at 5.7. */
    @Test
    void aSlitEndsSquareWhereItIsWideEnough() {
        CutLine slit = line(0, 0, 100, 0, 100, 60, 51, 60, 50, 3, 49, 60, 0, 60);
        assertSlit(Needles.blunted(slit, 10, point -> false), 0.5, 31.5);
        assertSlit(Needles.blunted(slit, 0.2, point -> false), 0.1, 8.7);
    }

    private static void assertSlit(CutLine line, double half, double end) {
        List<Point> points = line.points();
        assertEquals(8, points.size(), points::toString);
        assertEquals(IntStream.range(0, 8).boxed().toList(), line.corners());
        assertEquals(0, points.get(4).distanceTo(new Point(50 + half, end)), 0.02, points::toString);
        assertEquals(0, points.get(5).distanceTo(new Point(50 - half, end)), 0.02, points::toString);
    }

    /** A side of the slit that has a point at a tenth of its depth is followed past it. */
    @Test
    void theSidesOfASlitAreFollowedPastTheirPoints() {
        CutLine slit = line(0, 0, 100, 0, 100, 60, 51, 60, 50, 3, 49.9, 8.7, 49, 60, 0, 60);
        assertSlit(blunted(slit), 0.5, 31.5);
    }

    /** The point goes on as one from the slanted line: what fills beside it may not cut into the cloth. */
    @Test
    void noClothIsTakenAway() {
        CutLine needle = line(0, 0, 100, 0, 140, 50, 100, 3, 100, 60, 0, 60);
        CutLine blunted = blunted(needle);
        assertEquals(line(0, 0, 100, 0, 140, 50, 100, 60, 0, 60), blunted);
    }

    @Test
    void broadPointsHollowsAndWhatIsCutOnTheSeamLineStay() {
        CutLine broad = line(0, 0, 100, 0, 140, 30, 100, 60, 60, 60, 50, 30, 40, 60, 0, 60);
        assertSame(broad, blunted(broad));
        CutLine net = line(0, 0, 100, 0, 100, 40, 140, 42, 100, 43, 100, 60, 0, 60);
        assertSame(net, Needles.blunted(net, 10, point -> point.x() == 140));
    }
}
