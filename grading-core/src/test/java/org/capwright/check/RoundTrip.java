package org.capwright.check;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.capwright.check.foreign.ForeignFile;
import org.capwright.check.foreign.ForeignInputException;
import org.capwright.check.foreign.ForeignOptions;
import org.capwright.check.foreign.OutlineReader;
import org.capwright.check.foreign.SpecTableReader;
import org.capwright.export.TestPatterns;
import org.capwright.export.dxf.DxfExport;
import org.capwright.export.table.SpecCsv;
import org.capwright.grade.Alignment;
import org.capwright.grade.SpecTable;
import org.capwright.pattern.PatternSet;

/** Sends random styles through our own files back in as foreign ones, and keeps the largest departure of bicep, length and cap height and of their jumps. */
final class RoundTrip {

    private static final List<Measure> LOOKED_AT = List.of(Measure.BICEP, Measure.LENGTH, Measure.CAP_HEIGHT);

    /**
     * The outcome for one kind of file.
     *
     * @param file which
     * @param styles how many styles came back
     * @param values largest departure of a figure, mm
     * @param jumps largest departure of a jump, mm
     * @param falseStops stops that the drafted grade has not
     * @param lost figures that did not come back
     */
    record Outcome(String file, int styles, double values, double jumps, int falseStops, List<String> lost) {

        String text() {
            return String.format(
                    Locale.ROOT,
                    "%-10s %6d styles, largest departure %.4f mm, of a jump %.4f mm, false stops %d, figures lost %d%n",
                    file,
                    styles,
                    values,
                    jumps,
                    falseStops,
                    lost.size());
        }
    }

    private interface Reading {
        CheckedGrade of(PatternSet set) throws ForeignInputException;
    }

    private RoundTrip() {}

    static List<Outcome> of(int styles) {
        return List.of(
                through("CSV", styles, RoundTrip::table),
                through("DXF blocks", styles, set -> outlines(DxfExport.blocks(set))),
                through("DXF nest", styles, set -> outlines(DxfExport.nest(set, Alignment.FOLD_AND_BICEP_LINE))));
    }

    private static Outcome through(String file, int styles, Reading reading) {
        double values = 0;
        double jumps = 0;
        int falseStops = 0;
        List<String> lost = new ArrayList<>();
        for (int seed = 0; seed < styles; seed++) {
            PatternSet set = TestPatterns.random(seed, 3 + seed % 4);
            CheckedGrade truth = CheckedGrade.of(set.run());
            CheckedGrade read;
            try {
                read = reading.of(set);
            } catch (ForeignInputException e) {
                lost.add("seed " + seed + ": " + e.getMessage());
                continue;
            }
            // A run of overlays alone has no sleeve outline that would show a bicep.
            boolean drawn = file.equals("CSV")
                    || truth.baseSize().value(Measure.LENGTH).isPresent()
                    || truth.baseSize().value(Measure.OVERLAY_EDGE).isEmpty();
            for (Measure measure : drawn ? LOOKED_AT : List.<Measure>of()) {
                for (int i = 0; i < truth.sizes().size(); i++) {
                    if (truth.value(i, measure).isPresent()
                            && read.value(i, measure).isEmpty()) {
                        lost.add("seed " + seed + ": " + measure + " of " + truth.label(i));
                    }
                    values = Math.max(values, apart(truth.value(i, measure), read.value(i, measure)));
                    if (i < truth.intervals()) {
                        jumps = Math.max(jumps, apart(truth.jump(i, measure), read.jump(i, measure)));
                    }
                }
            }
            Set<String> stops = stops(read);
            stops.removeAll(stops(truth));
            falseStops += stops.size();
        }
        return new Outcome(file, styles, values, jumps, falseStops, lost);
    }

    private static double apart(OptionalDouble meant, OptionalDouble read) {
        return meant.isPresent() && read.isPresent() ? Math.abs(meant.getAsDouble() - read.getAsDouble()) : 0;
    }

    private static Set<String> stops(CheckedGrade grade) {
        return GradeChecks.run(grade, Thresholds.usual()).stream()
                .filter(finding -> finding.severity() == Severity.STOP)
                .map(finding -> finding.code() + " " + finding.sizes() + " " + finding.measure())
                .collect(Collectors.toCollection(TreeSet::new));
    }

    private static CheckedGrade table(PatternSet set) throws ForeignInputException {
        String csv = SpecCsv.write(set.title(), SpecTable.of(set.run()), Optional.empty());
        return SpecTableReader.read(
                        ForeignFile.of("spec.csv", csv.getBytes(StandardCharsets.UTF_8)), ForeignOptions.none())
                .grade();
    }

    private static CheckedGrade outlines(byte[] dxf) throws ForeignInputException {
        return OutlineReader.read(List.of(ForeignFile.of("grade.dxf", dxf)), ForeignOptions.none())
                .grade();
    }
}
