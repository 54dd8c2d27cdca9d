package org.capwright.json.style;

import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.capwright.draft.SleeveStyle;
import org.capwright.grade.Alignment;
import org.capwright.grade.GradeRule;
import org.capwright.json.problem.FoundViolations;
import org.capwright.json.problem.RefusedRequestException;
import org.capwright.json.schema.FieldType;
import org.capwright.json.schema.RequestObject;
import org.capwright.json.schema.SizeLabels;
import org.capwright.json.tables.TableReader;
import org.capwright.measure.Dimension;
import org.capwright.measure.Dimensions;
import org.capwright.pattern.Allowances;
import org.capwright.pattern.CornerKind;
import org.capwright.pattern.DrillHoles;
import org.capwright.pattern.Finishing;
import org.capwright.pattern.Halves;
import org.capwright.pattern.LayerThickness;
import org.capwright.pattern.PatternOptions;
import org.capwright.pattern.PieceMarking;
import org.capwright.pattern.PleatInterfacing;
import org.capwright.pattern.PleatNotches;
import org.capwright.pattern.Strips;
import org.capwright.quantity.Rounding;
import org.capwright.quantity.Unit;
import org.capwright.report.Paper;
import org.capwright.report.WornPicture;
import org.capwright.words.Language;
import org.capwright.words.Text;
import tools.jackson.databind.JsonNode;

/** Reads the body of {@code POST /v1/size-runs} and names everything that is wrong with it at once. */
public final class SizeRunReader {

    /** Width of a cutting table that takes cloth of 140 or 150 cm, mm. Common practice, no source. */
    private static final double TABLE = 1500;

    private static final Text DEFAULT_NAME = Text.of("Sleeve");
    private static final String DEFAULT_REVISION = "1";

    static final Map<String, Alignment> ALIGNMENTS =
            Map.of("underarm", Alignment.UNDERARM, "apex", Alignment.APEX, "fold", Alignment.FOLD_AND_BICEP_LINE);
    static final Map<String, CornerKind> CORNERS =
            Map.of("mitred", CornerKind.MITRED, "bevelled", CornerKind.BEVELLED, "squared", CornerKind.SQUARED);

    private final RequestObject body;
    private final Unit unit;
    private final FoundViolations found;

    private SizeRunReader(JsonNode tree) {
        Optional<Unit> named = unit(tree);
        unit = named.orElse(Unit.MILLIMETRE);
        found = new FoundViolations(unit);
        body = new RequestObject(tree, SizeRunSchema.REQUEST, "", unit, found);
        body.choice("units");
        if (named.isEmpty()) {
            // No length can be judged without its unit.
            found.refuse();
        }
    }

    /**
     * Reads a request.
     *
     * @param tree the body
     * @return what is asked for
     * @throws RefusedRequestException with everything that is wrong
     */
    public static SizeRunRequest read(JsonNode tree) {
        try {
            return once(tree);
        } catch (RefusedRequestException e) {
            throw BoundsOfStyle.instead(e, tree);
        }
    }

    /** Reads a request; ranges of what is refused are those that a field takes at all, whatever the others say. */
    static SizeRunRequest once(JsonNode tree) {
        return new SizeRunReader(tree).read();
    }

    private static Optional<Unit> unit(JsonNode tree) {
        return tree.path("units").asStringOpt().flatMap(Unit::find);
    }

    private SizeRunRequest read() {
        Optional<List<String>> sizes = sizes();
        Optional<Integer> base = base(sizes);
        StyleReader styleReader = new StyleReader(body, found);
        SleeveStyle style = styleReader.style();
        Dimensions dimensions = styleReader.dimensions();
        List<GradeRule> rules = rules(styleReader, sizes.map(List::size).orElse(0) - 1);
        Paper paper = paper();
        OptionalDouble step = body.step("rounding");
        SizeRunRequest order = new SizeRunRequest(
                body.text("name").map(Text::name).orElse(DEFAULT_NAME),
                body.text("revision").orElse(DEFAULT_REVISION),
                unit,
                sizes.orElse(List.of()),
                base.orElse(0),
                style,
                dimensions,
                rules,
                TableReader.field(body, found),
                new PatternOptions(
                        allowances(),
                        body.choice("corners").map(CORNERS::get).orElse(CornerKind.MITRED),
                        body.length("turnOfCloth").orElse(PatternOptions.usual().turnOfCloth()),
                        body.length("interfacingOverlap")
                                .orElse(PatternOptions.usual().interfacingOverlap()),
                        marking(),
                        finishing()),
                body.choice("align").map(ALIGNMENTS::get).orElse(Alignment.FOLD_AND_BICEP_LINE),
                body.choice("layout").filter("blocks"::equals).isPresent()
                        ? SizeRunRequest.Layout.BLOCKS
                        : SizeRunRequest.Layout.NEST,
                paper,
                body.object("plotter").map(plotter -> plotter.length("width")).orElse(OptionalDouble.empty()),
                printed(sizes),
                body.object("materials").map(given -> MaterialReader.read(given, sizes.orElse(List.of()), found)),
                step.isPresent() ? Optional.of(new Rounding(step.getAsDouble())) : Optional.empty(),
                worn(),
                Language.ENGLISH);
        found.refuse();
        return order;
    }

    private Optional<List<String>> sizes() {
        FieldType.Labels kind =
                (FieldType.Labels) SizeRunSchema.REQUEST.field("sizes").kind();
        return body.raw("sizes").flatMap(list -> SizeLabels.read(list, body.at("sizes"), kind, found));
    }

    private Optional<Integer> base(Optional<List<String>> sizes) {
        Optional<String> label = body.raw("baseSize")
                .flatMap(value -> SizeLabels.one(value, body.at("baseSize"), SizeRunSchema.LONGEST_LABEL, found));
        if (sizes.isEmpty() || label.isEmpty()) {
            return Optional.empty();
        }
        int place = sizes.get().indexOf(label.get());
        if (place < 0) {
            body.refuse("baseSize", Text.of("must be one of the sizes {sizes}").with("sizes", Text.names(sizes.get())));
            return Optional.empty();
        }
        return Optional.of(place);
    }

    private List<GradeRule> rules(StyleReader style, int intervals) {
        List<GradeRule> rules = new ArrayList<>();
        Optional<RequestObject> grade = body.object("grade");
        if (grade.isEmpty()) {
            return rules;
        }
        for (Dimension dimension : Dimension.values()) {
            String name = dimension.gradeName();
            if (!grade.get().has(name)) {
                continue;
            }
            Optional<List<Double>> increments = grade.get().growth(name, intervals);
            Optional<Text> reason = style.reasonNotToGrow(dimension);
            reason.ifPresent(why -> grade.get().refuse(name, why));
            if (increments.isPresent() && reason.isEmpty()) {
                rules.add(new GradeRule(dimension, increments.get()));
            }
        }
        return rules;
    }

    private Optional<WornPicture> worn() {
        return body.text("wornPicture").flatMap(text -> {
            try {
                return Optional.of(WornPicture.of(Base64.getDecoder().decode(text)));
            } catch (IllegalArgumentException e) {
                body.refuse("wornPicture", "must be a PNG picture of up to 1600 dots each way, in Base64");
                return Optional.empty();
            }
        });
    }

    private Paper paper() {
        Optional<RequestObject> paper = body.object("paper");
        String format =
                paper.map(object -> object.choice("format").orElse("a4")).orElse("a4");
        OptionalDouble width = paper.isPresent() ? paper.get().length("width") : OptionalDouble.empty();
        boolean roll = format.equals("roll");
        boolean projector = format.equals("projector");
        if (paper.isPresent() && !projector && roll != paper.get().has("width")) {
            paper.get()
                    .refuse(
                            "width",
                            roll ? "is missing; a roll needs its width" : "has no use with sheets; leave it out");
        }
        Optional<String> ground = paper.flatMap(object -> object.choice("ground"));
        if (paper.isPresent() && !projector && paper.get().has("ground")) {
            paper.get().refuse("ground", "has no use on paper; leave it out, or choose the format projector");
        }
        return switch (format) {
            case "a0" -> Paper.A0;
            case "a3" -> Paper.A3;
            case "letter" -> Paper.LETTER;
            case "projector" ->
                new Paper.Projection(
                        width.orElse(TABLE),
                        ground.orElse("dark").equals("dark") ? Paper.Ground.DARK : Paper.Ground.LIGHT);
            case "roll" -> new Paper.Roll(width.orElse(Paper.GREATEST));
            default -> Paper.A4;
        };
    }

    private List<String> printed(Optional<List<String>> sizes) {
        FieldType.Labels kind =
                (FieldType.Labels) SizeRunSchema.PAPER.field("sizes").kind();
        Optional<RequestObject> paper = body.object("paper");
        List<String> printed = paper.flatMap(object ->
                        object.raw("sizes").flatMap(list -> SizeLabels.read(list, object.at("sizes"), kind, found)))
                .orElse(List.of());
        for (int i = 0; i < printed.size() && sizes.isPresent(); i++) {
            if (!sizes.get().contains(printed.get(i))) {
                found.add(
                        "/paper/sizes/" + i,
                        Text.of("must be one of the sizes {sizes}").with("sizes", Text.names(sizes.get())),
                        printed.get(i));
            }
        }
        return printed;
    }

    private PieceMarking marking() {
        return new PieceMarking(
                body.choice("halves").filter("whole"::equals).isPresent() ? Halves.WHOLE : Halves.ON_FOLD,
                body.choice("pleatNotches").filter("none"::equals).isPresent()
                        ? PleatNotches.NONE
                        : PleatNotches.CUT_EDGE,
                body.choice("drillHoles").filter("pleatsAndDarts"::equals).isPresent()
                        ? DrillHoles.PLEATS_AND_DARTS
                        : DrillHoles.NONE);
    }

    private Finishing finishing() {
        Optional<RequestObject> thick = body.object("thickness");
        return new Finishing(
                body.choice("strips").filter("pieces"::equals).isPresent() ? Strips.AS_PIECES : Strips.IN_WORDS,
                body.choice("pleatInterfacing").filter("cutAway"::equals).isPresent()
                        ? PleatInterfacing.CUT_AWAY
                        : PleatInterfacing.THROUGH,
                thick.map(cloth -> new LayerThickness(
                                cloth.length("main"), cloth.length("lining"), cloth.length("interfacing")))
                        .orElse(LayerThickness.unknown()));
    }

    private Allowances allowances() {
        Allowances usual = PatternOptions.usual().allowances();
        Optional<RequestObject> byEdge = body.object("seamAllowance");
        if (byEdge.isEmpty()) {
            OptionalDouble all = body.length("seamAllowance");
            return all.isPresent() ? Allowances.all(all.getAsDouble()) : usual;
        }
        RequestObject edges = byEdge.get();
        return new Allowances(
                edges.length("armhole").orElse(usual.armhole()),
                edges.length("attachedEdge").orElse(usual.attachedEdge()),
                edges.length("sideSeam").orElse(usual.sideSeam()),
                edges.length("hem").orElse(usual.hem()));
    }
}
