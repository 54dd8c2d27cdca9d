package org.capwright.draft;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.capwright.geometry.Curve;
import org.capwright.measure.Dimension;
import org.capwright.measure.Dimensions;
import org.capwright.measure.InvalidMeasuresException;
import org.capwright.measure.Quantity;
import org.capwright.measure.Violation;

/**
 * The raised overlay over a base sleeve, both halves. Guaranteed to be immutable.
 *
 * @param front front half
 * @param back back half; the same object as {@code front} where the halves are equal
 * @param frontSpan part of the armhole that the front half covers, from the shoulder point to the front end, mm
 * @param backSpan part of the armhole that the back half covers, mm
 */
public record Overlay(OverlayHalf front, OverlayHalf back, double frontSpan, double backSpan) {

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
        double frontArmhole = frontArmhole(dimensions);
        double backArmhole = dimensions.get(Dimension.ARMHOLE) - frontArmhole;
        List<Violation> found = new ArrayList<>();
        double turn = Math.max(under.front().turn(), under.back().turn());
        if (!(style.join() >= turn / RaisedLine.LATEST_TURN && style.join() <= 1)) {
            found.add(new Violation(
                    "/overlay/join",
                    "the raised line must join the cap line well below where it turns hollow",
                    Quantity.RATIO,
                    OptionalDouble.of(style.join()),
                    OptionalDouble.of(turn / RaisedLine.LATEST_TURN),
                    OptionalDouble.of(1)));
        }
        if (length < capHeight + Math.max(0, sideDepth)) {
            found.add(Violation.lengthBelow(
                    Dimension.OVERLAY_LENGTH.pointer(),
                    "the hem point must lie below the bicep line and no higher than the side of the hem",
                    length,
                    capHeight + Math.max(0, sideDepth)));
        }
        addGap(found, Dimension.FRONT_GAP, dimensions.get(Dimension.FRONT_GAP), frontArmhole);
        addGap(found, Dimension.BACK_GAP, dimensions.get(Dimension.BACK_GAP), backArmhole);
        double sagitta = dimensions.getOr(Dimension.HEM_SAGITTA, 0);
        double chord = Math.hypot(Math.min(base.front().width(), base.back().width()) + extra, -hemPointY - sideDepth);
        if (Math.abs(sagitta) > 0.4 * chord) {
            found.add(Violation.lengthOutside(
                    Dimension.HEM_SAGITTA.pointer(),
                    "bowed further than four tenths of the hem",
                    sagitta,
                    -0.4 * chord,
                    0.4 * chord));
        }
        if (!found.isEmpty()) {
            throw new InvalidMeasuresException(found);
        }
        double rise = dimensions.get(Dimension.RISE);
        OverlayHalf front =
                OverlayHalf.draft(under.front(), rise, style.join(), style.hem(), hemPointY, sideDepth, sagitta);
        OverlayHalf back = under.symmetrical()
                ? front
                : OverlayHalf.draft(under.back(), rise, style.join(), style.hem(), hemPointY, sideDepth, sagitta);
        return new Overlay(
                front,
                back,
                frontArmhole - dimensions.get(Dimension.FRONT_GAP),
                backArmhole - dimensions.get(Dimension.BACK_GAP));
    }

    private static void addGap(List<Violation> found, Dimension gap, double value, double armhole) {
        if (value > armhole - Dimension.FRONT_WIDTH.least()) {
            found.add(Violation.lengthAbove(
                    gap.pointer(),
                    "the gap leaves no armhole for the overlay on this side",
                    value,
                    Math.max(0, armhole - Dimension.FRONT_WIDTH.least())));
        }
    }

    private static double sideDepth(Dimensions dimensions, HemShape hem, double levelDepth) {
        if (hem != HemShape.LEVEL) {
            return dimensions.getOr(Dimension.SIDE_DEPTH, 0);
        }
        double given = dimensions.getOr(Dimension.SIDE_DEPTH, levelDepth);
        if (Math.abs(given - levelDepth) > 0.01) {
            throw new InvalidMeasuresException(Violation.lengthOutside(
                    Dimension.SIDE_DEPTH.pointer(),
                    "a level hem lies as deep at the side as on the fold: overlay length less cap height",
                    given,
                    levelDepth,
                    levelDepth));
        }
        return levelDepth;
    }

    static double frontArmhole(Dimensions dimensions) {
        return dimensions.getOr(Dimension.FRONT_ARMHOLE, dimensions.get(Dimension.ARMHOLE) / 2);
    }

    /**
     * Whether front and back are the same, so that the piece can be cut on the fold.
     *
     * @return true for equal halves that cover equal spans
     */
    public boolean symmetrical() {
        return front == back && frontSpan == backSpan;
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
        return frontSpan + backSpan;
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
