package org.capwright.benchmark;

import java.util.concurrent.TimeUnit;
import org.capwright.Pieces;
import org.capwright.SizeRun;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** How the cost grows with the number of sizes. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class GrowthBenchmark {

    /** How many. */
    @Param({"1", "10", "50", "200"})
    public int sizes = 1;

    private SizeRun run = Gown.drafted(1);

    /** Drafts the run whose pieces are made. */
    @Setup
    public void once() {
        run = Gown.drafted(sizes);
    }

    /**
     * Every size, drafted and graded.
     *
     * @return the run
     */
    @Benchmark
    public SizeRun draft() {
        return Gown.drafted(sizes);
    }

    /**
     * Every piece of a drafted run.
     *
     * @return the pieces
     */
    @Benchmark
    public Pieces pieces() {
        return run.pieces();
    }
}
