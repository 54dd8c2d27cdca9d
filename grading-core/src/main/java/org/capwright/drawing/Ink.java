package org.capwright.drawing;

/**
 * A colour, each part from 0 to 1. Lines of the pattern are dark, all that helps to put sheets together is pale.
 *
 * @param red 0 to 1
 * @param green 0 to 1
 * @param blue 0 to 1
 */
public record Ink(double red, double green, double blue) {

    /** Lines of the pattern. */
    public static final Ink BLACK = new Ink(0, 0, 0);

    /** Paper. */
    public static final Ink WHITE = new Ink(1, 1, 1);

    /** Words. */
    public static final Ink TEXT = new Ink(0.11, 0.13, 0.17);

    /** Words and lines of less weight. */
    public static final Ink QUIET = new Ink(0.40, 0.44, 0.50);

    /** Rules between the lines of a table. */
    public static final Ink RULE = new Ink(0.80, 0.83, 0.87);

    /** The ground of what is to be seen. */
    public static final Ink TINT = new Ink(0.94, 0.955, 0.97);

    /** Headings. */
    public static final Ink ACCENT = new Ink(0.14, 0.33, 0.47);

    /** Registration crosses, glue lines, sheet labels: pale enough to be told from the pattern. */
    public static final Ink SHEET = new Ink(0.56, 0.72, 0.82);

    /**
     * A grey.
     *
     * @param light 0 for black to 1 for white
     * @return the grey
     */
    public static Ink grey(double light) {
        return new Ink(light, light, light);
    }

    /**
     * A darker colour.
     *
     * @param share what is left of its light, 0 to 1
     * @return the colour
     */
    public Ink times(double share) {
        return new Ink(red * share, green * share, blue * share);
    }
}
