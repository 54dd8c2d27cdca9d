package org.capwright.check;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import org.capwright.draft.BaseSleeve;
import org.capwright.draft.CapFit;
import org.capwright.draft.SleeveStyle;
import org.capwright.grade.GradeRule;
import org.capwright.grade.SizeRun;
import org.capwright.grade.SpecTable;
import org.capwright.grade.derive.DerivationRequest;
import org.capwright.grade.derive.DerivedRules;
import org.capwright.measure.Dimension;
import org.capwright.measure.Dimensions;
import org.capwright.quantity.InvalidMeasuresException;

/** The search for even rules that pass: each row by itself first, then cap height and armhole together for the cap ease, then the rise for the depth of the pleats. */
final class RuleJudging {

    /** A rule breaks this often at most. */
    private static final int MOST_BREAKS = 2;

    /** So many combinations of rules are put before all checks, the best first. */
    private static final int VERIFIED = 40;

    private static final Map<Dimension, CheckedMeasure> HELD = new LinkedHashMap<>();

    static {
        HELD.put(Dimension.BICEP, CheckedMeasure.BICEP);
        HELD.put(Dimension.ELBOW, CheckedMeasure.ELBOW);
        HELD.put(Dimension.WRIST, CheckedMeasure.WRIST);
        HELD.put(Dimension.LENGTH, CheckedMeasure.LENGTH);
        HELD.put(Dimension.ARMHOLE, CheckedMeasure.ARMHOLE);
    }

    private final DerivedRules derived;
    private final DerivationRequest request;
    private final SleeveStyle style;
    private final BodyReference body;
    private final Thresholds thresholds;
    private final int intervals;
    private final EvenRules even;
    private final Set<Dimension> stated = EnumSet.noneOf(Dimension.class);
    private final Set<String> brought;
    private final Map<GradeRule, Double> rows = new HashMap<>();
    private final Map<Dimension, GradeRule> rules = new EnumMap<>(Dimension.class);
    private final Map<Dimension, double[]> growth = new EnumMap<>(Dimension.class);

    RuleJudging(
            DerivedRules derived,
            DerivationRequest request,
            SleeveStyle style,
            List<GradeRule> others,
            BodyReference body,
            Thresholds thresholds) {
        this.derived = derived;
        this.request = request;
        this.style = style;
        this.body = body;
        this.thresholds = thresholds;
        this.intervals = request.sizes().size() - 1;
        this.even = new EvenRules(intervals, request.base(), request.grid());
        this.brought = ofBase();
        others.forEach(rule -> rules.put(rule.dimension(), rule));
        derived.rules().forEach(rule -> rules.put(rule.dimension(), rule));
        // A length that was stated stays as stated.
        derived.derivations().stream()
                .filter(derivation -> derivation.dimension() == Dimension.LENGTH
                        && derivation.body().isEmpty())
                .forEach(derivation -> stated.add(derivation.dimension()));
        derived.derivations()
                .forEach(derivation -> growth.put(
                        derivation.dimension(),
                        derivation.exact().stream()
                                .mapToDouble(Double::doubleValue)
                                .toArray()));
    }

    JudgedRules judged() {
        if (intervals < 1) {
            return new JudgedRules(derived.rules(), List.of());
        }
        Map<Dimension, GradeRule> asDerived = new EnumMap<>(rules);
        List<Finding> before = alarms(drafted(rules));
        HELD.forEach((dimension, measure) -> {
            if (growth.containsKey(dimension) && !stated.contains(dimension)) {
                best(dimension, candidate -> row(measure, candidate), 1).forEach(rule -> rules.put(dimension, rule));
            }
        });
        follow(Dimension.FRONT_WIDTH, Dimension.BICEP);
        follow(Dimension.FRONT_ARMHOLE, Dimension.ARMHOLE);
        follow(Dimension.FRONT_GAP, Dimension.ARMHOLE);
        follow(Dimension.BACK_GAP, Dimension.ARMHOLE);
        follow(Dimension.RISE, Dimension.BICEP);
        cap();
        overlay();
        List<Finding> after = tried(rules).map(this::alarms).orElse(before);
        boolean better = tried(rules).isPresent() && weight(after) <= weight(before);
        Map<Dimension, GradeRule> taken = better ? rules : asDerived;
        return new JudgedRules(
                derived.rules().stream()
                        .map(rule -> taken.getOrDefault(rule.dimension(), rule))
                        .toList(),
                better ? after : before);
    }

    /** Codes and measures of what the base size brings with it into every grade, whatever its rules. */
    private Set<String> ofBase() {
        SizeRun alone = SizeRun.grade(
                style, request.dimensions(), List.of(request.sizes().get(request.base())), 0, List.of());
        return GradeChecks.judged(CheckedGrade.of(alone).against(body), thresholds).stream()
                .filter(finding -> finding.severity() != Severity.INFO)
                .map(RuleJudging::what)
                .collect(Collectors.toSet());
    }

    private static String what(Finding finding) {
        return finding.code() + ' ' + finding.subject().code();
    }

    private SizeRun drafted(Map<Dimension, GradeRule> graded) {
        return SizeRun.grade(
                style, request.dimensions(), request.sizes(), request.base(), new ArrayList<>(graded.values()));
    }

    private Optional<SizeRun> tried(Map<Dimension, GradeRule> graded) {
        try {
            return Optional.of(drafted(graded));
        } catch (InvalidMeasuresException e) {
            return Optional.empty();
        }
    }

    private List<Finding> alarms(SizeRun run) {
        return alarms(GradeChecks.judged(CheckedGrade.of(run).against(body), thresholds));
    }

    private List<Finding> alarms(List<Finding> findings) {
        return findings.stream()
                .filter(finding -> finding.severity() != Severity.INFO && !brought.contains(what(finding)))
                .toList();
    }

    private static double weight(List<Finding> alarms) {
        return alarms.stream()
                .mapToDouble(finding -> finding.severity() == Severity.STOP ? 100 : 1)
                .sum();
    }

    /** How many alarms a row of figures raises by itself. */
    private double row(CheckedMeasure measure, GradeRule rule) {
        return rows.computeIfAbsent(rule, unknown -> alarmsOfRow(measure, unknown));
    }

    private double alarmsOfRow(CheckedMeasure measure, GradeRule rule) {
        List<CheckedSize> sizes = new ArrayList<>();
        for (int i = 0; i <= intervals; i++) {
            double value = rule.apply(request.dimensions().get(rule.dimension()), request.base(), i);
            sizes.add(new CheckedSize(request.sizes().get(i), Map.of(measure, value)));
        }
        CheckedGrade grade = new CheckedGrade(sizes, request.base(), Optional.of(body));
        return weight(alarms(GradeChecks.judged(grade, thresholds)));
    }

    /** The rules of the fewest breaks that raise the fewest alarms, the nearest to the bodies first. */
    private List<GradeRule> best(Dimension dimension, ToDoubleFunction<GradeRule> alarms, int many) {
        List<GradeRule> taken = new ArrayList<>();
        double least = Double.POSITIVE_INFINITY;
        for (int breaks = 0; breaks <= MOST_BREAKS && least > 0; breaks++) {
            for (GradeRule rule : candidates(dimension, breaks)) {
                double weight = alarms.applyAsDouble(rule);
                if (weight < least) {
                    least = weight;
                    taken.clear();
                }
                if (weight <= least && taken.size() < many) {
                    taken.add(rule);
                }
                if (least == 0 && taken.size() == many) {
                    break;
                }
            }
        }
        GradeRule asDerived = rules.getOrDefault(dimension, GradeRule.uniform(dimension, 0, intervals + 1));
        if (alarms.applyAsDouble(asDerived) < least) {
            return List.of(asDerived);
        }
        return taken;
    }

    /** The even rules about the growth of the bodies. */
    private List<GradeRule> candidates(Dimension dimension, int breaks) {
        return even.about(dimension, Objects.requireNonNull(growth.get(dimension)), breaks);
    }

    /** In proportion to another rule, on the grid. */
    private void follow(Dimension dimension, Dimension to) {
        if (growth.containsKey(dimension) && rules.containsKey(to)) {
            double share =
                    request.dimensions().get(dimension) / request.dimensions().get(to);
            double[] exact = new double[intervals + 1];
            for (int i = 0; i <= intervals; i++) {
                exact[i] = share * rules.get(to).apply(0, request.base(), i);
            }
            growth.put(dimension, exact);
            rules.put(dimension, candidates(dimension, 0).get(0));
        }
    }

    /** Bicep, armhole and cap height together: the cap ease and the proportion, beside the rows themselves. */
    private void cap() {
        if (!growth.containsKey(Dimension.CAP_HEIGHT)
                || !growth.containsKey(Dimension.ARMHOLE)
                || !(style.fit() instanceof CapFit.Given)) {
            return;
        }
        List<Ranked> biceps = ranked(Dimension.BICEP, CheckedMeasure.BICEP, 1, 4);
        List<Ranked> armholes = ranked(Dimension.ARMHOLE, CheckedMeasure.ARMHOLE, 2, 40);
        double share = request.dimensions().get(Dimension.CAP_HEIGHT)
                / request.dimensions().get(Dimension.BICEP);
        double[] exact = new double[intervals + 1];
        for (int i = 0; i <= intervals; i++) {
            exact[i] = share * biceps.get(0).rule.apply(0, request.base(), i);
        }
        growth.put(Dimension.CAP_HEIGHT, exact);
        List<Ranked> heights = ranked(Dimension.CAP_HEIGHT, CheckedMeasure.CAP_HEIGHT, 2, 40);
        List<Combination> combinations = new ArrayList<>();
        for (Ranked bicep : biceps) {
            for (Ranked height : heights) {
                double[] caps = capLines(bicep.rule, height.rule);
                if (caps.length > 0) {
                    double steepest = proportion(bicep.rule, height.rule);
                    armholes.forEach(armhole -> combinations.add(combination(bicep, height, armhole, caps, steepest)));
                }
            }
        }
        combinations.sort(Comparator.comparingDouble(Combination::cost));
        double least = light(rules);
        Map<Dimension, GradeRule> best = new EnumMap<>(rules);
        for (Combination combination : combinations.subList(0, Math.min(VERIFIED, combinations.size()))) {
            Map<Dimension, GradeRule> trial = new EnumMap<>(rules);
            combination.rules.forEach(rule -> trial.put(rule.dimension(), rule));
            double weight = light(trial);
            if (weight < least) {
                least = weight;
                best = trial;
            }
            if (least == 0) {
                break;
            }
        }
        rules.putAll(best);
        follow(Dimension.FRONT_WIDTH, Dimension.BICEP);
        follow(Dimension.FRONT_ARMHOLE, Dimension.ARMHOLE);
        follow(Dimension.FRONT_GAP, Dimension.ARMHOLE);
        follow(Dimension.BACK_GAP, Dimension.ARMHOLE);
        follow(Dimension.RISE, Dimension.BICEP);
    }

    /** A rule with what it costs by itself: alarms first, then breaks, then distance from the bodies, in steps of the grid. */
    private record Ranked(GradeRule rule, double cost) {}

    private record Combination(List<GradeRule> rules, double cost) {}

    private List<Ranked> ranked(Dimension dimension, CheckedMeasure measure, int mostBreaks, int many) {
        List<Ranked> taken = new ArrayList<>();
        for (int breaks = 0; breaks <= mostBreaks; breaks++) {
            double broken = 2.0 * breaks;
            candidates(dimension, breaks).stream()
                    .map(rule -> new Ranked(
                            rule,
                            1000 * row(measure, rule)
                                    + broken
                                    + Math.sqrt(even.distance(rule, Objects.requireNonNull(growth.get(dimension)))
                                            / (intervals + 1))))
                    .sorted(Comparator.comparingDouble(Ranked::cost))
                    .limit(many)
                    .forEach(taken::add);
        }
        taken.sort(Comparator.comparingDouble(Ranked::cost));
        return taken;
    }

    /** None where no sleeve can be drafted so. */
    private double[] capLines(GradeRule bicep, GradeRule height) {
        double[] lines = new double[intervals + 1];
        try {
            for (int i = 0; i <= intervals; i++) {
                Dimensions graded = request.dimensions();
                for (GradeRule rule : List.of(bicep, height)) {
                    graded = graded.with(
                            rule.dimension(),
                            rule.apply(request.dimensions().get(rule.dimension()), request.base(), i));
                }
                if (graded.has(Dimension.FRONT_WIDTH)) {
                    double share = request.dimensions().get(Dimension.FRONT_WIDTH)
                            / request.dimensions().get(Dimension.BICEP);
                    graded = graded.with(Dimension.FRONT_WIDTH, share * graded.get(Dimension.BICEP));
                }
                lines[i] = BaseSleeve.draft(graded).capLength();
            }
            return lines;
        } catch (InvalidMeasuresException e) {
            return new double[0];
        }
    }

    private double proportion(GradeRule bicep, GradeRule height) {
        double base = ratio(bicep, height, request.base());
        double most = 0;
        for (int i = 0; i <= intervals; i++) {
            most = Math.max(most, Math.abs(ratio(bicep, height, i) - base));
        }
        return most;
    }

    private double ratio(GradeRule bicep, GradeRule height, int size) {
        return height.apply(request.dimensions().get(Dimension.CAP_HEIGHT), request.base(), size)
                / bicep.apply(request.dimensions().get(Dimension.BICEP), request.base(), size);
    }

    private Combination combination(Ranked bicep, Ranked height, Ranked armhole, double[] caps, double steepest) {
        double least = Double.POSITIVE_INFINITY;
        double greatest = Double.NEGATIVE_INFINITY;
        for (int i = 0; i <= intervals; i++) {
            double ease = caps[i] - armhole.rule.apply(request.dimensions().get(Dimension.ARMHOLE), request.base(), i);
            least = Math.min(least, ease);
            greatest = Math.max(greatest, ease);
        }
        double drift = greatest - least;
        double alarms = (drift > thresholds.get(Threshold.CAP_EASE_DRIFT_CAUTION) ? 1 : 0)
                + (steepest > thresholds.get(Threshold.PROPORTION_CAUTION) ? 1 : 0);
        return new Combination(
                List.of(bicep.rule, height.rule, armhole.rule),
                bicep.cost + height.cost + armhole.cost + 1000 * alarms + drift);
    }

    /** Alarms of the sleeve without its overlay, by its figures. */
    private double light(Map<Dimension, GradeRule> trial) {
        SleeveStyle plain = new SleeveStyle(style.fit(), Optional.empty(), style.underSleeve());
        List<GradeRule> graded = trial.values().stream()
                .filter(rule -> !ChangeableRules.OF_THE_OVERLAY.contains(rule.dimension()))
                .toList();
        try {
            SizeRun run = SizeRun.grade(plain, request.dimensions(), request.sizes(), request.base(), graded);
            return weight(
                    alarms(GradeChecks.judged(CheckedGrade.of(SpecTable.of(run)).against(body), thresholds)));
        } catch (InvalidMeasuresException e) {
            return Double.POSITIVE_INFINITY;
        }
    }

    /** The rise, and the parts of the armhole left free, that keep the pleats as deep as those of the base size. */
    private void overlay() {
        if (!growth.containsKey(Dimension.RISE)) {
            return;
        }
        double least = tried(rules).map(this::alarms).map(RuleJudging::weight).orElse(Double.POSITIVE_INFINITY);
        Map<Dimension, GradeRule> best = new EnumMap<>(rules);
        for (boolean held : new boolean[] {false, true}) {
            for (GradeRule rise : candidates(Dimension.RISE, 0)) {
                Map<Dimension, GradeRule> trial = new EnumMap<>(rules);
                trial.put(Dimension.RISE, rise);
                for (Dimension gap : List.of(Dimension.FRONT_GAP, Dimension.BACK_GAP)) {
                    if (held && trial.containsKey(gap)) {
                        trial.put(gap, GradeRule.uniform(gap, 0, intervals + 1));
                    }
                }
                double weight =
                        tried(trial).map(this::alarms).map(RuleJudging::weight).orElse(Double.POSITIVE_INFINITY);
                if (weight < least) {
                    least = weight;
                    best = trial;
                }
                if (least == 0) {
                    break;
                }
            }
            if (least == 0) {
                break;
            }
        }
        rules.putAll(best);
    }
}
