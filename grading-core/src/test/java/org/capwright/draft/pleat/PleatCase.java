package org.capwright.draft.pleat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.capwright.geometry.Curve;
import org.capwright.geometry.Point;
import org.capwright.geometry.Spline;

/**
 * One seeded case: a raised cap edge, the span it is sewn to and a plan. Halves are equal in a third of the cases.
 *
 * @param seed names the case
 * @param flat raised cap edge, front underarm end to back underarm end
 * @param apex arc length of its apex
 * @param span what it is sewn to
 * @param plan how it is pleated
 */
record PleatCase(long seed, Curve flat, double apex, AttachSpan span, PleatPlan plan) {

    private static final List<PleatCase> CASES =
            LongStream.rangeClosed(1, 2000).mapToObj(PleatCase::of).toList();

    static Stream<PleatCase> all() {
        return CASES.stream();
    }

    static Stream<PleatCase> some() {
        return all().limit(500);
    }

    static PleatCase of(long seed) {
        Random random = new Random(seed);
        boolean equal = random.nextInt(3) == 0;
        double height = random.nextDouble(60, 320);
        double widthFront = random.nextDouble(120, 260);
        double widthBack = equal ? widthFront : random.nextDouble(120, 260);
        double bulgeFront = random.nextDouble(0, 0.08);
        double bulgeBack = equal ? bulgeFront : random.nextDouble(0, 0.08);
        Curve front = half(widthFront, height, bulgeFront);
        Curve back = half(widthBack, height, bulgeBack).mirrored().reversed();
        Curve flat = front.joinedTo(back);
        double ratioFront = random.nextDouble(1.02, 3.2);
        double ratioBack = equal ? ratioFront : random.nextDouble(1.02, 3.2);
        double spanFront = front.length() / ratioFront;
        double spanBack = equal ? spanFront : back.length() / ratioBack;
        double gapFront = random.nextDouble(0, 90);
        double gapBack = random.nextDouble(0, 90);
        AttachSpan span = new AttachSpan(spanFront + gapFront, spanBack + gapBack, gapFront, gapBack);
        return new PleatCase(
                seed, flat, front.length(), span, plan(random, span, equal, flat.length() - span.length()));
    }

    private static PleatPlan plan(Random random, AttachSpan span, boolean equal, double takeUp) {
        PleatKind kind = PleatKind.values()[random.nextInt(3)];
        PleatDirection direction = PleatDirection.values()[random.nextInt(4)];
        double depth = random.nextDouble(4, 40);
        PleatSizing sizing = switch (random.nextInt(3)) {
            case 0 -> new PleatSizing.ByCount(random.nextInt(1, 25));
            case 1 -> new PleatSizing.ByDepth(depth);
            default -> new PleatSizing.ByGreatestDepth(depth);
        };
        double zoneFront = random.nextBoolean() ? 0 : random.nextDouble(0, span.front() * 0.6);
        double zoneBack = equal ? zoneFront : random.nextBoolean() ? 0 : random.nextDouble(0, span.back() * 0.6);
        return new PleatPlan(kind, direction, sizing, zoneFront, zoneBack);
    }

    /** Underarm point, three points displaced from the straight line, apex; level at both ends. */
    private static Curve half(double width, double height, double bulge) {
        List<Point> points = new ArrayList<>();
        Point underarm = new Point(-width, 0);
        Point apex = new Point(0, height);
        Point outward = apex.minus(underarm).left();
        points.add(underarm);
        points.add(underarm.towards(apex, 0.25).plus(outward.times(-0.6 * bulge)));
        points.add(underarm.towards(apex, 0.5));
        points.add(underarm.towards(apex, 0.75).plus(outward.times(bulge)));
        points.add(apex);
        return Spline.through(points, new Point(1, 0), new Point(1, 0));
    }

    PleatLayout layout() {
        return plan.layOut(span, apex, flat.length() - apex);
    }

    @Override
    public String toString() {
        return "seed " + seed + ": " + plan;
    }
}
