package org.capwright.pattern;

/** Whether the inner ends of pleats and darts are marked by holes. */
public enum DrillHoles {
    /** None. */
    NONE,
    /** A hole short of the inner end of every pleat line and of the point of a dart. */
    PLEATS_AND_DARTS
}
