package org.capwright.pattern;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.capwright.GradeRules;
import org.capwright.StructuredSleeve;
import org.capwright.draft.CapFit;
import org.capwright.draft.HemShape;
import org.capwright.draft.Overlay;
import org.capwright.draft.OverlayStyle;
import org.capwright.draft.SleeveStyle;
import org.capwright.draft.pleat.Overhang;
import org.capwright.draft.pleat.PleatDirection;
import org.capwright.draft.pleat.PleatKind;
import org.capwright.draft.pleat.PleatPlan;
import org.capwright.draft.pleat.PleatSizing;
import org.capwright.draft.pleat.TruedEdge;
import org.capwright.grade.SizeRun;
import org.capwright.grade.Sizes;
import org.capwright.measure.Dimension;
import org.capwright.measure.Dimensions;
import org.capwright.measure.SleeveSubject;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Unit;
import org.capwright.quantity.Violation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Drawn pieces folded on paper, as it were: reflections at the drawn marks, by JTS, know nothing of how the edge was trued. Whoever folds a piece must find every layer on the seam.
 * Random styles: {@link StyleBarsTest}.
 */
class FoldedPiecesTest {

    /** Layers may miss the seam by this much, mm; flattening alone makes some thousandths. */
    private static final double CAUGHT = 0.05;

    private static SizeRun run(PleatKind kind, PleatDirection direction, int count) {
        Map<Dimension, Double> d = new EnumMap<>(Dimension.class);
        d.put(Dimension.BICEP, 360.0);
        d.put(Dimension.CAP_HEIGHT, 135.0);
        d.put(Dimension.CAP_OUTWARD, 19.0);
        d.put(Dimension.CAP_INWARD, 12.0);
        d.put(Dimension.ARMHOLE, 450.0);
        d.put(Dimension.RISE, 140.0);
        d.put(Dimension.OVERLAY_LENGTH, 340.0);
        d.put(Dimension.FRONT_GAP, 60.0);
        d.put(Dimension.BACK_GAP, 60.0);
        OverlayStyle overlay = new OverlayStyle(HemShape.VEE, OverlayStyle.THIRD_DIVISION)
                .pleated(new PleatPlan(kind, direction, new PleatSizing.ByCount(count), 0, 0));
        return graded(new SleeveStyle(new CapFit.Given(), Optional.of(overlay), Optional.empty()), Dimensions.of(d));
    }

    private static Piece main(SizeRun run) {
        return PatternDrafter.draft(RandomStyles.TITLE, run, PatternOptions.usual())
                .sizes()
                .get(0)
                .get(0);
    }

    private static void requireLaid(Overlay overlay, Piece piece, String which) {
        PaperFold paper = PaperFold.of(piece);
        assertTrue(paper.worst() < CAUGHT, () -> which + ": a layer misses the seam by " + paper.worst());
        assertEquals(overlay.attachSpan(), paper.seamLength(), 0.01, which);
    }

    @ParameterizedTest
    @CsvSource({
        "KNIFE, TOWARD_FRONT, 3",
        "KNIFE, TOWARD_FRONT, 4",
        "KNIFE, TOWARD_FRONT, 6",
        "KNIFE, TOWARD_FRONT, 7",
        "KNIFE, TOWARD_APEX, 5",
        "KNIFE, AWAY_FROM_APEX, 4",
        "KNIFE, AWAY_FROM_APEX, 11",
        "BOX, TOWARD_APEX, 3",
        "INVERTED, TOWARD_APEX, 3",
        "INVERTED, TOWARD_APEX, 14"
    })
    void everyLayerLiesOnTheSeam(PleatKind kind, PleatDirection direction, int count) {
        SizeRun run = run(kind, direction, count);
        Overlay overlay = run.baseSize().draft().overlay().orElseThrow();
        requireLaid(overlay, main(run), kind + " " + direction + " " + count);
        // The take-up is what it was asked to be, however the layers are cut.
        assertEquals(overlay.edgeLength() - overlay.attachSpan(), overlay.takeUp(), 1e-8);
    }

    @Test
    void theDepthStatedIsTheDepthAsFolded() {
        SizeRun run = run(PleatKind.KNIFE, PleatDirection.TOWARD_FRONT, 7);
        double stated = run.baseSize()
                .draft()
                .overlay()
                .orElseThrow()
                .trued()
                .orElseThrow()
                .greatestDepth();
        double folded = PaperFold.of(main(run)).depths().stream()
                .mapToDouble(Double::doubleValue)
                .max()
                .orElseThrow();
        assertEquals(folded, stated, 0.001);
    }

    @Test
    void underLayersThatWouldStickOutEndWithinTheSeamAndLeaveNoScrapOfALine() {
        TruedEdge trued = run(PleatKind.KNIFE, PleatDirection.TOWARD_FRONT, 7)
                .baseSize()
                .draft()
                .overlay()
                .orElseThrow()
                .trued()
                .orElseThrow();
        assertEquals(Overhang.NONE, trued.overhang());
        double shortest = trued.curve().segments().stream()
                .mapToDouble(segment -> segment.start().distanceTo(segment.end()))
                .min()
                .orElseThrow();
        assertTrue(shortest > 0.01, () -> "a line of " + shortest + " mm");
    }

    @Test
    void theApexNotchOfAHalfLiesOnTheFold() {
        Piece piece = main(run(PleatKind.KNIFE, PleatDirection.TOWARD_APEX, 5));
        assertTrue(piece.onFold());
        Notch apex = piece.notches().stream()
                .filter(notch -> notch.kind() == NotchKind.APEX)
                .findFirst()
                .orElseThrow();
        assertEquals(0, apex.at().x(), 1e-9);
    }

    @Test
    void onePleatSoDeepThatItSticksOutIsRefusedWithANumberThatWorks() {
        InvalidMeasuresException refused = assertThrows(
                InvalidMeasuresException.class, () -> run(PleatKind.KNIFE, PleatDirection.TOWARD_FRONT, 1));
        Violation violation = refused.violations().get(0);
        assertEquals(SleeveSubject.Option.PLEAT_COUNT, violation.subject());
        int works = (int) violation.least().orElseThrow();
        SizeRun run = run(PleatKind.KNIFE, PleatDirection.TOWARD_FRONT, works);
        requireLaid(run.baseSize().draft().overlay().orElseThrow(), main(run), works + " pleats");
    }

    private static SizeRun graded(SleeveStyle style, Dimensions dimensions) {
        return StructuredSleeve.of(RandomStyles.TITLE, style, dimensions)
                .grade(GradeRules.in(Unit.MILLIMETRE), new Sizes(List.of("40"), 0))
                .pieces()
                .patterns()
                .run();
    }
}
