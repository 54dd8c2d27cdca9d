package org.capwright.pattern;

/** What a line drawn inside a piece means. */
public enum MarkKind {
    /** Grain line: parallel to the selvedge. */
    GRAIN,
    /** Fold line of the piece, laid on the fold of the cloth. */
    FOLD_LINE,
    /** Line about which the piece is the same left and right; it may be folded there. */
    CENTRE_LINE,
    /** Bicep line. */
    BICEP_LINE,
    /** Elbow line. */
    ELBOW_LINE,
    /** Fold of a pleat: this line is brought to the placement line. */
    PLEAT_FOLD,
    /** Placement line of a pleat. */
    PLEAT_PLACEMENT,
    /** Leg of a dart. */
    DART_LEG,
    /** Points to the front or the back of a whole piece; its name says which. */
    HALF,
    /** A hole drilled or pricked through all layers, in the middle of the line. */
    DRILL_HOLE
}
