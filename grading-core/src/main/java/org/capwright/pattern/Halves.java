package org.capwright.pattern;

/** How a piece is drawn whose left is the mirror image of its right. */
public enum Halves {
    /** As one half, laid on the fold of the cloth. */
    ON_FOLD,
    /** Whole, cut open: for a cutter, which knows no fold. */
    WHOLE
}
