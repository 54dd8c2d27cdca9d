package org.capwright.draft.pleat;

import java.util.ArrayList;
import java.util.List;
import org.capwright.measure.Dimension;
import org.capwright.measure.SleeveSubject.Option;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Quantity;
import org.capwright.quantity.Subject;
import org.capwright.quantity.Violation;

/** Works out one layout: shares the pleats among the halves and sets the folds along the seam. */
final class PleatPlacing {

    /** A surplus of edge less than this, in mm, is none. */
    private static final double NOTHING = 1e-7;

    /** Shares nearer than this are equally near, whatever their last bits say; so equal halves are shared equally. */
    private static final double TIE = 1e-9;

    private final PleatPlan plan;
    private final AttachSpan span;
    private final double edgeFront;
    private final double edgeBack;
    private final double takeUpFront;
    private final double takeUpBack;
    private final List<PleatFold> folds = new ArrayList<>();
    private double taken;

    PleatPlacing(PleatPlan plan, AttachSpan span, double edgeFront, double edgeBack) {
        this.plan = plan;
        this.span = span;
        this.edgeFront = edgeFront;
        this.edgeBack = edgeBack;
        takeUpFront = surplus(edgeFront - span.front());
        takeUpBack = surplus(edgeBack - span.back());
        check();
    }

    private static double surplus(double difference) {
        return Math.abs(difference) <= NOTHING ? 0 : difference;
    }

    private void check() {
        List<Violation> wrong = new ArrayList<>();
        checkEdge(wrong, Dimension.FRONT_GAP, span.frontGap(), takeUpFront);
        checkEdge(wrong, Dimension.BACK_GAP, span.backGap(), takeUpBack);
        checkZone(wrong, Option.FLAT_ZONE_FRONT, plan.flatZoneFront(), span.front());
        checkZone(wrong, Option.FLAT_ZONE_BACK, plan.flatZoneBack(), span.back());
        if (plan.sizing() instanceof PleatSizing.ByCount given) {
            checkCount(wrong, given.count());
        }
        if (!wrong.isEmpty()) {
            throw new InvalidMeasuresException(wrong);
        }
    }

    static void requireCount(int count) {
        List<Violation> wrong = new ArrayList<>();
        checkCount(wrong, count);
        if (!wrong.isEmpty()) {
            throw new InvalidMeasuresException(wrong);
        }
    }

    private static void checkCount(List<Violation> wrong, int count) {
        if (count < 1 || count > PleatPlan.GREATEST_COUNT) {
            wrong.add(Violation.outside(
                    Option.PLEAT_COUNT,
                    "the number of pleats is out of range",
                    Quantity.COUNT,
                    count,
                    1,
                    PleatPlan.GREATEST_COUNT));
        }
    }

    private static void checkEdge(List<Violation> wrong, Subject subject, double gap, double takeUp) {
        if (!(takeUp >= 0 && takeUp < Double.POSITIVE_INFINITY)) {
            wrong.add(Violation.lengthBelow(
                    subject,
                    "the overlay's top edge is shorter than the span it is sewn to on this side:"
                            + " widen the gap, raise the apex or add width",
                    gap,
                    gap - takeUp));
        }
    }

    private static void checkZone(List<Violation> wrong, Subject subject, double zone, double half) {
        if (!(zone >= 0 && zone < half)) {
            wrong.add(Violation.lengthOutside(
                    subject,
                    "the flat zone must leave room for pleats on its side of the shoulder point",
                    zone,
                    0,
                    half));
        }
    }

    PleatLayout layout() {
        double takeUp = takeUpFront + takeUpBack;
        int count = takeUp == 0 ? 0 : count(takeUp);
        double pleatsFront = pleatsFront(count);
        HalfPleats front = half(edgeFront, span.front(), takeUpFront, pleatsFront);
        HalfPleats back = half(edgeBack, span.back(), takeUpBack, count - pleatsFront);
        if (count > 0) {
            setFolds(front, back);
        }
        return PleatLayout.of(front, back, count, folds);
    }

    private HalfPleats half(double edge, double seam, double takeUp, double pleats) {
        return new HalfPleats(edge, seam, takeUp, pleats, depth(takeUp, pleats));
    }

    private double depth(double takeUp, double pleats) {
        return takeUp == 0 ? 0 : takeUp / plan.kind().takeUp(pleats);
    }

    private int count(double takeUp) {
        if (plan.sizing() instanceof PleatSizing.ByDepth wanted) {
            return countNearest(takeUp, wanted.depth());
        }
        if (plan.sizing() instanceof PleatSizing.ByGreatestDepth wanted) {
            return countFewest(takeUp, wanted.depth());
        }
        return ((PleatSizing.ByCount) plan.sizing()).count();
    }

    private int countNearest(double takeUp, double wanted) {
        double least = depth(takeUp, PleatPlan.GREATEST_COUNT);
        if (!(wanted > 0) || takeUp / plan.kind().takeUp(wanted) > PleatPlan.GREATEST_COUNT + 0.5) {
            throw tooShallow(wanted, least);
        }
        int fewer = Math.min(
                Math.max(1, (int) Math.floor(takeUp / plan.kind().takeUp(wanted))), PleatPlan.GREATEST_COUNT - 1);
        double tooDeep = Math.abs(depth(takeUp, fewer) - wanted);
        double tooFlat = Math.abs(depth(takeUp, fewer + 1) - wanted);
        return tooDeep <= tooFlat ? fewer : fewer + 1;
    }

    private int countFewest(double takeUp, double greatest) {
        double least = Double.POSITIVE_INFINITY;
        for (int count = 1; count <= PleatPlan.GREATEST_COUNT; count++) {
            double deepest = deepest(count);
            if (deepest <= greatest * (1 + 1e-12)) {
                return count;
            }
            least = Math.min(least, deepest);
        }
        throw tooShallow(greatest, least);
    }

    private InvalidMeasuresException tooShallow(double wanted, double least) {
        return new InvalidMeasuresException(Violation.lengthBelow(
                Dimension.PLEAT_DEPTH, "with pleats of this depth there would be too many to sew", wanted, least));
    }

    /** The deepest fold there would be with that many pleats. */
    private double deepest(int count) {
        double pleatsFront = pleatsFront(count);
        double depthFront = depth(takeUpFront, pleatsFront);
        double depthBack = depth(takeUpBack, count - pleatsFront);
        double deepest = Math.max(pleatsFront >= 1 ? depthFront : 0, count - pleatsFront >= 1 ? depthBack : 0);
        if (isWhole(pleatsFront)) {
            return deepest;
        }
        double onApex = plan.kind() != PleatKind.KNIFE
                ? Math.max(depthFront, depthBack)
                : mirrors() ? Math.max(depthFront, depthBack) / 2 : (depthFront + depthBack) / 2;
        return Math.max(deepest, onApex);
    }

    /**
     * The pleats in front: of 1, 2 ... count - 1, and half the count, the one nearest to the front's share of the take-up; the more even sharing of two that are
     * equally near.
     */
    private double pleatsFront(int count) {
        if (takeUpFront == 0 || takeUpBack == 0) {
            return takeUpFront == 0 ? 0 : count;
        }
        double half = count / 2.0;
        if (count == 1) {
            return half;
        }
        double share = count * (takeUpFront / (takeUpFront + takeUpBack));
        double towardHalf = share < half ? TIE : -TIE;
        double whole = Math.min(Math.max(1, Math.round(share + towardHalf)), count - 1);
        return Math.abs(share - half) <= Math.abs(share - whole) + TIE ? half : whole;
    }

    private static boolean isWhole(double pleats) {
        return pleats == Math.rint(pleats);
    }

    private boolean mirrors() {
        return plan.direction() == PleatDirection.TOWARD_APEX || plan.direction() == PleatDirection.AWAY_FROM_APEX;
    }

    private void setFolds(HalfPleats front, HalfPleats back) {
        double apex = front.span();
        double cellFront = front.pleats() > 0 ? (front.span() - plan.flatZoneFront()) / front.pleats() : 0;
        double cellBack = back.pleats() > 0 ? (back.span() - plan.flatZoneBack()) / back.pleats() : 0;
        setHalf(plan.flatZoneFront(), cellFront, front, lieOf(PleatDirection.TOWARD_APEX));
        if (!isWhole(front.pleats())) {
            setOnApex(apex, cellFront, cellBack, front.depth(), back.depth());
        }
        double halfCell = isWhole(back.pleats()) ? 0 : cellBack / 2;
        setHalf(apex + halfCell, cellBack, back, lieOf(PleatDirection.AWAY_FROM_APEX));
    }

    /** How knife folds lie in the half where that direction points to the back. */
    private Lie lieOf(PleatDirection toBackHere) {
        return plan.direction() == PleatDirection.TOWARD_BACK || plan.direction() == toBackHere
                ? Lie.TO_BACK
                : Lie.TO_FRONT;
    }

    private void setHalf(double start, double cell, HalfPleats half, Lie knife) {
        int whole = (int) Math.floor(half.pleats());
        for (int i = 0; i < whole; i++) {
            double from = start + i * cell;
            double to = start + (i + 1) * cell;
            switch (plan.kind()) {
                case KNIFE -> setFold((from + to) / 2, half.depth(), knife);
                case BOX -> {
                    // The panel is as wide as its under-layers need to meet beneath it, but no wider than its share of
                    // the seam.
                    double beside = Math.max(0, cell / 2 - half.depth());
                    setFold(from + beside, half.depth(), Lie.TO_FRONT);
                    setFold(to - beside, half.depth(), Lie.TO_BACK);
                }
                case INVERTED -> {
                    setFold((from + to) / 2, half.depth(), Lie.TO_BACK);
                    setFold((from + to) / 2, half.depth(), Lie.TO_FRONT);
                }
            }
        }
    }

    private void setOnApex(double apex, double cellFront, double cellBack, double depthFront, double depthBack) {
        if (plan.kind() == PleatKind.KNIFE && !mirrors()) {
            setFold(apex, (depthFront + depthBack) / 2, lieOf(PleatDirection.TOWARD_BACK));
            return;
        }
        double part = plan.kind() == PleatKind.KNIFE ? 0.5 : 1;
        double front = part * depthFront;
        double back = part * depthBack;
        if (plan.kind() == PleatKind.INVERTED
                || plan.kind() == PleatKind.KNIFE && plan.direction() == PleatDirection.TOWARD_APEX) {
            setFold(apex, front, Lie.TO_BACK);
            setFold(apex, back, Lie.TO_FRONT);
        } else {
            setFold(apex - Math.min(front, cellFront / 2), front, Lie.TO_FRONT);
            setFold(apex + Math.min(back, cellBack / 2), back, Lie.TO_BACK);
        }
    }

    private void setFold(double finished, double depth, Lie lie) {
        // Neighbouring box pleats may share a placement line; rounding must not put them out of order.
        double at = folds.isEmpty()
                ? finished
                : Math.max(finished, folds.get(folds.size() - 1).finished());
        double first = at + taken;
        taken += 2 * depth;
        double last = at + taken;
        folds.add(
                lie == Lie.TO_BACK
                        ? new PleatFold(first, last, lie, at, depth)
                        : new PleatFold(last, first, lie, at, depth));
    }
}
