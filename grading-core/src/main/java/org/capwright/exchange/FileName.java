package org.capwright.exchange;

import java.text.Normalizer;
import java.util.Locale;
import org.capwright.pattern.PatternSet;

/** File names of letters, digits and hyphens, safe in any header and on any disk. */
public final class FileName {

    private static final int LONGEST = 60;

    private FileName() {}

    /**
     * The name of a run's files.
     *
     * @param title style and revision
     * @return without an ending, for example {@code choir-gown-sleeve-rev-1-size-run}
     */
    public static String of(PatternSet.Title title) {
        return words(title.style()) + "-rev-" + words(title.revision()) + "-size-run";
    }

    /** Letters and digits of any script; whatever lies between becomes one hyphen. */
    private static String words(String text) {
        String plain = Normalizer.normalize(text, Normalizer.Form.NFC).toLowerCase(Locale.ROOT);
        StringBuilder name = new StringBuilder();
        int next = 0;
        for (int i = 0; i < LONGEST && next < plain.length(); i++) {
            int c = plain.codePointAt(next);
            next += Character.charCount(c);
            if (Character.isLetterOrDigit(c)
                    || Character.getType(c) == Character.NON_SPACING_MARK
                    || Character.getType(c) == Character.COMBINING_SPACING_MARK) {
                name.appendCodePoint(c);
            } else if (!name.isEmpty() && name.charAt(name.length() - 1) != '-') {
                name.append('-');
            }
        }
        while (!name.isEmpty() && name.charAt(name.length() - 1) == '-') {
            name.setLength(name.length() - 1);
        }
        return name.isEmpty() ? "sleeve" : name.toString();
    }
}
