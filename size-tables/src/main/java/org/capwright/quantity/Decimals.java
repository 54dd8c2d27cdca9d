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

    /** Decimals of most coordinates in files. */
    private static final int USUAL = 3;

    private static final int BILLION = 1_000_000_000;

    private static final double SHORTEST = 1e10;

    private static final double FIFTEEN_DIGITS = 1e5;

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
        long whole = most == USUAL ? scaled / 1_000 : scaled / one; // a division by a constant is far quicker
        return decimals(scaled - whole * one, least, most, to, whole(whole, to, next));
    }

    /** Puts dot and decimals, without trailing zeros. */
    private static int decimals(long rest, int least, int most, byte[] to, int at) {
        if (rest == 0 && least == 0) {
            return at;
        }
        to[at] = '.';
        int next = at + 1 + most;
        if (rest < BILLION) {
            digits((int) rest, to, at + 1, next);
        } else {
            digits((int) (rest / BILLION), to, at + 1, next - 9);
            digits((int) (rest % BILLION), to, next - 9, next);
        }
        while (to[next - 1] == '0' && next > at + 2) {
            next--;
        }
        return next;
    }

    /**
     * Puts the shortest decimal that reads back as the same number, in the manner of Java: at least one decimal, at most ten.
     *
     * @param value a number
     * @param to buffer with at least 24 free bytes
     * @param at where to begin
     * @return where the number ends; {@code at} where it has more decimals, or Java would write it with an exponent
     */
    public static int putShortest(double value, byte[] to, int at) {
        double size = Math.abs(value);
        if (!(size >= 1e-3 && size < FIFTEEN_DIGITS)) {
            return at;
        }
        // Decimals of fifteen digits or fewer are told apart by doubles: if the quotient is the number, no other
        // decimal of ten places is, and no shorter one.
        long scaled = Math.round(size * SHORTEST);
        if (scaled / SHORTEST != size) {
            return at;
        }
        int next = at;
        if (value < 0) {
            to[next++] = '-';
        }
        long whole = scaled / (long) SHORTEST;
        return decimals(scaled - whole * (long) SHORTEST, 1, 10, to, whole(whole, to, next));
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
        int next = at + 1;
        for (long bound = 10; bound <= whole; bound *= 10) {
            next++;
        }
        if (whole < BILLION) {
            digits((int) whole, to, at, next);
        } else {
            digits((int) (whole / BILLION), to, at, next - 9);
            digits((int) (whole % BILLION), to, next - 9, next);
        }
        return next;
    }

    /** Puts digits with leading zeros, from the last to the first. */
    private static void digits(int value, byte[] to, int from, int end) {
        int left = value;
        for (int i = end - 1; i >= from; i--) {
            int tenth = left / 10;
            to[i] = (byte) ('0' + left - 10 * tenth);
            left = tenth;
        }
    }
}
