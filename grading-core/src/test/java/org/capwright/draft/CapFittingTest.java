package org.capwright.draft;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import java.util.Random;
import org.capwright.measure.Dimension;
import org.capwright.measure.Dimensions;
import org.capwright.measure.SleeveSubject.Option;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Violation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CapFittingTest {

    private static Dimensions gown() {
        return Dimensions.of(Map.of(
                Dimension.BICEP,
                360.0,
                Dimension.CAP_HEIGHT,
                135.0,
                Dimension.ARMHOLE,
                450.0,
                Dimension.LENGTH,
                600.0));
    }

    /** Eases taught for set-in sleeves: none to 1 7/8 in. Santa Rosa Junior College, Sleeve Fundamentals, teaches 1 to 1 7/8 in; industrial practice 0 to 1/2 in. */
    @ParameterizedTest
    @ValueSource(doubles = {0, 12.7, 25.4, 38.1, 47.625})
    void findsTheCapHeightForAnEase(double ease) {
        Dimensions fitted = CapFitting.fitted(gown(), new CapFit.CapHeightFor(new CapEase.Length(ease)));
        assertEquals(450 + ease, BaseSleeve.draft(fitted).capLength(), 1e-6);
        assertEquals(360, fitted.get(Dimension.BICEP));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 0.02, 0.04, 0.08})
    void findsTheBicepForAnEase(double share) {
        Dimensions fitted = CapFitting.fitted(gown(), new CapFit.BicepFor(new CapEase.Share(share)));
        assertEquals(450 * (1 + share), BaseSleeve.draft(fitted).capLength(), 1e-6);
    }

    /** With the same armhole a wider bicep means a lower cap, and the reverse. Knitting Robin (2011) and Threads (2021) state the trade-off. */
    @Test
    void tradesBicepAgainstCapHeight() {
        CapFit fit = new CapFit.CapHeightFor(new CapEase.Length(20));
        double last = Double.POSITIVE_INFINITY;
        for (double bicep = 300; bicep <= 420; bicep += 20) {
            double height =
                    CapFitting.fitted(gown().with(Dimension.BICEP, bicep), fit).get(Dimension.CAP_HEIGHT);
            assertTrue(height < last);
            last = height;
        }
    }

    @Test
    void fitsFrontAndBackApart() {
        Dimensions given = gown().with(Dimension.FRONT_ARMHOLE, 218)
                .with(Dimension.CAP_OUTWARD, 19)
                .with(Dimension.CAP_INWARD, 12);
        Dimensions fitted =
                CapFitting.fitted(given, new CapFit.HalvesFor(new CapEase.Length(8), new CapEase.Length(12)));
        BaseSleeve sleeve = BaseSleeve.draft(fitted);
        assertEquals(226, sleeve.front().length(), 1e-6);
        assertEquals(244, sleeve.back().length(), 1e-6);
        assertEquals(360, sleeve.bicep(), 1e-9);
    }

    /** The last steps to either end of the range that a cap height has are shorter. */
    @ParameterizedTest
    @ValueSource(doubles = {10.1, 10.3, 482, 487, 490, 495, 499.9})
    void findsCapHeightsNearTheEndsOfTheirRange(double height) {
        Dimensions wanted = gown().with(Dimension.BICEP, height < 100 ? 360 : 700)
                .with(Dimension.CAP_HEIGHT, height)
                .with(Dimension.CAP_OUTWARD, height < 100 ? 0.6 : 30)
                .with(Dimension.CAP_INWARD, height < 100 ? 0.6 : 20);
        double armhole = BaseSleeve.draft(wanted).capLength() / 1.04;
        Dimensions fitted = CapFitting.fitted(
                wanted.with(Dimension.ARMHOLE, armhole).with(Dimension.CAP_HEIGHT, 135),
                new CapFit.CapHeightFor(new CapEase.Share(0.04)));
        assertEquals(height, fitted.get(Dimension.CAP_HEIGHT), 1e-4);
    }

    @Test
    void explainsWhatStopsItWhenNoSleeveHasThatEase() {
        // A cap line can never be shorter than the bicep is wide: 360 mm of bicep cannot go into 300 mm of armhole.
        Dimensions given = gown().with(Dimension.ARMHOLE, 300);
        InvalidMeasuresException stopped = assertThrows(
                InvalidMeasuresException.class,
                () -> CapFitting.fitted(given, new CapFit.CapHeightFor(new CapEase.Length(10))));
        Violation violation = stopped.violations().get(0);
        assertEquals(Option.CAP_EASE, violation.subject());
        assertEquals(10, violation.value().orElseThrow(), 1e-9);
        assertTrue(violation.least().orElseThrow() > 60);
    }

    /** Solving for the ease of a drafted sleeve gives back the measure it was drafted with. */
    @Test
    void isTheInverseOfTheDraft() {
        for (long seed = 1; seed <= 300; seed++) {
            Dimensions drawn = StyleSpace.of(seed).dimensions();
            double length = BaseSleeve.draft(drawn).capLength();
            CapEase ease = new CapEase.Length(length - drawn.get(Dimension.ARMHOLE));
            Random random = new Random(seed);
            if (random.nextBoolean()) {
                Dimensions unknown = drawn.with(Dimension.CAP_HEIGHT, 100);
                assertEquals(
                        drawn.get(Dimension.CAP_HEIGHT),
                        CapFitting.fitted(unknown, new CapFit.CapHeightFor(ease))
                                .get(Dimension.CAP_HEIGHT),
                        1e-6,
                        "seed " + seed);
            } else if (!drawn.has(Dimension.FRONT_WIDTH)) {
                Dimensions unknown = drawn.with(Dimension.BICEP, 300);
                Dimensions fitted = CapFitting.fitted(unknown, new CapFit.BicepFor(ease));
                assertEquals(length, BaseSleeve.draft(fitted).capLength(), 1e-6, "seed " + seed);
            }
        }
    }
}
