package org.capwright.pattern;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.stream.LongStream;
import org.capwright.Sample;
import org.capwright.draft.Overlay;
import org.capwright.draft.pleat.FoldLines;
import org.capwright.draft.pleat.TruedEdge;
import org.capwright.grade.GradedSize;
import org.capwright.grade.SizeRun;
import org.capwright.measure.Dimension;
import org.capwright.measure.Dimensions;
import org.capwright.quantity.InvalidMeasuresException;
import org.junit.jupiter.api.Test;

/** A millionth of a thousandth of a millimetre more or less in the measures changes no pleat by more than its like: no decision hangs on the last digits. */
class StablePleatsTest {

    /** Of these a pleat jumped by 0.05 to 20 mm: its mark lies on a joint of the edge, and what rounding left between them had any direction. */
    private static final long[] JUMPED = {61, 152, 405, 517, 545, 799, 1005, 1241, 1533, 1799, 1900};

    private static final List<Dimension> MOVED =
            List.of(Dimension.BICEP, Dimension.CAP_HEIGHT, Dimension.RISE, Dimension.ARMHOLE);

    @Test
    void pleatsMoveNoMoreThanTheMeasures() {
        int compared = 0;
        for (long seed : LongStream.concat(LongStream.of(JUMPED), LongStream.range(3000, 3000 + Sample.of(60, 3000)))
                .toArray()) {
            RandomRuns.Case drawn = RandomRuns.of(seed);
            for (double step : new double[] {1e-9, 1e-12}) {
                Optional<SizeRun> less = graded(drawn, -step);
                Optional<SizeRun> more = graded(drawn, step);
                if (less.isPresent() && more.isPresent()) {
                    compared++;
                    same(less.get(), more.get(), "seed " + seed + " by " + step);
                }
            }
        }
        assertTrue(compared > 2 * JUMPED.length, "compared " + compared);
    }

    /** A measure at an end of its range is refused beyond it. */
    private static Optional<SizeRun> graded(RandomRuns.Case drawn, double by) {
        Dimensions moved = drawn.base();
        for (Dimension dimension : MOVED) {
            if (moved.find(dimension).isPresent()) {
                moved = moved.with(dimension, moved.get(dimension) + by * (1 + dimension.ordinal() % 3));
            }
        }
        try {
            return Optional.of(SizeRun.grade(drawn.style(), moved, drawn.labels(), drawn.at(), drawn.rules()));
        } catch (InvalidMeasuresException e) {
            return Optional.empty();
        }
    }

    private static void same(SizeRun one, SizeRun other, String which) {
        for (int size = 0; size < one.sizes().size(); size++) {
            Optional<TruedEdge> less = trued(one.sizes().get(size));
            Optional<TruedEdge> more = trued(other.sizes().get(size));
            if (less.isEmpty() || more.isEmpty()) {
                continue;
            }
            assertEquals(less.get().curve().length(), more.get().curve().length(), 1e-5, which);
            for (int i = 0; i < less.get().lines().size(); i++) {
                FoldLines before = less.get().lines().get(i);
                FoldLines after = more.get().lines().get(i);
                assertEquals(before.depth(), after.depth(), 1e-5, which);
                assertEquals(0, before.fold().to().distanceTo(after.fold().to()), 1e-5, which);
            }
        }
    }

    private static Optional<TruedEdge> trued(GradedSize size) {
        return size.draft().overlay().flatMap(Overlay::trued);
    }
}
