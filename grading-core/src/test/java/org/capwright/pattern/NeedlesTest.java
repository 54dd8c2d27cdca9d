package org.capwright.pattern;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.capwright.geometry.Point;
import org.junit.jupiter.api.Test;

/** Needles of a rectangle of 100 by 60 mm, worked out by hand. */
class NeedlesTest {

    private static CutLine line(double... coordinates) {
        List<Point> points = new ArrayList<>();
        for (int i = 0; i < coordinates.length; i += 2) {
            points.add(new Point(coordinates[i], coordinates[i + 1]));
        }
        return new CutLine(points, IntStream.range(0, points.size()).boxed().toList());
    }

    private static CutLine blunted(CutLine line) {
        return Needles.blunted(line, point -> false);
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

    /** Two degrees wide: no scissors get into it. */
    @Test
    void aSlitIsClosed() {
        CutLine slit = line(0, 0, 100, 0, 100, 60, 51, 60, 50, 3, 49, 60, 0, 60);
        assertEquals(line(0, 0, 100, 0, 100, 60, 51, 60, 49, 60, 0, 60), blunted(slit));
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
        assertSame(net, Needles.blunted(net, point -> point.x() == 140));
    }
}
