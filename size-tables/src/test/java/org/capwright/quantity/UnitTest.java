package org.capwright.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.math.BigDecimal;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class UnitTest {

    /** The international inch is 25.4 mm exactly (international yard and pound agreement, 1959; from memory). */
    @ParameterizedTest
    @CsvSource({"3 1/2, 88.9", "1/8, 3.175", "9, 228.6", "0.75, 19.05", "-1/2, -12.7", "3-1/2, 88.9"})
    void readsInchesWithFractions(String text, double millimetres) {
        assertEquals(millimetres, Unit.INCH.parse(text), 1e-12);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"", "NaN", "Infinity", "1/0", "1e9", "3 1/2 1/4", "0x10", "abc", "1 2", "1,5", "99999999999999"})
    void refusesWhatIsNoLength(String text) {
        assertThrows(NumberFormatException.class, () -> Unit.CENTIMETRE.parse(text));
    }

    @Test
    void writesNoMoreThanIsRead() {
        assertEquals("36.25", Unit.CENTIMETRE.format(362.5));
        assertEquals("36", Unit.CENTIMETRE.format(360));
        assertEquals("0", Unit.MILLIMETRE.format(-0.001));
        assertEquals("14.173", Unit.INCH.format(360));
    }

    /** Against decimal arithmetic; to the last bit. */
    @Test
    void convertsDecimalsExactlyAndRoundsOnce() {
        Map<Unit, BigDecimal> exact = Map.of(
                Unit.MILLIMETRE, BigDecimal.ONE, Unit.CENTIMETRE, BigDecimal.TEN, Unit.INCH, new BigDecimal("25.4"));
        Random random = new Random(7);
        for (int i = 0; i < 20_000; i++) {
            BigDecimal length = BigDecimal.valueOf(random.nextLong(-2_000_000_000L, 2_000_000_000L), i % 10);
            exact.forEach((unit, millimetres) -> assertEquals(
                    length.multiply(millimetres).doubleValue(),
                    unit.toMillimetres(length.doubleValue()),
                    0,
                    unit + " " + length));
        }
        assertEquals(0, Double.compare(0.0, Unit.CENTIMETRE.toMillimetres(-0.0)));
        assertEquals(Double.POSITIVE_INFINITY, Unit.INCH.toMillimetres(Double.POSITIVE_INFINITY));
    }

    @Test
    void roundsToTheGridOfTheRoom() {
        assertEquals(365, new Rounding(5).round(362.5), 1e-12);
        assertEquals(14.125 * 25.4, new Rounding(25.4 / 8).round(360), 1e-9); // 14.17 in reads as 14 1/8
        assertEquals(-5, new Rounding(5).round(-2.5), 1e-12);
        assertEquals(0, new Rounding(5).round(2.4), 0);
    }
}
