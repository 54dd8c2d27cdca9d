package org.capwright.service.rules;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.capwright.check.BodyReference;
import org.capwright.check.JudgedRules;
import org.capwright.check.Thresholds;
import org.capwright.draft.CapFit;
import org.capwright.grade.GradeRule;
import org.capwright.grade.derive.BodySource;
import org.capwright.grade.derive.Derivation;
import org.capwright.grade.derive.DerivationRequest;
import org.capwright.grade.derive.DerivedRules;
import org.capwright.grade.derive.EasePolicy;
import org.capwright.grade.derive.LengthPolicy;
import org.capwright.json.problem.FoundViolations;
import org.capwright.json.problem.RequestPlaces;
import org.capwright.json.schema.RequestObject;
import org.capwright.json.style.GradeWriter;
import org.capwright.json.style.SizeRunRequest;
import org.capwright.json.tables.TableReader;
import org.capwright.measure.Dimension;
import org.capwright.measure.SleeveSubject;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Rounding;
import org.capwright.quantity.Unit;
import org.capwright.quantity.Violation;
import org.capwright.service.http.problem.ProblemException;
import org.capwright.service.sizerun.FindingAnswer;
import org.capwright.service.sizerun.NestedRun;
import org.capwright.tables.BodyDimension;
import org.capwright.tables.SizeTable;
import org.capwright.words.Language;
import org.capwright.words.Text;
import tools.jackson.databind.JsonNode;

/** Reads what rules are asked for, and derives them. */
final class RulesReader {

    private final FoundViolations found;
    private final RequestObject body;
    private final Optional<SizeRunRequest> run;
    private final Unit unit;
    private final Language language;

    RulesReader(JsonNode tree, Language language) {
        this.language = language;
        Optional<Unit> named = NestedRun.unit(tree);
        unit = named.orElse(Unit.MILLIMETRE);
        found = new FoundViolations(unit);
        body = new RequestObject(tree, RulesSchema.REQUEST, "", unit, found);
        run = NestedRun.read(body, found);
        if (named.isEmpty()) {
            // No length can be judged without its unit.
            found.refuse();
        }
    }

    /**
     * The derived rules.
     *
     * @return rules and how they came about
     * @throws ProblemException with everything that is wrong
     */
    RulesAnswer answer() {
        Optional<SizeTable> table = table();
        EasePolicy ease = ease();
        Optional<LengthPolicy> length = length();
        OptionalDouble step = body.step("grid");
        boolean share = body.choice("capEase").filter("share"::equals).isPresent();
        boolean filled = body.choice("gaps").filter("refuse"::equals).isEmpty();
        if (run.filter(order -> order.style().fit() instanceof CapFit.BicepFor).isPresent()) {
            found.add(
                    "/sizeRun/sleeve/bicep",
                    "is missing; where it follows from the cap ease, it has no growth of its own that bodies could"
                            + " give");
        }
        found.refuse();
        SizeRunRequest order = run.orElseThrow();
        SizeTable bodies = table.orElseThrow();
        Rounding grid = step.isPresent() ? new Rounding(step.getAsDouble()) : order.shownRounding();
        boolean bySize = body.choice("increments").filter("bySize"::equals).isPresent();
        DerivationRequest request = new DerivationRequest(
                source(bodies, filled),
                order.sizes(),
                order.base(),
                order.dimensions(),
                ease,
                length.orElse(usual(bodies)),
                share ? DerivationRequest.CapEaseKept.SHARE : DerivationRequest.CapEaseKept.LENGTH,
                grid);
        DerivedRules rules = derived(request, RequestPlaces.of(order.style()).within("/sizeRun"));
        List<GradeRule> own = order.rules().stream()
                .filter(rule -> rule.dimension() != Dimension.LENGTH
                        || length.filter(LengthPolicy.Held.class::isInstance).isEmpty())
                .toList();
        JudgedRules judged = bySize
                ? JudgedRules.asDerived(rules)
                : JudgedRules.of(rules, request, order.style(), own, BodyReference.of(bodies), Thresholds.usual());
        return new RulesAnswer(
                unit.symbol(),
                order.sizes(),
                order.sizes().get(order.base()),
                bodies.id(),
                bodies.info().source(),
                shown(grid.step()),
                GradeWriter.written(complete(own, judged.rules()), unit),
                rules.derivations().stream()
                        .map(derivation -> answer(derivation, judged.rules(), order, bodies, ease))
                        .toList(),
                FindingAnswer.of(judged.left(), unit, language));
    }

    private Optional<SizeTable> table() {
        Optional<SizeTable> table = TableReader.field(body, found);
        if (body.has("sizeTable")) {
            return table;
        }
        Optional<SizeTable> ofRun = run.flatMap(SizeRunRequest::sizeTable);
        if (run.isPresent() && ofRun.isEmpty()) {
            body.refuse("sizeTable", "is missing; rules follow the growth of bodies in a size table");
        }
        return ofRun;
    }

    private EasePolicy ease() {
        Optional<RequestObject> given = body.object("ease");
        String policy = given.flatMap(object -> object.choice("policy")).orElse(RulesSchema.CONSTANT);
        OptionalDouble perSize = given.isPresent() ? perSize(given.get(), RulesSchema.GROWING) : OptionalDouble.empty();
        return switch (policy) {
            case RulesSchema.PERCENT -> new EasePolicy.Percent();
            case RulesSchema.GROWING -> new EasePolicy.Growing(perSize.orElse(0));
            default -> new EasePolicy.Constant();
        };
    }

    private Optional<LengthPolicy> length() {
        Optional<RequestObject> given = body.object("length");
        Optional<String> policy = given.flatMap(object -> object.choice("policy"));
        OptionalDouble perSize = given.isPresent() ? perSize(given.get(), RulesSchema.STATED) : OptionalDouble.empty();
        return policy.map(word -> switch (word) {
            case RulesSchema.AS_THE_ARM -> new LengthPolicy.AsTheArm();
            case RulesSchema.STATED -> new LengthPolicy.Stated(perSize.orElse(0));
            default -> new LengthPolicy.Held();
        });
    }

    /** Given with the policy that needs it, and with no other. */
    private static OptionalDouble perSize(RequestObject object, String needing) {
        Optional<String> policy = object.choice("policy");
        boolean needed = policy.filter(needing::equals).isPresent();
        if (policy.isPresent() && needed != object.has("perSize")) {
            object.refuse(
                    "perSize",
                    Text.of(needed ? "is missing; {policy} needs it" : "has no use unless policy is {policy}")
                            .with("policy", needing));
        }
        return object.length("perSize");
    }

    private static LengthPolicy usual(SizeTable table) {
        return table.info().key().filter(BodyDimension.STATURE::equals).isPresent()
                ? new LengthPolicy.AsTheArm()
                : new LengthPolicy.Held();
    }

    private static BodySource source(SizeTable table, boolean filled) {
        return BodyReference.of(table)
                .survey()
                .filter(survey -> filled)
                .<BodySource>map(survey -> new BodySource.OfTableAndSurvey(table, survey))
                .orElseGet(() -> new BodySource.OfTable(table));
    }

    private DerivedRules derived(DerivationRequest request, RequestPlaces places) {
        try {
            return DerivedRules.of(request);
        } catch (InvalidMeasuresException e) {
            for (Violation violation : e.violations()) {
                found.add(
                        violation,
                        // A gap is the table's; all else lies in the style.
                        violation.subject() instanceof SleeveSubject.GradeOf
                                ? "/sizeTable"
                                : places.of(violation.subject()));
            }
            found.refuse();
            throw e;
        }
    }

    /** Rules that were given and that nothing is derived for stay as they are. */
    private static List<GradeRule> complete(List<GradeRule> own, List<GradeRule> rules) {
        Map<Dimension, GradeRule> all = new EnumMap<>(Dimension.class);
        own.forEach(rule -> all.put(rule.dimension(), rule));
        rules.forEach(rule -> all.put(rule.dimension(), rule));
        return List.copyOf(all.values());
    }

    private RulesAnswer.DerivationAnswer answer(
            Derivation derivation, List<GradeRule> rules, SizeRunRequest order, SizeTable table, EasePolicy ease) {
        GradeRule rule = rules.stream()
                .filter(one -> one.dimension() == derivation.dimension())
                .findFirst()
                .orElseThrow();
        boolean stated =
                derivation.dimension() == Dimension.LENGTH && derivation.body().isEmpty();
        Text words = derivation
                .body()
                .map(dimension -> Text.of(
                                derivation.dimension() == Dimension.LENGTH
                                        ? "as {measure}"
                                        : "as {measure}, with {ease}")
                        .with("measure", Text.of(dimension.id()))
                        .with("ease", words(ease)))
                .orElse(Text.of(derivation.source()));
        return new RulesAnswer.DerivationAnswer(
                derivation.dimension().gradeName(),
                derivation.body().map(BodyDimension::id),
                words.in(language),
                stated ? language.say("stated in the request") : table.info().source(),
                derivation.exact().stream().map(this::shown).toList(),
                IntStream.range(0, order.sizes().size())
                        .mapToObj(i -> shown(rule.apply(0, order.base(), i)))
                        .toList(),
                derivation.estimated());
    }

    private Text words(EasePolicy ease) {
        if (ease instanceof EasePolicy.Growing growing) {
            return Text.of("{length} more ease per size")
                    .with("length", Text.figures(unit.format(growing.perSize()) + " " + unit.symbol()));
        }
        return Text.of(
                ease instanceof EasePolicy.Percent
                        ? "the same share of ease in every size"
                        : "the same ease in every size");
    }

    private double shown(double millimetres) {
        return unit.figure(millimetres);
    }
}
