package org.capwright;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.lang.management.ManagementFactory;
import java.util.List;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import org.capwright.grade.Sizes;
import org.capwright.measure.Dimension;
import org.capwright.quantity.Unit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What a run costs, told by what it allocates: that is the same on every machine, however busy. The bounds lie a tenth to a third
 * above what was measured with the interpreter alone, which allocates every point that the compiler would save. Times are measured by the benchmarks.
 */
class AllocationTest {

    private static final com.sun.management.ThreadMXBean THREADS =
            (com.sun.management.ThreadMXBean) ManagementFactory.getThreadMXBean();

    /** What the compiler of the virtual machine has not yet optimised allocates more; a cost that grows with the square of the sizes has the exponent 2. */
    private static final double GROWTH = 0.4;

    /** Classes load and caches fill in the first rounds. */
    private static final int ROUNDS = 10;

    /** The least that one of some rounds allocates, bytes. */
    private static long allocated(Runnable work) {
        long least = Long.MAX_VALUE;
        for (int i = 0; i < ROUNDS; i++) {
            long before = THREADS.getThreadAllocatedBytes(Thread.currentThread().getId());
            work.run();
            least = Math.min(
                    least,
                    THREADS.getThreadAllocatedBytes(Thread.currentThread().getId()) - before);
        }
        return least;
    }

    private static SizeRun run(int count) {
        List<String> labels = IntStream.range(0, count).mapToObj(i -> "S" + i).toList();
        return StructuredSleeve.named("Choir gown sleeve", Unit.CENTIMETRE)
                .sleeve(sleeve -> sleeve.bicep(36)
                        .length(60)
                        .capHeight(13.5)
                        .capOutward(1.9)
                        .capInward(1.2)
                        .armhole(45))
                .overlay(overlay -> overlay.rise(14)
                        .length(34)
                        .frontGap(6)
                        .backGap(6)
                        .pleats(pleats -> pleats.count(8).knifeTowardApex()))
                .underSleeve(under -> under.elbow(30).wrist(22))
                .grade(
                        GradeRules.in(Unit.CENTIMETRE)
                                .grow(Dimension.BICEP, 0.02)
                                .grow(Dimension.CAP_HEIGHT, 0.005)
                                .grow(Dimension.ARMHOLE, 0.022),
                        new Sizes(labels, count / 2));
    }

    private static void written(Pieces pieces, FileFormat format) {
        try {
            pieces.write(format, OutputStream.nullOutputStream());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The slope of the line through two points of a doubly logarithmic diagram: 1 for what grows with the number of sizes. */
    private static double exponent(IntFunction<Runnable> work, int few, int many) {
        return Math.log((double) allocated(work.apply(many)) / allocated(work.apply(few)))
                / Math.log((double) many / few);
    }

    @Test
    void tenSizesAllocateWhatTheirLinesNeed() {
        SizeRun run = run(10);
        long draft = allocated(() -> run(10));
        long pieces = allocated(run::pieces);
        assertTrue(draft < 650_000, draft + " bytes for the draft of ten sizes");
        assertTrue(pieces < 1_400_000, pieces + " bytes for the pieces of ten sizes");
        assertTrue(pieces < 2.6 * draft, pieces + " bytes for pieces, " + draft + " for the draft");
    }

    /** A file is put together from parts that are not copied to make room; what is looked for while it is drawn takes the rest. */
    @ParameterizedTest
    @CsvSource({"SVG, 11.5", "DXF_NEST, 4", "DXF_BLOCKS, 4", "HPGL, 9"})
    void filesAllocateASmallMultipleOfTheirBytes(FileFormat format, double most) throws IOException {
        Pieces pieces = run(10).pieces();
        ByteArrayOutputStream file = new ByteArrayOutputStream();
        pieces.write(format, file);
        double times = (double) allocated(() -> written(pieces, format)) / file.size();
        assertTrue(times < most, format + " of " + file.size() + " bytes allocates " + times + " times as many");
    }

    @Test
    void figuresNeedNoPieces() {
        long pieces = allocated(() -> run(10).pieces());
        long figures = allocated(() -> {
            try {
                run(10).writeCsv(OutputStream.nullOutputStream());
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        });
        assertTrue(figures < 0.45 * pieces, figures + " bytes for figures, " + pieces + " with pieces");
    }

    @Test
    void costGrowsWithTheNumberOfSizes() {
        requireGrowth("draft", exponent(count -> () -> run(count), 4, 20));
        requireGrowth("pieces", exponent(count -> run(count)::pieces, 4, 20));
        for (FileFormat format : List.of(FileFormat.SVG, FileFormat.DXF_NEST, FileFormat.HPGL)) {
            IntFunction<Runnable> file = count -> {
                Pieces pieces = run(count).pieces();
                return () -> written(pieces, format);
            };
            requireGrowth(format.toString(), exponent(file, 4, 20));
        }
    }

    private static void requireGrowth(String what, double exponent) {
        assertTrue(exponent < 1 + GROWTH, what + " grows with the sizes to the power of " + exponent);
        assertTrue(exponent > 0.5, what + " does not grow with the sizes: " + exponent);
    }
}
