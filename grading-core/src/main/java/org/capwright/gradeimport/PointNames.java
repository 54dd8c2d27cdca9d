package org.capwright.gradeimport;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.text.Normalizer;
import java.util.Collections;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.capwright.check.CheckedMeasure;
import org.capwright.words.Text;
import org.jspecify.annotations.Nullable;

/**
 * Names of points of measure as sewing rooms write them in ten languages: {@code point-names.txt} beside this class. Whole names match, with the usual abbreviations and with or without words that only join others; nothing is taken by likeness.
 */
final class PointNames {

    /**
     * What a name was taken for.
     *
     * @param measure the point of measure
     * @param factor 2 where the name says that half is measured
     * @param certain whether the name itself says that all or half of it is measured
     * @param how in words
     */
    record Match(CheckedMeasure measure, double factor, boolean certain, Text how) {

        Match ofCode() {
            return new Match(measure, factor, true, how);
        }

        Match said(String meaning) {
            return new Match(
                    measure,
                    factor,
                    certain,
                    Text.of("which the sender says is {meaning}").with("meaning", meaning));
        }
    }

    private static final Map<String, CheckedMeasure> NAMES = new HashMap<>();
    /** Codes in lower case, as a mapping with a unit or a half has them. */
    private static final Map<String, CheckedMeasure> CODES = Stream.of(CheckedMeasure.values())
            .collect(Collectors.toMap(measure -> normal(measure.code()), measure -> measure));

    /** The same names in full words without those that only join others. */
    private static final Map<String, CheckedMeasure> LOOSE = new HashMap<>();

    /** Stands for a loose name that two points share; no name of a point of measure is read so. */
    private static final CheckedMeasure NEITHER = CheckedMeasure.PLEAT_LAYERS;

    /** Words and abbreviations that stand for one another. */
    private static final Map<String, String> SHORT = new HashMap<>();

    private static final Set<String> JOINING = Set.of(
            "de",
            "du",
            "des",
            "d",
            "la",
            "le",
            "les",
            "l",
            "of",
            "at",
            "the",
            "on",
            "da",
            "do",
            "del",
            "della",
            "dello",
            "van",
            "der",
            "am",
            "im",
            "an",
            "au",
            "a",
            "w",
            "na",
            "en",
            "di",
            "el",
            "al",
            "total",
            "finished",
            "relaxed",
            "totale",
            "gesamt",
            "fertig");

    private static final Set<String> DIRECTIONS = Set.of("length", "height", "width", "round", "opening");

    /** Rows of a spec table of this engine that no check judges. */
    private static final Set<String> BESIDE_THE_CHECKS = Set.of(
            "underarmSeam",
            "elbowDart",
            "elbowDartLength",
            "elbowEase",
            "wristOpening",
            "overlayWidth",
            "overlayHem",
            "overlayNetEdge",
            "pleatTakeUp");

    /** A number or a letter before a name: {@code A. Bicep}, {@code 3) Wrist}, {@code S2 Cap height}. */
    private static final Pattern NUMBERED = Pattern.compile(
            "^\\s*(?:(?:\\p{Lu}{1,3}|\\p{Lu}{0,3}[.-]?\\d{1,3})\\s*[.):\u2013-]|\\p{Lu}{1,3}[.-]?\\d{1,3})\\s+(?=\\p{L}|1/2|\u00bd)");

    /** Marks behind a name that lead to a note. */
    private static final Pattern NOTE =
            Pattern.compile("\\s*(?:[*\u2020\u2021\u00b9\u00b2\u00b3\u2070\u2074-\u2079]+|\\[\\d{1,2}\\])$");

    private static final String HALVED =
            "1 2|half|flat|on fold|on the fold|halbe|halber|halb|demi|media|medio|mezza|mezzo|meia|meio|halve|half"
                    + " width|polowa|pol|yarim|yari|en plano|mitad|meta|moitie";

    private static final Pattern HALF = Pattern.compile("^(?:" + HALVED + ") (?:of )?(.+)$|^(.+?) (?:" + HALVED
            + "|flat half|laid flat|measured flat|relaxed flat|edge to edge|a plat|flach|flach gemessen|flach"
            + " liegend|im bruch|liegend|piana|in piano|steso|plano|a metade|plat|plat gemeten|na"
            + " plasko|plasko|duz|平置き|半分)$");

    /** Said of a row whose figures look like halves, and are none. */
    private static final Pattern FULL = Pattern.compile("^(?:full|all round) (.+)$|^(.+?) (?:full|all round|full"
            + " circumference|tour complet|complet|rundum|rundherum|completo|completa|intero|intera)$");

    private static final Set<CheckedMeasure> ROUND = Set.of(
            CheckedMeasure.BICEP,
            CheckedMeasure.ELBOW,
            CheckedMeasure.WRIST,
            CheckedMeasure.ARMHOLE,
            CheckedMeasure.CAP_LINE);

    static {
        try (BufferedReader lines = new BufferedReader(new InputStreamReader(
                PointNames.class.getResourceAsStream("point-names.txt"), StandardCharsets.UTF_8))) {
            lines.lines().filter(line -> !line.startsWith("#")).forEach(PointNames::add);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private PointNames() {}

    /** Whether a cell names a point of measure that no check judges. */
    static boolean isBesideTheChecks(String cell) {
        return BESIDE_THE_CHECKS.contains(cell.strip());
    }

    /** One line: code, language, names parted by semicolons. */
    private static void add(String line) {
        String[] parts = line.split(" ", 3);
        if (parts[0].equals("short")) {
            for (String word : parts[2].split(";")) {
                SHORT.put(normal(word), normal(parts[1]));
            }
            return;
        }
        CheckedMeasure measure = CheckedMeasure.ofCode(parts[0]).orElseThrow();
        for (String name : parts[2].split(";")) {
            NAMES.put(normal(name), measure);
            LOOSE.merge(
                    loose(normal(name.replaceAll("(?i)(\\b[dl]|dell|all|sull)['\u2019]", " "))),
                    measure,
                    (a, b) -> a == b ? a : NEITHER);
        }
    }

    /** What a cell means, or nothing. */
    static Optional<Match> match(String cell) {
        if (cell.isEmpty() || cell.length() > 120) {
            return Optional.empty();
        }
        Optional<CheckedMeasure> code = CheckedMeasure.ofCode(cell.strip());
        if (code.isPresent()) {
            return code.map(measure -> new Match(measure, 1, false, Text.of("its code")));
        }
        return plain(cell)
                .or(() -> Optional.of(NUMBERED.matcher(cell).replaceFirst(""))
                        .filter(rest -> rest.length() < cell.length())
                        .flatMap(PointNames::plain));
    }

    private static Optional<Match> plain(String cell) {
        String name = normal(UnitWords.without(NOTE.matcher(cell).replaceFirst("")));
        CheckedMeasure measure = named(name);
        if (measure != null) {
            return Optional.of(new Match(measure, 1, false, Text.of("a name of the trade")));
        }
        var half = HALF.matcher(name);
        if (half.matches()) {
            CheckedMeasure whole = named(half.group(1) == null ? half.group(2) : half.group(1));
            if (whole != null && ROUND.contains(whole)) {
                return Optional.of(
                        new Match(whole, 2, true, Text.of("a name of the trade for half of it, so doubled")));
            }
        }
        var full = FULL.matcher(name);
        CheckedMeasure all = full.matches() ? named(full.group(1) == null ? full.group(2) : full.group(1)) : null;
        if (all != null) {
            return Optional.of(new Match(all, 1, true, Text.of("a name of the trade for all of it")));
        }
        return Optional.empty();
    }

    /** Whether a name is a length or a width, and does not say of what. */
    static boolean isGeneral(String cell) {
        return DIRECTIONS.contains(loose(normal(UnitWords.without(cell))));
    }

    private static String loose(String name) {
        StringBuilder out = new StringBuilder();
        for (String word : name.split(" ")) {
            String full = SHORT.getOrDefault(word, word);
            if (!JOINING.contains(full)) {
                out.append(out.isEmpty() ? "" : " ").append(full);
            }
        }
        return out.toString();
    }

    private static @Nullable CheckedMeasure named(String name) {
        CheckedMeasure known = NAMES.get(name);
        CheckedMeasure exact = known == null ? CODES.get(name) : known;
        String loose = loose(name);
        // A length or a width of nothing in particular is that of the garment: only its bare name is read.
        boolean general = loose.isEmpty() || !name.equals(loose) && DIRECTIONS.contains(loose);
        CheckedMeasure near = exact != null || general ? exact : LOOSE.get(loose);
        return near == NEITHER ? null : near;
    }

    /** All names that are known, each with its point. */
    static Map<String, CheckedMeasure> names() {
        return Collections.unmodifiableMap(NAMES);
    }

    /** Lower case without accents; all that is neither letter nor digit is one space. */
    static String normal(String text) {
        String plain = Normalizer.normalize(
                // No accents: these letters stand for themselves in Unicode and are folded by hand.
                text.replace("\u00bd", "1/2")
                        .replace("\u00df", "ss")
                        .replace('\u0142', 'l')
                        .replace('\u0141', 'L')
                        .replace('\u0131', 'i'),
                Normalizer.Form.NFKD);
        StringBuilder out = new StringBuilder(plain.length());
        for (int i = 0; i < plain.length(); i++) {
            char c = plain.charAt(i);
            if (Character.isLetterOrDigit(c)) {
                out.append(Character.toLowerCase(c));
            } else if (Character.getType(c) != Character.NON_SPACING_MARK
                    && c != '\''
                    && out.length() > 0
                    && out.charAt(out.length() - 1) != ' ') {
                out.append(' ');
            }
        }
        return out.toString().strip().toLowerCase(Locale.ROOT);
    }
}
