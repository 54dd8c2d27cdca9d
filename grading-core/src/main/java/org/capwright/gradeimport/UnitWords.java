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
            Map.entry("zoll", Unit.INCH),
            Map.entry("pouce", Unit.INCH),
            Map.entry("pouces", Unit.INCH),
            Map.entry("pulgada", Unit.INCH),
            Map.entry("pulgadas", Unit.INCH),
            Map.entry("pollici", Unit.INCH),
            Map.entry("polegada", Unit.INCH),
            Map.entry("polegadas", Unit.INCH),
            Map.entry("cale", Unit.INCH),
            Map.entry("センチ", Unit.CENTIMETRE),
            Map.entry("ミリ", Unit.MILLIMETRE),
            Map.entry("インチ", Unit.INCH),
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
            "(?:units?|measurements?|measures?|all|einheit(?:en)?|ma\u00dfe?|masse|angaben|unit\u00e9s?|mesures?|unidad(?:es)?|medidas?|unit\u00e0|misure|unidades?|eenheid|maten"
                    + "|jednostki?|wymiary|birim|\u00f6l\u00e7\u00fcler|\u5358\u4f4d)(?![\\p{L}])[^0-9]{0,40}?(?<![\\p{L}])(mm|cms?|inch|inches|zoll|pouces?|pulgadas?|pollici|polegadas?|cale|millimet(?:re|er)s?"
                    + "|centimet(?:re|er)s?|in(?=\\.?\\s*\\)?$))(?![\\p{L}])",
            Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE);

    /** {@code in cm}, and nothing else in the cell. */
    private static final Pattern ONLY = Pattern.compile(
            "[(\\[]?(?:(?:all|alle|alles|tout|toutes|todo|tutto|tudo) )?(?:in|en|em|w) ([\\p{L}]{2,12})\\.?[)\\]]?",
            Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE);

    /** {@code Bicep cm}: units that are no other word. */
    private static final Pattern BARE =
            Pattern.compile("(?<=\\S)[ _](mm|cm|cms|inch|inches)\\.?\\s*$", Pattern.CASE_INSENSITIVE);

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
        if (last.find()) {
            return alone(last.group(1));
        }
        Matcher bare = BARE.matcher(text);
        return bare.find() ? alone(bare.group(1)) : Optional.empty();
    }

    /** The unit in a sentence such as {@code All measurements in cm, laid flat}; {@code in} is a unit at its end alone, and else a preposition. */
    static Optional<Unit> stated(String text) {
        Matcher only = ONLY.matcher(text.strip());
        if (only.matches()) {
            return alone(only.group(1));
        }
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
        if (last.find() && alone(last.group(1)).isPresent()) {
            return rest.substring(0, last.start());
        }
        Matcher bare = BARE.matcher(rest);
        return bare.find() ? rest.substring(0, bare.start()) : rest;
    }
}
