package org.capwright.grade.derive;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.IntToDoubleFunction;
import org.capwright.draft.BaseSleeve;
import org.capwright.draft.CapEase;
import org.capwright.draft.CapFit;
import org.capwright.draft.CapFitting;
import org.capwright.grade.GradeRule;
import org.capwright.measure.Dimension;
import org.capwright.measure.Dimensions;
import org.capwright.measure.SleeveSubject;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Violation;
import org.capwright.tables.BodyDimension;
import org.capwright.words.Text;

/**
 * Grade rules that follow the growth of bodies. Bicep, armhole, elbow and wrist grow with the arm and the stated ease; the cap height is what keeps the cap ease of the base size with the
 * rounded bicep and armhole; rise and front width grow in proportion to the bicep, gaps and front armhole to the armhole.
 *
 * <p>Rounded is the growth from the base size, not each increment: increments rounded one by one may add up to an error of half a grid step per size, growth rounded as a whole is never
 * off by more than half a step.
 *
 * @param rules one rule for each dimension that the base size has and that can be derived
 * @param derivations how each came about, in the same order
 */
public record DerivedRules(List<GradeRule> rules, List<Derivation> derivations) {

    private static final Map<Dimension, BodyDimension> BY_BODY = byBody();

    private static Map<Dimension, BodyDimension> byBody() {
        Map<Dimension, BodyDimension> map = new LinkedHashMap<>();
        map.put(Dimension.BICEP, BodyDimension.UPPER_ARM_GIRTH);
        map.put(Dimension.ARMHOLE, BodyDimension.ARMSCYE_GIRTH);
        map.put(Dimension.ELBOW, BodyDimension.ELBOW_GIRTH);
        map.put(Dimension.WRIST, BodyDimension.WRIST_GIRTH);
        return map;
    }

    /**
     * Copies the lists.
     *
     * @param rules one rule for each dimension that the base size has and that can be derived
     * @param derivations how each came about, in the same order
     */
    public DerivedRules {
        rules = List.copyOf(rules);
        derivations = List.copyOf(derivations);
    }

    /**
     * Derives the rules.
     *
     * @param request bodies, sizes, base size and policies
     * @return the rules
     * @throws InvalidMeasuresException if the source lacks a figure, naming dimension and size, or no cap height keeps the ease in a size
     */
    public static DerivedRules of(DerivationRequest request) {
        return new Deriving(request).derive();
    }

    private static final class Deriving {
        private final DerivationRequest request;
        private final Dimensions base;
        private final int n;
        private final Map<Dimension, Derivation> made = new EnumMap<>(Dimension.class);
        private final List<Violation> missing = new ArrayList<>();

        Deriving(DerivationRequest request) {
            this.request = request;
            this.base = request.dimensions();
            this.n = request.sizes().size();
        }

        DerivedRules derive() {
            BY_BODY.forEach(this::followBody);
            length();
            if (!missing.isEmpty()) {
                throw new InvalidMeasuresException(missing);
            }
            inProportion(Dimension.FRONT_WIDTH, Dimension.BICEP);
            inProportion(Dimension.FRONT_ARMHOLE, Dimension.ARMHOLE);
            capHeight();
            inProportion(Dimension.RISE, Dimension.BICEP);
            inProportion(Dimension.FRONT_GAP, Dimension.ARMHOLE);
            inProportion(Dimension.BACK_GAP, Dimension.ARMHOLE);
            List<GradeRule> rules = new ArrayList<>();
            for (Derivation derivation : made.values()) {
                List<Double> increments = new ArrayList<>();
                for (int i = 1; i < n; i++) {
                    increments.add(
                            derivation.rounded().get(i) - derivation.rounded().get(i - 1));
                }
                rules.add(new GradeRule(derivation.dimension(), increments));
            }
            return new DerivedRules(rules, new ArrayList<>(made.values()));
        }

        private void followBody(Dimension dimension, BodyDimension body) {
            if (!base.has(dimension)) {
                return;
            }
            List<BodySource.Figure> figures = figures(dimension, body);
            if (figures.size() == n) {
                double bodyBase = figures.get(request.base()).value();
                double garment = base.get(dimension);
                note(
                        dimension,
                        Optional.of(body),
                        i -> request.ease()
                                        .garment(
                                                garment,
                                                bodyBase,
                                                figures.get(i).value(),
                                                i - request.base())
                                - garment,
                        figures,
                        body.id() + " of " + request.bodies().name());
            }
        }

        /** The figures of all sizes; fewer, and the missing ones noted, where there are gaps. */
        private List<BodySource.Figure> figures(Dimension dimension, BodyDimension body) {
            List<BodySource.Figure> figures = new ArrayList<>();
            List<String> gaps = new ArrayList<>();
            for (String size : request.sizes()) {
                Optional<BodySource.Figure> figure = request.bodies().figure(size, body);
                figure.ifPresentOrElse(figures::add, () -> gaps.add(size));
            }
            if (!gaps.isEmpty()) {
                missing.add(Violation.of(
                        new SleeveSubject.GradeOf(dimension),
                        Text.of("the source has no {measure} for the sizes {sizes}; choose other sizes or another"
                                        + " table, or have the gaps filled from a survey")
                                .with("measure", Text.of(body.id()))
                                .with("sizes", Text.names(gaps))));
            }
            return figures;
        }

        private void length() {
            if (!base.has(Dimension.LENGTH)) {
                return;
            }
            LengthPolicy policy = request.length();
            if (policy instanceof LengthPolicy.Stated stated) {
                note(
                        Dimension.LENGTH,
                        Optional.empty(),
                        i -> stated.perSize() * (i - request.base()),
                        List.of(),
                        "stated growth");
            } else if (policy instanceof LengthPolicy.AsTheArm) {
                List<BodySource.Figure> arms = figures(Dimension.LENGTH, BodyDimension.ARM_LENGTH);
                if (arms.size() == n) {
                    note(
                            Dimension.LENGTH,
                            Optional.of(BodyDimension.ARM_LENGTH),
                            i -> arms.get(i).value() - arms.get(request.base()).value(),
                            arms,
                            BodyDimension.ARM_LENGTH.id() + " of "
                                    + request.bodies().name());
                }
            }
        }

        private void capHeight() {
            if (!base.has(Dimension.CAP_HEIGHT)) {
                return;
            }
            if (!base.has(Dimension.ARMHOLE)) {
                inProportion(Dimension.CAP_HEIGHT, Dimension.BICEP);
                return;
            }
            double armhole = base.get(Dimension.ARMHOLE);
            double ease = BaseSleeve.draft(base).capLength() - armhole;
            CapEase kept = request.capEase() == DerivationRequest.CapEaseKept.LENGTH
                    ? new CapEase.Length(ease)
                    : new CapEase.Share(ease / armhole);
            double[] heights = new double[n];
            List<Violation> impossible = new ArrayList<>();
            for (int i = 0; i < n; i++) {
                try {
                    heights[i] = i == request.base()
                            ? base.get(Dimension.CAP_HEIGHT)
                            : CapFitting.fitted(graded(i), new CapFit.CapHeightFor(kept))
                                    .get(Dimension.CAP_HEIGHT);
                } catch (InvalidMeasuresException e) {
                    for (Violation violation : e.violations()) {
                        impossible.add(violation.inSize(request.sizes().get(i)));
                    }
                }
            }
            if (!impossible.isEmpty()) {
                throw new InvalidMeasuresException(impossible);
            }
            note(
                    Dimension.CAP_HEIGHT,
                    Optional.empty(),
                    i -> heights[i] - base.get(Dimension.CAP_HEIGHT),
                    List.of(),
                    "the cap height that keeps the cap ease of the base size");
        }

        /** The base dimensions with the rounded growth made so far. */
        private Dimensions graded(int size) {
            Dimensions graded = base;
            for (Derivation derivation : made.values()) {
                graded = graded.with(
                        derivation.dimension(),
                        base.get(derivation.dimension()) + derivation.rounded().get(size));
            }
            return graded;
        }

        private void inProportion(Dimension dimension, Dimension to) {
            Derivation other = made.get(to);
            if (base.has(dimension) && other != null) {
                double share = base.get(dimension) / base.get(to);
                note(
                        dimension,
                        Optional.empty(),
                        i -> share * other.rounded().get(i),
                        List.of(),
                        "in proportion to " + to.gradeName());
            }
        }

        private void note(
                Dimension dimension,
                Optional<BodyDimension> body,
                IntToDoubleFunction growth,
                List<BodySource.Figure> figures,
                String source) {
            List<Double> exact = new ArrayList<>(n);
            List<Double> rounded = new ArrayList<>(n);
            List<String> estimated = new ArrayList<>();
            for (int i = 0; i < n; i++) {
                exact.add(growth.applyAsDouble(i));
                rounded.add(request.grid().round(exact.get(i)));
                if (!figures.isEmpty() && figures.get(i).estimated()) {
                    estimated.add(request.sizes().get(i));
                }
            }
            made.put(
                    dimension,
                    new Derivation(
                            dimension, body, List.copyOf(exact), List.copyOf(rounded), List.copyOf(estimated), source));
        }
    }
}
