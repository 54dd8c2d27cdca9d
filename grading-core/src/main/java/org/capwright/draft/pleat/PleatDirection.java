package org.capwright.draft.pleat;

/** Which way the folds of knife pleats are pressed: the way the visible folded edge points. */
public enum PleatDirection {
    /** All folds point to the front underarm. */
    TOWARD_FRONT,
    /** All folds point to the back underarm. */
    TOWARD_BACK,
    /** The folds of both halves point to the apex. */
    TOWARD_APEX,
    /** The folds of both halves point away from the apex. */
    AWAY_FROM_APEX
}
