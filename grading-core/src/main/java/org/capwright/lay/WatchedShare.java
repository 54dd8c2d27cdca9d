package org.capwright.lay;

import java.util.concurrent.CancellationException;

/** A share of a search, of which its watch is told how far it is. Each thread has its own. */
final class WatchedShare {

    private final LayWatch watch;
    private final double whole;
    private double told;

    /**
     * A share.
     *
     * @param watch is told
     * @param whole how much of all that is watched this is, 0 to 1
     */
    WatchedShare(LayWatch watch, double whole) {
        this.watch = watch;
        this.whole = whole;
    }

    /** One of several equal parts. */
    WatchedShare part(int parts) {
        return new WatchedShare(watch, whole / parts);
    }

    /**
     * Tells how far this share is.
     *
     * @param done of it, 0 to 1; more counts as 1
     * @throws CancellationException if the search is given up
     */
    void isAt(double done) {
        double now = Math.min(1, done);
        double more = Math.max(0, now - told);
        told += more;
        if (!watch.goesOn(whole * more)) {
            throw new CancellationException("nobody waits for the lay any more");
        }
    }
}
