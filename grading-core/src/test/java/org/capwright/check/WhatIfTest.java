package org.capwright.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import org.capwright.Sample;
import org.capwright.draft.CapFit;
import org.capwright.draft.ElbowShaping;
import org.capwright.draft.SleeveStyle;
import org.capwright.draft.StyleSpace;
import org.capwright.draft.UnderSleeveStyle;
import org.capwright.grade.GradeRule;
import org.capwright.grade.GradedSize;
import org.capwright.grade.SizeRun;
import org.capwright.measure.Dimension;
import org.capwright.measure.Dimensions;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Rounding;
import org.junit.jupiter.api.Test;

class WhatIfTest {

    private static final Rounding MILLIMETRE = new Rounding(1);

    private static final Optional<BodyReference> WOMEN = Optional.of(BodyReference.of(ChoirGown.women()));

    private static WhatIf.Proposal propose(List<GradeRule> rules) {
        return WhatIf.smallest(ChoirGown.run(rules), WOMEN, Thresholds.usual(), MILLIMETRE);
    }

    private static List<GradeRule> withBicep(Double... increments) {
        List<GradeRule> rules = new ArrayList<>(ChoirGown.RULES);
        rules.set(0, new GradeRule(Dimension.BICEP, List.of(increments)));
        return rules;
    }

    /** The gown of the demo: its rules, with some put otherwise. */
    private static SizeRun demo(GradeRule... otherwise) {
        Map<Dimension, GradeRule> rules = new EnumMap<>(Dimension.class);
        Map.of(
                        Dimension.BICEP, 13.0,
                        Dimension.LENGTH, 5.0,
                        Dimension.CAP_HEIGHT, 4.0,
                        Dimension.ARMHOLE, 15.0,
                        Dimension.RISE, 2.0,
                        Dimension.OVERLAY_LENGTH, 11.0,
                        Dimension.ELBOW, 8.0,
                        Dimension.WRIST, 5.0)
                .forEach((dimension, jump) -> rules.put(dimension, GradeRule.uniform(dimension, jump, 6)));
        for (GradeRule rule : otherwise) {
            rules.put(rule.dimension(), rule);
        }
        Dimensions base = ChoirGown.BASE.with(Dimension.ELBOW, 300).with(Dimension.WRIST, 220);
        return SizeRun.grade(ChoirGown.STYLE, base, ChoirGown.LABELS, 2, new ArrayList<>(rules.values()));
    }

    private static List<Finding> alarms(SizeRun run, Optional<BodyReference> body) {
        CheckedGrade grade = CheckedGrade.of(run);
        return GradeChecks.run(body.map(grade::against).orElse(grade), Thresholds.usual()).stream()
                .filter(finding -> finding.severity() != Severity.INFO)
                .toList();
    }

    /** One figure, that of the slip; no stop is left, none is made, and both ends of the passing range pass as the proposal does. */
    private static WhatIf.Cure cured(SizeRun slipped, Optional<BodyReference> body, Dimension dimension) {
        List<Finding> before = alarms(slipped, body);
        WhatIf.Proposal proposal = WhatIf.smallest(slipped, body, Thresholds.usual(), MILLIMETRE);
        assertTrue(proposal.cleared(), () -> proposal.remaining().toString());
        assertEquals(1, proposal.cures().size(), () -> proposal.cures().toString());
        WhatIf.Cure cure = proposal.cures().get(0);
        assertEquals(dimension, cure.place());
        assertTrue(cure.passing().contains(cure.after()), cure::toString);
        Severity gravest =
                before.stream().map(Finding::severity).max(Severity::compareTo).orElseThrow();
        for (double value : new double[] {
            cure.after(), cure.passing().lower(), cure.passing().upper()
        }) {
            List<Finding> after = alarms(with(slipped, cure, value), body);
            assertTrue(
                    after.stream().allMatch(finding -> finding.severity().compareTo(gravest) < 0),
                    () -> cure + " at " + value + ": " + after);
            Set<String> known = before.stream().map(CureSearch::key).collect(Collectors.toSet());
            assertTrue(
                    after.stream().map(CureSearch::key).allMatch(known::contains),
                    () -> cure + " at " + value + " creates: " + after);
        }
        return cure;
    }

    /** The run with another figure, put together here anew. */
    private static SizeRun with(SizeRun run, WhatIf.Cure cure, double value) {
        List<String> labels = run.sizes().stream().map(GradedSize::label).toList();
        int first = labels.indexOf(cure.sizes().get(0));
        int last = labels.indexOf(cure.sizes().get(1));
        List<GradeRule> rules = new ArrayList<>(run.rules());
        GradeRule old = rules.stream()
                .filter(rule -> rule.dimension() == cure.place())
                .findFirst()
                .orElse(GradeRule.uniform((Dimension) cure.place(), 0, labels.size()));
        rules.remove(old);
        List<Double> increments = new ArrayList<>(old.increments());
        for (int k = first; k < last; k++) {
            increments.set(k, value);
        }
        rules.add(new GradeRule(old.dimension(), increments));
        return SizeRun.grade(run.style(), run.baseSize().draft().dimensions(), labels, run.base(), rules);
    }

    /** The body's jump is 11.2 to 13.8 mm, so 30 mm balloons in every size; one increment for all is enough. */
    @Test
    void oneFigureMendsABicepThatBalloons() {
        WhatIf.Cure cure = cured(demo(GradeRule.uniform(Dimension.BICEP, 30, 6)), WOMEN, Dimension.BICEP);
        assertEquals(List.of("36", "46"), cure.sizes());
        assertTrue(cure.after() >= 13 && cure.after() <= 17, cure::toString);
    }

    @Test
    void oneFigureMendsAWristThatBalloons() {
        WhatIf.Cure cure = cured(demo(GradeRule.uniform(Dimension.WRIST, 30, 6)), WOMEN, Dimension.WRIST);
        // The wrist grows by 2 to 2.3 mm per 40 mm of bust; 6 mm of ease growth more.
        assertTrue(cure.passing().lower() > 1.9 && cure.passing().upper() < 8.5, cure::toString);
    }

    @Test
    void oneFigureMendsASignThatSlipped() {
        WhatIf.Cure cure = cured(
                demo(new GradeRule(Dimension.LENGTH, List.of(5.0, -15.0, 5.0, 5.0, 5.0))), WOMEN, Dimension.LENGTH);
        assertEquals(List.of("38", "40"), cure.sizes());
        assertTrue(cure.passing().contains(5), cure::toString);
    }

    /** An armhole that was forgotten is told as such, and not answered by the cap height. */
    @Test
    void aForgottenArmholeIsGraded() {
        GradeRule none = GradeRule.uniform(Dimension.ARMHOLE, 0, 6);
        WhatIf.Cure cure = cured(demo(none), WOMEN, Dimension.ARMHOLE);
        assertTrue(cure.after() >= 13 && cure.after() <= 16, cure::toString);
        // Without bodies the cap ease alone tells.
        assertEquals(
                List.of("36", "46"),
                cured(demo(none), Optional.empty(), Dimension.ARMHOLE).sizes());
    }

    /** Four rules wrong at once are four cures, each with its own figure. */
    @Test
    void asManyFiguresAsThereAreSlips() {
        WhatIf.Proposal proposal = WhatIf.smallest(
                demo(
                        GradeRule.uniform(Dimension.BICEP, 30, 6),
                        GradeRule.uniform(Dimension.WRIST, 30, 6),
                        GradeRule.uniform(Dimension.ELBOW, 40, 6),
                        GradeRule.uniform(Dimension.LENGTH, 60, 6)),
                WOMEN,
                Thresholds.usual(),
                MILLIMETRE);
        assertTrue(proposal.cleared());
        assertEquals(
                Set.of(Dimension.BICEP, Dimension.WRIST, Dimension.ELBOW, Dimension.LENGTH),
                proposal.cures().stream().map(WhatIf.Cure::place).collect(Collectors.toSet()));
        assertEquals(4, proposal.cures().size());
    }

    /** A jump that is raised for the body's growth and, where the bicep is tight, once more for the ease, is one figure to change: from what its maker wrote to what is meant in the end. */
    @Test
    void aFigureIsNamedOnce() {
        GradeRule bicep = new GradeRule(Dimension.BICEP, List.of(11.2, 11.6, 11.6, 11.6));
        SleeveStyle plain = new SleeveStyle(
                new CapFit.Given(), Optional.empty(), Optional.of(new UnderSleeveStyle(ElbowShaping.TAPERED)));
        SizeRun run = SizeRun.grade(
                plain,
                Dimensions.of(Map.of(
                        Dimension.BICEP, 322.0,
                        Dimension.CAP_HEIGHT, 121.3,
                        Dimension.ARMHOLE, 384.0,
                        Dimension.LENGTH, 548.0,
                        Dimension.ELBOW, 262.2,
                        Dimension.WRIST, 204.0)),
                ChoirGown.LABELS.subList(0, 5),
                1,
                List.of(
                        bicep,
                        GradeRule.uniform(Dimension.CAP_HEIGHT, 4, 5),
                        GradeRule.uniform(Dimension.ARMHOLE, 14.9, 5),
                        GradeRule.uniform(Dimension.LENGTH, 3.5, 5),
                        GradeRule.uniform(Dimension.ELBOW, 6, 5),
                        GradeRule.uniform(Dimension.WRIST, 5, 5)));
        List<WhatIf.Cure> cures =
                WhatIf.smallest(run, WOMEN, Thresholds.usual(), MILLIMETRE).cures();
        List<List<Object>> figures = new ArrayList<>();
        for (WhatIf.Cure cure : cures) {
            figures.add(List.of(cure.place(), cure.sizes()));
            if (cure.place() == Dimension.BICEP) {
                int jump = ChoirGown.LABELS.indexOf(cure.sizes().get(0));
                assertEquals(bicep.increments().get(jump), cure.before(), 1e-6, cure::toString);
            }
            assertTrue(cure.passing().contains(cure.after()), cure::toString);
        }
        assertEquals(Set.copyOf(figures).size(), figures.size(), cures::toString);
    }

    /** A wrist that a usual hand does not pass is no matter of the rules: it is left as it was, and the proposal does not say that all is clear. */
    @Test
    void tellsOfWhatNoRuleClears() {
        SizeRun gown = demo(GradeRule.uniform(Dimension.BICEP, 18, 6));
        SizeRun narrow = SizeRun.grade(
                gown.style(),
                gown.baseSize().draft().dimensions().with(Dimension.WRIST, 180),
                ChoirGown.LABELS,
                2,
                gown.rules());
        WhatIf.Proposal proposal = WhatIf.smallest(narrow, Optional.empty(), Thresholds.usual(), MILLIMETRE);
        assertEquals(1, proposal.cures().size());
        assertTrue(
                proposal.remaining().stream().map(Finding::code).anyMatch("wrist-opening"::equals),
                () -> proposal.remaining().toString());
        assertFalse(proposal.cleared());
        SizeRun alone = SizeRun.grade(
                gown.style(),
                gown.baseSize().draft().dimensions().with(Dimension.ARMHOLE, 380),
                List.of("40"),
                0,
                List.of());
        assertFalse(
                WhatIf.smallest(alone, WOMEN, Thresholds.usual(), MILLIMETRE).cleared(), "one size has no rules");
    }

    /** A report opens with what is behind its findings: four slips are four causes, and nearly all that they bring about hangs under them, every finding once. */
    @Test
    void findingsHangUnderTheFiguresBehindThem() {
        SizeRun slipped = demo(
                GradeRule.uniform(Dimension.BICEP, 30, 6),
                GradeRule.uniform(Dimension.WRIST, 30, 6),
                GradeRule.uniform(Dimension.ELBOW, 40, 6),
                GradeRule.uniform(Dimension.LENGTH, 60, 6));
        List<Finding> findings =
                GradeChecks.run(CheckedGrade.of(slipped).against(WOMEN.orElseThrow()), Thresholds.usual());
        List<Cause> causes = Cause.of(
                WhatIf.smallest(slipped, WOMEN, Thresholds.usual(), MILLIMETRE).cures(), findings);
        assertEquals(
                findings.size(),
                causes.stream().mapToInt(cause -> cause.findings().size()).sum());
        List<Cause> figures =
                causes.stream().filter(cause -> cause.cure().isPresent()).toList();
        assertEquals(4, figures.size());
        long alarms = findings.stream()
                .filter(finding -> finding.severity() != Severity.INFO)
                .count();
        long explained = figures.stream()
                .flatMap(cause -> cause.findings().stream())
                .filter(finding -> finding.severity() != Severity.INFO)
                .count();
        assertTrue(alarms > 30, "only " + alarms);
        // What is left lies in the base size: pleats that overlap, and the jump to the wider class.
        assertTrue(alarms - explained <= 2, alarms + " findings, " + explained + " explained");
        assertTrue(
                figures.get(0).words().toString().startsWith("One figure explains "),
                figures.get(0).words().toString());
    }

    /**
     * Single slips in clean grades, seeded: an increment forgotten, of the wrong sign, off by 3 to 22 mm or half as much again and more, or a whole rule so. Every second is compared with the bodies of
     * the women's table.
     */
    @Test
    void oneFigureMendsASingleSlip() {
        int wanted = Sample.of(12, 300);
        int slips = 0;
        int mended = 0;
        List<String> missed = new ArrayList<>();
        for (long seed = 1; slips < wanted; seed++) {
            Random random = new Random(seed);
            Optional<BodyReference> body = seed % 2 == 0 ? WOMEN : Optional.empty();
            SizeRun clean = body.isPresent() ? graded(random) : CleanRuns.of(seed);
            Optional<SizeRun> slipped = alarms(clean, body).isEmpty() ? slipped(clean, random) : Optional.empty();
            if (slipped.isEmpty() || alarms(slipped.get(), body).isEmpty()) {
                continue;
            }
            slips++;
            Set<String> known =
                    alarms(slipped.get(), body).stream().map(CureSearch::key).collect(Collectors.toSet());
            WhatIf.Proposal proposal = WhatIf.smallest(slipped.get(), body, Thresholds.usual(), MILLIMETRE);
            List<Finding> after = alarms(proposal.run(), body);
            assertTrue(
                    after.stream().map(CureSearch::key).allMatch(known::contains),
                    "seed " + seed + " creates " + after);
            if (proposal.cleared() && proposal.cures().size() == 1) {
                WhatIf.Cure cure = proposal.cures().get(0);
                assertTrue(cure.passing().contains(cure.after()), "seed " + seed + ": " + cure);
                mended++;
            } else {
                missed.add("seed " + seed + ": " + proposal.cures() + " " + proposal.remaining());
            }
        }
        assertTrue(mended >= 0.97 * slips - 1, mended + " of " + slips + ": " + missed);
        assertTrue(slips < 100 || mended >= 0.97 * slips, mended + " of " + slips + ": " + missed);
    }

    /** A grade without a finding against the women's table: the gown plain, with rules about what the arm grows by. */
    private static SizeRun graded(Random random) {
        boolean broken = random.nextBoolean();
        List<GradeRule> rules = new ArrayList<>();
        rules.add(new GradeRule(
                Dimension.BICEP, broken ? List.of(13.0, 13.0, 13.0, 13.0, 14.5) : Collections.nCopies(5, 14.0)));
        rules.add(GradeRule.uniform(Dimension.ARMHOLE, 15, 6));
        rules.add(GradeRule.uniform(Dimension.CAP_HEIGHT, 4, 6));
        rules.add(GradeRule.uniform(Dimension.LENGTH, 1 + random.nextInt(6), 6));
        rules.add(GradeRule.uniform(Dimension.ELBOW, 7 + random.nextInt(5), 6));
        rules.add(GradeRule.uniform(Dimension.WRIST, 3 + random.nextInt(4), 6));
        return SizeRun.grade(
                new SleeveStyle(new CapFit.Given(), Optional.empty(), ChoirGown.STYLE.underSleeve()),
                ChoirGown.BASE.with(Dimension.ELBOW, 300).with(Dimension.WRIST, 220),
                ChoirGown.LABELS,
                2,
                rules);
    }

    private static Optional<SizeRun> slipped(SizeRun clean, Random random) {
        List<GradeRule> rules = new ArrayList<>(clean.rules());
        int at = random.nextInt(rules.size());
        GradeRule rule = rules.get(at);
        List<Double> increments = new ArrayList<>(rule.increments());
        int k = random.nextInt(increments.size());
        double meant = increments.get(k);
        double wrong = switch (random.nextInt(4)) {
            case 0 -> 0;
            case 1 -> meant + (random.nextBoolean() ? 1 : -1) * (3 + random.nextInt(20));
            case 2 -> -meant;
            default -> meant * StyleSpace.between(random, 1.5, 3.5);
        };
        boolean whole = increments.stream().distinct().count() == 1 && random.nextBoolean();
        for (int i = whole ? 0 : k; i < (whole ? increments.size() : k + 1); i++) {
            increments.set(i, wrong);
        }
        rules.set(at, new GradeRule(rule.dimension(), increments));
        try {
            return Optional.of(SizeRun.grade(
                    clean.style(),
                    clean.baseSize().draft().dimensions(),
                    clean.sizes().stream().map(GradedSize::label).toList(),
                    clean.base(),
                    rules));
        } catch (InvalidMeasuresException e) {
            return Optional.empty();
        }
    }

    /** Cautions that no rule brings about, such as pleats that overlap in every size, are left; nothing is proposed for them. */
    @Test
    void proposesNothingThatDoesNotHelp() {
        SizeRun run = demo(new GradeRule(Dimension.BICEP, List.of(13.0, 13.0, 13.0, 13.0, 14.0)));
        assertEquals(
                List.of("pleat-layers"),
                alarms(run, WOMEN).stream().map(Finding::code).toList());
        WhatIf.Proposal proposal = WhatIf.smallest(run, WOMEN, Thresholds.usual(), MILLIMETRE);
        assertEquals(List.of(), proposal.changes());
        assertEquals(List.of(), proposal.cures());
    }

    /**
     * A bicep that grows by 4 mm above size 40. The stops ask for 7.94 mm there at least (the survey's lower bound 11.94 less the limit 4), and from 40 to 46 for no more than 10 mm of ease
     * lost against the arm's 39.4 mm: 29.4 mm in all. The least total change is therefore 29.4 - 12 = 17.4 mm, whichever of the jumps take it.
     */
    @Test
    void asksForTheSmallestChangeThatKeepsTheEase() {
        List<GradeRule> rules = withBicep(12.0, 12.0, 4.0, 4.0, 4.0);
        WhatIf.Proposal proposal = WhatIf.clearingStops(
                ChoirGown.run(rules),
                Optional.of(BodyReference.of(ChoirGown.women())),
                // The drift of the cap ease would ask for a little more; it is looked at in a test of its own.
                Thresholds.usual().with(Threshold.CAP_EASE_DRIFT_STOP, 100),
                // The other rules are dear, so that only the bicep may change unless they have to.
                Map.of(Dimension.CAP_HEIGHT, 50.0, Dimension.ARMHOLE, 50.0),
                new Rounding(0.001));
        assertTrue(proposal.cleared(), () -> proposal.remaining().toString());
        WhatIf.Change bicep = proposal.changes().stream()
                .filter(c -> c.dimension() == Dimension.BICEP)
                .findFirst()
                .orElseThrow();
        double total = 0;
        for (int k = 0; k < 5; k++) {
            double change = bicep.after().increments().get(k)
                    - bicep.before().increments().get(k);
            assertTrue(change >= -1e-9, "no increment falls: " + bicep);
            total += change;
        }
        assertEquals(17.4, total, 0.05);
    }

    /** Cap heights that grow far too little: the ease runs out, and has to come back through cap height, bicep or armhole. */
    @Test
    void restoresTheCapEaseAlthoughItIsNotLinear() {
        List<GradeRule> rules = new ArrayList<>(ChoirGown.RULES);
        rules.set(2, GradeRule.uniform(Dimension.CAP_HEIGHT, 0, 6));
        SizeRun run = ChoirGown.run(rules);
        assertTrue(GradeChecks.run(CheckedGrade.of(run), Thresholds.usual()).stream()
                .anyMatch(f -> f.code().equals("cap-ease-drift") && f.severity() == Severity.STOP));
        WhatIf.Proposal proposal = propose(rules);
        assertTrue(proposal.cleared(), () -> proposal.remaining().toString());
        assertTrue(!proposal.changes().isEmpty());
    }

    /**
     * A base size that is tighter than the arm allows stays so under any rule; a jump of 40 mm beside it does not have to. What can be mended is mended, and what cannot is told.
     */
    @Test
    void mendsWhatItCanWhereTheBaseSizeStops() {
        // The gown has 65.5 mm of ease over the arm of its base size.
        Thresholds wide = Thresholds.usual().with(Threshold.BICEP_EASE_STOP, 66).with(Threshold.BICEP_EASE_ADVISED, 66);
        SizeRun run = ChoirGown.run(withBicep(12.0, 12.0, 40.0, 12.0, 12.0));
        WhatIf.Proposal proposal = WhatIf.smallest(run, WOMEN, wide, MILLIMETRE);
        assertTrue(!proposal.cleared());
        assertTrue(!proposal.changes().isEmpty());
        assertTrue(
                proposal.remaining().stream().allMatch(f -> f.code().equals("bicep-ease")),
                () -> proposal.remaining().toString());
    }

    /** What is proposed is free of stops when drafted and checked anew, whatever the rules were. */
    @Test
    void everyProposalIsVerified() {
        int cleared = 0;
        int stopped = 0;
        for (long seed = 1; seed <= Sample.of(10, 40); seed++) {
            Random random = new Random(seed);
            List<GradeRule> rules = new ArrayList<>();
            for (Dimension dimension : List.of(
                    Dimension.BICEP, Dimension.CAP_HEIGHT, Dimension.ARMHOLE, Dimension.LENGTH, Dimension.ELBOW)) {
                rules.add(new GradeRule(
                        dimension,
                        Collections.nCopies(
                                5, StyleSpace.between(random, 0, dimension == Dimension.CAP_HEIGHT ? 7 : 24))));
            }
            SizeRun run;
            try {
                run = ChoirGown.run(rules);
            } catch (InvalidMeasuresException e) {
                continue;
            }
            CheckedGrade before = CheckedGrade.of(run).against(BodyReference.of(ChoirGown.women()));
            if (GradeChecks.run(before, Thresholds.usual()).stream().noneMatch(f -> f.severity() == Severity.STOP)) {
                continue;
            }
            stopped++;
            WhatIf.Proposal proposal = propose(rules);
            List<Finding> after = GradeChecks.run(
                    CheckedGrade.of(proposal.run()).against(BodyReference.of(ChoirGown.women())), Thresholds.usual());
            assertEquals(
                    proposal.cleared(), after.stream().noneMatch(f -> f.severity() == Severity.STOP), "seed " + seed);
            cleared += proposal.cleared() ? 1 : 0;
        }
        assertTrue(2 * stopped > Sample.of(10, 40), "too few runs were stopped: " + stopped);
        assertTrue(cleared >= 0.9 * stopped - 1, cleared + " of " + stopped + " cleared");
    }
}
