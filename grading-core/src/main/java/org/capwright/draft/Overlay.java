package org.capwright.draft;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.capwright.draft.pleat.AttachSpan;
import org.capwright.draft.pleat.FullnessTarget;
import org.capwright.draft.pleat.LaidPleats;
import org.capwright.draft.pleat.PleatLayout;
import org.capwright.draft.pleat.PleatPlan;
import org.capwright.draft.pleat.PleatSizing;
import org.capwright.draft.pleat.TargetFullness;
import org.capwright.draft.pleat.TruedEdge;
import org.capwright.geometry.Curve;
import org.capwright.measure.Dimension;
import org.capwright.measure.Dimensions;
import org.capwright.measure.SleeveSubject.Option;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Quantity;
import org.capwright.quantity.Violation;

/**
 * The raised overlay over a base sleeve, both halves. Guaranteed to be immutable.
 *
 * @param front front half
 * @param back back half; the same object as {@code front} where the halves are equal
 * @param attached the part of the armhole that it covers
 * @param pleats how its top edge is folded; nothing where it is not pleated
 * @param trued the top edge as it is cut for its pleats, and as folded; nothing where it has no folds
 */
public record Overlay(
        OverlayHalf front,
        OverlayHalf back,
        AttachSpan attached,
        Optional<PleatLayout> pleats,
        Optional<TruedEdge> trued) {

    /** How far a pleat line is drawn into the piece where there is room, mm. Common practice, no source. */
    private static final double DRAWN = 40;

    /**
     * Drafts the overlay over a base sleeve.
     *
     * @param base the base sleeve of the same dimensions
     * @param dimensions with rise, overlay length, armhole and gaps; extra width, side depth and sagitta where the style has them
     * @param style hem and join
     * @return the overlay
     * @throws InvalidMeasuresException if the measures contradict each other, with the ranges that would work
     */
    public static Overlay draft(BaseSleeve base, Dimensions dimensions, OverlayStyle style) {
        double capHeight = base.capHeight();
        double length = dimensions.get(Dimension.OVERLAY_LENGTH);
        double extra = dimensions.getOr(Dimension.EXTRA_WIDTH, 0);
        double hemPointY = capHeight - length;
        BaseSleeve under = extra == 0 ? base : BaseSleeve.draft(dimensions, capHeight, extra);
        double sideDepth = sideDepth(dimensions, style.hem(), -hemPointY);
        List<Violation> found = new ArrayList<>();
        double turn = Math.max(under.front().turn(), under.back().turn());
        if (!(style.join() >= turn / RaisedLine.LATEST_TURN && style.join() <= 1)) {
            found.add(Violation.outside(
                    Option.JOIN,
                    "the raised line must join the cap line well below where it turns hollow",
                    Quantity.RATIO,
                    style.join(),
                    turn / RaisedLine.LATEST_TURN,
                    1));
        }
        if (length < capHeight + Math.max(0, sideDepth)) {
            found.add(Violation.lengthBelow(
                    Dimension.OVERLAY_LENGTH,
                    "the hem point must lie below the bicep line and no higher than the side of the hem",
                    length,
                    capHeight + Math.max(0, sideDepth)));
        }
        double sagitta = dimensions.getOr(Dimension.HEM_SAGITTA, 0);
        double chord = Math.hypot(Math.min(base.front().width(), base.back().width()) + extra, -hemPointY - sideDepth);
        if (Math.abs(sagitta) > 0.4 * chord) {
            found.add(Violation.lengthOutside(
                    Dimension.HEM_SAGITTA,
                    "bowed further than four tenths of the hem",
                    sagitta,
                    -0.4 * chord,
                    0.4 * chord));
        }
        AttachSpan attached = attachSpan(dimensions, found);
        double rise = dimensions.get(Dimension.RISE);
        OverlayHalf front =
                OverlayHalf.draft(under.front(), rise, style.join(), style.hem(), hemPointY, sideDepth, sagitta);
        OverlayHalf back = under.symmetrical()
                ? front
                : OverlayHalf.draft(under.back(), rise, style.join(), style.hem(), hemPointY, sideDepth, sagitta);
        return pleated(style, dimensions, attached, front, back);
    }

    private static Overlay pleated(
            OverlayStyle style, Dimensions dimensions, AttachSpan span, OverlayHalf front, OverlayHalf back) {
        Optional<PleatLayout> asked = pleats(style, dimensions, span, front, back);
        if (asked.isEmpty() || asked.get().folds().isEmpty()) {
            return new Overlay(front, back, span, asked, Optional.empty());
        }
        Curve flat = BaseSleeve.whole(front.topEdge(), back.topEdge());
        PleatPlan plan = graded(style.pleats().orElseThrow(), dimensions);
        LaidPleats laid = LaidPleats.of(plan, asked.get(), span, flat, DRAWN);
        return new Overlay(front, back, span, Optional.of(laid.layout()), Optional.of(laid.trued()));
    }

    /** The span, or everything that is wrong so far and with the gaps, at once. */
    private static AttachSpan attachSpan(Dimensions dimensions, List<Violation> found) {
        double frontArmhole = frontArmhole(dimensions);
        try {
            AttachSpan span = new AttachSpan(
                    frontArmhole,
                    dimensions.get(Dimension.ARMHOLE) - frontArmhole,
                    dimensions.get(Dimension.FRONT_GAP),
                    dimensions.get(Dimension.BACK_GAP));
            if (found.isEmpty()) {
                return span;
            }
        } catch (InvalidMeasuresException e) {
            found.addAll(e.violations());
        }
        throw new InvalidMeasuresException(found);
    }

    private static Optional<PleatLayout> pleats(
            OverlayStyle style, Dimensions dimensions, AttachSpan span, OverlayHalf front, OverlayHalf back) {
        double frontEdge = front.topEdge().length();
        double backEdge = back.topEdge().length();
        if (style.pleats().isPresent()) {
            return Optional.of(graded(style.pleats().get(), dimensions).layOut(span, frontEdge, backEdge));
        }
        if (frontEdge + backEdge < span.length()) {
            throw new InvalidMeasuresException(Violation.lengthAbove(
                    Dimension.ARMHOLE,
                    "the top edge of the overlay is shorter than the part of the armhole it covers",
                    dimensions.get(Dimension.ARMHOLE),
                    dimensions.get(Dimension.ARMHOLE) - span.length() + frontEdge + backEdge));
        }
        return Optional.empty();
    }

    /** A plan given by depth takes the depth of this size, which may be graded. */
    private static PleatPlan graded(PleatPlan plan, Dimensions dimensions) {
        OptionalDouble depth = dimensions.find(Dimension.PLEAT_DEPTH);
        if (depth.isEmpty() || plan.sizing() instanceof PleatSizing.ByCount) {
            return plan;
        }
        PleatSizing sizing = plan.sizing() instanceof PleatSizing.ByDepth
                ? new PleatSizing.ByDepth(depth.getAsDouble())
                : new PleatSizing.ByGreatestDepth(depth.getAsDouble());
        return new PleatPlan(plan.kind(), plan.direction(), sizing, plan.flatZoneFront(), plan.flatZoneBack());
    }

    /** A target of pleats takes the depth of this size, which may be graded. */
    private static FullnessTarget graded(FullnessTarget target, Dimensions dimensions) {
        OptionalDouble depth = dimensions.find(Dimension.PLEAT_DEPTH);
        return target instanceof FullnessTarget.Pleats pleats && depth.isPresent()
                ? new FullnessTarget.Pleats(pleats.kind(), pleats.count(), depth.getAsDouble())
                : target;
    }

    /**
     * The dimensions with the rise that the target of the style asks for.
     *
     * @param base the base sleeve of the same dimensions
     * @param dimensions with armhole and gaps
     * @param style with or without a target
     * @return the dimensions; unchanged where the rise is given
     * @throws InvalidMeasuresException if no rise meets the target, with the targets that can be met
     */
    static Dimensions withRise(BaseSleeve base, Dimensions dimensions, OverlayStyle style) {
        if (style.target().isEmpty()) {
            return dimensions;
        }
        double extra = dimensions.getOr(Dimension.EXTRA_WIDTH, 0);
        BaseSleeve under = extra == 0 ? base : BaseSleeve.draft(dimensions, base.capHeight(), extra);
        double turn = Math.max(under.front().turn(), under.back().turn());
        double join = Math.max(
                style.join(), turn / RaisedLine.LATEST_TURN); // a join that is too high is reported by the draft
        double rise = TargetFullness.rise(
                graded(style.target().get(), dimensions),
                attachSpan(dimensions, new ArrayList<>()).length(),
                r -> RaisedLine.over(under.front(), r, join).length()
                        + RaisedLine.over(under.back(), r, join).length(),
                Dimension.RISE.least(),
                Dimension.RISE.greatest());
        return dimensions.with(Dimension.RISE, rise);
    }

    private static double sideDepth(Dimensions dimensions, HemShape hem, double levelDepth) {
        if (hem != HemShape.LEVEL) {
            return dimensions.getOr(Dimension.SIDE_DEPTH, 0);
        }
        double given = dimensions.getOr(Dimension.SIDE_DEPTH, levelDepth);
        if (Math.abs(given - levelDepth) > 0.01) {
            throw new InvalidMeasuresException(Violation.lengthOutside(
                    Dimension.SIDE_DEPTH,
                    "a level hem lies as deep at the side as on the fold: overlay length less cap height",
                    given,
                    levelDepth,
                    levelDepth));
        }
        return levelDepth;
    }

    /**
     * The front half of the armhole.
     *
     * @param dimensions with an armhole
     * @return its length from shoulder point to underarm point, mm: as given, else half of the armhole
     */
    public static double frontArmhole(Dimensions dimensions) {
        return dimensions.getOr(Dimension.FRONT_ARMHOLE, dimensions.get(Dimension.ARMHOLE) / 2);
    }

    /**
     * Whether front and back are the same, so that the piece can be cut on the fold.
     *
     * @return true for equal halves that cover equal spans; pleats may still lie one way
     */
    public boolean symmetrical() {
        return front == back && attached.front() == attached.back();
    }

    /**
     * The whole top edge, which is pleated and sewn to the armhole.
     *
     * @return from the front underarm point over the raised apex to the back underarm point
     */
    public Curve topEdge() {
        return BaseSleeve.whole(front.topEdge(), back.topEdge());
    }

    /**
     * The length of the flat top edge, E.
     *
     * @return millimetres
     */
    public double edgeLength() {
        return front.topEdge().length() + back.topEdge().length();
    }

    /**
     * The length of the armhole that the overlay covers, S.
     *
     * @return millimetres
     */
    public double attachSpan() {
        return attached.length();
    }

    /**
     * What the pleats must take up, T = E - S.
     *
     * @return millimetres; negative where the edge is too short for the span
     */
    public double takeUp() {
        return edgeLength() - attachSpan();
    }

    /**
     * The fullness ratio E / S.
     *
     * @return 1 for an overlay without pleats
     */
    public double fullness() {
        return edgeLength() / attachSpan();
    }
}
