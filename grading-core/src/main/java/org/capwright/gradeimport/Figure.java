package org.capwright.gradeimport;

import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.capwright.quantity.Unit;

/**
 * A number as a table writes it: {@code 36.5}, {@code 36,5}, {@code 14 1/4}, {@code 14-1/4"}, {@code 14¼}, each with its unit or without.
 *
 * @param number the number, finite
 * @param unit the unit that stands in the same cell
 */
record Figure(double number, Optional<Unit> unit) {

    /** How commas are meant. */
    enum Comma {
        DECIMAL,
        THOUSANDS
    }

    private static final Map<Character, String> VULGAR = Map.ofEntries(
            Map.entry('\u00bc', "1/4"),
            Map.entry('\u00bd', "1/2"),
            Map.entry('\u00be', "3/4"),
            Map.entry('\u2153', "1/3"),
            Map.entry('\u2154', "2/3"),
            Map.entry('\u215b', "1/8"),
            Map.entry('\u215c', "3/8"),
            Map.entry('\u215d', "5/8"),
            Map.entry('\u215e', "7/8"));

    private static final Pattern FORM =
            Pattern.compile("([+-]?)(?:(\\d{1,9}(?:[.,]\\d{1,12})*)|(?:(\\d{1,6})(?: +|-))?(\\d{1,4})/(\\d{1,4}))");
    /** A step that goes up on one side and down on the other: {@code ±1.2}, {@code +/- 1.2}, {@code +1.2/-1.2}, with or without {@code per size}. */
    private static final Pattern EITHER =
            Pattern.compile("(?:\\u00b1|\\+ ?/? ?-|- ?/? ?\\+) *(\\d[\\d.,/ -]*?(?: *(?:mm|cm|in|\"))?)(?:"
                    + " *(?:per|je|pro|par|por|na|/)[ \\p{L}.]+)?");

    private static final Pattern PER = Pattern.compile("(.*\\d.*?) *(?:per|je|pro|par|por|na|/) *\\p{L}[ \\p{L}.]*");

    private static final Pattern ENDING = Pattern.compile("^(.*?\\d) *(mm|cm|in|inch|inches|\"|''|\u201d|\u2033)\\.?$");
    /** {@code ~36}, {@code ca. 36}: a figure is meant as it stands. */
    private static final Pattern ABOUT =
            Pattern.compile("^(?:~|\\u2248|ca\\.?|circa|approx\\.?|about|env\\.?|etwa) *(?=\\d)");
    /** Marks that lead to a note: {@code 36.5*}, {@code 36.5 [1]}. */
    private static final Pattern NOTE =
            Pattern.compile("(?<=[\\d\"'\u201d\u2033\\p{L}]) *(?:[*\u2020\u2021]+|\\[\\d{1,2}\\])$");
    /** A tolerance behind the figure: {@code 36.5 \u00b10.5}, {@code 36.5 cm +/- 0.5 cm}. */
    private static final Pattern TOLERANCE = Pattern.compile(
            "^([^\u00b1]*\\d[^\u00b1+]*?) *(?:\u00b1|\\+ ?/? ?-) ?\\d[\\d.,/ ]*(?: ?(?:mm|cm|in|\"|\u201d|\u2033))?$");
    /** The same length in two units: {@code 36.5 cm / 14 3/8 in}, {@code 36.5 cm (14 3/8")}. */
    private static final Pattern TWICE = Pattern.compile("^([^(|]+?) *[(/|] *([^(|]+?)\\)?$");
    /** How far two roundings of one length may lie apart, mm: half of 1/4 in, and half of 1 mm. */
    private static final double ROUNDED = 3.7;

    private static final Pattern GROUPED = Pattern.compile("\\d{1,3}(?:,\\d{3})+(?:\\.\\d+)?");
    private static final Pattern GROUPED_BY_POINTS = Pattern.compile("\\d{1,3}(?:\\.\\d{3})+,\\d+");
    /** {@code 1 234,5} and {@code 1'234.5}; no decimal sign stands before a group. */
    private static final Pattern SPACED = Pattern.compile("([+-]?\\d{1,3})((?:[ '\u2019]\\d{3})+)([.,]\\d{1,12})?");

    /** One sign and three digits: a decimal, or thousands. */
    private static final Pattern EITHER_SIGN = Pattern.compile("[+-]?[1-9]\\d{0,2}[.,]\\d{3}");

    private static final Pattern COMMA = Pattern.compile("\\d{1,9},\\d{1,12}");
    private static final Pattern POINT = Pattern.compile("\\d{1,9}(?:\\.\\d{1,12})?");

    /** Whether a cell holds a number with a comma that can only be a decimal one. */
    static boolean showsDecimalComma(String cell) {
        String text = bare(cell);
        return COMMA.matcher(text).matches() && !GROUPED.matcher(text).matches()
                || GROUPED_BY_POINTS.matcher(text).matches();
    }

    /** Whether a cell holds a number with a decimal point. */
    static boolean showsDecimalPoint(String cell) {
        String text = bare(cell);
        return text.indexOf('.') > 0 && POINT.matcher(text).matches();
    }

    private static String bare(String cell) {
        String text = normal(cell);
        Matcher ending = ENDING.matcher(text);
        String number = ending.matches() ? ending.group(1) : text;
        return number.startsWith("-") || number.startsWith("+") ? number.substring(1) : number;
    }

    private static String normal(String cell) {
        StringBuilder out = new StringBuilder(cell.length() + 4);
        for (int i = 0; i < cell.length(); i++) {
            char c = cell.charAt(i);
            String vulgar = VULGAR.get(c);
            if (vulgar != null) {
                boolean whole = i > 0 && Character.isDigit(cell.charAt(i - 1));
                out.append(whole ? " " : "").append(vulgar);
            } else if (c == '\u2044') {
                out.append('/');
            } else if (c == '\u2212' || c == '\u2013') {
                out.append('-');
            } else if (c == '\u00a0' || c == '\u202f' || c == '\u2009') {
                out.append(' ');
            } else {
                out.append(c);
            }
        }
        return out.toString().strip().toLowerCase(Locale.ROOT);
    }

    /** The other meaning of a number such as {@code 1.234} or {@code 1,234}, of which three digits may be a fraction or belong to thousands. */
    static Optional<Double> inThousands(String cell) {
        String text = normal(cell);
        Matcher ending = ENDING.matcher(text);
        String number = ending.matches() ? ending.group(1) : text;
        return EITHER_SIGN.matcher(number).matches()
                ? Optional.of(Double.parseDouble(number.replaceAll("[.,]", "")))
                : Optional.empty();
    }

    /** Reads a cell, or nothing where it holds no number. */
    static Optional<Figure> of(String cell, Comma comma) {
        if (cell.length() > 40) {
            return Optional.empty();
        }
        String bare = NOTE.matcher(ABOUT.matcher(normal(cell)).replaceFirst("")).replaceFirst("");
        Matcher tolerance = TOLERANCE.matcher(bare);
        String text = tolerance.matches() ? tolerance.group(1) : bare;
        return inOneUnit(text, comma).or(() -> inTwoUnits(text, comma));
    }

    /** One length written in two units: the first, where both are the same but for rounding. */
    private static Optional<Figure> inTwoUnits(String text, Comma comma) {
        Matcher twice = TWICE.matcher(text);
        if (!twice.matches()) {
            return Optional.empty();
        }
        Optional<Figure> second = inOneUnit(twice.group(2), comma).filter(figure -> figure.unit.isPresent());
        return inOneUnit(twice.group(1), comma)
                .filter(figure -> figure.unit.isPresent())
                .filter(first -> second.filter(first::isSameLength).isPresent());
    }

    private boolean isSameLength(Figure other) {
        return !unit.equals(other.unit)
                && isRounded(
                        unit.orElseThrow().toMillimetres(number),
                        other.unit.orElseThrow().toMillimetres(other.number));
    }

    /** Whether two lengths, mm, may be one that was rounded in two units. */
    static boolean isRounded(double one, double other) {
        return Math.abs(one - other) < ROUNDED;
    }

    private static Optional<Figure> inOneUnit(String cell, Comma comma) {
        String text = cell;
        Matcher either = EITHER.matcher(text);
        Matcher per = PER.matcher(text);
        text = either.matches() ? either.group(1) : per.matches() ? per.group(1) : text;
        Optional<Unit> unit = Optional.empty();
        Matcher ending = ENDING.matcher(text);
        if (ending.matches()) {
            text = ending.group(1);
            unit = UnitWords.alone(ending.group(2));
        }
        Matcher spaced = SPACED.matcher(text);
        if (spaced.matches()) {
            String fraction = spaced.group(3) == null ? "" : spaced.group(3).replace(',', '.');
            text = spaced.group(1) + spaced.group(2).replaceAll("\\D", "") + fraction;
        }
        Matcher form = FORM.matcher(text);
        if (!form.matches()) {
            return Optional.empty();
        }
        int sign = form.group(1).equals("-") ? -1 : 1;
        String decimal = form.group(2);
        if (decimal != null) {
            String plain = plain(decimal, comma);
            return plain.isEmpty() ? Optional.empty() : Optional.of(new Figure(sign * Double.parseDouble(plain), unit));
        }
        int divisor = Integer.parseInt(form.group(5));
        if (divisor == 0) {
            return Optional.empty();
        }
        String whole = form.group(3);
        double number =
                (whole == null ? 0 : Integer.parseInt(whole)) + (double) Integer.parseInt(form.group(4)) / divisor;
        return Optional.of(new Figure(sign * number, unit));
    }

    private static String plain(String decimal, Comma comma) {
        if (POINT.matcher(decimal).matches()) {
            return decimal;
        }
        if (GROUPED_BY_POINTS.matcher(decimal).matches()) {
            return decimal.replace(".", "").replace(',', '.');
        }
        boolean grouped = GROUPED.matcher(decimal).matches();
        if (grouped && (comma == Comma.THOUSANDS || decimal.indexOf('.') > 0)) {
            return decimal.replace(",", "");
        }
        return COMMA.matcher(decimal).matches() ? decimal.replace(',', '.') : "";
    }
}
