package org.capwright.gradeimport;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Size labels: what looks like one, and in what order they come. */
final class SizeScale {

    private static final Pattern NUMBER =
            Pattern.compile("(?:(?!CUT|QTY|PCS|REV|VER|POS|FIG|NR|NO)[A-Z]{1,3} ?)?(\\d{1,3}(?:\\.\\d)?)");
    private static final Pattern LETTERED = Pattern.compile("[A-Za-z]+ ?\\d");
    private static final Pattern LETTER = Pattern.compile("(?:[A-Z]{2} )?(\\d?)(X{0,4})([SML])");
    private static final Pattern DOUBLE = Pattern.compile("(?:[A-Z]{1,3} ?)?(\\w{1,4}) ?[/\u2013-] ?(\\w{1,4})");
    private static final Pattern SPAN = Pattern.compile("(\\w{1,4}) *(?:/|-|\u2013|>|\u2192|to|bis) *(\\w{1,4})");
    private static final Pattern EXPLAINED = Pattern.compile("([^()]+?) ?\\([^()]{1,12}\\)");
    private static final Pattern NAMED = Pattern.compile(
            "\\s*(?:size|grösse|größe|groesse|gr\\.?|gr(?=\\s*\\d)|taille|talla|tamanho|tam\\.?|rozmiar|beden|サイズ|taglia|maat|tg\\.?(?=[\\s.]*\\d)|mt\\.?(?=[\\s.]*\\d)|sz\\.?(?=[\\s.]*\\d)|rozm\\.?|r\\.(?=\\s*\\d)|t[-"
                    + " .]{0,2}(?=\\d))(?![\\p{L}])[\\s:=._\u2013-]*([^\\s,;:=._\u2013-][^,;]{0,39})(?:[,;].*)?",
            Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE);
    private static final Pattern BASE = Pattern.compile(
            "\\s*(?:sample|base) +size\\s*[:=]?\\s*(\\S.{0,39})", Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE);

    private SizeScale() {}

    /** Whether a word is of the kinds that sizes are named by: numbers and S, M, L. */
    static boolean isLabel(String text) {
        return !Double.isNaN(place(text));
    }

    /** Whether a word is a size without a word or a letter before it, as programs number blocks: 36 and XL, not B36. */
    static boolean isPlain(String text) {
        return isLabel(text) && !LETTERED.matcher(text).lookingAt();
    }

    /** Where a label stands on its scale, or NaN. Letters stand far below numbers, so the two do not mix. */
    static double place(String text) {
        String label = text.strip().toUpperCase(Locale.ROOT);
        Matcher number = NUMBER.matcher(label);
        if (number.matches()) {
            return Double.parseDouble(number.group(1));
        }
        Matcher letter = LETTER.matcher(label);
        if (!letter.matches()) {
            return composed(label);
        }
        int many = letter.group(1).isEmpty()
                ? letter.group(2).length()
                : Integer.parseInt(letter.group(1))
                        * Math.max(1, letter.group(2).length());
        return -1000
                + switch (letter.group(3)) {
                    case "S" -> -1 - many;
                    case "M" -> 0;
                    default -> 1 + many;
                };
    }

    /** {@code 36/38} lies between its two sizes; {@code 36 (S)} is 36. */
    private static double composed(String label) {
        Matcher explained = EXPLAINED.matcher(label);
        if (explained.matches()) {
            return place(explained.group(1));
        }
        Matcher pair = DOUBLE.matcher(label);
        return pair.matches() ? (place(pair.group(1)) + place(pair.group(2))) / 2 : Double.NaN;
    }

    /** The two sizes of a label such as {@code 36-38} or {@code S to M}, or nothing. */
    static java.util.Optional<List<String>> ends(String label) {
        Matcher pair = SPAN.matcher(label.strip());
        return pair.matches() && isLabel(pair.group(1)) && isLabel(pair.group(2))
                ? java.util.Optional.of(List.of(pair.group(1), pair.group(2)))
                : java.util.Optional.empty();
    }

    /** The label in a text such as {@code SIZE: 40}, or nothing. */
    static java.util.Optional<String> named(String text) {
        Matcher matcher = NAMED.matcher(text);
        return matcher.matches() ? java.util.Optional.of(matcher.group(1).strip()) : java.util.Optional.empty();
    }

    /** The label in a text such as {@code SAMPLE SIZE: 40}, or nothing. */
    static java.util.Optional<String> namedBase(String text) {
        Matcher matcher = BASE.matcher(text);
        return matcher.matches() ? java.util.Optional.of(matcher.group(1).strip()) : java.util.Optional.empty();
    }

    /**
     * The order from the smallest size to the largest.
     *
     * @return positions in the list; as they are where the labels stand on no scale
     */
    static List<Integer> order(List<String> labels) {
        List<Integer> order = new ArrayList<>();
        for (int i = 0; i < labels.size(); i++) {
            order.add(i);
        }
        if (labels.stream().allMatch(SizeScale::isLabel)) {
            order.sort(Comparator.comparingDouble(i -> place(labels.get(i))));
        }
        return order;
    }
}
