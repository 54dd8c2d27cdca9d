package org.capwright.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
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

    /** Two hundred thousand numbers of every size, among them halves of the last decimal, which binary fractions miss. */
    @Test
    void roundsAsTheDecimalDoes() {
        Random random = new Random(5);
        for (int i = 0; i < 200_000; i++) {
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

    /** The JDK reads what was written; ties too, such as 1/128. */
    @Test
    void aReaderFindsTheNumberAsWritten() {
        Random random = new Random(71);
        for (int i = 0; i < 100_000; i++) {
            double value = i % 3 == 0 ? random.nextInt(100_000) / 128.0 : (random.nextDouble() - 0.5) * 2_000;
            int most = 1 + random.nextInt(9);
            assertEquals(Double.parseDouble(Decimals.text(value, most)), Decimals.asWritten(value, most) + 0.0, 0.0);
        }
    }

    /** The JDK's Formatter rounds half up as well. */
    @Test
    void allDecimalsAreWritten() {
        Random random = new Random(4);
        for (int i = 0; i < 2_000; i++) {
            double value = i % 4 == 0 ? random.nextInt(100) / 8.0 : random.nextDouble() * 1_000;
            for (int decimals = 0; decimals < 4; decimals++) {
                assertEquals(String.format(Locale.ROOT, "%." + decimals + "f", value), Decimals.fixed(value, decimals));
            }
        }
    }

    /** Ten decimals of fifteen digits or fewer are the shortest that a double can be told by (IEEE 754, 15 digits survive the way into a double and back). */
    @Test
    void theShortestDecimalIsThatWhichANumberWasMadeOf() {
        Random random = new Random(7);
        byte[] bytes = new byte[32];
        for (int i = 0; i < 200_000; i++) {
            BigDecimal decimal = BigDecimal.valueOf(
                    10_000_000 + (long) (random.nextDouble() * Math.pow(10, 8 + random.nextInt(7))), 10);
            BigDecimal told = decimal.setScale(random.nextInt(11), RoundingMode.HALF_UP);
            double value = random.nextBoolean() ? told.doubleValue() : -told.doubleValue();
            if (Math.abs(value) >= 1e-3 && Math.abs(value) < 1e5) {
                BigDecimal plain = told.stripTrailingZeros();
                String expected = (value < 0 ? "-" : "")
                        + plain.setScale(Math.max(1, plain.scale())).toPlainString();
                int end = Decimals.putShortest(value, bytes, 0);
                assertEquals(expected, new String(bytes, 0, end, StandardCharsets.US_ASCII), "seed 7, " + value);
            }
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {-1e9, -999_999_999.987_654_3, 1e9})
    void twentyFourBytesAreEnough(double value) {
        String expected = BigDecimal.valueOf(value)
                .setScale(9, RoundingMode.HALF_UP)
                .stripTrailingZeros()
                .toPlainString();
        byte[] bytes = new byte[24];
        assertEquals(expected, new String(bytes, 0, Decimals.put(value, 0, 9, bytes, 0), StandardCharsets.US_ASCII));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 1.0 / 3, 5e-4, 1e5, Double.NaN, Double.POSITIVE_INFINITY})
    void aNumberOfOtherDecimalsIsLeftToOthers(double value) {
        assertEquals(0, Decimals.putShortest(value, new byte[32], 0));
    }

    @ParameterizedTest
    @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, 2e9})
    void refusesWhatIsNoCoordinate(double value) {
        assertThrows(IllegalArgumentException.class, () -> put(value, 0, 3));
    }
}
