package org.capwright.exchange.table;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * How a workbook shows a number (ISO/IEC 29500-1, 18.8.30 and 18.8.31, from memory): what a person sees in the cell is what is read. Decimals are rounded as shown, and words such as a unit before or behind the
 * figure are kept.
 *
 * @param code the format's code, its part for positive numbers
 */
record CellFormat(String code) {

    static final CellFormat GENERAL = new CellFormat("General");

    /** Longer codes than spreadsheet programs take. */
    private static final int LONGEST = 255;

    /** More decimals than a workbook shows. */
    private static final int MOST_DECIMALS = 30;

    /** The first day that a workbook cannot show. */
    private static final int END_OF_DAYS = 2_958_466;

    /** The 29 February 1900, which a workbook has and the calendar has not. */
    private static final int NO_DAY = 60;

    /** Digits of a number that a cell without a format shows; the last of the fifteen that are stored may come from binary fractions. */
    private static final MathContext MOST_DIGITS = new MathContext(11, RoundingMode.HALF_UP);

    private static final Pattern FIRST_PART = Pattern.compile("(?:[^;\"\\\\]|\"[^\"]*\"|\\\\.)*");
    private static final Pattern LITERAL = Pattern.compile("\"([^\"]*)\"|\\\\(.)|[_*].|\\[[^\\]]*\\]");
    private static final Pattern DIGITS = Pattern.compile("[0#?][0#?,]*(?:\\.([0#?]*))?");
    private static final Pattern FRACTION = Pattern.compile("[0#? ]*[0#?] */ *(?:(\\d+)|[#?]+)");

    /** The format of a code, of which the first part is for positive numbers. */
    static CellFormat of(String code) {
        Matcher first = FIRST_PART.matcher(code);
        return code.length() <= LONGEST && first.lookingAt() ? new CellFormat(first.group()) : GENERAL;
    }

    /** The format of a number that no workbook has to explain. */
    static CellFormat builtIn(int number) {
        return switch (number) {
            case 1, 3, 37, 38 -> new CellFormat("0");
            case 2, 4, 39, 40 -> new CellFormat("0.00");
            case 9 -> new CellFormat("0%");
            case 10 -> new CellFormat("0.00%");
            case 14, 15, 16, 17, 18, 19, 20, 21, 22, 45, 46, 47 -> new CellFormat("yyyy-mm-dd");
            default -> GENERAL;
        };
    }

    /**
     * A number as it is shown.
     *
     * @param value the number, finite
     * @return its figures with a decimal point, with the words of the format; a date as ISO 8601 has it
     */
    String shown(double value) {
        // Literals become signs that mean nothing, so that what is found in one stands at the same place in the other.
        String bare = LITERAL.matcher(code)
                .replaceAll(found -> "~".repeat(found.group().length()));
        BigDecimal exact = BigDecimal.valueOf(value).round(MOST_DIGITS);
        if (code.equals(GENERAL.code)) {
            return figures(exact);
        }
        if (bare.toLowerCase(Locale.ROOT).matches(".*[ymdhs].*") && value >= 1 && value < END_OF_DAYS) {
            return LocalDate.of(1899, 12, value < NO_DAY ? 31 : 30)
                    .plusDays((long) value)
                    .toString();
        }
        BigDecimal figure = bare.contains("%") ? exact.movePointRight(2) : exact;
        Matcher fraction = FRACTION.matcher(bare);
        if (fraction.find()) {
            return words(0, fraction.start())
                    + figures(fraction.group(1) == null ? figure : nearest(figure, new BigDecimal(fraction.group(1))))
                    + words(fraction.end(), code.length());
        }
        Matcher digits = DIGITS.matcher(bare);
        if (!digits.find() || bare.contains("E+") || bare.contains("E-")) {
            return figures(figure);
        }
        int decimals = digits.group(1) == null ? 0 : digits.group(1).length();
        return words(0, digits.start())
                + figures(figure.setScale(Math.min(decimals, MOST_DECIMALS), RoundingMode.HALF_UP))
                + words(digits.end(), code.length());
    }

    /** The literals of a part of the code, and a sign of percent. */
    private String words(int from, int to) {
        StringBuilder words = new StringBuilder();
        Matcher literal = LITERAL.matcher(code).region(from, to);
        int at = from;
        while (literal.find()) {
            words.append(plain(at, literal.start()));
            words.append(literal.group(1) == null ? "" : literal.group(1));
            words.append(literal.group(2) == null ? "" : literal.group(2));
            at = literal.end();
        }
        return words.append(plain(at, to)).toString();
    }

    private String plain(int from, int to) {
        return code.substring(from, to).replaceAll("[^ %()]", "");
    }

    /** The nearest of the fractions that a ruler has. */
    private static BigDecimal nearest(BigDecimal figure, BigDecimal parts) {
        return parts.signum() == 0
                ? figure
                : figure.multiply(parts).setScale(0, RoundingMode.HALF_UP).divide(parts, MOST_DIGITS);
    }

    private static String figures(BigDecimal figure) {
        return figure.signum() == 0 ? "0" : figure.stripTrailingZeros().toPlainString();
    }
}
