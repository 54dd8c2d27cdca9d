package org.capwright.gradeimport;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.text.Normalizer;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.capwright.check.CheckedMeasure;

/**
 * Names of points of measure as sewing rooms write them in ten languages: {@code point-names.txt} beside this class. Only whole names match; nothing is taken by likeness.
 */
final class PointNames {

    /**
     * What a name was taken for.
     *
     * @param measure the point of measure
     * @param factor 2 where the name says that half is measured
     * @param how in words
     */
    record Match(CheckedMeasure measure, double factor, String how) {}

    private static final Map<String, CheckedMeasure> NAMES = new HashMap<>();
    /** Rows of a spec table of this engine that no check judges. */
    private static final Set<String> BESIDE_THE_CHECKS = Set.of(
            "underarmSeam",
            "elbowDart",
            "elbowDartLength",
            "elbowEase",
            "wristOpening",
            "overlayWidth",
            "overlayHem",
            "pleatTakeUp");

    private static final Pattern HALF = Pattern.compile(
            "^(?:1 2|half|flat|halbe|halber|demi|media|medio|mezza|mezzo|meia|meio|halve|pol|yarim) (.+)$|^(.+?) (?:1 2|half|flat|flat half|half width|laid flat|a plat|flach|halb|piana)$");

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
        CheckedMeasure measure = CheckedMeasure.ofCode(parts[0]).orElseThrow();
        for (String name : parts[2].split(";")) {
            NAMES.put(normal(name), measure);
        }
    }

    /** What a cell means, or nothing. */
    static Optional<Match> match(String cell) {
        if (cell.isEmpty() || cell.length() > 120) {
            return Optional.empty();
        }
        Optional<CheckedMeasure> code = CheckedMeasure.ofCode(cell.strip());
        if (code.isPresent()) {
            return code.map(measure -> new Match(measure, 1, "its code"));
        }
        String name = normal(UnitWords.without(cell));
        CheckedMeasure measure = NAMES.get(name);
        if (measure != null) {
            return Optional.of(new Match(measure, 1, "a name of the trade"));
        }
        var half = HALF.matcher(name);
        if (half.matches()) {
            CheckedMeasure whole = NAMES.get(half.group(1) == null ? half.group(2) : half.group(1));
            if (whole == CheckedMeasure.BICEP || whole == CheckedMeasure.ELBOW || whole == CheckedMeasure.WRIST) {
                return Optional.of(new Match(whole, 2, "a name of the trade for half of it, so doubled"));
            }
        }
        return Optional.empty();
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
