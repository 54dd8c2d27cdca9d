package org.capwright.draft.pleat;

/** The way one fold lies: from its fold line to its placement line. */
public enum Lie {
    /** The placement line is nearer to the front end than the fold line; the under-layers lie on the back side of the fold. */
    TO_FRONT,
    /** The placement line is nearer to the back end than the fold line; the under-layers lie on the front side of the fold. */
    TO_BACK
}
