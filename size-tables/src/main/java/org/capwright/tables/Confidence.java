package org.capwright.tables;

/** How sure the transcription of a table is. */
public enum Confidence {
    /** Read in the source, or in a copy that was checked against a second one. */
    HIGH,
    /** Read in the source, with a small doubt named in the notes. */
    MEDIUM_HIGH,
    /** Read in somebody's quotation of the source, or with digits that had to be told apart. */
    MEDIUM,
    /** Given by a user; not judged here. */
    NOT_JUDGED
}
