package org.capwright.gradeimport;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.apache.commons.math3.stat.interval.ConfidenceInterval;
import org.apache.commons.math3.stat.interval.WilsonScoreInterval;
import org.capwright.check.CheckedGrade;
import org.capwright.check.CheckedMeasure;
import org.capwright.check.CheckedSize;
import org.capwright.check.Finding;
import org.capwright.check.GradeChecks;
import org.capwright.check.Severity;
import org.capwright.check.Thresholds;
import org.capwright.check.WhatIf;
import org.capwright.exchange.ForeignFile;
import org.capwright.exchange.ForeignInputException;
import org.capwright.quantity.Rounding;
import org.capwright.quantity.Unit;

/** Reads and judges the nests that {@code other_hands.py} and {@code workrooms.py} write, and counts what came of it. */
final class OtherHands {

    /** A figure that is off by more than a tape shows counts as wrong, mm. */
    private static final double TAPE = 0.5;

    private static final List<String> SLIPS_OF_PLACE = List.of("sizes-swapped", "mirrored-piece");

    /** A nest as it was drawn. */
    private record Case(int number, String kind, String size, Optional<Unit> unit, String how, List<String> files) {}

    /** How a kind of case came out. */
    static final class Count {
        int drawn;
        int found;
        int named;
        int alarms;
        int refused;
        int wrong;
        int figures;
        int cured;
    }

    private static final Map<String, String> FIGURES =
            Map.of("bicep-off", "bicep", "wrist-off", "wrist", "length-off", "length", "cap-height-off", "capHeight");

    /** All counts, and in words what went amiss. */
    record Table(Map<String, Count> kinds, List<String> amiss) {

        int faults(java.util.function.ToIntFunction<Count> of) {
            return kinds.entrySet().stream()
                    .filter(entry -> !entry.getKey().equals("clean"))
                    .mapToInt(entry -> of.applyAsInt(entry.getValue()))
                    .sum();
        }

        Count clean() {
            return kinds.getOrDefault("clean", new Count());
        }

        int wrong() {
            return kinds.values().stream().mapToInt(count -> count.wrong).sum();
        }

        String text() {
            StringBuilder text = new StringBuilder();
            kinds.forEach((kind, c) -> text.append(String.format(
                    Locale.ROOT,
                    "%-16s drawn %4d  found %4d  named %4d  alarms %3d  refused %3d  wrong in silence %3d%n",
                    kind,
                    c.drawn,
                    c.found,
                    c.named,
                    c.alarms,
                    c.refused,
                    c.wrong)));
            int faults = faults(c -> c.drawn);
            text.append(share("faults found", faults(c -> c.found), faults))
                    .append(share("faults named", faults(c -> c.named), faults))
                    .append(share("figures cured", faults(c -> c.cured), faults(c -> c.figures)))
                    .append(share("false alarms", clean().alarms, clean().drawn))
                    .append(share("clean refused", clean().refused, clean().drawn));
            amiss.forEach(line -> text.append(line).append(System.lineSeparator()));
            return text.toString();
        }

        private static String share(String what, int of, int all) {
            if (all == 0) {
                return "";
            }
            ConfidenceInterval bounds = new WilsonScoreInterval().createInterval(all, of, 0.95);
            return String.format(
                    Locale.ROOT,
                    "%-14s %4d of %4d, %5.1f %% (95 %% interval of Wilson %.1f to %.1f %%)%n",
                    what,
                    of,
                    all,
                    100.0 * of / all,
                    100 * Math.max(0, bounds.getLowerBound()),
                    100 * Math.min(1, bounds.getUpperBound()));
        }
    }

    private Path folder = Path.of("");
    private final Map<String, Double> figures = new HashMap<>();
    private final Map<String, Count> kinds = new TreeMap<>();
    private final List<String> amiss = new ArrayList<>();

    private OtherHands() {}

    static Table count(List<Path> folders) throws IOException {
        OtherHands hands = new OtherHands();
        for (Path folder : folders) {
            hands.folder = folder;
            hands.count();
        }
        return new Table(hands.kinds, hands.amiss);
    }

    private void count() throws IOException {
        for (String line : Files.readAllLines(folder.resolve("figures.tsv"))) {
            String[] cells = line.split("\t");
            figures.put(key(cells[0], cells[1], cells[2]), Double.parseDouble(cells[3]));
        }
        for (String line : Files.readAllLines(folder.resolve("cases.tsv"))) {
            String[] cells = line.split("\t");
            judge(new Case(
                    Integer.parseInt(cells[0]),
                    cells[1],
                    cells[2],
                    Arrays.stream(Unit.values())
                            .filter(unit -> unit.symbol().equals(cells[3]))
                            .findFirst(),
                    cells[4],
                    List.of(cells[5].split(","))));
        }
    }

    private static String key(String number, String size, String measure) {
        return number + "\t" + size + "\t" + measure;
    }

    private void judge(Case drawn) throws IOException {
        Count count = kinds.computeIfAbsent(drawn.kind, k -> new Count());
        count.drawn++;
        List<ForeignFile> files = new ArrayList<>();
        for (String name : drawn.files) {
            files.add(ForeignFile.of(name, Files.readAllBytes(folder.resolve(name))));
        }
        boolean clean = drawn.kind.equals("clean");
        try {
            ForeignGrade read = OutlineReader.read(files, new ForeignOptions(drawn.unit, Optional.empty()));
            List<Finding> findings = Stream.concat(
                            Unread.of(read).stream(), GradeChecks.run(read.grade(), Thresholds.usual()).stream())
                    .filter(finding -> finding.severity() != Severity.INFO)
                    .toList();
            List<String> wrong = wrong(drawn, read);
            if (!wrong.isEmpty()) {
                count.wrong++;
                amiss.add(told(drawn, "read wrong in silence: " + wrong));
            }
            List<String> unread = unread(drawn, read);
            if (clean) {
                boolean alarm = !findings.isEmpty();
                count.alarms += alarm ? 1 : 0;
                count.refused += !alarm && !unread.isEmpty() ? 1 : 0;
                if (alarm || !unread.isEmpty()) {
                    amiss.add(told(drawn, "alarm: " + texts(findings) + " " + unread));
                }
                return;
            }
            boolean found = !findings.isEmpty() || !unread.isEmpty();
            boolean named = named(drawn, read, findings);
            count.found += found || named ? 1 : 0;
            count.named += named ? 1 : 0;
            if (named && FIGURES.containsKey(drawn.kind)) {
                WhatIf.Mended mended = WhatIf.mended(read.grade(), Thresholds.usual(), new Rounding(1));
                count.figures++;
                count.cured += isCure(drawn, mended) ? 1 : 0;
                if (!isCure(drawn, mended)) {
                    amiss.add(told(drawn, "not cured: " + mended.cures() + " " + texts(mended.remaining())));
                }
            }
            if (!named) {
                amiss.add(told(drawn, "not named: " + texts(findings) + " " + unread));
            }
        } catch (ForeignInputException e) {
            boolean named = drawn.kind.equals("open-outline") && e.getMessage().contains("not closed")
                    || drawn.kind.equals("no-axis") && e.getMessage().contains("which way up")
                    || (drawn.kind.equals("no-unit") || drawn.kind.equals("false-header"))
                            && e.getMessage().contains("unit");
            count.found += clean ? 0 : 1;
            count.named += named ? 1 : 0;
            count.refused += 1;
            if (!named) {
                amiss.add(told(drawn, "refused: " + e.getMessage()));
            }
        }
    }

    private static String told(Case drawn, String what) {
        return "case " + drawn.number + " " + drawn.kind + " " + drawn.size + " (" + drawn.how + "): " + what;
    }

    private static List<String> texts(List<Finding> findings) {
        return findings.stream()
                .map(f -> f.code() + " " + f.sizes() + " " + f.subject().code() + " "
                        + (f.value().isPresent() ? Math.rint(10 * f.value().getAsDouble()) / 10 : ""))
                .toList();
    }

    /** Sizes that were read with another figure than was drawn, and jumps from the size before. */
    private List<String> wrong(Case drawn, ForeignGrade read) {
        List<String> wrong = new ArrayList<>();
        for (CheckedMeasure measure : CheckedMeasure.values()) {
            OptionalDouble offBefore = OptionalDouble.empty();
            for (CheckedSize size : read.grade().sizes()) {
                Double meant = figures.get(key(Integer.toString(drawn.number), size.label(), measure.code()));
                OptionalDouble value = size.value(measure);
                OptionalDouble off = meant == null || value.isEmpty()
                        ? OptionalDouble.empty()
                        : OptionalDouble.of(value.getAsDouble() - meant);
                double jump = off.isPresent() && offBefore.isPresent()
                        ? Math.abs(off.getAsDouble() - offBefore.getAsDouble())
                        : 0;
                if (jump > TAPE || Math.abs(off.orElse(0)) > TAPE) {
                    wrong.add(String.format(
                            Locale.ROOT,
                            "%s %s %.2f for %.2f",
                            size.label(),
                            measure.code(),
                            value.getAsDouble(),
                            meant));
                }
                offBefore = off;
            }
        }
        return wrong;
    }

    /** What was drawn and is not among the figures, with what the notes say of it. */
    private List<String> unread(Case drawn, ForeignGrade read) {
        CheckedGrade grade = read.grade();
        List<String> unread = new ArrayList<>();
        figures.forEach((key, meant) -> {
            String[] cells = key.split("\t");
            boolean there = !cells[0].equals(Integer.toString(drawn.number))
                    || grade.sizes().stream()
                            .anyMatch(size -> size.label().equals(cells[1])
                                    && size.values().keySet().stream()
                                            .anyMatch(measure -> measure.code().equals(cells[2])));
            if (!there) {
                unread.add(cells[1] + " " + cells[2]);
            }
        });
        if (!unread.isEmpty()) {
            read.traces().stream()
                    .filter(note -> note.kind() == ImportNote.Kind.LEFT_OUT)
                    .forEach(note -> unread.add(note.subject() + ": " + note.words()));
        }
        return unread;
    }

    /** Whether the right finding names the right size, and none tells a tale of something else. */
    private static boolean named(Case drawn, ForeignGrade read, List<Finding> findings) {
        return switch (drawn.kind) {
            case "lost-unit", "other-unit" -> names(findings, drawn, "unit-mistake", "");
            case "exchanged-sizes" ->
                findings.stream()
                        .anyMatch(f -> f.code().equals("sizes-swapped")
                                && String.join("+", f.sizes()).equals(drawn.size));
            case "bicep-off", "stretched-size" -> names(findings, drawn, "uneven-jump", "bicep");
            case "wrist-off" -> names(findings, drawn, "uneven-jump", "wrist");
            case "length-off" -> names(findings, drawn, "uneven-jump", "length");
            case "cap-height-off" -> names(findings, drawn, "uneven-jump", "capHeight");
            case "moved-vertex" -> names(findings, drawn, "moved-point", "") && findings.size() == 1;
            case "wavy-cap" ->
                (names(findings, drawn, "curvature-sign", "") || names(findings, drawn, "crossing-lines", ""))
                        && findings.stream().noneMatch(f -> SLIPS_OF_PLACE.contains(f.code()));
            case "mirrored-size" -> names(findings, drawn, "mirrored-piece", "");
            case "moved-corner" ->
                (names(findings, drawn, "moved-point", "") || names(findings, drawn, "uneven-jump", "bicep"))
                        && findings.stream().noneMatch(f -> SLIPS_OF_PLACE.contains(f.code()));
            case "empty-size" -> says(findings, "names size " + drawn.size);
            case "false-header" -> findings.stream().anyMatch(f -> f.code().equals("unit-mistake"));
            case "no-size" -> notes(read, "sizes numbered by area");
            case "missing-size" -> findings.stream().anyMatch(f -> f.code().equals("missing-size"));
            case "open-outline" -> says(findings, "not closed");
            case "two-of-a-size" -> says(findings, "another sleeve of size " + drawn.size);
            default -> false;
        };
    }

    /** Whether one figure is named, the one that was drawn wrong, and nothing is left. */
    private static boolean isCure(Case drawn, WhatIf.Mended mended) {
        return mended.remaining().isEmpty()
                && mended.cures().size() == 1
                && mended.cures().get(0).sizes().equals(List.of(drawn.size))
                && mended.cures().get(0).place().code().equals(FIGURES.get(drawn.kind));
    }

    private static boolean names(List<Finding> findings, Case drawn, String code, String measure) {
        return findings.stream()
                .anyMatch(f -> f.code().equals(code)
                        && f.sizes().contains(drawn.size)
                        && (measure.isEmpty() || f.subject().code().equals(measure)));
    }

    private static boolean notes(ForeignGrade read, String words) {
        return read.traces().stream()
                .anyMatch(note -> note.kind() == ImportNote.Kind.ASSUMED
                        && note.words().toString().contains(words));
    }

    private static boolean says(List<Finding> findings, String words) {
        return findings.stream()
                .anyMatch(f -> Unread.is(f) && f.message().toString().contains(words));
    }

    /** Counts a folder that the script has written. */
    public static void main(String[] arguments) throws IOException {
        System.out.print(count(Arrays.stream(arguments).map(Path::of).toList()).text());
    }
}
