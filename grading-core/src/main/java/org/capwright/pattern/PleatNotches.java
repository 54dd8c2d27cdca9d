package org.capwright.pattern;

/** Whether the cut edge is snipped where the lines of pleats meet it. */
public enum PleatNotches {
    /** A snip at every fold and placement line. */
    CUT_EDGE,
    /** None: the lines inside are marked alone. */
    NONE
}
