package org.capwright;

import java.util.Optional;
import org.capwright.draft.pleat.FullnessTarget;
import org.capwright.draft.pleat.PleatDirection;
import org.capwright.draft.pleat.PleatKind;
import org.capwright.draft.pleat.PleatPlan;
import org.capwright.draft.pleat.PleatSizing;
import org.capwright.measure.Dimension;
import org.capwright.measure.SleeveSubject.Option;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Violation;

/**
 * The pleats of an overlay. Immutable: every call returns a new step. One of number, depth and greatest depth is given; number and depth together where the overlay has no
 * rise, which then follows. Knife pleats that lie away from the apex unless another kind or direction is asked for.
 */
public final class PleatStep {

    private static final PleatPlan USUAL =
            new PleatPlan(PleatKind.KNIFE, PleatDirection.AWAY_FROM_APEX, new PleatSizing.ByCount(1), 0, 0);

    private final Given given;
    private final PleatPlan plan;
    private final Optional<Integer> count;
    private final Optional<PleatSizing> depth;

    PleatStep(Given given) {
        this(given, USUAL, Optional.empty(), Optional.empty());
    }

    private PleatStep(Given given, PleatPlan plan, Optional<Integer> count, Optional<PleatSizing> depth) {
        this.given = given;
        this.plan = plan;
        this.count = count;
        this.depth = depth;
    }

    /**
     * A number of pleats.
     *
     * @param pleats over both halves, 1 to {@value PleatPlan#GREATEST_COUNT}; a box or inverted pleat counts once
     * @return the next step
     */
    public PleatStep count(int pleats) {
        return new PleatStep(given, plan, Optional.of(pleats), depth);
    }

    /**
     * A depth; the whole number of pleats is taken whose depth comes nearest.
     *
     * @param value in the unit of the style, 1 mm to 300 mm
     * @return the next step
     */
    public PleatStep depth(double value) {
        Given deep = given.with(Dimension.PLEAT_DEPTH, value);
        return new PleatStep(
                deep,
                plan,
                count,
                Optional.of(new PleatSizing.ByDepth(deep.dimensions().get(Dimension.PLEAT_DEPTH))));
    }

    /**
     * A greatest depth; the fewest pleats are taken of which none is deeper.
     *
     * @param value in the unit of the style, 1 mm to 300 mm
     * @return the next step
     */
    public PleatStep greatestDepth(double value) {
        Given deep = given.with(Dimension.PLEAT_DEPTH, value);
        return new PleatStep(
                deep,
                plan,
                count,
                Optional.of(new PleatSizing.ByGreatestDepth(deep.dimensions().get(Dimension.PLEAT_DEPTH))));
    }

    private PleatStep lying(PleatKind kind, PleatDirection direction) {
        PleatPlan lying = new PleatPlan(kind, direction, plan.sizing(), plan.flatZoneFront(), plan.flatZoneBack());
        return new PleatStep(given, lying, count, depth);
    }

    /**
     * Knife pleats whose folds point to the front underarm.
     *
     * @return the next step
     */
    public PleatStep knifeTowardFront() {
        return lying(PleatKind.KNIFE, PleatDirection.TOWARD_FRONT);
    }

    /**
     * Knife pleats whose folds point to the back underarm.
     *
     * @return the next step
     */
    public PleatStep knifeTowardBack() {
        return lying(PleatKind.KNIFE, PleatDirection.TOWARD_BACK);
    }

    /**
     * Knife pleats whose folds point to the apex in both halves.
     *
     * @return the next step
     */
    public PleatStep knifeTowardApex() {
        return lying(PleatKind.KNIFE, PleatDirection.TOWARD_APEX);
    }

    /**
     * Knife pleats whose folds point away from the apex in both halves.
     *
     * @return the next step
     */
    public PleatStep knifeAwayFromApex() {
        return lying(PleatKind.KNIFE, PleatDirection.AWAY_FROM_APEX);
    }

    /**
     * Box pleats.
     *
     * @return the next step
     */
    public PleatStep box() {
        return lying(PleatKind.BOX, PleatDirection.AWAY_FROM_APEX);
    }

    /**
     * Inverted pleats.
     *
     * @return the next step
     */
    public PleatStep inverted() {
        return lying(PleatKind.INVERTED, PleatDirection.AWAY_FROM_APEX);
    }

    /**
     * Finished seam without folds at both ends.
     *
     * @param front at the front end, in the unit of the style, 0 or more
     * @param back at the back end, in the unit of the style, 0 or more
     * @return the next step
     */
    public PleatStep flatZone(double front, double back) {
        PleatPlan zoned = new PleatPlan(
                plan.kind(),
                plan.direction(),
                plan.sizing(),
                given.length(Option.FLAT_ZONE_FRONT, front),
                given.length(Option.FLAT_ZONE_BACK, back));
        return new PleatStep(given, zoned, count, depth);
    }

    Given given() {
        return given;
    }

    PleatPlan plan() {
        PleatSizing sizing = count.<PleatSizing>map(PleatSizing.ByCount::new)
                .or(() -> depth)
                .orElseThrow(() -> new InvalidMeasuresException(Violation.of(
                        Option.PLEAT_COUNT, "is missing; give exactly one of count, depth, greatestDepth")));
        if (count.isPresent() && depth.isPresent() && (given.dimensions().has(Dimension.RISE) || !byDepth())) {
            throw new InvalidMeasuresException(Violation.of(
                    Option.PLEAT_COUNT,
                    "contradicts the depth; give exactly one of them, or leave out the rise, which then follows"));
        }
        return new PleatPlan(plan.kind(), plan.direction(), sizing, plan.flatZoneFront(), plan.flatZoneBack());
    }

    private boolean byDepth() {
        return depth.filter(PleatSizing.ByDepth.class::isInstance).isPresent();
    }

    /** What the top edge is to be long enough for, where number and depth are both given. */
    Optional<FullnessTarget> target() {
        return count.filter(any -> byDepth())
                .map(pleats -> new FullnessTarget.Pleats(
                        plan.kind(), pleats, given.dimensions().get(Dimension.PLEAT_DEPTH)));
    }
}
