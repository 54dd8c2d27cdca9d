package org.capwright.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.capwright.exchange.ForeignFile;
import org.capwright.exchange.ForeignInputException;
import org.capwright.exchange.TestPatterns;
import org.capwright.exchange.dxf.DxfExport;
import org.capwright.exchange.table.SpecCsv;
import org.capwright.grade.Alignment;
import org.capwright.grade.SpecTable;
import org.capwright.gradeimport.ForeignGrade;
import org.capwright.gradeimport.ForeignOptions;
import org.capwright.gradeimport.ImportNote;
import org.capwright.gradeimport.OutlineReader;
import org.capwright.gradeimport.SpecTableReader;
import org.capwright.pattern.PatternSet;

/** Sends random styles through our own files back in as foreign ones, and keeps the largest departure of bicep, length and cap height and of their jumps. */
final class RoundTrip {

    /** Two findings of the same with values nearer than this are one, mm: what coordinates of a file to three decimals may add up to. */
    private static final double SAME = 0.1;

    /** Where a flat cap is highest, a drawing tells less sharply than what is measured from there. */
    private static final double SHARE = 0.02;

    private static final List<CheckedMeasure> LOOKED_AT =
            List.of(CheckedMeasure.BICEP, CheckedMeasure.LENGTH, CheckedMeasure.CAP_HEIGHT);

    /**
     * The outcome for one kind of file.
     *
     * @param file which
     * @param styles how many styles came back
     * @param values largest departure of a figure, mm
     * @param jumps largest departure of a jump, mm
     * @param falseStops stops that the drafted grade has not
     * @param told figures that did not come back, of sizes of which the reading says that they were not read
     * @param lost figures that did not come back without a word
     */
    record Outcome(
            String file,
            int styles,
            double values,
            double jumps,
            List<String> falseStops,
            List<String> told,
            List<String> lost) {

        String text() {
            return String.format(
                    Locale.ROOT,
                    "%-10s %6d styles, largest departure %.4f mm, of a jump %.4f mm, false stops %d, figures not read"
                            + " and told %d, figures lost %d%n",
                    file,
                    styles,
                    values,
                    jumps,
                    falseStops.size(),
                    told.size(),
                    lost.size());
        }
    }

    private interface Reading {
        ForeignGrade of(PatternSet set) throws ForeignInputException;
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
        List<String> falseStops = new ArrayList<>();
        List<String> told = new ArrayList<>();
        List<String> lost = new ArrayList<>();
        for (int seed = 0; seed < styles; seed++) {
            PatternSet set = TestPatterns.random(seed, 3 + seed % 4);
            CheckedGrade truth = CheckedGrade.of(set.run());
            // A run of overlays alone has no sleeve outline that would show a bicep.
            boolean drawn = file.equals("CSV")
                    || truth.baseSize().value(CheckedMeasure.LENGTH).isPresent()
                    || truth.baseSize().value(CheckedMeasure.OVERLAY_EDGE).isEmpty();
            ForeignGrade foreign;
            try {
                foreign = reading.of(set);
            } catch (ForeignInputException e) {
                // Overlays cut for deep pleats, without any sleeve, show nothing that could be read: they may be
                // refused.
                if (drawn || !e.reason().toString().contains("no outline of any size is a sleeve")) {
                    lost.add("seed " + seed + ": " + e.getMessage());
                }
                continue;
            }
            CheckedGrade read = foreign.grade();
            for (CheckedMeasure measure : drawn ? LOOKED_AT : List.<CheckedMeasure>of()) {
                for (int i = 0; i < truth.sizes().size(); i++) {
                    if (truth.value(i, measure).isPresent()
                            && read.value(i, measure).isEmpty()) {
                        (isTold(foreign, truth.label(i)) ? told : lost)
                                .add("seed " + seed + ": " + measure + " of " + truth.label(i));
                    }
                    values = Math.max(values, apart(truth.value(i, measure), read.value(i, measure)));
                    if (i < truth.intervals()) {
                        jumps = Math.max(jumps, apart(truth.jump(i, measure), read.jump(i, measure)));
                    }
                }
            }
            for (Finding stop : GradeChecks.run(read, Thresholds.usual())) {
                if (stop.severity() == Severity.STOP && !meant(stop, truth)) {
                    falseStops.add("seed " + seed + ": " + stop);
                }
            }
        }
        return new Outcome(file, styles, values, jumps, falseStops, told, lost);
    }

    private static boolean isTold(ForeignGrade foreign, String size) {
        return foreign.traces().stream()
                .anyMatch(note -> note.kind() == ImportNote.Kind.NOT_READ
                        && note.subject().equals(size));
    }

    private static double apart(OptionalDouble meant, OptionalDouble read) {
        return meant.isPresent() && read.isPresent() ? Math.abs(meant.getAsDouble() - read.getAsDouble()) : 0;
    }

    /**
     * Whether the drafted grade has the same finding. At the very limit the rounding of a file may tip it from a caution to a stop, and of two sizes that are off by as much to either side
     * it may name the other. What the drafted grade has as a mirrored size is not judged there for its balance.
     */
    private static boolean meant(Finding stop, CheckedGrade truth) {
        return GradeChecks.run(truth, Thresholds.usual()).stream()
                .anyMatch(finding -> finding.code().equals("mirrored-piece")
                                && stop.code().equals("front-back-balance")
                                && stop.sizes().containsAll(finding.sizes())
                        || finding.code().equals(stop.code())
                                && finding.subject().equals(stop.subject())
                                && Math.abs(Math.abs(finding.value().orElse(0))
                                                - Math.abs(stop.value().orElse(0)))
                                        < SAME + SHARE * Math.abs(stop.value().orElse(0)));
    }

    private static ForeignGrade table(PatternSet set) throws ForeignInputException {
        byte[] csv = SpecCsv.write(set.title(), SpecTable.of(set.run()), Optional.empty());
        return SpecTableReader.read(ForeignFile.of("spec.csv", csv), ForeignOptions.none());
    }

    private static ForeignGrade outlines(byte[] dxf) throws ForeignInputException {
        return OutlineReader.read(List.of(ForeignFile.of("grade.dxf", dxf)), ForeignOptions.none());
    }
}
