package org.capwright.pattern;

/** What an edge of a piece becomes in the garment; it decides the seam allowance. */
public enum EdgeKind {
    /** Sewn into the armhole: the cap of a sleeve. */
    ARMHOLE,
    /** The pleated top edge of an overlay, sewn to a part of the armhole. */
    ATTACHED_EDGE,
    /** Joined to another edge of the same piece. */
    SIDE_SEAM,
    /** Turned up or faced at the lower end. */
    HEM,
    /** Lies on the fold of the cloth: no seam, no allowance. */
    FOLD
}
