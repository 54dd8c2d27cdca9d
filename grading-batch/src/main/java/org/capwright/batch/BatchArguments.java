package org.capwright.batch;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * What the job is told on its command line.
 *
 * @param styles a file {@code <id>.json}, or a folder of such files
 * @param orders files or folders with an order a line, apart by commas; those that end in {@code .gz} are compressed
 * @param output the folder that is written
 * @param formats of the files of each order
 * @param splitBytes how much of a file one task reads at most
 */
record BatchArguments(String styles, String orders, String output, List<String> formats, long splitBytes) {

    static final String USAGE = "Options: --styles FILE|FOLDER --orders PATH[,PATH...] --output FOLDER"
            + " [--formats pdf,svg,dxf,plt,csv (pdf)] [--split-bytes 1048576]";

    private static final long USUAL_SPLIT = 1 << 20;
    private static final List<String> NAMES = List.of("--styles", "--orders", "--output", "--formats", "--split-bytes");

    /**
     * Reads a command line.
     *
     * @param arguments options, each with a value
     * @return what they say
     * @throws IllegalArgumentException if an option is missing, unknown or wrong
     */
    static BatchArguments of(String... arguments) {
        Map<String, String> given = new HashMap<>();
        for (int i = 0; i < arguments.length; i += 2) {
            if (!NAMES.contains(arguments[i]) || i + 1 == arguments.length) {
                throw new IllegalArgumentException("Cannot read the option " + arguments[i] + ". " + USAGE);
            }
            given.put(arguments[i], arguments[i + 1]);
        }
        List<String> missing = new ArrayList<>(List.of("--styles", "--orders", "--output"));
        missing.removeAll(given.keySet());
        if (!missing.isEmpty()) {
            throw new IllegalArgumentException("These options are missing: " + missing + ". " + USAGE);
        }
        return new BatchArguments(
                given.getOrDefault("--styles", ""),
                given.getOrDefault("--orders", ""),
                given.getOrDefault("--output", ""),
                List.of(given.getOrDefault("--formats", "pdf").split(",")),
                split(given.getOrDefault("--split-bytes", Long.toString(USUAL_SPLIT))));
    }

    private static long split(String given) {
        try {
            long bytes = Long.parseLong(given);
            if (bytes > 0) {
                return bytes;
            }
        } catch (NumberFormatException e) {
            // said below
        }
        throw new IllegalArgumentException("--split-bytes is " + given + "; a whole number of 1 or more would work.");
    }
}
