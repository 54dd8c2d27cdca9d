package org.capwright.grade;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleFunction;
import org.capwright.draft.OverlayStyle;
import org.capwright.draft.SleeveStyle;
import org.capwright.draft.pleat.FullnessTarget;
import org.capwright.draft.pleat.PleatPlan;
import org.capwright.draft.pleat.PleatSizing;
import org.capwright.measure.Dimension;
import org.capwright.measure.Dimensions;
import org.capwright.measure.SleeveSubject;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Quantity;
import org.capwright.quantity.Violation;

/** Finds pleats that can be laid where those asked for cannot: a number or a depth that was tried in every size of the run. */
final class WorkingPleats {

    /** Depths are tried in steps of a twentieth. */
    private static final double STEP = 0.95;

    private static final int DEPTHS = 80;

    /** Depths are named in tenths of a millimetre. */
    private static final double TENTHS = 10;

    /** Drafts a whole run; it may throw. */
    interface Drafting {
        SizeRun of(SleeveStyle style, Dimensions base);
    }

    private final SleeveStyle style;
    private final OverlayStyle overlay;
    private final PleatPlan plan;
    private final Dimensions base;
    private final Drafting drafting;

    private WorkingPleats(SleeveStyle style, OverlayStyle overlay, PleatPlan plan, Dimensions base, Drafting drafting) {
        this.style = style;
        this.overlay = overlay;
        this.plan = plan;
        this.base = base;
        this.drafting = drafting;
    }

    /** The refusal with what would work added, where pleats are all that is wrong. */
    static InvalidMeasuresException named(
            InvalidMeasuresException refused, SleeveStyle style, Dimensions base, Drafting drafting) {
        boolean pleatsOnly = refused.violations().stream().allMatch(v -> v.subject() == SleeveSubject.Option.PLEATS);
        Optional<PleatPlan> plan = style.overlay().flatMap(OverlayStyle::pleats);
        if (!pleatsOnly || plan.isEmpty()) {
            return refused;
        }
        Violation first = refused.violations().get(0);
        return new WorkingPleats(style, style.overlay().orElseThrow(), plan.get(), base, drafting)
                .instead(first.reason())
                .map(InvalidMeasuresException::new)
                .orElse(refused);
    }

    private Optional<Violation> instead(String reason) {
        Optional<FullnessTarget.Pleats> target =
                overlay.target().filter(FullnessTarget.Pleats.class::isInstance).map(FullnessTarget.Pleats.class::cast);
        if (target.isPresent()) {
            return shallower(reason, target.get().depth(), this::withTarget);
        }
        if (plan.sizing() instanceof PleatSizing.ByCount given) {
            return other(reason, given.count());
        }
        double depth = plan.sizing() instanceof PleatSizing.ByDepth given
                ? given.depth()
                : ((PleatSizing.ByGreatestDepth) plan.sizing()).depth();
        return shallower(reason, base.getOr(Dimension.PLEAT_DEPTH, depth), this::withDepth);
    }

    /** The next greater number that works, else the next smaller one. */
    private Optional<Violation> other(String reason, int count) {
        for (int more = count + 1; more <= PleatPlan.GREATEST_COUNT; more += 1 + more / 20) {
            if (works(withCount(more), base)) {
                return Optional.of(count(reason, count, OptionalDouble.of(more), OptionalDouble.empty()));
            }
        }
        for (int fewer = count - 1; fewer > 0; fewer--) {
            if (works(withCount(fewer), base)) {
                return Optional.of(count(reason, count, OptionalDouble.empty(), OptionalDouble.of(fewer)));
            }
        }
        return Optional.empty();
    }

    private static Violation count(String reason, int count, OptionalDouble least, OptionalDouble most) {
        return new Violation(
                SleeveSubject.Option.PLEAT_COUNT, reason, Quantity.COUNT, OptionalDouble.of(count), least, most);
    }

    private Optional<Violation> shallower(String reason, double depth, DoubleFunction<SleeveStyle> withDepth) {
        double tried = depth;
        for (int i = 0; i < DEPTHS; i++) {
            tried = Math.floor(tried * STEP * TENTHS) / TENTHS;
            if (tried < Dimension.PLEAT_DEPTH.least()) {
                break;
            }
            Dimensions dimensions = base.has(Dimension.PLEAT_DEPTH) ? base.with(Dimension.PLEAT_DEPTH, tried) : base;
            if (works(withDepth.apply(tried), dimensions)) {
                return Optional.of(Violation.lengthAbove(Dimension.PLEAT_DEPTH, reason, depth, tried));
            }
        }
        return Optional.empty();
    }

    private boolean works(SleeveStyle other, Dimensions dimensions) {
        try {
            drafting.of(other, dimensions);
            return true;
        } catch (InvalidMeasuresException e) {
            return false;
        }
    }

    private SleeveStyle withCount(int count) {
        return with(new PleatSizing.ByCount(count), overlay.target());
    }

    private SleeveStyle withDepth(double depth) {
        return with(
                plan.sizing() instanceof PleatSizing.ByDepth
                        ? new PleatSizing.ByDepth(depth)
                        : new PleatSizing.ByGreatestDepth(depth),
                overlay.target());
    }

    private SleeveStyle withTarget(double depth) {
        FullnessTarget.Pleats target = (FullnessTarget.Pleats) overlay.target().orElseThrow();
        return with(plan.sizing(), Optional.of(new FullnessTarget.Pleats(target.kind(), target.count(), depth)));
    }

    private SleeveStyle with(PleatSizing sizing, Optional<FullnessTarget> target) {
        PleatPlan other =
                new PleatPlan(plan.kind(), plan.direction(), sizing, plan.flatZoneFront(), plan.flatZoneBack());
        OverlayStyle pleated = new OverlayStyle(overlay.hem(), overlay.join(), Optional.of(other), target);
        return new SleeveStyle(style.fit(), Optional.of(pleated), style.underSleeve());
    }
}
