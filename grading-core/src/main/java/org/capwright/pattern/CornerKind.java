package org.capwright.pattern;

/** How the cut line turns a corner where two edges with allowance meet. */
public enum CornerKind {
    /** Both cut lines run on until they meet; a corner sharper than the mitre limit is cut off square to its bisector. */
    MITRED,
    /** Each allowance ends square to its seam at the corner; a straight line joins the two ends. A sharp corner is cut off square to its bisector, half the narrower allowance from the corner. */
    BEVELLED,
    /** Each cut line runs on past the corner by the width of its neighbour's allowance at most; a straight line joins the two ends. */
    SQUARED
}
