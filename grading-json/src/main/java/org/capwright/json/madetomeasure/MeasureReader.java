package org.capwright.json.madetomeasure;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.UnaryOperator;
import org.capwright.check.Estimate;
import org.capwright.check.NearestSize;
import org.capwright.check.ProportionOpinion;
import org.capwright.check.SurveyOpinion;
import org.capwright.check.WearerBody;
import org.capwright.json.problem.FoundViolations;
import org.capwright.json.problem.RefusedRequestException;
import org.capwright.json.schema.RequestObject;
import org.capwright.json.style.SizeRunReader;
import org.capwright.json.style.SizeRunRequest;
import org.capwright.json.tables.TableReader;
import org.capwright.quantity.Unit;
import org.capwright.tables.BodyDimension;
import org.capwright.tables.SizeTable;
import org.capwright.tables.survey.Survey;
import org.capwright.words.Text;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** Reads an order: makes a size run of one size of it, and names everything that is wrong at once. */
public final class MeasureReader {

    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    private final Unit unit;
    private final FoundViolations found;

    /** Where improbable measurements are gathered: they refuse the order, or only hold it. */
    private final FoundViolations questions;

    private final RequestObject body;
    private final DerivedPlaces places = new DerivedPlaces();
    private final Map<BodyDimension, Double> given = new EnumMap<>(BodyDimension.class);
    private final List<Estimate> estimates = new ArrayList<>();

    private MeasureReader(JsonNode tree, UnaryOperator<FoundViolations> questions) {
        Optional<Unit> named = unit(tree);
        unit = named.orElse(Unit.MILLIMETRE);
        found = new FoundViolations(unit);
        this.questions = questions.apply(found);
        body = new RequestObject(tree, MeasureSchema.REQUEST, "", unit, found);
        body.choice("units");
        if (named.isEmpty()) {
            // No length can be judged without its unit.
            found.refuse();
        }
    }

    /**
     * Reads an order.
     *
     * @param tree the body
     * @return what is asked for
     * @throws RefusedRequestException with everything that is wrong, measurements among it that are unusual and not confirmed
     */
    public static MeasureRequest read(JsonNode tree) {
        return new MeasureReader(tree, found -> found).read();
    }

    /**
     * Reads an order that improbable measurements only hold.
     *
     * @param tree the body
     * @param questions gathers what is improbable
     * @return what is asked for
     * @throws RefusedRequestException with everything that is wrong
     */
    public static MeasureRequest held(JsonNode tree, FoundViolations questions) {
        return new MeasureReader(tree, found -> questions).read();
    }

    private static Optional<Unit> unit(JsonNode tree) {
        return tree.path("units").asStringOpt().flatMap(Unit::find);
    }

    private MeasureRequest read() {
        body.object("wearer").ifPresent(this::readWearer);
        Set<BodyDimension> confirmed = confirmed();
        Optional<SurveyOpinion> opinion = survey().map(survey -> new SurveyOpinion(survey, given, confirmed));
        question(opinion, confirmed);
        Optional<NearestSize> nearest = TableReader.field(body, found).flatMap(this::nearest);
        ObjectNode tree = run(opinion);
        Optional<SizeRunRequest> run = Optional.empty();
        try {
            run = Optional.of(SizeRunReader.read(tree));
        } catch (RefusedRequestException e) {
            places.add(e, found);
        }
        found.refuse();
        return new MeasureRequest(
                run.orElseThrow().against(wearer(run.orElseThrow())),
                given,
                confirmed,
                List.copyOf(estimates),
                opinion,
                nearest,
                places);
    }

    private Optional<Survey> survey() {
        String id = body.choice("survey").orElse(MeasureSchema.SURVEYS.get(0).id());
        return MeasureSchema.SURVEYS.stream()
                .filter(survey -> survey.id().equals(id))
                .findFirst();
    }

    /** What does not go together, by the survey and by what no body has. */
    private void question(Optional<SurveyOpinion> opinion, Set<BodyDimension> confirmed) {
        List<SurveyOpinion.Question> bySurvey =
                opinion.map(SurveyOpinion::questions).orElse(List.of());
        bySurvey.forEach(question -> questions.add(question.violation()));
        Set<BodyDimension> questioned = EnumSet.noneOf(BodyDimension.class);
        bySurvey.forEach(question -> questioned.add(question.dimension()));
        // What the survey has it has judged already, more finely.
        Set<BodyDimension> settled = EnumSet.noneOf(BodyDimension.class);
        settled.addAll(confirmed);
        opinion.ifPresent(survey -> settled.addAll(survey.survey().dimensions()));
        ProportionOpinion.questions(given, settled, questioned).forEach(questions::add);
    }

    /** What was measured, and for the rest of the sleeve what was estimated. */
    private SizeTable wearer(SizeRunRequest run) {
        Map<BodyDimension, Double> all = new EnumMap<>(given);
        estimates.forEach(
                estimate -> all.put(estimate.dimension(), estimate.prediction().estimate()));
        return WearerBody.of(run.sizes().get(0), all);
    }

    private void readWearer(RequestObject wearer) {
        for (BodyDimension dimension : BodyDimension.values()) {
            wearer.length(dimension.id()).ifPresent(value -> given.put(dimension, value));
        }
    }

    private Set<BodyDimension> confirmed() {
        Set<BodyDimension> confirmed = EnumSet.noneOf(BodyDimension.class);
        for (String word : body.words("confirmed")) {
            BodyDimension.find(word).ifPresent(dimension -> {
                confirmed.add(dimension);
                if (!given.containsKey(dimension) && !found.names("/wearer/" + word)) {
                    found.add(
                            "/confirmed",
                            Text.of("names {measurement}, which is not among the wearer's measurements; give"
                                            + " it there, or leave it out")
                                    .with("measurement", Text.of(word)));
                }
            });
        }
        return confirmed;
    }

    private Optional<NearestSize> nearest(SizeTable table) {
        String key = table.info().key().map(BodyDimension::id).orElse("");
        if (table.info().key().filter(given::containsKey).isEmpty() && !found.names("/wearer/" + key)) {
            found.add(
                    "/wearer/" + key,
                    Text.of("is missing; the table {table} orders its sizes by it")
                            .with("table", table.id()));
        }
        return NearestSize.of(table, given);
    }

    /** The order as a request for a run of one size. */
    private ObjectNode run(Optional<SurveyOpinion> opinion) {
        ObjectNode run = NODES.objectNode();
        run.put("units", unit.symbol());
        JsonNode label = body.raw("order").orElse(NODES.stringNode(MeasureSchema.DEFAULT_LABEL));
        run.set("baseSize", label);
        run.set("sizes", NODES.arrayNode().add(label));
        for (String shared : MeasureSchema.SHARED) {
            body.raw(shared).ifPresent(value -> run.set(shared, value));
        }
        Derivation derivation = new Derivation(opinion);
        Optional<RequestObject> sleeve = body.object("sleeve");
        ObjectNode sleeveNode =
                copied(sleeve, List.copyOf(MeasureSchema.SLEEVE.fields().keySet()));
        derivation.ease.flatMap(ease -> ease.raw("capEase")).ifPresent(value -> sleeveNode.set("capEase", value));
        run.set("sleeve", sleeveNode);
        derivation.add(sleeveNode, "/sleeve/bicep", BodyDimension.UPPER_ARM_GIRTH, "bicep");
        armhole(derivation, sleeve, sleeveNode);
        if (body.has("underSleeve")) {
            Optional<RequestObject> worn = body.object("underSleeve");
            worn.ifPresent(this::hand);
            ObjectNode under =
                    copied(worn, List.copyOf(MeasureSchema.UNDER_SLEEVE.fields().keySet()));
            run.set("underSleeve", under);
            derivation.add(sleeveNode, "/sleeve/length", BodyDimension.ARM_LENGTH, "length");
            derivation.need("wrist", "is missing; the under-sleeve needs it");
            derivation.add(under, "/underSleeve/wrist", BodyDimension.WRIST_GIRTH, "wrist");
            if (derivation.has("elbow")) {
                derivation.add(under, "/underSleeve/elbow", BodyDimension.ELBOW_GIRTH, "elbow");
            }
        } else {
            for (String useless : List.of("elbow", "wrist", "length")) {
                derivation.refuse(useless, "has no use without an under-sleeve; add underSleeve or leave it out");
            }
        }
        return run;
    }

    private void hand(RequestObject under) {
        double wrist = given.getOrDefault(BodyDimension.WRIST_GIRTH, 0.0);
        under.length("handGirth").ifPresent(hand -> {
            if (hand < wrist) {
                under.refuse(
                        "handGirth",
                        "is less than the given wristGirth, and a hand is larger than its wrist: measure both again");
            }
        });
    }

    private static ObjectNode copied(Optional<RequestObject> object, List<String> fields) {
        ObjectNode copy = NODES.objectNode();
        object.ifPresent(from -> fields.forEach(field -> from.raw(field).ifPresent(value -> copy.set(field, value))));
        return copy;
    }

    private void armhole(Derivation derivation, Optional<RequestObject> sleeve, ObjectNode into) {
        if (sleeve.filter(object -> object.has("armhole")).isPresent()) {
            derivation.refuse("armhole", "has no use, as sleeve/armhole is given; leave out one of them");
            return;
        }
        boolean halves = half(sleeve, "front", "armhole") && half(sleeve, "back", "armhole");
        boolean needed = body.has("overlay")
                || into.has("capEase")
                || half(sleeve, "front", "capEase")
                || half(sleeve, "back", "capEase");
        if (derivation.has("armhole") || needed && !halves) {
            derivation.need("armhole", "is missing; give it, or the armhole of the garment as sleeve/armhole");
            derivation.add(into, "/sleeve/armhole", BodyDimension.ARMSCYE_GIRTH, "armhole");
        }
    }

    private static boolean half(Optional<RequestObject> sleeve, String half, String field) {
        return sleeve.flatMap(object -> object.raw(half))
                .map(node -> node.path(field))
                .filter(node -> !node.isMissingNode() && !node.isNull())
                .isPresent();
    }

    /** Adds ease to measurements. */
    private final class Derivation {

        private final Optional<SurveyOpinion> opinion;
        private final Optional<RequestObject> ease;

        Derivation(Optional<SurveyOpinion> opinion) {
            this.opinion = opinion;
            this.ease = body.object("ease");
        }

        boolean has(String field) {
            return ease.filter(object -> object.has(field)).isPresent();
        }

        void need(String field, String reason) {
            ease.filter(object -> !object.has(field)).ifPresent(object -> object.refuse(field, reason));
        }

        void refuse(String field, String reason) {
            ease.filter(object -> object.has(field)).ifPresent(object -> object.refuse(field, reason));
        }

        /** Puts measurement and ease together; a stand-in where one of them is not to be had, as the order is then refused anyway. */
        void add(ObjectNode into, String pointer, BodyDimension dimension, String field) {
            OptionalDouble body = body(dimension);
            OptionalDouble share = ease.map(object -> object.percentage(field)).orElse(OptionalDouble.empty());
            OptionalDouble length = ease.map(object -> object.easeLength(field)).orElse(OptionalDouble.empty());
            if (body.isEmpty() || found.names("/ease/" + field)) {
                places.standIn(pointer);
            }
            double measured = body.orElse(dimension.plausible().middle());
            places.derived(pointer, "/ease/" + field, dimension.id(), measured);
            double finished = measured * (1 + share.orElse(0)) + length.orElse(0);
            into.put(pointer.substring(pointer.lastIndexOf('/') + 1), unit.fromMillimetres(finished));
        }

        private OptionalDouble body(BodyDimension dimension) {
            Double value = given.get(dimension);
            if (value != null) {
                return OptionalDouble.of(value);
            }
            String pointer = "/wearer/" + dimension.id();
            if (found.names(pointer)) {
                return OptionalDouble.empty();
            }
            Optional<Estimate> estimate = opinion.flatMap(survey -> survey.estimate(dimension));
            if (estimate.isEmpty()) {
                found.add(
                        pointer,
                        opinion.isPresent()
                                ? "is missing and cannot be estimated; measure it, or give another measurement that the"
                                        + " survey has, such as bustGirth"
                                : "is missing and cannot be estimated; measure it, or give a survey that describes the"
                                        + " wearer");
                return OptionalDouble.empty();
            }
            estimates.add(estimate.get());
            return OptionalDouble.of(estimate.get().prediction().estimate());
        }
    }
}
