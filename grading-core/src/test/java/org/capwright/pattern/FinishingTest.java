package org.capwright.pattern;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.capwright.check.ChoirGown;
import org.capwright.draft.CapFit;
import org.capwright.draft.ElbowShaping;
import org.capwright.draft.HemShape;
import org.capwright.draft.OverlayStyle;
import org.capwright.draft.SleeveStyle;
import org.capwright.draft.UnderSleeveStyle;
import org.capwright.draft.pleat.PleatDirection;
import org.capwright.draft.pleat.PleatKind;
import org.capwright.draft.pleat.PleatPlan;
import org.capwright.draft.pleat.PleatSizing;
import org.capwright.geometry.Curve;
import org.capwright.geometry.Point;
import org.capwright.grade.Alignment;
import org.capwright.grade.SizeRun;
import org.capwright.measure.Dimension;
import org.capwright.measure.Dimensions;
import org.capwright.report.SvgExport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.linearref.LengthIndexedLine;

/** Stays, strips and interfacing cut away in pleats, against sums by hand and areas by JTS. Widths and positions are common practice, no source. */
class FinishingTest {

    private static final double ARMHOLE = 450;
    private static final double GAP = 60;

    private static SizeRun run(PleatKind kind) {
        Map<Dimension, Double> d = new EnumMap<>(Dimension.class);
        d.put(Dimension.BICEP, 360.0);
        d.put(Dimension.CAP_HEIGHT, 135.0);
        d.put(Dimension.CAP_OUTWARD, 19.0);
        d.put(Dimension.CAP_INWARD, 12.0);
        d.put(Dimension.ARMHOLE, ARMHOLE);
        d.put(Dimension.LENGTH, 600.0);
        d.put(Dimension.WRIST, 220.0);
        d.put(Dimension.RISE, 140.0);
        d.put(Dimension.OVERLAY_LENGTH, 340.0);
        d.put(Dimension.FRONT_GAP, GAP);
        d.put(Dimension.BACK_GAP, GAP);
        OverlayStyle overlay = new OverlayStyle(HemShape.VEE, OverlayStyle.THIRD_DIVISION)
                .pleated(new PleatPlan(kind, PleatDirection.AWAY_FROM_APEX, new PleatSizing.ByCount(6), 0, 0));
        return SizeRun.grade(
                new SleeveStyle(
                        new CapFit.Given(),
                        Optional.of(overlay),
                        Optional.of(new UnderSleeveStyle(ElbowShaping.TAPERED))),
                Dimensions.of(d),
                List.of("40"),
                0,
                List.of());
    }

    private static PatternSet set(PleatKind kind, Finishing finishing) {
        PatternOptions options = PatternOptions.usual()
                .with(finishing)
                .with(new PieceMarking(Halves.WHOLE, PleatNotches.CUT_EDGE, DrillHoles.NONE));
        return PatternDrafter.draft(RandomStyles.TITLE, run(kind), options);
    }

    private static Piece piece(PatternSet set, PieceKind kind) {
        return set.sizes().get(0).stream()
                .filter(piece -> piece.kind() == kind)
                .findFirst()
                .orElseThrow();
    }

    private static Notch notch(Piece piece, NotchKind kind, String edge) {
        return piece.notches().stream()
                .filter(n -> n.kind() == kind && n.edge().equals(edge))
                .findFirst()
                .orElseThrow();
    }

    private static Envelope box(List<Point> points) {
        return Check.polygon(points).getEnvelopeInternal();
    }

    private static Point grain(Piece piece) {
        Curve line = piece.marks().stream()
                .filter(m -> m.kind() == MarkKind.GRAIN)
                .findFirst()
                .orElseThrow()
                .line();
        assertTrue(Check.polygon(piece.netLine()).covers(Check.line(line.flattened(0.1))));
        return line.end().minus(line.start()).unit();
    }

    @Test
    void stripsAreAsLongAsWhatTheyAreSewnTo() {
        Finishing drawn = new Finishing(Strips.AS_PIECES, PleatInterfacing.THROUGH, LayerThickness.unknown());
        PatternSet set = set(PleatKind.KNIFE, drawn);

        Piece stay = piece(set, PieceKind.OVERLAY_STAY);
        assertEquals(ARMHOLE - 2 * GAP, box(stay.cutLine()).getWidth(), 1e-6);
        assertEquals(12, box(stay.cutLine()).getHeight(), 1e-9);
        assertEquals(0, grain(stay).y(), 1e-9);
        assertEquals(0, notch(stay, NotchKind.APEX, "seam edge").at().x(), 1e-9);

        // Its words keep clear of the mark of its shoulder point, which reaches through it.
        double words = stay.label().topLeft().x();
        assertTrue(words > 1 || words + stay.label().width() < -1, stay.label().toString());

        Piece strip = piece(set, PieceKind.ARMHOLE_STRIP);
        assertEquals(ARMHOLE + 20, box(strip.cutLine()).getWidth(), 1e-6);
        assertEquals(40, box(strip.cutLine()).getHeight(), 1e-9);
        assertEquals(ARMHOLE, strip.edge("seam edge").curve().length(), 1e-9);
        assertEquals(Math.sqrt(0.5), grain(strip).x(), 1e-9);
        assertEquals(Math.sqrt(0.5), grain(strip).y(), 1e-9);

        assertEquals(
                List.of("Stay of the top edge, size 40", "cut 2, lining; Choir gown, shoulder overlay, revision 3"),
                stay.label().lines());

        // The stay of the head is as long as the drawn cap from notch to notch, walked by JTS.
        Piece sleeve = piece(set, PieceKind.UNDER_SLEEVE);
        LengthIndexedLine cap =
                new LengthIndexedLine(Check.line(sleeve.edge("cap").curve().flattened(0.001)));
        Point front = notch(sleeve, NotchKind.SINGLE, "cap").at();
        Point back = notch(sleeve, NotchKind.DOUBLE, "cap").at();
        double between = Math.abs(cap.project(Check.point(front).getCoordinate())
                - cap.project(Check.point(back).getCoordinate()));
        Piece head = piece(set, PieceKind.SLEEVE_HEAD);
        assertEquals(between, box(head.cutLine()).getWidth(), 0.01);
        assertEquals(50, box(head.cutLine()).getHeight(), 1e-9);
        assertEquals(Math.sqrt(0.5), grain(head).x(), 1e-9);

        assertTrue(Seams.walk(set).stream().allMatch(SeamPair::matches));
        assertEquals(
                2,
                Seams.walk(set).stream()
                        .filter(pair ->
                                pair.name().contains("stay") || pair.name().contains("strip"))
                        .count());
        // Nothing of it unless asked for.
        assertEquals(4, set(PleatKind.KNIFE, Finishing.usual()).sizes().get(0).size());
    }

    /** Side by side they would make the picture a metre wider, and the nest in it small. */
    @Test
    void stripsStandBelowTheOtherPiecesInThePicture() {
        Finishing drawn = new Finishing(Strips.AS_PIECES, PleatInterfacing.THROUGH, LayerThickness.unknown());
        double without = width(SvgExport.nest(set(PleatKind.KNIFE, Finishing.usual()), Alignment.FOLD_AND_BICEP_LINE));
        byte[] picture = SvgExport.nest(set(PleatKind.KNIFE, drawn), Alignment.FOLD_AND_BICEP_LINE);
        assertEquals(Math.max(without, ARMHOLE + 20 + 30), width(picture), 1);
        Matcher piece = Pattern.compile("data-piece=\"([a-z-]+)\"[^>]*translate\\([-0-9.]+[ ,]([-0-9.]+)\\)")
                .matcher(new String(picture, StandardCharsets.UTF_8));
        double lowest = 0;
        double strips = 0;
        int count = 0;
        while (piece.find()) {
            double down = Double.parseDouble(piece.group(2));
            if (piece.group(1).matches("overlay-stay|sleeve-head|armhole-strip")) {
                strips = count == 4 ? down : Math.min(strips, down);
            } else {
                lowest = Math.max(lowest, down);
            }
            count++;
        }
        assertEquals(7, count);
        assertTrue(strips > lowest, strips + " " + lowest);
    }

    /** A strip has neither apex nor underarm: its sizes lie on one middle, each around the one before. */
    @ParameterizedTest
    @EnumSource(Alignment.class)
    void stripsOfAllSizesLieOnTheirMiddles(Alignment alignment) {
        PatternSet drawn = PatternDrafter.draft(
                RandomStyles.TITLE,
                ChoirGown.run(),
                PatternOptions.usual()
                        .with(new Finishing(Strips.AS_PIECES, PleatInterfacing.THROUGH, LayerThickness.unknown())));
        String picture = new String(SvgExport.nest(drawn, alignment), StandardCharsets.UTF_8);
        assertEquals(
                2 * ChoirGown.LABELS.size(),
                Pattern.compile("id=\"(sleeve-head|armhole-strip)-size-\\d\\d\" class=\"size\" data-size=\"\\d\\d\">")
                        .matcher(picture)
                        .results()
                        .count());
        assertEquals(
                alignment != Alignment.FOLD_AND_BICEP_LINE,
                Pattern.compile("id=\"under-sleeve-size-42\"[^>]*translate")
                        .matcher(picture)
                        .find());
    }

    private static double width(byte[] picture) {
        Matcher size = Pattern.compile("width=\"([0-9.]+)mm\"").matcher(new String(picture, StandardCharsets.UTF_8));
        assertTrue(size.find());
        return Double.parseDouble(size.group(1));
    }

    @ParameterizedTest
    @EnumSource(PleatKind.class)
    void interfacingCutAwayStiffensWhatIsSeenAlone(PleatKind kind) {
        Finishing cutAway = new Finishing(Strips.IN_WORDS, PleatInterfacing.CUT_AWAY, LayerThickness.unknown());
        PatternSet set = set(kind, cutAway);
        Piece main = piece(set, PieceKind.OVERLAY_MAIN);
        Geometry stiff = Check.polygon(piece(set, PieceKind.OVERLAY_INTERFACING).cutLine());
        Geometry through = Check.polygon(main.netLine());
        Geometry gaps = Check.PLANE.createPolygon();
        List<MarkLine> marks = main.marks();
        int folds = 0;
        for (int i = 0; i < marks.size(); i++) {
            if (marks.get(i).kind() == MarkKind.PLEAT_FOLD) {
                Curve fold = marks.get(i).line();
                Curve placement = marks.get(i + 1).line();
                // Prolonged beyond the edge, so that all of the trued edge between the lines is in it.
                Point outFold = fold.end().towards(fold.start(), 1.5);
                Point outPlacement = placement.end().towards(placement.start(), 1.5);
                gaps = gaps.union(Check.polygon(List.of(fold.end(), outFold, outPlacement, placement.end()))
                        .convexHull());
                folds++;
            }
        }
        assertTrue(folds >= 6);
        Geometry expected = through.difference(gaps);
        double apart = expected.symDifference(stiff).getArea();
        double cut = through.intersection(gaps).getArea();
        // Strips too narrow to be fused go as well, and gaps are shallower where what is left between them would be.
        assertTrue(apart < 0.1 * cut, kind + ": " + apart + " of " + cut);
        // Two stitches' room everywhere: it does not fall apart where strips of 4 mm are taken away.
        assertEquals(1, stiff.buffer(-2).getNumGeometries());
        assertTrue(stiff.isValid() && through.buffer(0.02).covers(stiff));
        // What hangs beyond the last gap is held by a strip of 12 mm along the hem, and the grain line touches no gap.
        Geometry away = through.difference(stiff);
        for (PieceEdge edge : main.edges()) {
            if (edge.kind() == EdgeKind.HEM) {
                Geometry hem = Check.line(edge.curve().flattened(0.01));
                for (int i = 0; i < away.getNumGeometries(); i++) {
                    Geometry gap = away.getGeometryN(i);
                    assertTrue(gap.getArea() < 1 || gap.distance(hem) > 11.9, kind + ": " + gap);
                }
            }
        }
        for (MarkLine mark : piece(set, PieceKind.OVERLAY_INTERFACING).marks()) {
            if (mark.kind() == MarkKind.HALF) {
                assertTrue(stiff.covers(Check.line(mark.line().flattened(1))), kind + " " + mark.name());
            }
        }
        Geometry grain = Check.line(piece(set, PieceKind.OVERLAY_INTERFACING).marks().stream()
                .filter(mark -> mark.kind() == MarkKind.GRAIN)
                .findFirst()
                .orElseThrow()
                .line()
                .flattened(1));
        assertTrue(grain.distance(stiff.getBoundary()) > 2.9, kind.toString());
    }

    /** Three layers of each cloth, of 0.5, 0.2 and 0.3 mm: 3 mm in all, and 2.4 mm where one layer of interfacing is left. */
    @Test
    void bulkIsTheSumOfTheLayers() {
        LayerThickness thick =
                new LayerThickness(OptionalDouble.of(0.5), OptionalDouble.of(0.2), OptionalDouble.of(0.3));
        PatternSet through = set(PleatKind.BOX, new Finishing(Strips.IN_WORDS, PleatInterfacing.THROUGH, thick));
        PatternSet cutAway = set(PleatKind.BOX, new Finishing(Strips.IN_WORDS, PleatInterfacing.CUT_AWAY, thick));
        assertEquals(
                new Bulk("40", 3, 3, 3, OptionalDouble.of(3.0)),
                rounded(Bulk.of(through).get(0)));
        assertEquals(
                new Bulk("40", 3, 3, 1, OptionalDouble.of(2.4)),
                rounded(Bulk.of(cutAway).get(0)));
        assertTrue(SewingOrder.of(cutAway)
                .steps()
                .contains("Layers in the closed edge where it is thickest: 3 of main"
                        + " cloth, 3 of lining, 1 of interfacing, 2.4 mm in all."));
    }

    private static Bulk rounded(Bulk bulk) {
        return new Bulk(
                bulk.size(),
                bulk.main(),
                bulk.lining(),
                bulk.interfacing(),
                OptionalDouble.of(Math.rint(bulk.thickness().orElseThrow() * 1e6) / 1e6));
    }
}
