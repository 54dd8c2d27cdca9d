package org.capwright.exchange.dxf;

/** Writes numbers in fixed-point notation, without the garbage and the locale of a formatter. */
final class FixedPoint {

    /** Greatest size of a coordinate, mm: a thousand kilometres, and the digits still fit a long. */
    private static final double GREATEST = 1e9;

    private FixedPoint() {}

    /**
     * Puts a number into a buffer with at most six decimals, without trailing zeros but with at least one decimal.
     *
     * @param value the number
     * @param to buffer with at least 20 free bytes
     * @param at where to begin
     * @return where the number ends
     * @throws IllegalArgumentException if the number is not finite or beyond 1e9
     */
    static int put(double value, byte[] to, int at) {
        if (!(Math.abs(value) <= GREATEST)) {
            throw new IllegalArgumentException("not a coordinate: " + value);
        }
        long scaled = Math.round(value * 1e6);
        int next = at;
        if (scaled < 0) {
            to[next++] = '-';
            scaled = -scaled;
        }
        long whole = scaled / 1_000_000;
        int rest = (int) (scaled - whole * 1_000_000);
        next = putWhole(whole, to, next);
        to[next++] = '.';
        int divisor = 100_000;
        do {
            int digit = rest / divisor;
            to[next++] = (byte) ('0' + digit);
            rest -= digit * divisor;
            divisor /= 10;
        } while (rest > 0);
        return next;
    }

    private static int putWhole(long whole, byte[] to, int at) {
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
