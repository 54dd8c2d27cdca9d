package org.capwright.service.sizerun;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.capwright.draft.OverlayStyle;
import org.capwright.draft.SleeveDraft;
import org.capwright.draft.pleat.FoldLines;
import org.capwright.draft.pleat.Lie;
import org.capwright.draft.pleat.PleatLayout;
import org.capwright.draft.pleat.PleatPlan;
import org.capwright.draft.pleat.TruedEdge;
import org.capwright.grade.Alignment;
import org.capwright.grade.GradePoints;
import org.capwright.grade.GradedSize;
import org.capwright.grade.SizeRun;
import org.capwright.grade.SpecTable;
import org.capwright.json.style.SizeRunRequest;
import org.capwright.measure.Dimension;
import org.capwright.measure.Dimensions;
import org.capwright.pattern.Piece;
import org.capwright.pattern.SewingOrder;
import org.capwright.quantity.Rounding;
import org.capwright.report.Paper;
import org.springframework.core.annotation.Order;
import org.springframework.http.MediaType;
import org.springframework.stereotype.Component;
import tools.jackson.databind.json.JsonMapper;

/** The run as JSON: everything there is. */
@Component
@Order(1)
final class JsonFormat implements SizeRunFormat {

    private final JsonMapper mapper;

    JsonFormat(JsonMapper mapper) {
        this.mapper = mapper;
    }

    @Override
    public MediaType mediaType() {
        return MediaType.APPLICATION_JSON;
    }

    @Override
    public String extension() {
        return "json";
    }

    @Override
    public String meaning() {
        return "Every size with its pieces as exact curves and as points, the spec table, the grade points and the"
                + " findings.";
    }

    @Override
    public byte[] render(SizeRunResult result) {
        return mapper.writeValueAsBytes(answer(result));
    }

    static SizeRunAnswer answer(SizeRunResult result) {
        SizeRunRequest order = result.order();
        SizeRun run = result.run();
        UnitFormat shown = new UnitFormat(order.unit(), order.language());
        List<SizeRunAnswer.GradedSizeAnswer> sizes = new ArrayList<>();
        for (int i = 0; i < run.sizes().size(); i++) {
            sizes.add(size(result, i, shown));
        }
        String base = run.baseSize().label();
        SewingOrder sewing = SewingOrder.of(result.patterns());
        List<SizeRunAnswer.GradePointAnswer> points = GradePoints.of(run, order.alignment()).stream()
                .map(point -> new SizeRunAnswer.GradePointAnswer(
                        point.part(),
                        point.name(),
                        shown.exact(point.base()),
                        point.deltas().stream().map(shown::exact).toArray(double[][]::new)))
                .toList();
        return new SizeRunAnswer(
                order.title().style(),
                order.revision(),
                order.unit().symbol(),
                base,
                align(order.alignment()),
                sizes,
                table(result.specTable(), base, order.shownRounding(), shown),
                points,
                FindingAnswer.of(result.findings(), order.unit(), order.language()),
                Workroom.of(result.patterns(), sewing, shown),
                result.materials().map(needs -> Buying.of(needs, shown)),
                new SizeRunAnswer.PaperAnswer(format(order.paper()), result.pages()),
                sewing.cautions());
    }

    private static String format(Paper paper) {
        if (paper instanceof Paper.Sheets sheets) {
            return sheets.name().toLowerCase(Locale.ROOT);
        }
        return paper instanceof Paper.Projection ? "projector" : "roll";
    }

    private static String align(Alignment alignment) {
        return switch (alignment) {
            case APEX -> "apex";
            case UNDERARM -> "underarm";
            case FOLD_AND_BICEP_LINE -> "fold";
        };
    }

    private static SizeRunAnswer.GradedSizeAnswer size(SizeRunResult result, int i, UnitFormat shown) {
        GradedSize size = result.run().sizes().get(i);
        SleeveDraft draft = size.draft();
        Dimensions dimensions = draft.dimensions();
        Map<String, Double> byName = new LinkedHashMap<>();
        for (Dimension dimension : dimensions.present()) {
            byName.put(dimension.gradeName(), shown.length(dimensions.get(dimension)));
        }
        OptionalDouble ease = draft.capEase();
        return new SizeRunAnswer.GradedSizeAnswer(
                size.label(),
                byName,
                ease.isPresent() ? Optional.of(shown.length(ease.getAsDouble())) : Optional.empty(),
                shown.exact(result.run().shift(i, result.order().alignment())),
                draft.overlay()
                        .flatMap(overlay -> result.order()
                                .style()
                                .overlay()
                                .flatMap(OverlayStyle::pleats)
                                .flatMap(plan ->
                                        overlay.pleats().map(layout -> pleats(plan, layout, overlay.trued(), shown)))),
                result.patterns().sizes().get(i).stream()
                        .map(piece -> piece(piece, shown))
                        .toList());
    }

    private static SizeRunAnswer.PleatsAnswer pleats(
            PleatPlan plan, PleatLayout layout, Optional<TruedEdge> trued, UnitFormat shown) {
        List<FoldLines> folds = trued.map(TruedEdge::lines).orElse(List.of());
        return new SizeRunAnswer.PleatsAnswer(
                UnitFormat.word(plan.kind()),
                layout.count(),
                shown.length(layout.edge()),
                shown.length(layout.span()),
                shown.length(layout.takeUp()),
                UnitFormat.ratio(layout.fullness()),
                shown.length(trued.map(TruedEdge::leastDepth).orElse(0.0)),
                shown.length(trued.map(TruedEdge::greatestDepth).orElse(0.0)),
                layout.greatestLayers(),
                folds.stream()
                        .map(lines -> new SizeRunAnswer.FoldAnswer(
                                shown.length(lines.of().foldMark()),
                                shown.length(lines.of().placementMark()),
                                shown.length(lines.of().finished()),
                                shown.length(lines.depth()),
                                lines.of().lie() == Lie.TO_FRONT ? "front" : "back"))
                        .toList());
    }

    private static SizeRunAnswer.PieceAnswer piece(Piece piece, UnitFormat shown) {
        return new SizeRunAnswer.PieceAnswer(
                piece.kind().id(),
                shown.say(piece.kind().words()),
                UnitFormat.word(piece.kind().material()),
                new SizeRunAnswer.CutAnswer(
                        piece.cut().count(),
                        UnitFormat.word(piece.cut().laying()),
                        shown.say(piece.cut().words())),
                piece.edges().stream()
                        .map(edge -> new SizeRunAnswer.EdgeAnswer(
                                edge.name(),
                                UnitFormat.word(edge.kind()),
                                shown.length(edge.curve().length()),
                                shown.length(edge.allowance()),
                                shown.segments(edge.curve())))
                        .toList(),
                shown.points(piece.netLine()),
                shown.points(piece.cutLine()),
                piece.cutCorners(),
                piece.notches().stream()
                        .map(notch -> new SizeRunAnswer.NotchAnswer(
                                UnitFormat.word(notch.kind()),
                                notch.edge(),
                                shown.length(notch.distance()),
                                shown.exact(notch.at()),
                                shown.exact(notch.onCut()),
                                UnitFormat.direction(notch.inward())))
                        .toList(),
                piece.marks().stream()
                        .map(mark -> new SizeRunAnswer.MarkAnswer(
                                UnitFormat.word(mark.kind()), mark.name(), shown.segments(mark.line())))
                        .toList(),
                piece.label().lines());
    }

    private static SizeRunAnswer.SpecTableAnswer table(
            SpecTable table, String base, Rounding rounding, UnitFormat shown) {
        List<SizeRunAnswer.RowAnswer> rows = table.rows().stream()
                .map(row -> {
                    double[] values = shown.lengths(row.values());
                    return new SizeRunAnswer.RowAnswer(
                            row.code(),
                            shown.say(row.name()),
                            shown.say(row.definition()),
                            values,
                            shown.lengths(
                                    row.values().stream().map(rounding::round).toList()),
                            UnitFormat.jumps(values),
                            shown.length(row.tolerance()),
                            shown.say(row.toleranceSource()));
                })
                .toList();
        return new SizeRunAnswer.SpecTableAnswer(
                table.sizes(), base, shown.unit().symbol(), shown.length(rounding.step()), rows);
    }
}
