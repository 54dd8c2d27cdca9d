package org.capwright.benchmark;

import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.openjdk.jmh.profile.GCProfiler;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;

/** Runs the benchmarks and prints each time beside its reference of the same run. */
public final class Ratios {

    private Ratios() {}

    /**
     * Runs everything.
     *
     * @param arguments none
     * @throws RunnerException if the benchmarks cannot be run
     */
    public static void main(String[] arguments) throws RunnerException {
        Collection<RunResult> results = new Runner(new OptionsBuilder()
                        .include(SizeRunBenchmark.class.getName())
                        .addProfiler(GCProfiler.class)
                        .build())
                .run();
        Map<String, Double> times = new LinkedHashMap<>();
        Map<String, Double> bytes = new LinkedHashMap<>();
        for (RunResult result : results) {
            String name = result.getParams().getBenchmark();
            String last = name.substring(name.lastIndexOf('.') + 1);
            times.put(last, result.getPrimaryResult().getScore());
            Optional.ofNullable(result.getSecondaryResults().get("gc.alloc.rate.norm"))
                    .ifPresent(allocated -> bytes.put(last, allocated.getScore()));
        }
        System.out.println();
        print(times, "draftAndGrade", "reference");
        print(times, "writeSvg", "copySvg");
        print(times, "writeDxf", "copyDxf");
        print(times, "draftPieces", "draftAndGrade");
        print(times, "fullSet", "draftPieces");
        System.out.println();
        bytes.forEach((name, allocated) ->
                System.out.printf(Locale.ROOT, "%-14s %10.2f MB allocated%n", name, allocated / 1e6));
    }

    private static void print(Map<String, Double> times, String name, String against) {
        double time = times.getOrDefault(name, Double.NaN);
        double reference = times.getOrDefault(against, Double.NaN);
        System.out.printf(
                Locale.ROOT,
                "%-14s %10.1f us   %-14s %10.1f us   ratio %8.2f%n",
                name,
                time,
                against,
                reference,
                reference / time);
    }
}
