package org.capwright.quantity;

/** What kind of number a value is, so that the boundary can show it in the caller's unit. */
public enum Quantity {
    /** A length in millimetres. */
    LENGTH,
    /** A whole number. */
    COUNT,
    /** A ratio of two lengths, or a fraction. */
    RATIO,
    /** Neither, or no number at all. */
    OTHER
}
