package org.capwright.lay;

/** Watches a search for lays: is told how far it is, and may give it up. Every thread that searches calls it, often, so it must be safe for threads and must not wait. */
@FunctionalInterface
public interface LayWatch {

    /** Lets a search go on to its end. */
    LayWatch UNWATCHED = more -> true;

    /**
     * Is told before every lay that is tried, and where a search ends early.
     *
     * @param more how much was done since it was told last, as a share of the whole; all shares add up to 1
     * @return whether to go on; if not, the search ends with a {@link java.util.concurrent.CancellationException}
     */
    boolean goesOn(double more);
}
