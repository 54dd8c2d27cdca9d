package org.capwright.json.style;

import java.util.ArrayList;
import java.util.Base64;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.capwright.draft.CapEase;
import org.capwright.draft.CapFit;
import org.capwright.draft.HemShape;
import org.capwright.draft.OverlayStyle;
import org.capwright.draft.UnderSleeveStyle;
import org.capwright.draft.pleat.FullnessTarget;
import org.capwright.draft.pleat.PleatDirection;
import org.capwright.draft.pleat.PleatKind;
import org.capwright.draft.pleat.PleatPlan;
import org.capwright.draft.pleat.PleatSizing;
import org.capwright.json.problem.RequestPlaces;
import org.capwright.json.tables.OwnTableWriter;
import org.capwright.lay.Fabric;
import org.capwright.lay.LayEffort;
import org.capwright.lay.Trimming;
import org.capwright.measure.Dimension;
import org.capwright.pattern.Allowances;
import org.capwright.pattern.DrillHoles;
import org.capwright.pattern.Finishing;
import org.capwright.pattern.Halves;
import org.capwright.pattern.PatternOptions;
import org.capwright.pattern.PleatInterfacing;
import org.capwright.pattern.PleatNotches;
import org.capwright.pattern.Strips;
import org.capwright.quantity.Decimals;
import org.capwright.quantity.Unit;
import org.capwright.report.Paper;
import org.capwright.words.Text;

/** Writes a size run as a request takes it: the inverse of {@link SizeRunReader}. What is as usual is left out. */
public final class SizeRunWriter {

    private final SizeRunRequest run;
    private final Unit unit;
    private final Map<String, Object> body = new LinkedHashMap<>();

    private SizeRunWriter(SizeRunRequest run) {
        this.run = run;
        this.unit = run.unit();
    }

    /**
     * The body of a request.
     *
     * @param run a size run
     * @return objects as maps, lists, texts and numbers, in the order of the schema
     */
    public static Map<String, Object> written(SizeRunRequest run) {
        return new SizeRunWriter(run).write();
    }

    private Map<String, Object> write() {
        if (run.name() instanceof Text.Name given) {
            body.put("name", given.words());
        }
        body.put("revision", run.revision());
        body.put("units", unit.symbol());
        body.put("baseSize", run.sizes().get(run.base()));
        body.put("sizes", run.sizes());
        body.put("sleeve", new LinkedHashMap<>());
        run.style().overlay().ifPresent(overlay -> body.put("overlay", overlay(overlay)));
        run.style().underSleeve().ifPresent(under -> body.put("underSleeve", underSleeve(under)));
        dimensions();
        ease();
        Map<String, Object> grade = GradeWriter.written(run.rules(), unit);
        if (!grade.isEmpty()) {
            body.put("grade", grade);
        }
        run.sizeTable().ifPresent(table -> body.put("sizeTable", OwnTableWriter.idOrTable(table)));
        options(run.options());
        if (run.layout() == SizeRunRequest.Layout.BLOCKS) {
            body.put("layout", "blocks");
        }
        word("align", SizeRunReader.ALIGNMENTS, run.alignment(), "fold");
        paper();
        run.plotterWidth().ifPresent(width -> body.put("plotter", Map.of("width", length(width))));
        run.materials().ifPresent(materials -> body.put("materials", materials(materials)));
        // A step is told with its unit, as a grid may be finer than the unit of the request shows.
        run.worn()
                .ifPresent(
                        picture -> body.put("wornPicture", Base64.getEncoder().encodeToString(picture.png())));
        run.rounding().ifPresent(grid -> body.put("rounding", number(unit.figure(grid.step())) + " " + unit.symbol()));
        return body;
    }

    /** Every dimension stands where {@link RequestPlaces} says that it is read from. */
    private void dimensions() {
        RequestPlaces places = RequestPlaces.of(run.style());
        for (Dimension dimension : Dimension.values()) {
            if (run.dimensions().has(dimension)) {
                put(places.of(dimension), length(run.dimensions().get(dimension)));
            }
        }
    }

    private void put(String pointer, Object value) {
        String[] path = pointer.substring(1).split("/");
        Map<String, Object> at = body;
        for (int i = 0; i < path.length - 1; i++) {
            at = inner(at, path[i]);
        }
        at.put(path[path.length - 1], value);
    }

    @SuppressWarnings("unchecked")
    private static Map<String, Object> inner(Map<String, Object> at, String field) {
        return (Map<String, Object>) at.computeIfAbsent(field, name -> new LinkedHashMap<String, Object>());
    }

    private void ease() {
        CapFit fit = run.style().fit();
        if (fit instanceof CapFit.CapHeightFor given) {
            put("/sleeve/capEase", ease(given.ease()));
        } else if (fit instanceof CapFit.BicepFor given) {
            put("/sleeve/capEase", ease(given.ease()));
        } else if (fit instanceof CapFit.HalvesFor given) {
            put("/sleeve/front/capEase", ease(given.front()));
            put("/sleeve/back/capEase", ease(given.back()));
        }
    }

    private Object ease(CapEase ease) {
        return ease instanceof CapEase.Share share
                ? number(share.share() * 100) + "%"
                : length(((CapEase.Length) ease).ease());
    }

    private Map<String, Object> overlay(OverlayStyle overlay) {
        Map<String, Object> written = new LinkedHashMap<>();
        if (overlay.hem() != HemShape.VEE) {
            written.put("hem", spelled(StyleReader.HEMS, overlay.hem()));
        }
        if (overlay.join() != OverlayStyle.THIRD_DIVISION) {
            written.put("join", Decimals.clean(overlay.join()));
        }
        if (overlay.target().isPresent() && overlay.target().get() instanceof FullnessTarget.Ratio target) {
            written.put("fullness", Decimals.clean(target.ratio()));
        }
        overlay.pleats().ifPresent(plan -> written.put("pleats", pleats(plan)));
        return written;
    }

    private Map<String, Object> pleats(PleatPlan plan) {
        Map<String, Object> written = new LinkedHashMap<>();
        // A depth stands among the dimensions.
        if (plan.sizing() instanceof PleatSizing.ByCount given) {
            written.put("count", given.count());
        }
        if (plan.kind() != PleatKind.KNIFE) {
            written.put("kind", spelled(PleatReader.KINDS, plan.kind()));
        } else if (plan.direction() != PleatDirection.AWAY_FROM_APEX) {
            written.put("direction", spelled(PleatReader.DIRECTIONS, plan.direction()));
        }
        if (plan.flatZoneFront() != plan.flatZoneBack()) {
            written.put(
                    "flatZone", ordered("front", length(plan.flatZoneFront()), "back", length(plan.flatZoneBack())));
        } else if (plan.flatZoneFront() != 0) {
            written.put("flatZone", length(plan.flatZoneFront()));
        }
        return written;
    }

    private static Map<String, Object> underSleeve(UnderSleeveStyle under) {
        Map<String, Object> written = new LinkedHashMap<>();
        written.put("shaping", under.shaping().label());
        return written;
    }

    private void options(PatternOptions options) {
        PatternOptions usual = PatternOptions.usual();
        Allowances given = options.allowances();
        if (!given.equals(usual.allowances())) {
            body.put(
                    "seamAllowance",
                    given.equals(Allowances.all(given.hem()))
                            ? length(given.hem())
                            : ordered(
                                    "armhole", length(given.armhole()),
                                    "attachedEdge", length(given.attachedEdge()),
                                    "sideSeam", length(given.sideSeam()),
                                    "hem", length(given.hem())));
        }
        word("corners", SizeRunReader.CORNERS, options.corners(), "mitred");
        if (options.turnOfCloth() != usual.turnOfCloth()) {
            body.put("turnOfCloth", length(options.turnOfCloth()));
        }
        if (options.interfacingOverlap() != usual.interfacingOverlap()) {
            body.put("interfacingOverlap", length(options.interfacingOverlap()));
        }
        if (options.marking().halves() == Halves.WHOLE) {
            body.put("halves", "whole");
        }
        if (options.marking().pleatNotches() == PleatNotches.NONE) {
            body.put("pleatNotches", "none");
        }
        if (options.marking().drillHoles() == DrillHoles.PLEATS_AND_DARTS) {
            body.put("drillHoles", "pleatsAndDarts");
        }
        finishing(options.finishing());
    }

    private void finishing(Finishing finishing) {
        if (finishing.strips() == Strips.AS_PIECES) {
            body.put("strips", "pieces");
        }
        if (finishing.interfacing() == PleatInterfacing.CUT_AWAY) {
            body.put("pleatInterfacing", "cutAway");
        }
        Map<String, Object> thickness = new LinkedHashMap<>();
        finishing.thickness().main().ifPresent(value -> thickness.put("main", length(value)));
        finishing.thickness().lining().ifPresent(value -> thickness.put("lining", length(value)));
        finishing.thickness().interfacing().ifPresent(value -> thickness.put("interfacing", length(value)));
        if (!thickness.isEmpty()) {
            body.put("thickness", thickness);
        }
    }

    private void paper() {
        Map<String, Object> paper = new LinkedHashMap<>();
        if (run.paper() instanceof Paper.Roll roll) {
            paper.put("format", "roll");
            paper.put("width", length(roll.width()));
        } else if (run.paper() instanceof Paper.Projection projection) {
            paper.put("format", "projector");
            paper.put("ground", projection.ground().name().toLowerCase(Locale.ROOT));
            paper.put("width", length(projection.width()));
        } else if (!run.paper().equals(Paper.A4)) {
            paper.put("format", ((Paper.Sheets) run.paper()).name().toLowerCase(Locale.ROOT));
        }
        if (!run.printed().isEmpty()) {
            paper.put("sizes", run.printed());
        }
        if (!paper.isEmpty()) {
            body.put("paper", paper);
        }
    }

    private Map<String, Object> materials(MaterialRequest materials) {
        Map<String, Object> written = new LinkedHashMap<>();
        List<Object> fabrics = new ArrayList<>();
        materials.fabrics().forEach(fabric -> fabrics.add(fabric(fabric)));
        written.put("fabrics", fabrics);
        if (!materials.trimming().equals(Trimming.USUAL)) {
            written.put(
                    "trimming",
                    ordered(
                            "waste",
                            Decimals.clean(materials.trimming().waste()),
                            "step",
                            length(materials.trimming().step())));
        }
        if (!materials.pairs().isEmpty()) {
            written.put("order", materials.pairs());
        }
        if (materials.effort() != LayEffort.USUAL) {
            written.put("effort", small(materials.effort()));
        }
        return written;
    }

    private Map<String, Object> fabric(Fabric fabric) {
        Map<String, Object> written = new LinkedHashMap<>();
        written.put("material", small(fabric.material()));
        written.put("width", length(fabric.width()));
        written.put("laying", small(fabric.laying()));
        written.put("nap", small(fabric.nap()));
        written.put("shrinkageLengthwise", Decimals.clean(fabric.shrinkageLengthwise()));
        written.put("shrinkageCrosswise", Decimals.clean(fabric.shrinkageCrosswise()));
        written.put("waste", Decimals.clean(fabric.waste()));
        written.put("selvedge", length(fabric.selvedge()));
        written.put("gap", length(fabric.gap()));
        written.put("step", length(fabric.step()));
        return written;
    }

    private <T> void word(String field, Map<String, T> words, T value, String usual) {
        String word = spelled(words, value);
        if (!word.equals(usual)) {
            body.put(field, word);
        }
    }

    private static <T> String spelled(Map<String, T> words, T value) {
        return words.entrySet().stream()
                .filter(entry -> entry.getValue().equals(value))
                .map(Map.Entry::getKey)
                .findFirst()
                .orElseThrow();
    }

    private static String small(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT);
    }

    private static Map<String, Object> ordered(Object... namesAndValues) {
        Map<String, Object> written = new LinkedHashMap<>();
        for (int i = 0; i < namesAndValues.length; i += 2) {
            written.put((String) namesAndValues[i], namesAndValues[i + 1]);
        }
        return written;
    }

    private Object length(double millimetres) {
        return number(unit.figure(millimetres));
    }

    /** A whole number is written without a decimal point. */
    private static Number number(double value) {
        double clean = Decimals.clean(value);
        return clean == Math.rint(clean) && Math.abs(clean) < 1e9 ? (Number) (int) clean : (Number) clean;
    }
}
