package org.capwright.pattern;

import org.capwright.words.Text;

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
    public Text words() {
        return Text.of(
                        switch (laying) {
                            case ON_FOLD -> "cut {count} on the fold";
                            case MIRRORED_PAIR -> "cut {count} (1 pair, mirrored)";
                            case FLAT -> "cut {count}";
                        })
                .with("count", count);
    }
}
