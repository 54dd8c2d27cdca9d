package org.capwright.gradeimport;

import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.capwright.quantity.Unit;

/** Units as tables write them. */
final class UnitWords {

    private static final Map<String, Unit> WORDS = Map.ofEntries(
            Map.entry("mm", Unit.MILLIMETRE),
            Map.entry("millimetre", Unit.MILLIMETRE),
            Map.entry("millimetres", Unit.MILLIMETRE),
            Map.entry("millimeter", Unit.MILLIMETRE),
            Map.entry("millimeters", Unit.MILLIMETRE),
            Map.entry("cm", Unit.CENTIMETRE),
            Map.entry("cms", Unit.CENTIMETRE),
            Map.entry("centimetre", Unit.CENTIMETRE),
            Map.entry("centimetres", Unit.CENTIMETRE),
            Map.entry("centimeter", Unit.CENTIMETRE),
            Map.entry("centimeters", Unit.CENTIMETRE),
            Map.entry("in", Unit.INCH),
            Map.entry("ins", Unit.INCH),
            Map.entry("inch", Unit.INCH),
            Map.entry("inches", Unit.INCH),
            Map.entry("\"", Unit.INCH),
            Map.entry("''", Unit.INCH),
            Map.entry("\u201d", Unit.INCH),
            Map.entry("\u2033", Unit.INCH));

    private static final Pattern BRACKETED = Pattern.compile("[(\\[]\\s*([\\p{L}\"'\u201d\u2033]{1,12})\\.?\\s*[)\\]]");
    private static final Pattern LAST = Pattern.compile("(?:[,;/]|\\bin)\\s*([\\p{L}]{2,12})\\s*$");
    private static final Pattern STATED = Pattern.compile(
            "(?:units?|measurements?|all|einheit|unit\u00e9s?)\\b[^0-9]{0,40}?\\b(mm|cm|in|inch|inches|millimet(?:re|er)s?|centimet(?:re|er)s?)\\b\\.?\\s*\\)?$",
            Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE);

    private UnitWords() {}

    /** A text that is a unit and nothing else. */
    static Optional<Unit> alone(String text) {
        String word = text.strip().toLowerCase(Locale.ROOT);
        if (word.endsWith(".")) {
            word = word.substring(0, word.length() - 1);
        }
        if (word.length() > 2 && (word.startsWith("(") || word.startsWith("["))) {
            word = word.substring(1, word.length() - 1).strip();
        }
        return Optional.ofNullable(WORDS.get(word));
    }

    /** The unit that a heading carries, such as {@code Bicep (cm)}. */
    static Optional<Unit> within(String text) {
        Matcher bracketed = BRACKETED.matcher(text);
        while (bracketed.find()) {
            Optional<Unit> unit = alone(bracketed.group(1));
            if (unit.isPresent()) {
                return unit;
            }
        }
        Matcher last = LAST.matcher(text);
        return last.find() ? alone(last.group(1)) : Optional.empty();
    }

    /** The unit in a sentence such as {@code All measurements in cm}. */
    static Optional<Unit> stated(String text) {
        Matcher stated = STATED.matcher(text.strip());
        return stated.find() ? alone(stated.group(1)) : Optional.empty();
    }

    /** A heading without the unit in brackets. */
    static String without(String text) {
        Matcher bracketed = BRACKETED.matcher(text);
        StringBuilder out = new StringBuilder();
        while (bracketed.find()) {
            bracketed.appendReplacement(
                    out, alone(bracketed.group(1)).isPresent() ? " " : Matcher.quoteReplacement(bracketed.group()));
        }
        String rest = bracketed.appendTail(out).toString();
        Matcher last = LAST.matcher(rest);
        return last.find() && alone(last.group(1)).isPresent() ? rest.substring(0, last.start()) : rest;
    }
}
