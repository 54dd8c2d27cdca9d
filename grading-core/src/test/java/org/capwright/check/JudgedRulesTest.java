package org.capwright.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.capwright.Sample;
import org.capwright.draft.BaseSleeve;
import org.capwright.draft.CapFit;
import org.capwright.draft.SleeveStyle;
import org.capwright.grade.GradeRule;
import org.capwright.grade.SizeRun;
import org.capwright.grade.derive.BodySource;
import org.capwright.grade.derive.DerivationRequest;
import org.capwright.grade.derive.DerivedRules;
import org.capwright.grade.derive.EasePolicy;
import org.capwright.grade.derive.LengthPolicy;
import org.capwright.measure.Dimension;
import org.capwright.measure.Dimensions;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Rounding;
import org.capwright.tables.BodyDimension;
import org.capwright.tables.SizeTable;
import org.capwright.tables.SizeTables;
import org.capwright.tables.TableKind;
import org.junit.jupiter.api.Test;

/** Derived rules under the checks that judge them, over every table of bodies that is served and the grids of rooms: 0.5 mm to 1/4 in. */
class JudgedRulesTest {

    private static final List<Double> GRIDS = List.of(0.5, 1.0, 25.4 / 16, 2.0, 25.4 / 8, 5.0, 25.4 / 4);

    private record Derived(SizeTable table, DerivationRequest request, SleeveStyle style, JudgedRules judged) {}

    private static List<SizeTable> bodies() {
        return SizeTables.all().stream()
                .filter(table -> table.info().kind() == TableKind.BODY
                        && table.info().key().isPresent())
                .toList();
    }

    /** A sleeve with 65 mm of ease over the arm of its base size, cap and armhole in the usual proportion; pleats and overlay of the gown. Empty where the table lacks the arm. */
    private static Optional<Derived> derived(SizeTable table, double grid, SleeveStyle style) {
        BodyReference body = BodyReference.of(table);
        int count = Math.min(6, table.sizes().size());
        int from = (table.sizes().size() - count) / 2;
        List<String> sizes = table.sizes().subList(from, from + count);
        int base = count / 2;
        BodyDimension arm = body.counterpart(CheckedMeasure.BICEP).orElseThrow();
        double bicep = Math.rint(body.value(sizes.get(base), arm).orElse(295) + 65);
        boolean overlay = style.overlay().isPresent();
        Dimensions dimensions = (overlay
                        ? ChoirGown.BASE
                        : Dimensions.of(Map.of(
                                Dimension.CAP_OUTWARD, 19.0, Dimension.CAP_INWARD, 12.0, Dimension.LENGTH, 600.0)))
                .with(Dimension.BICEP, bicep)
                .with(Dimension.ELBOW, Math.rint(0.83 * bicep))
                .with(Dimension.WRIST, Math.rint(0.61 * bicep))
                .with(Dimension.CAP_HEIGHT, Math.rint(0.375 * bicep));
        dimensions = dimensions.with(
                Dimension.ARMHOLE, Math.rint(BaseSleeve.draft(dimensions).capLength() - 28));
        if (overlay) {
            dimensions = dimensions.with(Dimension.RISE, 90);
        }
        BodySource source = body.survey()
                .<BodySource>map(survey -> new BodySource.OfTableAndSurvey(table, survey))
                .orElseGet(() -> new BodySource.OfTable(table));
        boolean byStature =
                table.info().key().filter(BodyDimension.STATURE::equals).isPresent();
        DerivationRequest request = new DerivationRequest(
                source,
                sizes,
                base,
                dimensions,
                new EasePolicy.Constant(),
                byStature ? new LengthPolicy.AsTheArm() : new LengthPolicy.Held(),
                DerivationRequest.CapEaseKept.LENGTH,
                new Rounding(grid));
        try {
            JudgedRules judged =
                    JudgedRules.of(DerivedRules.of(request), request, style, List.of(), body, Thresholds.usual());
            return Optional.of(new Derived(table, request, style, judged));
        } catch (InvalidMeasuresException e) {
            // The table has no arm for these sizes, and no survey fills the gap.
            return Optional.empty();
        }
    }

    private static SleeveStyle plain() {
        return new SleeveStyle(new CapFit.Given(), Optional.empty(), ChoirGown.STYLE.underSleeve());
    }

    private static List<Finding> alarms(SizeRun run, SizeTable table) {
        return GradeChecks.run(CheckedGrade.of(run).against(BodyReference.of(table)), Thresholds.usual()).stream()
                .filter(finding -> finding.severity() != Severity.INFO)
                .toList();
    }

    /** What is left is told; what is told is all that a check of the drafted run finds beside what its base size brings along; and all increments are on the grid. */
    private static void assertHonest(Derived derived) {
        DerivationRequest request = derived.request;
        List<GradeRule> rules = derived.judged.rules();
        for (GradeRule rule : rules) {
            for (double increment : rule.increments()) {
                double steps = increment / request.grid().step();
                assertEquals(Math.rint(steps), steps, 1e-6, derived.table.id() + " " + rule);
            }
        }
        SizeRun run = SizeRun.grade(derived.style, request.dimensions(), request.sizes(), request.base(), rules);
        SizeRun alone = SizeRun.grade(
                derived.style, request.dimensions(), List.of(request.sizes().get(request.base())), 0, List.of());
        List<String> ofBase =
                alarms(alone, derived.table).stream().map(Finding::code).toList();
        assertEquals(
                alarms(run, derived.table).stream()
                        .filter(finding -> !ofBase.contains(finding.code()))
                        .map(finding -> finding.code() + finding.sizes())
                        .collect(Collectors.toSet()),
                derived.judged.left().stream()
                        .filter(finding -> !ofBase.contains(finding.code()))
                        .map(finding -> finding.code() + finding.sizes())
                        .collect(Collectors.toSet()),
                derived.table.id() + " " + request.grid());
        assertTrue(
                derived.judged.left().stream().noneMatch(finding -> finding.severity() == Severity.STOP),
                derived.table.id() + " " + request.grid() + " " + derived.judged.left());
    }

    /** On half a millimetre and on one, every served table gives a plain sleeve rules without a stop or a caution; on coarser grids what no increment can meet is told. */
    @Test
    void everyTableGivesRulesThatPass() throws IOException {
        List<SizeTable> tables = bodies();
        List<String> left = new ArrayList<>();
        Map<Double, int[]> shares = new TreeMap<>();
        int sets = 0;
        for (int t = 0; t < tables.size(); t++) {
            for (int g = 0; g < GRIDS.size(); g++) {
                if ((t + g) % Sample.of(11, 1) != 0) {
                    continue;
                }
                Optional<Derived> derived = derived(tables.get(t), GRIDS.get(g), plain());
                if (derived.isPresent()) {
                    sets++;
                    assertHonest(derived.get());
                    int[] share = shares.computeIfAbsent(GRIDS.get(g), grid -> new int[2]);
                    share[0] += derived.get().judged.left().isEmpty() ? 1 : 0;
                    share[1]++;
                    if (GRIDS.get(g) <= 1 && !derived.get().judged.left().isEmpty()) {
                        left.add(tables.get(t).id() + " " + GRIDS.get(g) + " "
                                + derived.get().judged.left());
                    }
                }
            }
        }
        StringBuilder text = new StringBuilder();
        shares.forEach((grid, share) -> text.append(grid)
                .append(" mm: ")
                .append(share[0])
                .append(" of ")
                .append(share[1])
                .append('\n'));
        Path folder = Path.of("target", "check-bars");
        Files.createDirectories(folder);
        Files.writeString(folder.resolve("derived-rules.txt"), text);
        assertTrue(sets >= Sample.of(8, 110), sets + " sets");
        assertEquals(List.of(), left);
    }

    /** With the pleated overlay of the gown as well; its pleats stay as deep, or it is told. */
    @Test
    void pleatsAreJudgedWithTheRest() {
        for (SizeTable table : Sample.of(1, 9) == 1
                ? List.of(ChoirGown.women())
                : bodies().stream().filter(one -> one.id().contains("women")).toList()) {
            // A table without arms has a survey's, or no rules.
            derived(table, 1, ChoirGown.STYLE).ifPresent(JudgedRulesTest::assertHonest);
        }
        assertEquals(
                List.of(),
                derived(ChoirGown.women(), 1, ChoirGown.STYLE)
                        .orElseThrow()
                        .judged
                        .left());
    }

    /** The class means of the armhole jump by 10 to 13.5 mm by chance; the rule has at most two breaks, and the bicep breaks only where the class gets wider, 44 to 46 (EN 13402-3:2004). */
    @Test
    void chanceUpsAndDownsAreNotCopied() {
        DerivationRequest request = new DerivationRequest(
                new BodySource.OfTable(ChoirGown.women()),
                ChoirGown.LABELS,
                2,
                ChoirGown.BASE,
                new EasePolicy.Constant(),
                new LengthPolicy.Held(),
                DerivationRequest.CapEaseKept.LENGTH,
                new Rounding(1));
        DerivedRules derived = DerivedRules.of(request);
        JudgedRules judged = JudgedRules.of(
                derived, request, ChoirGown.STYLE, List.of(), BodyReference.of(ChoirGown.women()), Thresholds.usual());
        for (GradeRule rule : judged.rules()) {
            long breaks = Stream.iterate(1, k -> k < 5, k -> k + 1)
                    .filter(k ->
                            !rule.increments().get(k).equals(rule.increments().get(k - 1)))
                    .count();
            assertTrue(breaks <= 2, rule.toString());
        }
        GradeRule bicep = judged.rules().stream()
                .filter(rule -> rule.dimension() == Dimension.BICEP)
                .findFirst()
                .orElseThrow();
        assertTrue(bicep.increments().get(4) >= 13.4, bicep.toString());
        assertTrue(
                derived.rules().stream()
                        .filter(rule -> rule.dimension() == Dimension.ARMHOLE)
                        .anyMatch(rule -> rule.increments().stream().distinct().count() > 2),
                "without this the table is no example of chance");
    }
}
