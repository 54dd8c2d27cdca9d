package org.capwright.grade;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.capwright.draft.CapEase;
import org.capwright.draft.CapFit;
import org.capwright.draft.CapFitting;
import org.capwright.draft.SleeveDraft;
import org.capwright.measure.Dimension;
import org.capwright.measure.Dimensions;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Quantity;
import org.capwright.quantity.Violation;

/** Refuses a cap that no armhole of the length given takes, where bicep and cap height are both given. An ease that is asked for has the same bounds. */
final class CapBounds {

    private CapBounds() {}

    static void check(SizeRun run) {
        if (!(run.style().fit() instanceof CapFit.Given)) {
            return;
        }
        List<Violation> found = new ArrayList<>();
        for (int i = 0; i < run.sizes().size(); i++) {
            GradedSize size = run.sizes().get(i);
            SleeveDraft draft = size.draft();
            OptionalDouble ease = draft.capEase();
            if (ease.isEmpty()) {
                continue;
            }
            double share = ease.getAsDouble() / draft.dimensions().get(Dimension.ARMHOLE);
            if (share < CapEase.LEAST_SHARE || share > CapEase.GREATEST_SHARE) {
                Violation violation = armholeTooShort(draft.dimensions())
                        ? armhole(draft.dimensions(), ease.getAsDouble())
                        : violation(draft.dimensions(), share > 0);
                found.add(i == run.base() ? violation : violation.inSize(size.label()));
            }
        }
        if (!found.isEmpty()) {
            throw new InvalidMeasuresException(found);
        }
    }

    /** Even a cap without height, as long as the bicep line, would be more than a gathered one. */
    private static boolean armholeTooShort(Dimensions dimensions) {
        return dimensions.get(Dimension.BICEP) > dimensions.get(Dimension.ARMHOLE) * (1 + CapEase.GREATEST_SHARE);
    }

    /** The armholes that take this very cap line. */
    private static Violation armhole(Dimensions dimensions, double ease) {
        double armhole = dimensions.get(Dimension.ARMHOLE);
        return Violation.lengthOutside(
                Dimension.ARMHOLE,
                "far shorter than any cap line over this bicep, even that of a flat cap",
                armhole,
                (armhole + ease) / (1 + CapEase.GREATEST_SHARE),
                (armhole + ease) / (1 + CapEase.LEAST_SHARE));
    }

    private static Violation violation(Dimensions dimensions, boolean tooLong) {
        return new Violation(
                Dimension.CAP_HEIGHT,
                tooLong
                        ? "with this bicep the cap line is far longer than the armhole, more than a gathered cap can be"
                        : "with this bicep the cap line is far shorter than the armhole, so it cannot be set in",
                Quantity.LENGTH,
                OptionalDouble.of(dimensions.get(Dimension.CAP_HEIGHT)),
                height(dimensions, CapEase.LEAST_SHARE),
                height(dimensions, CapEase.GREATEST_SHARE));
    }

    /** The cap height at a bound of the ease, if there is one. */
    private static OptionalDouble height(Dimensions dimensions, double share) {
        return CapFitting.findCapHeight(dimensions, new CapEase.Share(share));
    }
}
