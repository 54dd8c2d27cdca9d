package org.capwright.draft.pleat;

import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.Consumer;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.capwright.Sample;
import org.capwright.draft.CapLine;
import org.capwright.draft.StyleSpace;
import org.capwright.geometry.Curve;

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
        return all().limit(Sample.of(200, 500));
    }

    /** Tries a property on cases in turn; a failure names the case. */
    static void forEach(Stream<PleatCase> cases, Consumer<PleatCase> property) {
        cases.forEach(pleatCase -> {
            try {
                property.accept(pleatCase);
            } catch (AssertionError | RuntimeException e) {
                throw new AssertionError(pleatCase + ": " + e.getMessage(), e);
            }
        });
    }

    static PleatCase of(long seed) {
        Random random = new Random(seed);
        boolean equal = random.nextInt(3) == 0;
        Curve front = half(random);
        Curve back = (equal ? front : other(random, front)).mirrored().reversed();
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

    /** A cap line from underarm point to apex, as high as an overlay's raised edge may be. */
    private static Curve half(Random random) {
        return capLine(random, random.nextDouble(60, 320));
    }

    private static Curve other(Random random, Curve front) {
        return capLine(random, front.end().y());
    }

    private static Curve capLine(Random random, double height) {
        while (true) {
            double width = random.nextDouble(120, 260);
            double limit = StyleSpace.limit(width, height);
            Optional<CapLine> line = CapLine.find(
                    width, height, limit * random.nextDouble(0.1, 0.8), limit * random.nextDouble(0.1, 0.8));
            if (line.isPresent()) {
                return line.get().curve().mirrored().reversed();
            }
        }
    }

    PleatLayout layout() {
        return plan.layOut(span, apex, flat.length() - apex);
    }

    @Override
    public String toString() {
        return "seed " + seed + ": " + plan;
    }
}
