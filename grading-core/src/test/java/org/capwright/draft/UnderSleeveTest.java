package org.capwright.draft;

import static org.capwright.draft.StyleSpace.between;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.function.Consumer;
import org.apache.commons.math3.analysis.integration.IterativeLegendreGaussIntegrator;
import org.apache.commons.math3.geometry.euclidean.twod.Vector2D;
import org.capwright.geometry.Cubic;
import org.capwright.geometry.Curve;
import org.capwright.geometry.Point;
import org.capwright.measure.Dimension;
import org.capwright.measure.Dimensions;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Violation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.util.AffineTransformation;

class UnderSleeveTest {

    private static final int MANY = 3_000;

    /** Sleeve of a choir gown, size 40. */
    private static final Dimensions GOWN = Dimensions.of(Map.of(
            Dimension.BICEP, 360.0,
            Dimension.CAP_HEIGHT, 135.0,
            Dimension.LENGTH, 595.0,
            Dimension.ELBOW, 280.0,
            Dimension.WRIST, 210.0));

    private static UnderSleeve gown(Dimensions dimensions, ElbowShaping shaping) {
        return UnderSleeve.draft(BaseSleeve.draft(dimensions), dimensions, new UnderSleeveStyle(shaping));
    }

    private record Drawn(String which, UnderSleeve under, Dimensions dimensions, ElbowShaping shaping) {}

    private static void overTheStyleSpace(Consumer<Drawn> check) {
        for (long seed = 1; seed <= MANY; seed++) {
            StyleSpace.Case drawn = StyleSpace.of(seed);
            UnderSleeveStyle style = drawn.style().underSleeve().orElseThrow();
            UnderSleeve under = UnderSleeve.draft(BaseSleeve.draft(drawn.dimensions()), drawn.dimensions(), style);
            check.accept(new Drawn("seed " + seed + " " + style.shaping(), under, drawn.dimensions(), style.shaping()));
        }
    }

    @Test
    void seamsWalkButForTheStatedEase() {
        int[] seen = new int[ElbowShaping.values().length];
        overTheStyleSpace(drawn -> {
            UnderSleeve under = drawn.under();
            seen[drawn.shaping().ordinal()]++;
            double ease = under.easing().map(SeamEasing::ease).orElse(0.0);
            assertEquals(drawn.shaping() == ElbowShaping.EASED_SEAM, ease > 0, drawn.which());
            double back = integrated(under.backAboveElbow()) + integrated(under.backBelowElbow());
            assertEquals(integrated(under.frontSide()) + ease, back, 1e-6, drawn.which());
            assertEquals(under.backSeam(), back, 1e-6, drawn.which());
        });
        for (int count : seen) {
            assertTrue(count > MANY / 5, "shaping seen " + count + " times");
        }
    }

    /** Arc length by Commons Math. */
    private static double integrated(Curve curve) {
        IterativeLegendreGaussIntegrator integrator = new IterativeLegendreGaussIntegrator(12, 1e-10, 1e-9);
        double sum = 0;
        for (Cubic segment : curve.segments()) {
            sum += integrator.integrate(100_000, t -> segment.derivativeAt(t).norm(), 0, 1);
        }
        return sum;
    }

    @Test
    void widthsLevelsAndLengthAreThoseGiven() {
        overTheStyleSpace(drawn -> {
            UnderSleeve under = drawn.under();
            Dimensions d = drawn.dimensions();
            assertEquals(d.get(Dimension.WRIST), under.wrist(), 1e-9, drawn.which());
            assertEquals(d.get(Dimension.LENGTH), under.centreLine().length(), 1e-9, drawn.which());
            assertEquals(-under.elbowLevel(), under.frontElbow().y(), 1e-9, drawn.which());
            d.find(Dimension.ELBOW).ifPresent(e -> assertEquals(e, under.elbow(), 1e-9, drawn.which()));
            d.find(Dimension.ELBOW_LEVEL).ifPresent(l -> assertEquals(l, under.elbowLevel(), 1e-12, drawn.which()));
            Point middle =
                    under.frontSide().end().mirrored().towards(under.backSide().end(), 0.5);
            double skew = (under.base().front().width() - under.base().back().width()) / 2;
            assertEquals(Math.abs(skew), middle.distanceTo(under.centreLine().end()), 1e-9, drawn.which());
            if (drawn.shaping() == ElbowShaping.TAPERED) {
                assertEquals(0, under.centreLine().end().x(), 0);
            } else {
                assertTrue(under.centreLine().end().x() < -0.1, drawn.which() + " is not turned forward");
            }
        });
    }

    /** Smooth, through the elbow, and bending one way only; the back seam as it runs with the dart closed. */
    @Test
    void seamsAreFairThroughTheElbow() {
        overTheStyleSpace(drawn -> {
            UnderSleeve under = drawn.under();
            assertSmooth(drawn.which() + " front", under.frontSide());
            Curve back = under.dart()
                    .map(dart -> under.backAboveElbow()
                            .joinedTo(startingAt(dart.upperEnd(), turned(under.backBelowElbow(), dart))))
                    .orElse(under.backSide());
            assertSmooth(drawn.which() + " back", back);
        });
    }

    private static Curve startingAt(Point start, Curve curve) {
        Cubic segment = curve.segments().get(0);
        assertEquals(0, start.distanceTo(segment.start()), 1e-9);
        return Curve.of(List.of(new Cubic(start, segment.control1(), segment.control2(), segment.end())));
    }

    private static void assertSmooth(String which, Curve curve) {
        assertEquals(2, curve.segments().size(), which);
        Point before = curve.segments().get(0).tangentAt(1);
        Point after = curve.segments().get(1).tangentAt(0);
        assertEquals(0, before.distanceTo(after), 1e-8, which);
        assertEquals(0, curve.inflections(), which);
    }

    /** Turned about the point of the dart by the angle between its legs, by JTS. */
    private static Curve turned(Curve curve, ElbowDart dart) {
        Vector2D upper = vector(dart.upperEnd().minus(dart.point()));
        Vector2D lower = vector(dart.lowerEnd().minus(dart.point()));
        AffineTransformation turn = AffineTransformation.rotationInstance(
                Vector2D.angle(upper, lower), dart.point().x(), dart.point().y());
        return Curve.of(curve.segments().stream()
                .map(s -> new Cubic(
                        moved(s.start(), turn),
                        moved(s.control1(), turn),
                        moved(s.control2(), turn),
                        moved(s.end(), turn)))
                .toList());
    }

    private static Vector2D vector(Point point) {
        return new Vector2D(point.x(), point.y());
    }

    private static Point moved(Point point, AffineTransformation by) {
        Coordinate image = by.transform(new Coordinate(point.x(), point.y()), new Coordinate());
        return new Point(image.x, image.y);
    }

    @Test
    void dartLegsAreEqualAndPointToTheCentre() {
        overTheStyleSpace(drawn -> drawn.under().dart().ifPresent(dart -> {
            String which = drawn.which();
            double upper = dart.point().distanceTo(dart.upperEnd());
            double lower = dart.point().distanceTo(dart.lowerEnd());
            assertEquals(upper, lower, 1e-9, which);
            assertEquals(upper, dart.length(), 1e-9, which);
            Dimensions d = drawn.dimensions();
            d.find(Dimension.ELBOW_DART).ifPresent(w -> assertEquals(w, dart.width(), 1e-9, which));
            d.find(Dimension.ELBOW_DART_LENGTH).ifPresent(l -> assertEquals(l, dart.length(), 1e-9, which));
            assertEquals(-drawn.under().elbowLevel(), dart.upperEnd().y(), 1e-9, which);
            assertTrue(dart.upperEnd().y() > dart.lowerEnd().y(), which);
            assertTrue(dart.point().x() > -dart.width(), which + " ends beyond the centre line");
            // The line that halves the dart runs on to the front end of the elbow line, about which the sleeve is
            // turned.
            Point halving = dart.upperEnd().towards(dart.lowerEnd(), 0.5).minus(dart.point());
            Point toFront = dart.point().minus(drawn.under().frontElbow().mirrored());
            assertEquals(0, halving.unit().cross(toFront.unit()), 1e-9, which);
        }));
    }

    /** Fold the paper: crease on the line that halves the dart, legs together, intake down. The edge must then lie on the seam below all along. */
    @Test
    void foldedDownTheDartIsCutAsTheSeamBelowIt() {
        overTheStyleSpace(drawn -> drawn.under().dart().ifPresent(dart -> {
            String which = drawn.which();
            Curve below = turned(drawn.under().backBelowElbow(), dart);
            Point fold = dart.foldEnd();
            AffineTransformation crease = AffineTransformation.reflectionInstance(
                    dart.point().x(), dart.point().y(), fold.x(), fold.y());
            assertEquals(dart.upperEnd(), dart.edge().start());
            assertEquals(dart.lowerEnd(), dart.edge().end());
            for (Point cut : dart.edge().flattened(0.05)) {
                double side = fold.minus(dart.point()).cross(cut.minus(dart.point()));
                Point folded = side < 0 ? moved(cut, crease) : cut;
                double on = below.closestLength(folded);
                assertEquals(0, below.pointAtLength(on).distanceTo(folded), 1e-6, which);
            }
            assertEquals(0, moved(dart.upperEnd(), crease).distanceTo(dart.lowerEnd()), 1e-9, which);
        }));
    }

    @Test
    void easedStretchLiesBetweenUnderarmAndWristOnBothSeams() {
        overTheStyleSpace(drawn -> drawn.under().easing().ifPresent(easing -> {
            UnderSleeve under = drawn.under();
            assertTrue(easing.from() > 0 && easing.frontTo() < under.frontSeam(), drawn.which());
            assertEquals(under.frontSeam() - easing.frontTo(), under.backSeam() - easing.backTo(), 1e-6, drawn.which());
            double elbow = under.backAboveElbow().length();
            assertTrue(elbow > easing.from() && elbow < easing.backTo(), drawn.which());
            assertTrue(
                    easing.ease() <= 0.2 * (easing.frontTo() - easing.from()) + 1e-9,
                    drawn.which() + " has more ease than the stretch takes up");
        }));
    }

    /**
     * By hand: elbow 280, dart 28 wide, so that the sine of half the turn is 28 / 2 / 280 = 0.05. The turn opens 140 · 0.1 = 14 mm at the centre line, which the part below
     * the elbow, 230 deep, is shortened by.
     */
    @Test
    void turnsTheSleeveForwardByTheWidthOfTheDart() {
        UnderSleeve under = gown(GOWN.with(Dimension.ELBOW_DART, 28), ElbowShaping.ELBOW_DART);
        double sine = 2 * 0.05 * Math.sqrt(1 - 0.05 * 0.05);
        double cosine = 1 - 2 * 0.05 * 0.05;
        double below = 230 - 14;
        Point expected = new Point(-140 + 140 * cosine - below * sine, -230 - 140 * sine - below * cosine);
        assertEquals(0, expected.distanceTo(under.centreLine().end()), 1e-9);
        assertEquals(70, under.dart().orElseThrow().length(), 1e-9, "half way to the centre line");
        assertEquals(28.0, under.dart().orElseThrow().width(), 1e-9);
    }

    @Test
    void withoutMeasuresTheUsualDartAndEaseAreTaken() {
        assertEquals(
                20, gown(GOWN, ElbowShaping.ELBOW_DART).dart().orElseThrow().width(), 1e-9);
        UnderSleeve eased = gown(GOWN, ElbowShaping.EASED_SEAM);
        assertEquals(10, eased.backSeam() - eased.frontSeam(), 1e-6);
        UnderSleeve tapered = gown(GOWN, ElbowShaping.TAPERED);
        assertTrue(tapered.symmetrical());
        assertSame(tapered.frontSide(), tapered.backSide());
        assertEquals(new Point(140, -230), tapered.backElbow());
    }

    /** In equal halves with straight sides the tapered seam is the hypotenuse. */
    @Test
    void withoutElbowTheTaperedSideIsStraight() {
        Dimensions straight = Dimensions.of(Map.of(
                Dimension.BICEP, 360.0, Dimension.CAP_HEIGHT, 135.0, Dimension.LENGTH, 595.0, Dimension.WRIST, 210.0));
        UnderSleeve under = gown(straight, ElbowShaping.TAPERED);
        assertEquals(Math.hypot(75, 460), under.frontSeam(), 1e-9);
        assertEquals(285, under.elbow(), 1e-9);
    }

    @Test
    void handThatDoesNotPassNeedsAnOpening() {
        WristOpening opening = gown(GOWN.with(Dimension.HAND_GIRTH, 240), ElbowShaping.TAPERED)
                .opening()
                .orElseThrow();
        assertEquals(WristOpening.Basis.GIVEN, opening.basis());
        assertEquals(30, opening.handGirth() - opening.wrist(), 1e-9);
        assertEquals(25, opening.length(), 1e-9);
        assertEquals(
                Optional.empty(),
                gown(GOWN.with(Dimension.HAND_GIRTH, 210), ElbowShaping.TAPERED).opening());
        assertEquals(Optional.empty(), gown(GOWN, ElbowShaping.TAPERED).opening());
        WristOpening usual = gown(GOWN.with(Dimension.WRIST, 180), ElbowShaping.TAPERED)
                .opening()
                .orElseThrow();
        assertEquals(WristOpening.Basis.USUAL, usual.basis());
        assertEquals(20, usual.length(), 1e-9);
        overTheStyleSpace(drawn -> drawn.under().opening().ifPresent(o -> {
            assertTrue(o.wrist() + 2 * o.length() > o.handGirth(), drawn.which());
            assertTrue(o.wrist() < o.handGirth(), drawn.which());
        }));
    }

    /** Sleeves nobody wears: each is drafted with seams that walk, or refused with a range. */
    @Test
    void oddSleevesAreDraftedSoundlyOrRefused() {
        int drafted = 0;
        int steep = 0;
        for (long seed = 1; seed <= MANY; seed++) {
            Random random = new Random(seed * 0x9E3779B97F4A7C15L);
            double bicep = between(random, 80, 1500);
            double wrist = between(random, 30, bicep);
            double below = between(random, 12, 1500);
            Dimensions odd = Dimensions.of(Map.of(
                    Dimension.BICEP,
                    bicep,
                    Dimension.CAP_HEIGHT,
                    0.35 * bicep,
                    Dimension.LENGTH,
                    0.35 * bicep + below,
                    Dimension.ELBOW,
                    between(random, wrist, 1.3 * bicep),
                    Dimension.WRIST,
                    wrist,
                    Dimension.ELBOW_LEVEL,
                    below * between(random, 0.1, 0.9)));
            ElbowShaping shaping = random.nextBoolean() ? ElbowShaping.ELBOW_DART : ElbowShaping.EASED_SEAM;
            if (random.nextBoolean()) {
                odd = odd.with(
                        shaping == ElbowShaping.ELBOW_DART ? Dimension.ELBOW_DART : Dimension.ELBOW_EASE,
                        between(random, 1, 80));
            }
            try {
                UnderSleeve under = gown(odd, shaping);
                double ease = under.easing().map(SeamEasing::ease).orElse(0.0);
                assertEquals(under.frontSeam() + ease, under.backSeam(), 1e-6, "seed " + seed);
                assertEquals(wrist, under.wrist(), 1e-6, "seed " + seed);
                drafted++;
            } catch (InvalidMeasuresException e) {
                Violation violation = e.violations().get(0);
                double value = violation.value().orElseThrow();
                assertTrue(
                        value > violation.greatest().orElse(Double.POSITIVE_INFINITY)
                                || value < violation.least().orElse(Double.NEGATIVE_INFINITY),
                        "seed " + seed + ": " + e.getMessage());
                if (violation.subject().equals(Dimension.WRIST)) {
                    steep++;
                    gown(odd.with(Dimension.WRIST, violation.least().orElseThrow() + 0.01), shaping);
                }
            }
        }
        assertTrue(drafted > MANY / 2, "drafted " + drafted);
        assertTrue(steep > 0, "no sleeve too steep was drawn");
    }

    /** What is named as the greatest value works, and a little more does not. */
    @ParameterizedTest
    @CsvSource({
        "ELBOW_DART, ELBOW_DART, 100, 56",
        "ELBOW_DART, ELBOW_DART_LENGTH, 200, 140",
        "EASED_SEAM, ELBOW_EASE, 70, 24",
        "TAPERED, ELBOW_LEVEL, 700, 455",
        "EASED_SEAM, ELBOW_LEVEL, 400, 368",
        "TAPERED, WRIST, 300, 280",
        "TAPERED, HAND_GIRTH, 590, NaN",
        "ELBOW_DART, HAND_GIRTH, 590, NaN"
    })
    void tooMuchIsRefusedWithTheGreatestThatWorks(
            ElbowShaping shaping, Dimension dimension, double given, double most) {
        Dimensions base = dimension == Dimension.HAND_GIRTH ? GOWN.with(Dimension.WRIST, 100) : GOWN;
        Violation violation = refused(base.with(dimension, given), shaping);
        assertEquals(dimension, violation.subject());
        assertEquals(given, violation.value().orElseThrow(), 1e-9);
        double works = violation.greatest().orElseThrow();
        if (!Double.isNaN(most)) {
            assertEquals(most, works, 1e-9);
        }
        gown(base.with(dimension, works - 1e-6), shaping);
        refused(base.with(dimension, works + 0.01), shaping);
    }

    @Test
    void tooLittleIsRefusedWithTheLeastThatWorks() {
        Violation shortLeg = refused(
                GOWN.with(Dimension.ELBOW_DART, 40).with(Dimension.ELBOW_DART_LENGTH, 30), ElbowShaping.ELBOW_DART);
        assertEquals(80, shortLeg.least().orElseThrow(), 1e-9);
        assertEquals(140, shortLeg.greatest().orElseThrow(), 1e-9);
        Violation shortSleeve = refused(GOWN.with(Dimension.LENGTH, 140), ElbowShaping.EASED_SEAM);
        assertEquals(Dimension.LENGTH, shortSleeve.subject());
        assertEquals(145, shortSleeve.least().orElseThrow(), 1e-9);
    }

    @ParameterizedTest
    @CsvSource({
        "TAPERED, ELBOW_DART", "TAPERED, ELBOW_DART_LENGTH", "TAPERED, ELBOW_EASE",
        "EASED_SEAM, ELBOW_DART", "EASED_SEAM, ELBOW_DART_LENGTH", "ELBOW_DART, ELBOW_EASE"
    })
    void measuresThatTheShapingDoesNotHaveAreNamed(ElbowShaping shaping, Dimension dimension) {
        assertEquals(dimension, refused(GOWN.with(dimension, 20), shaping).subject());
    }

    private static Violation refused(Dimensions dimensions, ElbowShaping shaping) {
        return assertThrows(InvalidMeasuresException.class, () -> gown(dimensions, shaping))
                .violations()
                .get(0);
    }
}
