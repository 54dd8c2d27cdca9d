package org.capwright.benchmark;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.concurrent.TimeUnit;
import org.capwright.FileFormat;
import org.capwright.Pieces;
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

/** Every form of ten sizes written, beside copying as many bytes. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class WriterBenchmark {

    /** Which form. */
    @Param({"SVG", "CSV", "HPGL", "DXF_NEST", "DXF_BLOCKS", "PDF", "ZIP"})
    public FileFormat format = FileFormat.SVG;

    private final Pieces pieces = Gown.drafted(10).pieces();
    private byte[] written = new byte[0];

    /**
     * Writes the file once, to know its size.
     *
     * @throws IOException never
     */
    @Setup
    public void once() throws IOException {
        written = write();
        System.out.println("Bytes of " + format + ": " + written.length);
    }

    /**
     * The file.
     *
     * @return its bytes
     * @throws IOException never
     */
    @Benchmark
    public byte[] write() throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream(Math.max(1 << 12, written.length));
        pieces.write(format, out);
        return out.toByteArray();
    }

    /**
     * As many bytes, copied.
     *
     * @return the copy
     */
    @Benchmark
    public byte[] copy() {
        return written.clone();
    }
}
