package org.capwright.check;

/** How grave a finding is. Ordered from the least to the gravest. */
public enum Severity {
    /** Worth knowing; nothing has to be done. */
    INFO,
    /** Look at it before cutting. */
    CAUTION,
    /** Do not cut until it is mended or the threshold is set otherwise on purpose. */
    STOP
}
