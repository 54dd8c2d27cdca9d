package org.capwright.tables;

/** What the figures of a table are. */
public enum Statistic {
    /** A figure that a standard lays down for a size. */
    STANDARD_FIGURE,
    /** The mean over the people of a survey who fall in the class. */
    CLASS_MEAN,
    /** Limits of a class; the value is the middle of the limits. */
    INTERVAL
}
