package org.capwright.draft;

/** How an under-sleeve is shaped at the elbow. */
public enum ElbowShaping {
    /** Not at all: both sides taper alike. */
    TAPERED
}
