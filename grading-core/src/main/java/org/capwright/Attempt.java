package org.capwright;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.capwright.draft.CapEase;
import org.capwright.draft.CapFit;
import org.capwright.draft.OverlayStyle;
import org.capwright.draft.SleeveStyle;
import org.capwright.draft.pleat.FullnessTarget;
import org.capwright.draft.pleat.PleatPlan;
import org.capwright.draft.pleat.PleatSizing;
import org.capwright.grade.GradeRule;
import org.capwright.grade.SizeRun;
import org.capwright.grade.Sizes;
import org.capwright.measure.Dimension;
import org.capwright.measure.Dimensions;
import org.capwright.measure.SleeveSubject;
import org.capwright.measure.SleeveSubject.Option;
import org.capwright.pattern.Allowances;
import org.capwright.pattern.PatternDrafter;
import org.capwright.pattern.PatternOptions;
import org.capwright.pattern.PatternSet;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Subject;
import org.capwright.quantity.Violation;
import org.capwright.words.Text;

/** Everything that a run and its pieces follow from, to be tried with one value changed at a time. */
record Attempt(
        PatternSet.Title title,
        SleeveStyle style,
        Dimensions base,
        List<GradeRule> rules,
        Sizes sizes,
        PatternOptions options) {

    /** More pleats than this are never proposed, for nobody lays them: common practice, no source. */
    private static final int MOST_PLEATS = 60;

    /** What is wrong with the whole run and its pieces; nothing where they can be made. */
    List<Violation> wrong() {
        try {
            return PatternDrafter.wrong(graded(), options);
        } catch (InvalidMeasuresException e) {
            return e.violations();
        }
    }

    /** The same but for what is wrong with allowances, which takes long to find out. */
    List<Violation> wrongBeforeAllowances() {
        try {
            return PatternDrafter.wrongNets(graded(), options);
        } catch (InvalidMeasuresException e) {
            return e.violations();
        }
    }

    /** Whether nothing is wrong: found out sooner than what is wrong. */
    boolean works() {
        try {
            return PatternDrafter.canDraft(graded(), options);
        } catch (InvalidMeasuresException e) {
            return false;
        }
    }

    /** Whether every size can be drafted, whatever becomes of its pieces: found out at once. */
    boolean drafts() {
        try {
            graded();
            return true;
        } catch (InvalidMeasuresException e) {
            return false;
        }
    }

    /** Whether the base size can be drafted: where that takes long, it says most about the others. */
    boolean draftsInBase() {
        return new Attempt(
                        title,
                        style,
                        base,
                        List.of(),
                        new Sizes(List.of(sizes.labels().get(sizes.base())), 0),
                        options)
                .drafts();
    }

    private SizeRun graded() {
        return SizeRun.grade(style, base, sizes.labels(), sizes.base(), rules);
    }

    /** How much more a subject measures in a size than in the base size. */
    double growth(Subject subject, String size) {
        int at = sizes.labels().indexOf(size);
        return at < 0
                ? 0
                : rules.stream()
                        .filter(rule -> rule.dimension() == subject)
                        .mapToDouble(rule -> rule.apply(0, sizes.base(), at))
                        .sum();
    }

    /** The same with one value changed; nothing where that value follows from others, or is none that a number stands for. */
    Optional<Attempt> with(Subject subject, double value) {
        if (subject == Dimension.PLEAT_DEPTH) {
            return plan().map(plan -> deep(plan, value));
        }
        if (subject instanceof Dimension dimension) {
            return follows(dimension) ? Optional.empty() : Optional.of(measured(base.with(dimension, value)));
        }
        if (subject instanceof SleeveSubject.GradeOf growth) {
            return Optional.of(grown(growth.dimension(), (interval, old) -> value));
        }
        if (subject instanceof SleeveSubject.GrowthAt growth) {
            return Optional.of(
                    grown(growth.dimension(), (interval, old) -> interval == growth.interval() ? value : old));
        }
        if (subject instanceof SleeveSubject.AllowanceOf allowance) {
            return Optional.of(finished(options.with(along(allowance.edge(), value))));
        }
        if (!(subject instanceof Option option)) {
            return Optional.empty();
        }
        return switch (option) {
            case SEAM_ALLOWANCE -> Optional.of(finished(options.with(Allowances.all(value))));
            case TURN_OF_CLOTH -> Optional.of(finished(options.withTurnOfCloth(value)));
            case INTERFACING_OVERLAP -> Optional.of(finished(options.withInterfacingOverlap(value)));
            case CAP_EASE, FRONT_CAP_EASE, BACK_CAP_EASE -> eased(option, value);
            case JOIN -> overlay().map(o -> styled(new OverlayStyle(o.hem(), value, o.pleats(), o.target())));
            case FULLNESS -> overlay().map(o -> targeted(o, new FullnessTarget.Ratio(value)));
            case PLEAT_COUNT ->
                plan().map(plan -> pleated(sized(plan, new PleatSizing.ByCount((int) Math.round(value)))));
            case FLAT_ZONE_FRONT, FLAT_ZONE_BACK -> plan().map(plan -> pleated(zoned(plan, option, value)));
            default -> Optional.empty();
        };
    }

    /** Two subjects that one value stands for are one. */
    Subject canonical(Subject subject) {
        boolean oneZone = plan().map(p -> p.flatZoneFront() == p.flatZoneBack()).orElse(false);
        return subject == Option.FLAT_ZONE_BACK && oneZone ? Option.FLAT_ZONE_FRONT : subject;
    }

    /** Least and greatest value of a subject that are taken at all; those of a length in mm. */
    static double[] ends(Subject subject) {
        if (subject instanceof Dimension dimension) {
            return new double[] {dimension.least(), dimension.greatest()};
        }
        if (subject instanceof Option option) {
            return switch (option) {
                case CAP_EASE, FRONT_CAP_EASE, BACK_CAP_EASE -> new double[] {-300, 300};
                case JOIN -> new double[] {0.1, 1};
                case FULLNESS -> new double[] {1, 20};
                case PLEAT_COUNT -> new double[] {1, MOST_PLEATS};
                case FLAT_ZONE_FRONT, FLAT_ZONE_BACK -> new double[] {0, 700};
                case TURN_OF_CLOTH -> new double[] {0, PatternOptions.GREATEST_TURN_OF_CLOTH};
                default -> new double[] {0, Allowances.WIDEST};
            };
        }
        return subject instanceof SleeveSubject.GradeOf || subject instanceof SleeveSubject.GrowthAt
                ? new double[] {Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY}
                : new double[] {0, Allowances.WIDEST};
    }

    private Optional<OverlayStyle> overlay() {
        return style.overlay();
    }

    Optional<PleatPlan> plan() {
        return overlay().flatMap(OverlayStyle::pleats);
    }

    /** The number of pleats that was asked for. */
    int count() {
        return plan().map(PleatPlan::sizing)
                .filter(PleatSizing.ByCount.class::isInstance)
                .map(sizing -> ((PleatSizing.ByCount) sizing).count())
                .orElse(1);
    }

    /** Whether the number of pleats was given. */
    boolean counted() {
        return plan().filter(plan -> plan.sizing() instanceof PleatSizing.ByCount)
                .isPresent();
    }

    /** The depth that was asked for, of pleats that are given by one. */
    OptionalDouble depth() {
        if (plan().isEmpty()
                || plan().get().sizing() instanceof PleatSizing.ByCount && !base.has(Dimension.PLEAT_DEPTH)) {
            return OptionalDouble.empty();
        }
        if (base.has(Dimension.PLEAT_DEPTH)) {
            return OptionalDouble.of(base.get(Dimension.PLEAT_DEPTH));
        }
        return OptionalDouble.of(
                plan().get().sizing() instanceof PleatSizing.ByDepth given
                        ? given.depth()
                        : ((PleatSizing.ByGreatestDepth) plan().get().sizing()).depth());
    }

    private boolean follows(Dimension dimension) {
        CapFit fit = style.fit();
        return switch (dimension) {
            case CAP_HEIGHT -> fit instanceof CapFit.CapHeightFor || fit instanceof CapFit.HalvesFor;
            case FRONT_WIDTH -> fit instanceof CapFit.HalvesFor;
            case BICEP -> fit instanceof CapFit.BicepFor;
            case RISE -> overlay().flatMap(OverlayStyle::target).isPresent();
            default -> false;
        };
    }

    /** The same with every size as large as the base size. */
    Attempt withoutGrowth() {
        return new Attempt(title, style, base, List.of(), sizes, options);
    }

    /** What an increment is changed into, by its interval. */
    private interface Change {
        double increment(int interval, double old);
    }

    private Attempt grown(Dimension dimension, Change change) {
        List<GradeRule> others = rules.stream()
                .map(rule -> rule.dimension() == dimension
                        ? new GradeRule(
                                dimension,
                                IntStream.range(0, rule.increments().size())
                                        .mapToObj(i -> change.increment(
                                                i, rule.increments().get(i)))
                                        .toList())
                        : rule)
                .toList();
        return new Attempt(title, style, base, others, sizes, options);
    }

    private Attempt measured(Dimensions dimensions) {
        return new Attempt(title, style, dimensions, rules, sizes, options);
    }

    private Attempt finished(PatternOptions other) {
        return new Attempt(title, style, base, rules, sizes, other);
    }

    private Attempt styled(OverlayStyle overlay) {
        return fitted(style.fit(), Optional.of(overlay), base);
    }

    private Attempt fitted(CapFit fit, Optional<OverlayStyle> overlay, Dimensions dimensions) {
        return new Attempt(
                title, new SleeveStyle(fit, overlay, style.underSleeve()), dimensions, rules, sizes, options);
    }

    private Attempt targeted(OverlayStyle overlay, FullnessTarget target) {
        return styled(new OverlayStyle(overlay.hem(), overlay.join(), overlay.pleats(), Optional.of(target)));
    }

    private Attempt pleated(PleatPlan plan) {
        OverlayStyle old = overlay().orElseThrow();
        Optional<FullnessTarget> target = old.target()
                .map(t ->
                        t instanceof FullnessTarget.Pleats pleats && plan.sizing() instanceof PleatSizing.ByCount count
                                ? new FullnessTarget.Pleats(pleats.kind(), count.count(), pleats.depth())
                                : t);
        return styled(new OverlayStyle(old.hem(), old.join(), Optional.of(plan), target));
    }

    private static PleatPlan sized(PleatPlan plan, PleatSizing sizing) {
        return new PleatPlan(plan.kind(), plan.direction(), sizing, plan.flatZoneFront(), plan.flatZoneBack());
    }

    private static PleatPlan zoned(PleatPlan plan, Option zone, double value) {
        boolean both = plan.flatZoneFront() == plan.flatZoneBack();
        return new PleatPlan(
                plan.kind(),
                plan.direction(),
                plan.sizing(),
                both || zone == Option.FLAT_ZONE_FRONT ? value : plan.flatZoneFront(),
                both || zone == Option.FLAT_ZONE_BACK ? value : plan.flatZoneBack());
    }

    private Attempt deep(PleatPlan plan, double depth) {
        Dimensions dimensions = base.has(Dimension.PLEAT_DEPTH) ? base.with(Dimension.PLEAT_DEPTH, depth) : base;
        OverlayStyle old = overlay().orElseThrow();
        Optional<FullnessTarget> target = old.target()
                .map(t -> t instanceof FullnessTarget.Pleats pleats
                        ? new FullnessTarget.Pleats(pleats.kind(), pleats.count(), depth)
                        : t);
        PleatSizing sizing = plan.sizing() instanceof PleatSizing.ByDepth
                ? new PleatSizing.ByDepth(depth)
                : plan.sizing() instanceof PleatSizing.ByGreatestDepth
                        ? new PleatSizing.ByGreatestDepth(depth)
                        : plan.sizing();
        return fitted(
                style.fit(),
                Optional.of(new OverlayStyle(old.hem(), old.join(), Optional.of(sized(plan, sizing)), target)),
                dimensions);
    }

    private Optional<Attempt> eased(Option option, double value) {
        CapEase ease = new CapEase.Length(value);
        CapFit fit = style.fit();
        Optional<CapFit> other = Optional.empty();
        if (fit instanceof CapFit.HalvesFor halves) {
            other = Optional.of(
                    option == Option.BACK_CAP_EASE
                            ? new CapFit.HalvesFor(halves.front(), ease)
                            : new CapFit.HalvesFor(ease, halves.back()));
        } else if (fit instanceof CapFit.CapHeightFor) {
            other = Optional.of(new CapFit.CapHeightFor(ease));
        } else if (fit instanceof CapFit.BicepFor) {
            other = Optional.of(new CapFit.BicepFor(ease));
        }
        return other.map(changed -> fitted(changed, style.overlay(), base));
    }

    private Allowances along(String edge, double value) {
        Allowances old = options.allowances();
        return new Allowances(
                edge.equals("armhole") ? value : old.armhole(),
                edge.equals("attachedEdge") ? value : old.attachedEdge(),
                edge.equals("sideSeam") ? value : old.sideSeam(),
                edge.equals("hem") ? value : old.hem());
    }

    /** Violations said of the base size where they were found in another: values and bounds as they would be given. */
    List<Violation> inBaseSize(List<Violation> violations) {
        List<Violation> moved = new ArrayList<>(violations.size());
        for (Violation v : violations) {
            double growth = v.size().map(size -> growth(v.subject(), size)).orElse(0.0);
            moved.add(
                    growth == 0
                            ? v
                            : new Violation(
                                    v.subject(),
                                    v.size(),
                                    Text.of("{reason}; in the base size").with("reason", v.reason()),
                                    v.quantity(),
                                    less(v.value(), growth),
                                    less(v.least(), growth),
                                    less(v.greatest(), growth),
                                    v.given()));
        }
        return moved;
    }

    private static OptionalDouble less(OptionalDouble value, double growth) {
        return value.isPresent() ? OptionalDouble.of(value.getAsDouble() - growth) : value;
    }
}
