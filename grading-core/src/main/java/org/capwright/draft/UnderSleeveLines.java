package org.capwright.draft;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.capwright.geometry.Cubic;
import org.capwright.geometry.Curve;
import org.capwright.geometry.Point;
import org.capwright.measure.Dimension;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Violation;

/**
 * Draws the seams of an under-sleeve. A seam is fair where it bends at the elbow and so a little longer than its chords, the front one by another amount than the back one; the
 * wrist line is turned about its middle by the small angle that makes the two seams walk exactly, which changes neither the wrist nor the length of the sleeve.
 */
final class UnderSleeveLines {

    /** The wrist line is turned by no more than this, radians; sleeves for arms need a hundredth. */
    private static final double GREATEST_SLANT = 0.2;

    private static final double ACCURACY = 1e-9;

    /** Handles of the tangent at a closed dart, mm, if the sleeve is long enough: about an inch of the seam turns on each side. Common practice, no source. */
    private static final double BLEND = 40;

    /** The same as a share of the shorter part of the sleeve, above or below the elbow. */
    private static final double GREATEST_BLEND = 0.25;

    private final BaseSleeve base;
    private final UnderSleeveMeasures measures;
    private final ElbowShaping shaping;
    private final ElbowTurn turn;
    private final Point frontUnderarm;
    private final Point backUnderarm;
    private final Point wristCentre;
    private final Optional<Dart> dart;

    /** The dart before truing: its point, its leg ends, and the angle between its legs. */
    private record Dart(Point point, Point upper, Point lower, double angle) {}

    private UnderSleeveLines(
            BaseSleeve base, UnderSleeveMeasures measures, ElbowShaping shaping, ElbowTurn turn, Optional<Dart> dart) {
        this.base = base;
        this.measures = measures;
        this.shaping = shaping;
        this.turn = turn;
        this.dart = dart;
        this.frontUnderarm = base.front().curve().end().mirrored();
        this.backUnderarm = base.back().curve().end();
        this.wristCentre = turn.centreAt(measures.wristLevel() - measures.elbowLevel() - turn.openingAtCentre());
    }

    static UnderSleeveLines of(BaseSleeve base, UnderSleeveMeasures measures, ElbowShaping shaping) {
        ElbowTurn turn = ElbowTurn.opening(
                measures.frontElbow(), measures.backElbow(), measures.elbowLevel(), measures.opening());
        Optional<Dart> dart = shaping == ElbowShaping.ELBOW_DART ? Optional.of(dart(measures, turn)) : Optional.empty();
        return new UnderSleeveLines(base, measures, shaping, turn, dart);
    }

    /** The point of the dart lies on the line that halves the cut, so that its legs are equal. */
    private static Dart dart(UnderSleeveMeasures measures, ElbowTurn turn) {
        Point upper = turn.upper();
        Point lower = turn.lower();
        double half = upper.distanceTo(lower) / 2;
        double height = Math.sqrt(measures.reach() * measures.reach() - half * half);
        Point point = upper.towards(lower, 0.5).minus(turn.along(0.5).times(height));
        return new Dart(point, upper, lower, 2 * Math.asin(half / measures.reach()));
    }

    UnderSleeve under(Optional<WristOpening> opening) {
        double slant = slant();
        Curve front = front(slant);
        Curve back = closedBack(slant);
        Optional<ElbowDart> trued = dart.map(d ->
                ElbowDart.trued(d.point(), d.upper(), d.lower(), back.segments().get(1)));
        Curve flat = trued.map(d -> opened(back, d, backWrist(slant))).orElse(back);
        Curve frontSide = front.mirrored();
        boolean equal = base.symmetrical() && shaping == ElbowShaping.TAPERED;
        return new UnderSleeve(
                base,
                equal ? flat : frontSide,
                flat,
                centreLine(),
                measures.elbowLevel(),
                measures.wristLevel(),
                trued,
                easing(front),
                opening);
    }

    private Optional<SeamEasing> easing(Curve front) {
        if (shaping != ElbowShaping.EASED_SEAM) {
            return Optional.empty();
        }
        double elbow = front.segments().get(0).length();
        return Optional.of(new SeamEasing(measures.opening(), elbow - measures.reach(), elbow + measures.reach()));
    }

    private Curve centreLine() {
        Point apex = base.back().curve().start();
        if (shaping == ElbowShaping.TAPERED) {
            return Curve.line(apex, wristCentre);
        }
        return Curve.polyline(List.of(apex, new Point(0, 0.0 - measures.elbowLevel()), turn.centre(), wristCentre));
    }

    private double slant() {
        if (shaping == ElbowShaping.TAPERED) {
            return 0;
        }
        if (!walks()) {
            throw new InvalidMeasuresException(tooSteep());
        }
        return new BrentSolver(1e-14, 1e-13, ACCURACY).solve(100, this::excess, -GREATEST_SLANT, GREATEST_SLANT, 0);
    }

    /** How much longer the back seam is than it should be; rises with the slant. */
    private double excess(double slant) {
        double ease = shaping == ElbowShaping.EASED_SEAM ? measures.opening() : 0;
        return closedBack(slant).length() - front(slant).length() - ease;
    }

    private boolean walks() {
        return excess(-GREATEST_SLANT) < 0 && excess(GREATEST_SLANT) > 0;
    }

    /** Only seams that run in steeply from a wide elbow to a narrow wrist cannot be made to walk: looks for the least wrist that can. */
    private Violation tooSteep() {
        double fails = measures.wrist();
        double works = measures.elbow();
        String reason = "the sleeve narrows too steeply below the elbow to be turned there";
        if (!of(base, measures.withWrist(works), shaping).walks()) {
            return Violation.of(Dimension.ELBOW, reason);
        }
        for (int i = 0; i < 20; i++) {
            double middle = (fails + works) / 2;
            if (of(base, measures.withWrist(middle), shaping).walks()) {
                works = middle;
            } else {
                fails = middle;
            }
        }
        return Violation.lengthBelow(Dimension.WRIST, reason, measures.wrist(), works);
    }

    private Point frontWrist(double slant) {
        return wristCentre.minus(acrossWrist(slant).times(measures.wrist() / 2 + measures.skew()));
    }

    private Point backWrist(double slant) {
        return wristCentre.plus(acrossWrist(slant).times(measures.wrist() / 2 - measures.skew()));
    }

    /** Along the wrist line to the back; a positive slant lowers the back. */
    private Point acrossWrist(double slant) {
        double angle = turn.angle() + slant;
        return new Point(Math.cos(angle), 0.0 - Math.sin(angle));
    }

    private Curve front(double slant) {
        return SideLine.through(frontUnderarm, turn.hinge(), frontWrist(slant));
    }

    /** The back seam; with the dart closed where there is one, the part below it swung up. */
    private Curve closedBack(double slant) {
        Point wrist = backWrist(slant);
        return dart.map(d -> SideLine.turningNear(
                        backUnderarm,
                        d.upper(),
                        ElbowTurn.turned(wrist, d.point(), d.angle()),
                        Math.min(BLEND, GREATEST_BLEND * measures.shorterPart())))
                .orElseGet(() -> SideLine.through(backUnderarm, turn.middle(), wrist));
    }

    /** The back seam with the dart open: the part below it swung down again, and the trued edge between the legs. */
    private static Curve opened(Curve closed, ElbowDart dart, Point wrist) {
        Cubic below = closed.segments().get(1);
        double angle = -dart.angle();
        List<Cubic> segments = new ArrayList<>(4);
        segments.add(closed.segments().get(0));
        segments.addAll(dart.edge().segments());
        segments.add(new Cubic(
                dart.lowerEnd(),
                ElbowTurn.turned(below.control1(), dart.point(), angle),
                ElbowTurn.turned(below.control2(), dart.point(), angle),
                wrist));
        return Curve.of(segments);
    }
}
