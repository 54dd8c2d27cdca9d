package org.capwright.draft;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import org.apache.commons.math3.analysis.integration.IterativeLegendreGaussIntegrator;
import org.capwright.geometry.Cubic;
import org.capwright.geometry.Point;
import org.capwright.measure.Dimension;
import org.capwright.measure.Dimensions;
import org.capwright.measure.SleeveSubject.Option;
import org.capwright.quantity.InvalidMeasuresException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class OverlayTest {

    private static final double INCH = 25.4;

    /** A half sleeve drafted on the fold, in inches: common practice, no source. */
    private static final Dimensions ON_THE_FOLD = Dimensions.of(Map.of(
            Dimension.BICEP, 18 * INCH,
            Dimension.CAP_HEIGHT, 3.5 * INCH,
            Dimension.CAP_OUTWARD, 0.75 * INCH,
            Dimension.CAP_INWARD, 0.5 * INCH,
            Dimension.ARMHOLE, 18 * INCH,
            Dimension.RISE, 6 * INCH,
            Dimension.OVERLAY_LENGTH, 14 * INCH,
            Dimension.FRONT_GAP, 2.5 * INCH,
            Dimension.BACK_GAP, 2.5 * INCH));

    private static Overlay draft(HemShape hem) {
        return Overlay.draft(
                BaseSleeve.draft(ON_THE_FOLD), ON_THE_FOLD, new OverlayStyle(hem, OverlayStyle.THIRD_DIVISION));
    }

    @Test
    void risesOverTheCapAndEndsInAVeeAtTheUnderarmPoint() {
        Overlay overlay = draft(HemShape.VEE);
        OverlayHalf half = overlay.back();
        assertEquals(0, half.apex().distanceTo(new Point(0, 9.5 * INCH)), 1e-9);
        assertEquals(0, half.underarm().distanceTo(new Point(9 * INCH, 0)), 1e-9);
        assertEquals(0, half.hemPoint().x(), 1e-12);
        assertEquals((3.5 - 14) * INCH, half.hemPoint().y(), 1e-9);
        assertEquals(Math.hypot(9, 10.5) * INCH, half.hem().length(), 1e-9);
        assertEquals(0, half.topEdge().tangentAtLength(0).y(), 1e-12);
        assertEquals(13 * INCH, overlay.attachSpan(), 1e-9);
        assertTrue(overlay.takeUp() > 0);
    }

    @Test
    void levelHemIsSquareToTheFold() {
        OverlayHalf half = draft(HemShape.LEVEL).back();
        assertEquals(-10.5 * INCH, half.sidePoint().y(), 1e-9);
        assertEquals(10.5 * INCH, half.side().orElseThrow().length(), 1e-9);
        assertEquals(9 * INCH, half.hem().length(), 1e-9);
    }

    /** The sagitta of a parabola stands at the middle of its chord; its arc length has a closed form. */
    @Test
    void bowedHemHasTheGivenSagittaAndTheLengthOfAParabola() {
        Dimensions bowed = ON_THE_FOLD.with(Dimension.HEM_SAGITTA, 30);
        OverlayHalf half = Overlay.draft(
                        BaseSleeve.draft(bowed), bowed, new OverlayStyle(HemShape.BOWED, OverlayStyle.THIRD_DIVISION))
                .back();
        Point middle = half.hem().segments().get(0).pointAt(0.5);
        Point chordMiddle = half.sidePoint().towards(half.hemPoint(), 0.5);
        assertEquals(30, middle.distanceTo(chordMiddle), 1e-9);
        assertTrue(middle.y() < chordMiddle.y(), "a positive sagitta bows outward");
        double a = Math.hypot(9, 10.5) * INCH / 2;
        double slope = 2 * 30 / a;
        double closed = a * Math.sqrt(1 + slope * slope) + a / slope * Math.log(slope + Math.sqrt(1 + slope * slope));
        assertEquals(closed, half.hem().length(), 1e-6);
    }

    @Test
    void raisedLineIsSmoothAndTurnsOnceOverTheWholeStyleSpace() {
        for (long seed = 1; seed <= 3_000; seed++) {
            StyleSpace.Case drawn = StyleSpace.of(seed);
            SleeveDraft draft = SleeveDraft.of(drawn.style(), drawn.dimensions());
            Overlay overlay = draft.overlay().orElseThrow();
            String seeded = "seed " + seed + " " + drawn.dimensions();
            for (OverlayHalf half : List.of(overlay.front(), overlay.back())) {
                assertTrue(half.topEdge().inflections() <= 1, seeded);
                assertEquals(0, half.topEdge().tangentAtLength(0).y(), 1e-9, seeded);
                List<Cubic> segments = half.topEdge().segments();
                for (int i = 1; i < segments.size(); i++) {
                    Cubic before = segments.get(i - 1);
                    Cubic after = segments.get(i);
                    assertEquals(0, before.tangentAt(1).cross(after.tangentAt(0)), 1e-8, seeded);
                    assertEquals(before.curvatureAt(1), after.curvatureAt(0), 1e-6, seeded);
                }
            }
        }
    }

    @Test
    void withoutRiseTheTopEdgeIsTheCapLine() {
        Dimensions flat = ON_THE_FOLD.with(Dimension.RISE, 0);
        BaseSleeve base = BaseSleeve.draft(flat);
        Overlay overlay = Overlay.draft(base, flat, new OverlayStyle(HemShape.VEE, OverlayStyle.THIRD_DIVISION));
        assertEquals(base.capLine(), overlay.topEdge());
    }

    /** w is 1 at the apex and 0 at the join and its slope is the integral of its second derivative: checked by Commons Math. */
    @ParameterizedTest
    @ValueSource(doubles = {0.4, 0.55, 2.0 / 3, 0.85})
    void liftFallsFromOneToNothing(double turn) {
        RaisedLine lift = RaisedLine.turningAt(turn);
        assertEquals(1, lift.weight(0), 0);
        assertEquals(0, lift.slope(0), 0);
        assertEquals(0, lift.weight(1 - 1e-12), 1e-12);
        assertEquals(0, lift.slope(1 - 1e-12), 1e-9);
        for (double v = 0.1; v < 1; v += 0.1) {
            double fallen = new IterativeLegendreGaussIntegrator(5, 1e-12, 1e-12).integrate(100_000, lift::slope, 0, v);
            assertEquals(lift.weight(v) - 1, fallen, 1e-7);
        }
    }

    @Test
    void namesEveryContradictionAtOnce() {
        Dimensions wrong = ON_THE_FOLD.with(Dimension.FRONT_GAP, 300).with(Dimension.OVERLAY_LENGTH, 60);
        InvalidMeasuresException stopped = assertThrows(
                InvalidMeasuresException.class,
                () -> Overlay.draft(BaseSleeve.draft(wrong), wrong, new OverlayStyle(HemShape.VEE, 0.4)));
        assertEquals(
                List.of(Option.JOIN, Dimension.OVERLAY_LENGTH, Dimension.FRONT_GAP),
                stopped.violations().stream().map(v -> v.subject()).toList());
    }
}
