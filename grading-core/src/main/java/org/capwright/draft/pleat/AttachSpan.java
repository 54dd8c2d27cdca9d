package org.capwright.draft.pleat;

import java.util.ArrayList;
import java.util.List;
import org.capwright.measure.Dimension;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Subject;
import org.capwright.quantity.Violation;

/**
 * The part of the armhole that the overlay is sewn to: from a gap above the underarm point in front, over the shoulder point, to a gap behind.
 *
 * @param armholeFront armhole from the underarm point over the front to the shoulder point, mm
 * @param armholeBack armhole from the shoulder point over the back to the underarm point, mm
 * @param frontGap armhole left uncovered in front, mm, from 0 to 1 mm less than {@code armholeFront}
 * @param backGap armhole left uncovered behind, mm, from 0 to 1 mm less than {@code armholeBack}
 */
public record AttachSpan(double armholeFront, double armholeBack, double frontGap, double backGap) {

    /** Less than this on either side of the shoulder point is no seam, mm. */
    private static final double LEAST_HALF = 1;

    /**
     * Checks that each half keeps a span.
     *
     * @param armholeFront armhole over the front, mm
     * @param armholeBack armhole over the back, mm
     * @param frontGap left uncovered in front, mm
     * @param backGap left uncovered behind, mm
     * @throws InvalidMeasuresException naming each gap that leaves nothing to sew to
     */
    public AttachSpan {
        List<Violation> wrong = new ArrayList<>();
        check(wrong, Dimension.FRONT_GAP, frontGap, armholeFront);
        check(wrong, Dimension.BACK_GAP, backGap, armholeBack);
        if (!wrong.isEmpty()) {
            throw new InvalidMeasuresException(wrong);
        }
    }

    private static void check(List<Violation> wrong, Subject subject, double gap, double half) {
        if (!(half > LEAST_HALF && half < Double.POSITIVE_INFINITY)) {
            wrong.add(Violation.lengthBelow(
                    Dimension.ARMHOLE, "each half of the armhole needs a length", half, LEAST_HALF));
        } else if (!(gap >= 0 && gap <= half - LEAST_HALF)) {
            wrong.add(Violation.lengthOutside(
                    subject, "the gap must leave some of its half of the armhole", gap, 0, half - LEAST_HALF));
        }
    }

    /**
     * The finished seam in front of the shoulder point.
     *
     * @return millimetres, 1 or more
     */
    public double front() {
        return armholeFront - frontGap;
    }

    /**
     * The finished seam behind the shoulder point.
     *
     * @return millimetres, 1 or more
     */
    public double back() {
        return armholeBack - backGap;
    }

    /**
     * The whole finished seam: armhole less both gaps.
     *
     * @return millimetres
     */
    public double length() {
        return front() + back();
    }
}
