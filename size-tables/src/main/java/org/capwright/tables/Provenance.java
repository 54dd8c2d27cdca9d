package org.capwright.tables;

/** Where one value of a table comes from. */
public enum Provenance {
    /** Printed in the source. */
    PUBLISHED,
    /** Follows from a step that the source prints. */
    STEP_RULE,
    /** Mean over the measured people of the very class. */
    MEASURED,
    /** Middle of the class limits: arithmetic, not printed. */
    CLASS_CENTRE,
    /** Read off a monotone curve between values of the table. */
    INTERPOLATED,
    /** Given by a user; nobody here has checked its source. */
    USER_SUPPLIED
}
