package org.capwright.drawing;

import java.text.Bidi;
import java.text.Normalizer;

/**
 * A line of text made ready to be shown: composed, in the order in which the eye meets the characters, and every character that the font has not replaced.
 *
 * @param text the text as given
 * @param shown code points from left to right
 * @param altered whether signs were replaced, so that the file must say what is meant; not for scripts that run from right to left: readers put what is shown
 *     back into the order of reading by themselves, and would turn round what the file says as well
 */
public record Script(String text, int[] shown, boolean altered) {

    /** Below this no script runs from right to left and none joins its letters. */
    private static final int HEBREW = 0x0590;

    /**
     * Makes a text ready.
     *
     * @param given the text
     * @param face the font it is set in
     * @return what is shown
     */
    public static Script of(String given, Typeface face) {
        if (face.isPlain(given)) {
            int[] letters = new int[given.length()];
            for (int i = 0; i < letters.length; i++) {
                letters[i] = given.charAt(i);
            }
            return new Script(given, letters, false);
        }
        String text = Normalizer.isNormalized(given, Normalizer.Form.NFC)
                ? given
                : Normalizer.normalize(given, Normalizer.Form.NFC);
        boolean plain = text.chars().allMatch(c -> c < HEBREW);
        int[] ordered = plain ? text.codePoints().toArray() : visualOrder(text);
        boolean altered = false;
        for (int i = 0; i < ordered.length; i++) {
            if (Character.isISOControl(ordered[i])) {
                ordered[i] = ' ';
            } else if (!face.has(ordered[i])) {
                ordered[i] = Typeface.REPLACEMENT;
                altered = plain || !Bidi.requiresBidi(text.toCharArray(), 0, text.length());
            }
        }
        return new Script(given, ordered, altered);
    }

    private static int[] visualOrder(String text) {
        Bidi bidi = new Bidi(text, Bidi.DIRECTION_DEFAULT_LEFT_TO_RIGHT);
        if (bidi.isLeftToRight()) {
            return text.codePoints().toArray();
        }
        String joined = ArabicJoining.joined(text);
        Bidi runs = new Bidi(joined, Bidi.DIRECTION_DEFAULT_LEFT_TO_RIGHT);
        int count = runs.getRunCount();
        byte[] levels = new byte[count];
        Object[] parts = new Object[count];
        for (int i = 0; i < count; i++) {
            levels[i] = (byte) runs.getRunLevel(i);
            String part = joined.substring(runs.getRunStart(i), runs.getRunLimit(i));
            parts[i] = (levels[i] & 1) == 1 ? mirrored(part) : part;
        }
        Bidi.reorderVisually(levels, 0, parts, 0, count);
        StringBuilder line = new StringBuilder(joined.length());
        for (Object part : parts) {
            line.append(part);
        }
        return line.codePoints().toArray();
    }

    private static String mirrored(String part) {
        StringBuilder back = new StringBuilder(part).reverse();
        for (int i = 0; i < back.length(); i++) {
            int pair = "()[]{}<>«»".indexOf(back.charAt(i));
            if (pair >= 0) {
                back.setCharAt(i, "()[]{}<>«»".charAt(pair ^ 1));
            }
        }
        return back.toString();
    }
}
