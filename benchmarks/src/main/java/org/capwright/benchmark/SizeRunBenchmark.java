package org.capwright.benchmark;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.concurrent.TimeUnit;
import org.capwright.draft.OverlayStyle;
import org.capwright.grade.SizeRun;
import org.capwright.measure.Dimension;
import org.capwright.pattern.Allowances;
import org.capwright.pattern.CornerKind;
import org.capwright.pattern.PatternDrafter;
import org.capwright.pattern.PatternOptions;
import org.capwright.pattern.PatternSet;
import org.capwright.pattern.SewingOrder;
import org.capwright.quantity.Unit;
import org.capwright.report.Paper;
import org.capwright.report.PdfExport;
import org.capwright.report.PdfOptions;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** A run of ten sizes with overlay: drafted and graded by the engine and by the reference, with its pieces, and printed. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class SizeRunBenchmark {

    private static PatternSet pattern(SizeRun run) {
        return PatternDrafter.draft(
                new PatternSet.Title("Choir gown sleeve", "1", Unit.CENTIMETRE),
                run,
                new PatternOptions(new Allowances(10, 10, 15, 20), CornerKind.MITRED, 2, 0));
    }

    /** Holds both versions against each other before anything is timed. */
    @Setup
    public void agree() {
        double engine = draftAndGrade();
        double reference = reference();
        if (Math.abs(engine - reference) > 1e-5) {
            throw new IllegalStateException("engine " + engine + ", reference " + reference);
        }
    }

    /** The engine: ten sizes drafted with cap line, raised edge and pleats. Gives the sum of all lengths. */
    @Benchmark
    public double draftAndGrade() {
        SizeRun run = Gown.run();
        double sum = 0;
        for (var size : run.sizes()) {
            sum += size.draft().base().capLength()
                    + size.draft().overlay().orElseThrow().edgeLength()
                    + size.draft().overlay().orElseThrow().back().hem().length();
        }
        return sum;
    }

    /** The reference: the same lengths by Commons Math and JTS. */
    @Benchmark
    public double reference() {
        double sum = 0;
        for (int i = 0; i < Gown.SIZES.size(); i++) {
            int steps = i - Gown.BASE;
            double width = (Gown.DIMENSIONS.get(Dimension.BICEP) + steps * Gown.BICEP_STEP) / 2;
            double height = Gown.DIMENSIONS.get(Dimension.CAP_HEIGHT) + steps * Gown.CAP_STEP;
            ReferenceSleeve half = ReferenceSleeve.half(
                    width,
                    height,
                    Gown.DIMENSIONS.get(Dimension.CAP_OUTWARD),
                    Gown.DIMENSIONS.get(Dimension.CAP_INWARD));
            sum += 2 * half.capLength()
                    + 2 * half.raisedLength(Gown.DIMENSIONS.get(Dimension.RISE), OverlayStyle.THIRD_DIVISION)
                    + ReferenceSleeve.hemLength(width, Gown.DIMENSIONS.get(Dimension.OVERLAY_LENGTH) - height);
        }
        return sum;
    }

    /** Cut lines, notches, marks and labels of all pieces in ten sizes. */
    @Benchmark
    public PatternSet draftPieces() {
        return pattern(Gown.run());
    }

    /** What a workroom asks for: every piece in ten sizes, drafted, and printed on sheets of A4 with a cover. Gives the size of the file. */
    @Benchmark
    public int fullSet() throws IOException {
        PatternSet whole = pattern(Gown.whole());
        SewingOrder sewing = SewingOrder.of(whole);
        ByteArrayOutputStream out = new ByteArrayOutputStream(1 << 18);
        PdfExport.write(whole, PdfOptions.on(Paper.A4).withSewing(sewing.steps(), sewing.cautions()), out);
        return out.size();
    }
}
