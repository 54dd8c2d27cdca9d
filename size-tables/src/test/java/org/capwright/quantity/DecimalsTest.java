package org.capwright.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Held against BigDecimal of the JDK. */
class DecimalsTest {

    private static String put(double value, int least, int most) {
        byte[] bytes = new byte[32];
        return new String(bytes, 0, Decimals.put(value, least, most, bytes, 0), StandardCharsets.US_ASCII);
    }

    @ParameterizedTest
    @CsvSource({
        "0,0,3,0",
        "0,1,6,0.0",
        "7,1,6,7.0",
        "-0.0004,0,3,0",
        "1.0005,0,3,1.001",
        "-1.0005,0,3,-1.001",
        "1000.25,0,9,1000.25"
    })
    void writesFixedPoint(double value, int least, int most, String expected) {
        assertEquals(expected, put(value, least, most));
    }

    /** A million numbers of every size, among them halves of the last decimal, which binary fractions miss. */
    @Test
    void roundsAsTheDecimalDoes() {
        Random random = new Random(5);
        for (int i = 0; i < 1_000_000; i++) {
            int most = 1 + random.nextInt(9);
            double value = (random.nextDouble() - 0.5) * Math.pow(10, random.nextInt(9));
            if (i % 2 == 0) {
                value = BigDecimal.valueOf(2 * (long) (value * 100) + 1)
                        .multiply(new BigDecimal("5"))
                        .movePointLeft(most + 1)
                        .doubleValue();
            }
            if (Math.abs(value) <= 1e9) {
                BigDecimal exact = BigDecimal.valueOf(value).setScale(most, RoundingMode.HALF_UP);
                String expected =
                        exact.signum() == 0 ? "0" : exact.stripTrailingZeros().toPlainString();
                assertEquals(expected, put(value, 0, most), "seed 5, " + value);
                assertEquals(expected, Decimals.text(value, most), "seed 5, " + value);
            }
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, 2e9})
    void refusesWhatIsNoCoordinate(double value) {
        assertThrows(IllegalArgumentException.class, () -> put(value, 0, 3));
    }
}
