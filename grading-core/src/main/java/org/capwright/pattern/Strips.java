package org.capwright.pattern;

/** Whether the strips that a sleeve is finished with are drawn as pieces. */
public enum Strips {
    /** The sewing order tells how long they are cut. */
    IN_WORDS,
    /** Pieces: a stay for the closed top edge of an overlay, a stay for the head of a sleeve, a bias strip for the armhole. */
    AS_PIECES
}
