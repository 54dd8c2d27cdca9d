package org.capwright.benchmark;

import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
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
                        .build())
                .run();
        Map<String, Double> times = new LinkedHashMap<>();
        for (RunResult result : results) {
            String name = result.getParams().getBenchmark();
            times.put(
                    name.substring(name.lastIndexOf('.') + 1),
                    result.getPrimaryResult().getScore());
        }
        System.out.println();
        print(times, "draftAndGrade", "reference");
        print(times, "writeSvg", "copySvg");
        print(times, "writeDxf", "copyDxf");
        print(times, "draftPieces", "draftAndGrade");
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
