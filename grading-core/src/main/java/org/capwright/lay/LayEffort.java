package org.capwright.lay;

/**
 * How long good lays are looked for. Work is counted, not timed, so that the same request always gives the same lays. Guaranteed to be immutable.
 *
 * <p>A request may need many lays, one per size and cloth: they share what the effort allows in all, each up to what one lay is worth.
 */
public enum LayEffort {
    /** A first look: about a second of one processor in all, however many lays. */
    QUICK(40_000, 15_000_000),
    /** The usual: at most about ten seconds of one processor in all. */
    USUAL(400_000, 120_000_000),
    /** For cloth that is dear: ten times the usual. */
    THOROUGH(4_000_000, 1_200_000_000);

    private final long mostForOne;
    private final long mostInAll;

    LayEffort(long mostForOne, long mostInAll) {
        this.mostForOne = mostForOne;
        this.mostInAll = mostInAll;
    }

    /** How many no-fit regions one search may look up, whatever else there is to do. */
    long mostForOne() {
        return mostForOne;
    }

    /** How many no-fit regions all lays of a request may look up together. */
    long mostInAll() {
        return mostInAll;
    }
}
