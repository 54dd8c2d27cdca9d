package org.capwright.tables;

/** Whether a table measures people or clothes. */
public enum TableKind {
    /** Measurements of the body. */
    BODY,
    /** Finished measurements of a garment; its body dimension, if any, says for whom the size is made. */
    GARMENT
}
