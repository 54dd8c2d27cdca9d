package org.capwright.pattern;

/** What a piece is cut from. */
public enum Material {
    /** The main cloth. */
    MAIN,
    /** The lining. */
    LINING,
    /** The interfacing. */
    INTERFACING
}
