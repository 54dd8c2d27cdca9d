package org.capwright.gradeimport;

import java.util.Locale;
import java.util.regex.Pattern;

/** What a layer holds, by its name: the numbers of ASTM D6673 (from memory), or words of the trade. */
enum LineRole {
    /** The sew line, also called net line. */
    SEW,
    /** The boundary, also called cut line. */
    CUT,
    /** Not told. */
    UNKNOWN,
    /** The fold. */
    FOLD,
    /** The grain line. */
    GRAIN,
    /** Other marks. */
    MARKS;

    private static final Pattern SEW_WORDS = words("NET|SEW|SEAM|STITCH|SEWLINE|SEAMLINE|STITCHLINE|NAHT");
    private static final Pattern CUT_WORDS = words("CUT|BOUNDARY|OUTLINE|CUTLINE|CUTTING|CONTOUR");
    private static final Pattern FOLD_WORDS = words("FOLD|MIRROR");
    private static final Pattern GRAIN_WORDS = words("GRAIN|GRAINLINE");
    private static final Pattern MARK_WORDS =
            words("MARKS?|INTERNALS?|NOTCH(?:ES)?|TEXTS?|ANNOTATIONS?|DRILLS?|DEFPOINTS|DIM(?:ENSION)?S?");

    private static final Pattern NUMBER = Pattern.compile("\\d{1,3}");

    private static Pattern words(String words) {
        return Pattern.compile("(?<![A-Z])(?:" + words + ")(?![A-Z])");
    }

    static LineRole of(String layer) {
        String name = layer.toUpperCase(Locale.ROOT);
        return switch (name) {
            case "1" -> CUT;
            case "14" -> SEW;
            case "6" -> FOLD;
            case "7" -> GRAIN;
            case "2", "3", "4", "5", "8", "9", "10", "11", "12", "13", "15" -> MARKS;
            default -> {
                if (SEW_WORDS.matcher(name).find()) {
                    yield SEW;
                }
                if (CUT_WORDS.matcher(name).find()) {
                    yield CUT;
                }
                if (FOLD_WORDS.matcher(name).find()) {
                    yield FOLD;
                }
                if (GRAIN_WORDS.matcher(name).find()) {
                    yield GRAIN;
                }
                yield MARK_WORDS.matcher(name).find() ? MARKS : UNKNOWN;
            }
        };
    }

    /** What a layer holds where layers are not numbered by the standard: a number may be a size. */
    static LineRole ofUnnumbered(String layer) {
        return NUMBER.matcher(layer).matches() ? UNKNOWN : of(layer);
    }

    /** The name of a layer without the words of roles: what is left may be a size. */
    static String rest(String layer) {
        String name = layer;
        for (Pattern words : java.util.List.of(SEW_WORDS, CUT_WORDS, FOLD_WORDS, GRAIN_WORDS, MARK_WORDS)) {
            name = Pattern.compile(words.pattern(), Pattern.CASE_INSENSITIVE)
                    .matcher(name)
                    .replaceAll("");
        }
        return name.replaceAll("(?i)(?<![a-z])(?:size|line|sleeve)(?![a-z])", "")
                .replaceAll("^[\\s_-]+|[\\s_-]+$", "");
    }
}
