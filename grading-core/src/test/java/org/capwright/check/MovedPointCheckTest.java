package org.capwright.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.capwright.geometry.Point;
import org.junit.jupiter.api.Test;

/** Cap lines whose points are those of a raised cosine, so that every distance is known without the engine. */
class MovedPointCheckTest {

    private static final int MOVED = 14;

    @Test
    void aPointMovedOutwardIsNamedWithItsSizeItsPlaceAndItsDistance() {
        List<Point> line = cap(160);
        Point at = line.get(MOVED).plus(outward(line, MOVED).times(4));
        List<Finding> found = check(0, 4);
        assertEquals(1, found.size(), found::toString);
        Finding finding = found.get(0);
        assertEquals(List.of("38"), finding.sizes());
        assertEquals(Severity.STOP, finding.severity());
        assertEquals(4, finding.value().orElseThrow(), 0.2);
        String place = "in the front half, at " + Math.round(-100 * at.x() / 160)
                + " % of its width from the centre and at " + Math.round(100 * at.y() / 130) + " % of the cap height";
        assertTrue(
                finding.message().toString().contains(place),
                () -> finding.message().toString());
    }

    @Test
    void aMillimetreIsACautionAndLessThanHalfOfOneIsNothing() {
        assertEquals(Severity.CAUTION, check(0, 1.2).get(0).severity());
        assertEquals(List.of(), check(0, 0.4));
    }

    @Test
    void neitherASmoothLineNorOneThatWavesHasAMovedPoint() {
        assertEquals(List.of(), check(0, 0));
        assertEquals(List.of(), check(2.5, 0));
    }

    /** An underarm corner moved up, or along its line, is told as such, and not as a bicep that jumps. */
    @Test
    void aMovedCornerIsToldAsOne() {
        for (Point move : List.of(new Point(0, 6), new Point(-8, 0), new Point(6, 0), new Point(-6, -6))) {
            CheckedGrade grade = grade(0, 0);
            List<CheckedSize> sizes = new ArrayList<>(grade.sizes());
            List<Point> points = new ArrayList<>(
                    sizes.get(3).line(NestLine.Kind.CAP_LINE).orElseThrow().points());
            points.set(0, points.get(0).plus(move));
            sizes.set(3, sizes.get(3).withLines(List.of(new NestLine(NestLine.Kind.CAP_LINE, points))));
            List<Finding> all = GradeChecks.run(grade.with(sizes), Thresholds.usual());
            assertEquals(List.of("moved-point"), all.stream().map(Finding::code).toList(), move + " " + all);
            assertEquals(List.of("42"), all.get(0).sizes());
            assertTrue(all.get(0).message().toString().contains("front underarm corner"), all::toString);
        }
    }

    @Test
    void crossingsAndBendsThatFollowFromThePointAreNotToldAgain() {
        List<Finding> all = GradeChecks.run(grade(0, 8), Thresholds.usual());
        assertEquals(
                List.of("moved-point"),
                all.stream().map(Finding::code).distinct().toList(),
                all::toString);
    }

    private static List<Finding> check(double wave, double move) {
        return new MovedPointCheck().check(grade(wave, move), Thresholds.usual());
    }

    /** Five sizes; the line of the second one waves, or has one point moved outward. */
    private static CheckedGrade grade(double wave, double move) {
        List<CheckedSize> sizes = new ArrayList<>();
        for (int i = 0; i < 5; i++) {
            double half = 154 + 6.0 * i;
            List<Point> points = new ArrayList<>(cap(half));
            for (int k = 1; i == 1 && k + 1 < points.size(); k++) {
                double off = wave * Math.sin(k * 0.6) + (k == MOVED ? move : 0);
                points.set(k, points.get(k).plus(outward(cap(half), k).times(off)));
            }
            sizes.add(new CheckedSize(Integer.toString(36 + 2 * i), Map.of(CheckedMeasure.BICEP, 2 * half))
                    .withLines(List.of(new NestLine(NestLine.Kind.CAP_LINE, points))));
        }
        return new CheckedGrade(sizes, 2, Optional.empty());
    }

    private static Point outward(List<Point> line, int at) {
        return line.get(at + 1).minus(line.get(at - 1)).unit().left();
    }

    /** 61 points of y = H/2 · (1 + cos(πx/W)), H = 130 mm at W = 160 mm. */
    private static List<Point> cap(double half) {
        List<Point> points = new ArrayList<>();
        for (int k = 0; k <= 60; k++) {
            double x = half * (k - 30) / 30.0;
            points.add(new Point(x, half * 130 / 320 * (1 + Math.cos(Math.PI * x / half))));
        }
        return points;
    }
}
