package org.capwright.quantity;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A unit of length at the boundary. Inside every length is in millimetres. */
public enum Unit {
    /** Millimetre. */
    MILLIMETRE("mm", 1, 1, 1e8),
    /** Centimetre, 10 mm. */
    CENTIMETRE("cm", 10, 2, 1e9),
    /** Inch, 25.4 mm exactly (international inch, 1959). */
    INCH("in", 25.4, 3, 1e9);

    private static final Pattern DECIMAL = Pattern.compile("[+-]?\\d{1,9}(?:\\.\\d{1,12})?");
    private static final Pattern FRACTION = Pattern.compile("([+-]?)(?:(\\d{1,6})(?:\\s+|-))?(\\d{1,4})/(\\d{1,4})");

    private static final double MILLION = 1e6;

    /** So many millionths times 254 are below 2⁵³, and no two decimals of so few digits are the same double. */
    private static final double GREATEST = 1e12;

    private final String symbol;
    private final double millimetres;
    private final int decimals;
    private final double figures;

    Unit(String symbol, double millimetres, int decimals, double figures) {
        this.symbol = symbol;
        this.millimetres = millimetres;
        this.decimals = decimals;
        this.figures = figures;
    }

    /**
     * The short name used in requests and on drawings.
     *
     * @return {@code mm}, {@code cm} or {@code in}
     */
    public String symbol() {
        return symbol;
    }

    /**
     * A length in this unit as millimetres. The shortest decimal that prints as the length is converted exactly and rounded once, so that 44.4 cm is 444 mm and not a
     * hair beside it.
     *
     * @param length in this unit
     * @return millimetres; not finite if the length is not
     */
    public double toMillimetres(double length) {
        double millionths = Math.rint(length * MILLION);
        if (Math.abs(millionths) < GREATEST && millionths / MILLION == length) {
            // The decimal has six places or fewer, as most have: all but the division is exact.
            return millionths * Math.rint(10 * millimetres) / (10 * MILLION) + 0.0; // never -0.0
        }
        return Double.isFinite(length) ? toMillimetres(BigDecimal.valueOf(length)) : length;
    }

    /**
     * A decimal in this unit as millimetres, converted exactly and rounded once.
     *
     * @param length in this unit
     * @return millimetres, to the nearest double
     */
    public double toMillimetres(BigDecimal length) {
        return length.multiply(BigDecimal.valueOf(millimetres)).doubleValue();
    }

    /**
     * A length in millimetres in this unit.
     *
     * @param length millimetres
     * @return the length in this unit
     */
    public double fromMillimetres(double length) {
        return length / millimetres;
    }

    /**
     * A length in millimetres as a figure of this unit, off the noise of binary fractions: that of a dimension grows from size to size, and in forty of them it
     * stays below half a hundred-millionth of a millimetre.
     *
     * @param length millimetres
     * @return the length in this unit, to eight decimals of a millimetre, or nine of a centimetre or an inch
     */
    public double figure(double length) {
        return Decimals.clean(fromMillimetres(length), figures);
    }

    /**
     * A length written for people: no more decimals than the sewing room reads, no trailing zeros.
     *
     * @param length millimetres, finite
     * @return for example {@code 36.25}, without the unit
     */
    public String format(double length) {
        return Decimals.text(fromMillimetres(length), decimals);
    }

    /**
     * Reads a length written as a decimal ({@code 3.5}), a fraction ({@code 1/2}) or a whole number and a fraction ({@code 3 1/2}, {@code 3-1/2}).
     *
     * @param text the length, in this unit, spaces around it allowed
     * @return millimetres
     * @throws NumberFormatException if the text is none of these
     */
    public double parse(String text) {
        String trimmed = text.strip();
        if (DECIMAL.matcher(trimmed).matches()) {
            return toMillimetres(Double.parseDouble(trimmed));
        }
        Matcher fraction = FRACTION.matcher(trimmed);
        if (fraction.matches() && Integer.parseInt(fraction.group(4)) != 0) {
            double whole = fraction.group(2) == null ? 0 : Integer.parseInt(fraction.group(2));
            double value = whole + (double) Integer.parseInt(fraction.group(3)) / Integer.parseInt(fraction.group(4));
            return toMillimetres(fraction.group(1).equals("-") ? -value : value);
        }
        throw new NumberFormatException("not a length: " + trimmed);
    }

    /**
     * The unit with a given short name.
     *
     * @param symbol {@code mm}, {@code cm} or {@code in}
     * @return the unit, or nothing
     */
    public static Optional<Unit> find(String symbol) {
        return Arrays.stream(values())
                .filter(unit -> unit.symbol.equals(symbol))
                .findFirst();
    }
}
