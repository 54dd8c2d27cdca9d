package org.capwright.gradeimport;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import org.capwright.Sample;
import org.capwright.check.CheckedGrade;
import org.capwright.check.CheckedMeasure;
import org.capwright.check.Finding;
import org.capwright.check.GradeChecks;
import org.capwright.check.Severity;
import org.capwright.check.Thresholds;
import org.capwright.exchange.ForeignFile;
import org.capwright.exchange.ForeignInputException;
import org.capwright.exchange.TestPatterns;
import org.capwright.exchange.dxf.DxfExport;
import org.capwright.exchange.table.SpecCsv;
import org.capwright.grade.Alignment;
import org.capwright.grade.SpecTable;
import org.capwright.pattern.PatternSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Our own files go in as foreign ones. What comes out is compared with the drafted lines, which no reader has seen. */
class OwnFilesTest {

    private static final double CLOSE = 0.05;
    private static final int STYLES = Sample.of(60, 500);
    private static final int MIRRORED = Sample.of(1, 5);

    static LongStream seeds() {
        return LongStream.range(0, STYLES);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void ownFilesComeBack(long seed) throws ForeignInputException {
        PatternSet set = TestPatterns.random(seed, 3 + (int) (seed % 4));
        CheckedGrade truth = CheckedGrade.of(set.run());
        ForeignGrade sheet = SpecTableReader.read(
                ForeignFile.of("spec.csv", SpecCsv.write(set.title(), SpecTable.of(set.run()), Optional.empty())),
                ForeignOptions.none());
        assertEquals(List.of(), sheet.unread(), "every row of our own is known");
        CheckedGrade table = sheet.grade();
        same(
                seed,
                truth,
                table,
                EnumSet.copyOf(CheckedGrade.of(SpecTable.of(set.run()))
                        .baseSize()
                        .values()
                        .keySet()));
        Set<CheckedMeasure> drawn = drawn(truth);
        if (drawn.isEmpty() && isRefused(set)) {
            return;
        }
        CheckedGrade blocks = outlines(DxfExport.blocks(set)).grade();
        same(seed, truth, blocks, drawn);
        noFalseStop(seed, truth, blocks);
        noFalseStop(seed, truth, table);
        Alignment alignment = Alignment.values()[(int) (seed % 3)];
        CheckedGrade nest = outlines(DxfExport.nest(set, alignment)).grade();
        same(seed, truth, nest, drawn);
        noFalseStop(seed, truth, nest);
    }

    /** Overlays cut for deep pleats, without any sleeve, show nothing that could be read: they may be refused, in so many words. */
    private static boolean isRefused(PatternSet set) {
        try {
            outlines(DxfExport.blocks(set));
            return false;
        } catch (ForeignInputException e) {
            assertTrue(e.reason().toString().contains("no outline of any size is a sleeve"), e.getMessage());
            return true;
        }
    }

    /** What the lines of the pieces show. */
    private static Set<CheckedMeasure> drawn(CheckedGrade truth) {
        Set<CheckedMeasure> drawn = EnumSet.noneOf(CheckedMeasure.class);
        boolean overlay = truth.baseSize().value(CheckedMeasure.OVERLAY_EDGE).isPresent();
        boolean under = truth.baseSize().value(CheckedMeasure.LENGTH).isPresent();
        // An edge cut for its pleats does not show the flat edge that the draft has.
        boolean flat =
                overlay && truth.baseSize().value(CheckedMeasure.PLEAT_DEPTH).isEmpty();
        if (flat) {
            drawn.addAll(List.of(CheckedMeasure.OVERLAY_EDGE, CheckedMeasure.OVERLAY_TOTAL_LENGTH));
        }
        if (under) {
            drawn.addAll(List.of(CheckedMeasure.LENGTH, CheckedMeasure.WRIST));
        }
        if (under || !overlay) {
            drawn.addAll(List.of(
                    CheckedMeasure.BICEP,
                    CheckedMeasure.CAP_HEIGHT,
                    CheckedMeasure.CAP_LINE,
                    CheckedMeasure.FRONT_CAP_LINE,
                    CheckedMeasure.BACK_CAP_LINE,
                    CheckedMeasure.FRONT_WIDTH,
                    CheckedMeasure.BACK_WIDTH));
        }
        if (under && flat) {
            drawn.add(CheckedMeasure.RISE);
        }
        return drawn;
    }

    /** Stops that the drafted grade itself does not have. */
    private static void noFalseStop(long seed, CheckedGrade truth, CheckedGrade read) {
        Set<String> meant = stops(truth);
        Set<String> found = stops(read);
        found.removeAll(meant);
        assertTrue(found.isEmpty(), () -> "seed " + seed + ": " + found);
    }

    private static Set<String> stops(CheckedGrade grade) {
        return GradeChecks.run(grade, Thresholds.usual()).stream()
                .filter(finding -> finding.severity() == Severity.STOP)
                .map(finding -> finding.code() + " " + finding.sizes() + " "
                        + finding.subject().code())
                .collect(Collectors.toCollection(TreeSet::new));
    }

    private static void same(long seed, CheckedGrade truth, CheckedGrade read, Set<CheckedMeasure> wanted) {
        assertEquals(
                truth.sizes().stream().map(s -> s.label()).toList(),
                read.sizes().stream().map(s -> s.label()).toList(),
                "seed " + seed);
        assertEquals(truth.base(), read.base(), "seed " + seed);
        List<String> wrong = new ArrayList<>();
        for (int i = 0; i < truth.sizes().size(); i++) {
            for (CheckedMeasure measure : wanted) {
                compare(wrong, truth.label(i) + " " + measure, truth.value(i, measure), read.value(i, measure));
                if (i < truth.intervals()) {
                    compare(wrong, "jump " + i + " " + measure, truth.jump(i, measure), read.jump(i, measure));
                }
            }
        }
        assertTrue(wrong.isEmpty(), () -> "seed " + seed + ": " + wrong);
    }

    private static void compare(List<String> wrong, String what, OptionalDouble meant, OptionalDouble read) {
        if (meant.isEmpty() || read.isEmpty() || Math.abs(meant.getAsDouble() - read.getAsDouble()) > CLOSE) {
            wrong.add(what + " " + meant + " read as " + read);
        }
    }

    private static ForeignGrade outlines(byte[] dxf) throws ForeignInputException {
        return OutlineReader.read(List.of(ForeignFile.of("grade.dxf", dxf)), ForeignOptions.none());
    }

    @Test
    void aCleanGownRaisesNoStop() throws ForeignInputException {
        PatternSet gown = TestPatterns.choirGown();
        for (byte[] drawing : List.of(DxfExport.blocks(gown), DxfExport.nest(gown, Alignment.FOLD_AND_BICEP_LINE))) {
            ForeignGrade read = outlines(drawing);
            assertTrue(
                    GradeChecks.run(read.grade(), Thresholds.usual()).stream()
                            .noneMatch(finding -> finding.severity() == Severity.STOP),
                    () -> read.traces().toString());
            assertTrue(
                    read.traces().stream()
                            .anyMatch(t -> t.subject().equals("40")
                                    && t.words().toString().contains("fold")),
                    () -> read.traces().toString());
        }
    }

    @Test
    void aMirroredInsertIsFoundByTheChecks() throws ForeignInputException {
        int mirrored = 0;
        for (long seed = 0; mirrored < MIRRORED; seed += 2) {
            if (!showsItsSides(CheckedGrade.of(TestPatterns.randomRun(seed, 5)))) {
                continue;
            }
            PatternSet set = TestPatterns.random(seed, 5);
            CheckedGrade truth = CheckedGrade.of(set.run());
            if (!showsItsSides(truth)) {
                continue;
            }
            mirrored++;
            String text = new String(DxfExport.blocks(set), StandardCharsets.US_ASCII);
            String insert = "  0\r\nINSERT\r\n  8\r\n1\r\n  2\r\nUNDER-SLEEVE-40\r\n";
            assertTrue(text.contains(insert), "seed " + seed);
            ForeignGrade read =
                    outlines(text.replace(insert, insert + " 41\r\n-1.0\r\n").getBytes(StandardCharsets.US_ASCII));
            assertEquals(
                    truth.value(2, CheckedMeasure.LENGTH).orElseThrow(),
                    read.grade().value(2, CheckedMeasure.LENGTH).orElseThrow(),
                    CLOSE,
                    "seed " + seed);
            List<Finding> found = GradeChecks.run(read.grade(), Thresholds.usual());
            assertTrue(
                    found.stream()
                            .anyMatch(f -> f.code().equals("mirrored-piece")
                                    && f.sizes().equals(List.of("40"))),
                    "seed " + seed + ": " + found);
        }
    }

    /** Halves whose difference is small, or changes its sign or much else within the run, show no side. */
    private static boolean showsItsSides(CheckedGrade grade) {
        double[] differences = IntStream.range(0, 5)
                .mapToDouble(i -> grade.value(i, CheckedMeasure.FRONT_WIDTH).orElseThrow()
                        - grade.value(i, CheckedMeasure.BACK_WIDTH).orElseThrow())
                .toArray();
        double least = Arrays.stream(differences).min().orElseThrow();
        double most = Arrays.stream(differences).max().orElseThrow();
        return least * most > 0 && Math.abs(least + most) >= 20 && Math.abs(most - least) <= Math.abs(most + least) / 4;
    }
}
