package org.capwright.drawing;

/**
 * How words are set. Immutable.
 *
 * @param face the typeface
 * @param size font size, mm
 * @param ink their colour
 */
public record Letters(Typeface face, double size, Ink ink) {

    /**
     * Letters of usual weight.
     *
     * @param size font size, mm
     * @param ink their colour
     * @return the letters
     */
    public static Letters regular(double size, Ink ink) {
        return new Letters(Typeface.REGULAR, size, ink);
    }

    /**
     * Bold letters.
     *
     * @param size font size, mm
     * @param ink their colour
     * @return the letters
     */
    public static Letters bold(double size, Ink ink) {
        return new Letters(Typeface.BOLD, size, ink);
    }

    /**
     * How wide words are.
     *
     * @param words a line of text
     * @return mm
     */
    public double width(String words) {
        return face.width(words, size);
    }

    /**
     * The greatest letters, at most these, in which words are no wider than asked.
     *
     * @param words a line of text
     * @param width mm
     * @return the letters
     */
    public Letters within(String words, double width) {
        double natural = width(words);
        return natural <= width ? this : new Letters(face, size * width / natural, ink);
    }
}
