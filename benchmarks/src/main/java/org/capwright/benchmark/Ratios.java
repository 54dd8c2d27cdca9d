package org.capwright.benchmark;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.openjdk.jmh.infra.BenchmarkParams;
import org.openjdk.jmh.profile.GCProfiler;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;

/** Runs the benchmarks and prints, as tables for a Markdown page, each time beside its reference of the same run. */
public final class Ratios {

    private final Map<String, Double> times = new LinkedHashMap<>();
    private final Map<String, Double> bytes = new LinkedHashMap<>();

    private Ratios(Collection<RunResult> results) {
        for (RunResult result : results) {
            String name = name(result.getParams());
            times.put(name, result.getPrimaryResult().getScore());
            Optional.ofNullable(result.getSecondaryResults().get("gc.alloc.rate.norm"))
                    .ifPresent(allocated -> bytes.put(name, allocated.getScore()));
        }
    }

    /** The method, and the values of its parameters. */
    private static String name(BenchmarkParams params) {
        String method = params.getBenchmark();
        StringBuilder name = new StringBuilder(method.substring(method.lastIndexOf('.') + 1));
        params.getParamsKeys().forEach(key -> name.append(' ').append(params.getParam(key)));
        return name.toString();
    }

    /**
     * Runs everything.
     *
     * @param arguments regular expressions of the benchmarks to run; none for all
     * @throws RunnerException if the benchmarks cannot be run
     */
    public static void main(String[] arguments) throws RunnerException {
        OptionsBuilder options = new OptionsBuilder();
        options.addProfiler(GCProfiler.class);
        for (String wanted : arguments.length == 0 ? new String[] {"org.capwright.benchmark"} : arguments) {
            options.include(wanted);
        }
        new Ratios(new Runner(options.build()).run()).print();
    }

    private void print() {
        System.out.println();
        System.out.println("| what | time | allocated | beside it | its time | ratio |");
        System.out.println("|---|---|---|---|---|---|");
        row("draftAndGrade", "reference");
        row("draftPieces", "draftAndGrade");
        row("fullSet", "draftPieces");
        times.keySet().stream()
                .filter(name -> name.startsWith("write "))
                .forEach(name -> row(name, name.replace("write", "copy")));
        System.out.println();
        System.out.println("| what | 1 size | 10 | 50 | 200 | exponent |");
        System.out.println("|---|---|---|---|---|---|");
        growth("draft");
        growth("pieces");
    }

    private void row(String name, String against) {
        if (!times.containsKey(name) || !times.containsKey(against)) {
            return;
        }
        double time = times.get(name);
        double reference = times.get(against);
        System.out.printf(
                Locale.ROOT,
                "| %s | %.1f us | %.2f MB | %s | %.1f us | %.2f |%n",
                name,
                time,
                bytes.getOrDefault(name, Double.NaN) / 1e6,
                against,
                reference,
                time / reference);
    }

    /** The exponent is the slope of the line through the points of a doubly logarithmic diagram. */
    private void growth(String name) {
        SimpleRegression line = new SimpleRegression();
        List<String> cells = new ArrayList<>();
        for (int sizes : new int[] {1, 10, 50, 200}) {
            Double time = times.get(name + " " + sizes);
            if (time != null) {
                line.addData(Math.log(sizes), Math.log(time));
                cells.add(String.format(Locale.ROOT, "%.0f us", time));
            }
        }
        if (!cells.isEmpty()) {
            System.out.printf(Locale.ROOT, "| %s | %s | %.2f |%n", name, String.join(" | ", cells), line.getSlope());
        }
    }
}
