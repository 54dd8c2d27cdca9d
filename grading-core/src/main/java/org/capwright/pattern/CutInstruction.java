package org.capwright.pattern;

/**
 * How often and how a piece is cut for one pair of sleeves.
 *
 * @param count how many are cut
 * @param laying how the cloth lies
 */
public record CutInstruction(int count, Laying laying) {

    /** How a piece is laid on the cloth. */
    public enum Laying {
        /** The drawn half lies with its fold edge on the fold of the cloth. */
        ON_FOLD,
        /** Flat, half of them mirrored: a left and a right one. */
        MIRRORED_PAIR,
        /** Flat, all the same: the piece is its own mirror image. */
        FLAT
    }

    /**
     * The instruction in words.
     *
     * @return for example {@code cut 2 on the fold}
     */
    public String words() {
        return "cut " + count
                + switch (laying) {
                    case ON_FOLD -> " on the fold";
                    case MIRRORED_PAIR -> " (1 pair, mirrored)";
                    case FLAT -> "";
                };
    }
}
