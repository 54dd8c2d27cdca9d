package org.capwright.quantity;

import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.ByteOrder;
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

    private static final double SHORTEST = 1e10;

    private static final double FIFTEEN_DIGITS = 1e5;

    /** Four bytes at once: what is written in excess is written over by what follows. */
    private static final VarHandle FOUR = MethodHandles.byteArrayViewVarHandle(int[].class, ByteOrder.LITTLE_ENDIAN);

    /** The three digits of every number below a thousand, with leading zeros, as bytes for {@link #FOUR}. */
    private static final int[] THREES = new int[1_000];

    /** The digits of every number below a thousand without leading zeros, as bytes for {@link #FOUR}; in the last byte how many there are. */
    private static final int[] UP_TO_THREE = new int[1_000];

    /** How many bytes a dot and so many thousandths take without trailing zeros. */
    private static final byte[] THOUSANDTHS = new byte[1_000];

    static {
        for (int i = 0; i < 1_000; i++) {
            THREES[i] = '0' + i / 100 | '0' + i / 10 % 10 << 8 | '0' + i % 10 << 16;
            int length = i < 10 ? 1 : i < 100 ? 2 : 3;
            UP_TO_THREE[i] = THREES[i] >>> 8 * (3 - length) | length << 24;
            THOUSANDTHS[i] = (byte) (i == 0 ? 0 : i % 100 == 0 ? 2 : i % 10 == 0 ? 3 : 4);
        }
    }

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
        if (most > 0 && most < 10 && Math.abs(value) <= GREATEST) {
            byte[] digits = new byte[LONGEST];
            return new String(digits, 0, put(value, 0, most, digits, 0), StandardCharsets.ISO_8859_1);
        }
        BigDecimal plain = rounded(value, most).stripTrailingZeros();
        return plain.signum() == 0 ? "0" : plain.toPlainString();
    }

    /**
     * A number as a reader of its text finds it.
     *
     * @param value the number, at most 1e9 in size
     * @param most the most decimals, 1 to 9
     * @return what {@link #text} shows
     */
    public static double asWritten(double value, int most) {
        return (double) scaled(value, most, POWERS[most]) / POWERS[most];
    }

    /**
     * A number as text with all its decimals.
     *
     * @param value finite
     * @param decimals how many, 0 or more
     * @return for example {@code 36.0}; never {@code -0}
     */
    public static String fixed(double value, int decimals) {
        String shown = text(value, decimals);
        int dot = shown.indexOf('.');
        int missing = dot < 0 ? decimals : decimals - (shown.length() - dot - 1);
        return (dot < 0 && decimals > 0 ? shown + "." : shown) + "0".repeat(missing);
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
        to[at] = '-'; // written over where there is no sign: no branch, as signs are hard to foretell
        int next = at + (int) (scaled >>> 63);
        scaled = Math.abs(scaled);
        if (most != USUAL) {
            return most <= 6
                    ? six(scaled * POWERS[6 - most], least, to, next)
                    : nine(scaled * POWERS[9 - most], least, to, next);
        }
        long whole = scaled / 1_000; // a division by a constant is far quicker than one by a variable
        int rest = (int) (scaled - whole * 1_000);
        next = whole(whole, to, next);
        FOUR.set(to, next, '.' | THREES[rest] << 8);
        return next + Math.max(2 * least, THOUSANDTHS[rest]);
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
        long scaled = (long) (size * SHORTEST + 0.5);
        if (scaled / SHORTEST != size) {
            return at;
        }
        to[at] = '-'; // written over where there is no sign
        int next = value < 0 ? at + 1 : at;
        long millionths = scaled / 10_000;
        int rest = (int) (scaled - millionths * 10_000);
        return rest == 0
                ? six(millionths, 1, to, next) // as most figures are
                : ten(millionths, rest, to, next);
    }

    /** Puts a number of millionths without trailing zeros. */
    private static int six(long millionths, int least, byte[] to, int at) {
        long whole = millionths / 1_000_000;
        int rest = (int) (millionths - whole * 1_000_000);
        int high = rest / 1_000;
        int low = rest - high * 1_000;
        int dot = whole(whole, to, at);
        FOUR.set(to, dot, '.' | THREES[high] << 8);
        if (low == 0) {
            return dot + Math.max(2 * least, THOUSANDTHS[high]);
        }
        FOUR.set(to, dot + 4, THREES[low]);
        return dot + 3 + THOUSANDTHS[low];
    }

    /** Puts a number of thousandths of millionths without trailing zeros. */
    private static int nine(long parts, int least, byte[] to, int at) {
        long millionths = parts / 1_000;
        int rest = (int) (parts - millionths * 1_000);
        return rest == 0 ? six(millionths, least, to, at) : ten(millionths, 10 * rest, to, at);
    }

    /** Puts a number of millionths and ten-thousandths of one, of which there are some, without trailing zeros. */
    private static int ten(long millionths, int rest, byte[] to, int at) {
        long whole = millionths / 1_000_000;
        int six = (int) (millionths - whole * 1_000_000);
        int dot = whole(whole, to, at);
        FOUR.set(to, dot, '.' | THREES[six / 1_000] << 8);
        FOUR.set(to, dot + 4, THREES[six % 1_000]);
        FOUR.set(to, dot + 7, THREES[rest / 10]);
        int last = rest % 10;
        to[dot + 10] = (byte) ('0' + last);
        return last == 0 ? dot + 6 + THOUSANDTHS[rest / 10] : dot + 11;
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
        double beyond = product - floor - 0.5;
        return Math.abs(beyond) > 1e-6 * (1 + Math.abs(product) * 1e-9)
                ? (long) floor + (beyond > 0 ? 1 : 0)
                : rounded(value, most).movePointRight(most).longValueExact();
    }

    private static int whole(long whole, byte[] to, int at) {
        if (whole >= 1_000) {
            int next = whole(whole / 1_000, to, at);
            FOUR.set(to, next, THREES[(int) (whole % 1_000)]);
            return next + 3;
        }
        int digits = UP_TO_THREE[(int) whole];
        FOUR.set(to, at, digits);
        return at + (digits >>> 24);
    }
}
