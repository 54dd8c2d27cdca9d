package org.capwright.drawing.pdf;

/** A colour of the device, each part from 0 to 1. Lines of the pattern are dark, all that helps to put sheets together is pale. */
record Ink(double red, double green, double blue) {

    static final Ink BLACK = new Ink(0, 0, 0);
    static final Ink TEXT = new Ink(0.11, 0.13, 0.17);
    static final Ink QUIET = new Ink(0.40, 0.44, 0.50);
    static final Ink RULE = new Ink(0.80, 0.83, 0.87);
    static final Ink TINT = new Ink(0.94, 0.955, 0.97);
    static final Ink ACCENT = new Ink(0.14, 0.33, 0.47);
    /** Registration crosses, glue lines, sheet labels: pale enough to be told from the pattern. */
    static final Ink SHEET = new Ink(0.56, 0.72, 0.82);

    static final Ink WHITE = new Ink(1, 1, 1);
}
