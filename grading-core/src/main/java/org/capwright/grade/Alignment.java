package org.capwright.grade;

import org.capwright.draft.SleeveDraft;
import org.capwright.geometry.Point;

/** The point on which the sizes of a nest lie over one another. */
public enum Alignment {
    /** The apex of the cap. */
    APEX,
    /** The back underarm point. */
    UNDERARM,
    /** Where the fold line meets the bicep line. */
    FOLD_AND_BICEP_LINE;

    /**
     * Where the point lies in a draft.
     *
     * @param draft one size
     * @return the point in the coordinates of the draft
     */
    public Point of(SleeveDraft draft) {
        return switch (this) {
            case APEX -> new Point(0, draft.base().capHeight());
            case UNDERARM -> draft.base().back().curve().end();
            case FOLD_AND_BICEP_LINE -> Point.ORIGIN;
        };
    }
}
