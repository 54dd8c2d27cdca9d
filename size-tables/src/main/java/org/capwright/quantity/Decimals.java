package org.capwright.quantity;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;

/** Writes numbers as decimals for people and files alike: fixed point, a dot, half up, no garbage of binary fractions, no locale. Thread-safe. */
public final class Decimals {

    /** Greatest number that is written: as millimetres a thousand kilometres, and the digits still fit a long. */
    private static final double GREATEST = 1e9;

    /** Sign, ten digits, a dot, nine digits, and room to spare. */
    private static final int LONGEST = 24;

    private static final long[] POWERS = {
        1, 10, 100, 1_000, 10_000, 100_000, 1_000_000, 10_000_000, 100_000_000, 1_000_000_000
    };

    private Decimals() {}

    /**
     * A number off the noise of binary fractions: to ten decimals, far below what can be measured and far above the noise.
     *
     * @param value the number
     * @return the number to ten decimals; never -0
     */
    public static double clean(double value) {
        return clean(value, 1e10);
    }

    /**
     * A number on a grid of decimals.
     *
     * @param value the number
     * @param grid how many steps make one, a power of ten
     * @return the nearest step; never -0
     */
    public static double clean(double value, double grid) {
        return Math.rint(value * grid) / grid + 0.0; // + 0.0 turns -0.0 into 0.0
    }

    /**
     * A number as text, without trailing zeros.
     *
     * @param value finite
     * @param most the most decimals, 0 or more
     * @return for example {@code 36.25}; never {@code -0}
     */
    public static String text(double value, int most) {
        if (most > 0 && most < POWERS.length && Math.abs(value) <= GREATEST) {
            byte[] digits = new byte[LONGEST];
            return new String(digits, 0, put(value, 0, most, digits, 0), StandardCharsets.ISO_8859_1);
        }
        BigDecimal plain = rounded(value, most).stripTrailingZeros();
        return plain.signum() == 0 ? "0" : plain.toPlainString();
    }

    private static BigDecimal rounded(double value, int most) {
        return BigDecimal.valueOf(value).setScale(most, RoundingMode.HALF_UP);
    }

    /**
     * Puts a number into a buffer as ASCII, without trailing zeros.
     *
     * @param value the number, at most 1e9 in size
     * @param least the least decimals, 0 or 1
     * @param most the most decimals, 1 to 9
     * @param to buffer with at least 24 free bytes
     * @param at where to begin
     * @return where the number ends
     * @throws IllegalArgumentException if the number is not finite or beyond 1e9
     */
    public static int put(double value, int least, int most, byte[] to, int at) {
        if (!(Math.abs(value) <= GREATEST)) {
            throw new IllegalArgumentException("not a coordinate: " + value);
        }
        long one = POWERS[most];
        long scaled = scaled(value, most, one);
        int next = at;
        if (scaled < 0) {
            to[next++] = '-';
            scaled = -scaled;
        }
        long whole = scaled / one;
        next = whole(whole, to, next);
        long rest = scaled - whole * one;
        if (rest > 0 || least > 0) {
            to[next++] = '.';
            int digits = most;
            while (digits > 1 && rest % 10 == 0) {
                rest /= 10;
                digits--;
            }
            next += digits;
            for (int i = next - 1; i >= next - digits; i--) {
                to[i] = (byte) ('0' + rest % 10);
                rest /= 10;
            }
        }
        return next;
    }

    /**
     * Puts a whole number into a buffer as ASCII.
     *
     * @param value the number
     * @param to buffer with at least 20 free bytes
     * @param at where to begin
     * @return where the number ends
     */
    public static int put(int value, byte[] to, int at) {
        if (value >= 0) {
            return whole(value, to, at);
        }
        to[at] = '-';
        return whole(-(long) value, to, at + 1);
    }

    /** The product rounds as the decimal itself does, except next to a half: there the decimal decides. */
    private static long scaled(double value, int most, long one) {
        double product = value * one;
        double floor = Math.floor(product);
        return Math.abs(product - floor - 0.5) > 1e-6 * (1 + Math.abs(product) * 1e-9)
                ? (long) Math.floor(product + 0.5)
                : rounded(value, most).movePointRight(most).longValueExact();
    }

    private static int whole(long whole, byte[] to, int at) {
        int digits = 1;
        for (long bound = 10; bound <= whole; bound *= 10) {
            digits++;
        }
        long left = whole;
        for (int i = at + digits - 1; i >= at; i--) {
            to[i] = (byte) ('0' + left % 10);
            left /= 10;
        }
        return at + digits;
    }
}
