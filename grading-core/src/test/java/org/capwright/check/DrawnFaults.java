package org.capwright.check;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.capwright.exchange.ForeignFile;
import org.capwright.exchange.ForeignInputException;
import org.capwright.geometry.Point;
import org.capwright.gradeimport.ForeignOptions;
import org.capwright.gradeimport.OutlineReader;
import org.capwright.gradeimport.SpecTableReader;
import org.capwright.quantity.Unit;

/**
 * The seeded faults of {@link SeededFaults} once more, but through files: the faulty grade is written as a spec table or as outlines the way another room would, read as foreign input,
 * and checked. A spec table shows no crossing and no mirrored piece, an outline no armhole, so each way has the kinds that it can show.
 */
final class DrawnFaults {

    /** Through what kind of file. */
    enum Way {
        CSV(
                SeededFaults.Kind.BICEP_OFF,
                SeededFaults.Kind.SIZES_SWAPPED,
                SeededFaults.Kind.EASE_DRIFT,
                SeededFaults.Kind.UNIT_MISTAKE,
                SeededFaults.Kind.MISSING_SIZE),
        DXF(
                SeededFaults.Kind.BICEP_OFF,
                SeededFaults.Kind.SIZES_SWAPPED,
                SeededFaults.Kind.CROSSING_LINES,
                SeededFaults.Kind.UNIT_MISTAKE,
                SeededFaults.Kind.MIRRORED_PIECE,
                SeededFaults.Kind.MISSING_SIZE);

        private final List<SeededFaults.Kind> kinds;

        Way(SeededFaults.Kind... kinds) {
            this.kinds = List.of(kinds);
        }
    }

    private DrawnFaults() {}

    static SeededFaults.Table count(Way way, long firstSeed, int faults) {
        Map<SeededFaults.Kind, SeededFaults.Count> counts = new EnumMap<>(SeededFaults.Kind.class);
        List<String> missed = new ArrayList<>();
        List<String> falseAlarms = new ArrayList<>();
        int alarms = 0;
        for (int i = 0; i < faults; i++) {
            SeededFaults.Kind kind = way.kinds.get(i % way.kinds.size());
            long seed = firstSeed + i;
            CheckedGrade clean = CheckedGrade.of(CleanRuns.of(seed));
            List<Finding> onClean = read(way, clean, seed);
            if (!onClean.isEmpty()) {
                alarms++;
                falseAlarms.add(way + " seed " + seed + ": " + onClean.get(0));
            }
            while (kind == SeededFaults.Kind.MIRRORED_PIECE && !SeededFaults.tellsFrontFromBack(clean)) {
                seed += 1_000_000;
                clean = CheckedGrade.of(CleanRuns.of(seed));
            }
            SeededFaults.Fault fault = fault(way, kind, clean, new Random(seed));
            List<Finding> found = read(way, fault.grade(), seed);
            boolean named = found.stream().anyMatch(fault.named());
            SeededFaults.Count before = counts.getOrDefault(kind, new SeededFaults.Count(0, 0));
            counts.put(kind, new SeededFaults.Count(before.seeded() + 1, before.found() + (named ? 1 : 0)));
            if (!named) {
                missed.add(way + " " + kind + " seed " + seed + ": " + found);
            }
        }
        return new SeededFaults.Table(counts, faults, alarms, missed, falseAlarms);
    }

    /** In outlines a fault lies in the lines; figures follow from them. */
    private static SeededFaults.Fault fault(Way way, SeededFaults.Kind kind, CheckedGrade clean, Random random) {
        if (way == Way.CSV) {
            return SeededFaults.fault(kind, clean, random);
        }
        int size = random.nextInt(clean.sizes().size());
        String label = clean.label(size);
        return switch (kind) {
            case BICEP_OFF -> {
                double bicep = clean.value(size, CheckedMeasure.BICEP).orElseThrow();
                double off = random.nextBoolean() ? 3 : -3;
                yield new SeededFaults.Fault(
                        scaled(clean, size, (bicep + off) / bicep, 1),
                        f -> f.code().equals("uneven-jump")
                                && f.subject().code().equals("bicep")
                                && f.sizes().equals(List.of(label)));
            }
            case UNIT_MISTAKE -> {
                // Smaller ones are no longer of the size of a piece: such a size counts as missing.
                double[] factors = {2.54, 1 / 2.54, 10};
                double factor = factors[random.nextInt(factors.length)];
                yield new SeededFaults.Fault(
                        scaled(clean, size, factor, factor),
                        f -> f.code().equals("unit-mistake") && f.sizes().equals(List.of(label)));
            }
            case MISSING_SIZE -> {
                // In a drawing a size without figures is no size at all: only a gap between sizes can be seen.
                SeededFaults.Fault fault = SeededFaults.fault(kind, clean, random);
                while (fault.grade().sizes().size() == clean.sizes().size()) {
                    fault = SeededFaults.fault(kind, clean, random);
                }
                yield fault;
            }
            case CROSSING_LINES -> keptAtTheEnds(clean, SeededFaults.fault(kind, clean, random));
            default -> SeededFaults.fault(kind, clean, random);
        };
    }

    private static CheckedGrade scaled(CheckedGrade grade, int size, double across, double up) {
        CheckedSize healthy = grade.sizes().get(size);
        List<NestLine> lines = healthy.lines().stream()
                .map(line -> new NestLine(
                        line.kind(),
                        line.points().stream()
                                .map(p -> new Point(p.x() * across, p.y() * up))
                                .toList()))
                .toList();
        CheckedSize changed = healthy.withLines(lines);
        for (CheckedMeasure measure : List.of(CheckedMeasure.CAP_HEIGHT, CheckedMeasure.LENGTH)) {
            changed = changed.with(measure, length(healthy, measure) * up);
        }
        changed = changed.with(CheckedMeasure.WRIST, length(healthy, CheckedMeasure.WRIST) * across);
        List<CheckedSize> sizes = new ArrayList<>(grade.sizes());
        sizes.set(size, changed);
        return grade.with(sizes);
    }

    /** A push that moved the underarm points would be another fault. */
    private static SeededFaults.Fault keptAtTheEnds(CheckedGrade clean, SeededFaults.Fault fault) {
        List<CheckedSize> sizes = new ArrayList<>();
        for (int i = 0; i < clean.sizes().size(); i++) {
            List<Point> before = clean.sizes()
                    .get(i)
                    .line(NestLine.Kind.CAP_LINE)
                    .orElseThrow()
                    .points();
            List<Point> after = fault.grade()
                    .sizes()
                    .get(i)
                    .line(NestLine.Kind.CAP_LINE)
                    .orElseThrow()
                    .points();
            List<Point> kept = new ArrayList<>();
            double left = before.get(0).x();
            double right = before.get(before.size() - 1).x();
            for (int k = 0; k < before.size(); k++) {
                double place = 2 * (before.get(k).x() - left) / (right - left) - 1;
                double share = 1 - Math.pow(place, 8);
                kept.add(before.get(k).plus(after.get(k).minus(before.get(k)).times(share)));
            }
            sizes.add(fault.grade().sizes().get(i).withLines(List.of(new NestLine(NestLine.Kind.CAP_LINE, kept))));
        }
        return new SeededFaults.Fault(fault.grade().with(sizes), fault.named());
    }

    private static List<Finding> read(Way way, CheckedGrade grade, long seed) {
        // A drawing may have lost its base size; the reader then takes another.
        Optional<String> base = way == Way.CSV ? Optional.of(grade.baseSize().label()) : Optional.empty();
        ForeignOptions options = new ForeignOptions(Optional.of(Unit.MILLIMETRE), base);
        try {
            CheckedGrade read = way == Way.CSV
                    ? SpecTableReader.read(file("spec.csv", table(grade)), options)
                            .grade()
                    : OutlineReader.read(List.of(file("nest.dxf", drawing(grade))), options)
                            .grade();
            return SeededFaults.alarms(read);
        } catch (ForeignInputException e) {
            throw new AssertionError(way + " seed " + seed, e);
        }
    }

    private static ForeignFile file(String name, String text) {
        return ForeignFile.of(name, text.getBytes(StandardCharsets.UTF_8));
    }

    /** Rows that a room measures, sizes across, millimetres. */
    private static String table(CheckedGrade grade) {
        StringBuilder text = new StringBuilder("code,unit");
        grade.sizes().forEach(size -> text.append(',').append(size.label()));
        text.append('\n');
        for (CheckedMeasure measure : PlausibilityCheck.GROWING) {
            boolean known =
                    grade.sizes().stream().anyMatch(size -> size.value(measure).isPresent());
            if (known) {
                text.append(measure.code()).append(",mm");
                for (CheckedSize size : grade.sizes()) {
                    text.append(',');
                    size.value(measure).ifPresent(v -> text.append(String.format(Locale.ROOT, "%.2f", v)));
                }
                text.append('\n');
            }
        }
        return text.toString();
    }

    private static double length(CheckedSize size, CheckedMeasure measure) {
        double bicep = size.value(CheckedMeasure.BICEP).orElseThrow();
        return size.value(measure).orElse(measure == CheckedMeasure.LENGTH ? 1.6 * bicep : 0.6 * bicep);
    }

    /** One block per size: the sew line on layer 14 of ASTM D6673, front to the left, size and piece as texts. */
    private static String drawing(CheckedGrade grade) {
        StringBuilder blocks = new StringBuilder("0\nSECTION\n2\nBLOCKS\n");
        StringBuilder inserts = new StringBuilder("0\nSECTION\n2\nENTITIES\n");
        for (CheckedSize size : grade.sizes()) {
            if (size.lines().isEmpty()) {
                continue;
            }
            String name = "SLEEVE_" + size.label();
            blocks.append("0\nBLOCK\n8\n0\n2\n")
                    .append(name)
                    .append("\n70\n0\n10\n0\n20\n0\n30\n0\n3\n")
                    .append(name);
            blocks.append("\n0\nPOLYLINE\n8\n14\n66\n1\n70\n1\n");
            List<Point> cap = size.line(NestLine.Kind.CAP_LINE).orElseThrow().points();
            cap.forEach(point -> vertex(blocks, point.x(), point.y()));
            double hem = size.value(CheckedMeasure.CAP_HEIGHT).orElseThrow() - length(size, CheckedMeasure.LENGTH);
            double half = length(size, CheckedMeasure.WRIST) / 2;
            vertex(blocks, half, hem);
            vertex(blocks, -half, hem);
            blocks.append("0\nSEQEND\n8\n14\n");
            text(blocks, "PIECE NAME: SLEEVE", hem / 2);
            text(blocks, "SIZE: " + size.label(), hem / 2 - 10);
            blocks.append("0\nENDBLK\n8\n0\n");
            inserts.append("0\nINSERT\n8\n0\n2\n").append(name).append("\n10\n0\n20\n0\n30\n0\n");
        }
        return blocks + "0\nENDSEC\n" + inserts + "0\nENDSEC\n0\nEOF\n";
    }

    private static void vertex(StringBuilder out, double x, double y) {
        out.append(String.format(Locale.ROOT, "0\nVERTEX\n8\n14\n10\n%.4f\n20\n%.4f\n", x, y));
    }

    private static void text(StringBuilder out, String words, double y) {
        out.append(String.format(Locale.ROOT, "0\nTEXT\n8\n15\n10\n0\n20\n%.3f\n40\n5\n1\n%s\n", y, words));
    }
}
