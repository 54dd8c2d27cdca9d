package org.capwright.pattern;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.capwright.geometry.Curve;
import org.capwright.geometry.Point;
import org.capwright.grade.SizeRun;
import org.capwright.quantity.InvalidMeasuresException;
import org.junit.jupiter.api.Test;

/** Seams over the style space: every pair walks; a piece that was tampered with does not. */
class SeamsTest {

    @Test
    void everySeamWalks() {
        Set<String> seen = new TreeSet<>();
        int[] pleated = {0};
        RandomStyles.seeds().forEach(seed -> {
            SizeRun run = RandomStyles.run(seed);
            PatternSet set;
            try {
                set = PatternDrafter.draft(RandomStyles.TITLE, run, PatternOptions.usual());
            } catch (InvalidMeasuresException e) {
                return;
            }
            for (SeamPair pair : Seams.walk(set)) {
                seen.add(pair.name());
                assertTrue(pair.matches(), "seed " + seed + ": " + pair + " is off by " + pair.mismatch());
                if (pair.first().endsWith("pleats closed")) {
                    pleated[0]++;
                    assertEquals(pair.secondLength(), pair.firstLength(), 1e-5, "seed " + seed + pair);
                }
            }
        });
        assertTrue(pleated[0] > 100, "pleated " + pleated[0]);
        assertTrue(
                seen.containsAll(
                        Set.of("cap to armhole", "underarm seam", "overlay to armhole", "lining to overlay, top edge")),
                seen.toString());
    }

    @Test
    void aMismatchIsFound() {
        PatternSet set = PatternDrafter.draft(RandomStyles.TITLE, RandomStyles.run(1), PatternOptions.usual());
        List<Piece> pieces = new ArrayList<>(set.sizes().get(0));
        Piece sleeve = pieces.get(3);
        List<PieceEdge> edges = new ArrayList<>(sleeve.edges());
        for (int i = 0; i < edges.size(); i++) {
            PieceEdge edge = edges.get(i);
            if (edge.name().equals("front side seam")) {
                Curve longer = edge.curve()
                        .joinedTo(Curve.line(
                                edge.curve().end(), edge.curve().end().plus(new Point(0, -0.7))));
                edges.set(i, new PieceEdge(edge.name(), edge.kind(), longer, edge.allowance()));
            }
        }
        pieces.set(
                3,
                new Piece(
                        sleeve.kind(),
                        sleeve.size(),
                        edges,
                        sleeve.cutLine(),
                        sleeve.cutCorners(),
                        sleeve.notches(),
                        sleeve.marks(),
                        sleeve.cut(),
                        sleeve.label()));
        List<SeamPair> off = Seams.walk(new PatternSet(set.title(), set.run(), List.of(pieces))).stream()
                .filter(pair -> !pair.matches())
                .toList();
        assertEquals(1, off.size());
        assertEquals("underarm seam", off.get(0).name());
        assertEquals(-0.7, off.get(0).mismatch(), 1e-6);
        assertFalse(off.get(0).matches());
    }

    @Test
    void cuttingListHasTheAreasThatTheGeometryLibraryFinds() {
        for (long seed = 0; seed < 40; seed++) {
            PatternOptions options = PatternOptions.usual().withTurnOfCloth(0); // some sides are next to nothing
            PatternSet set = PatternDrafter.draft(RandomStyles.TITLE, RandomStyles.run(seed), options);
            List<CuttingList.Row> rows = CuttingList.of(set).rows();
            double main = 0;
            for (int i = 0; i < rows.size(); i++) {
                Piece piece = set.sizes().get(0).get(i);
                double area = Check.unfolded(piece, piece.cutLine()).getArea();
                assertEquals(area, rows.get(i).area(), 1e-6 * area, "seed " + seed);
                assertEquals(2, rows.get(i).count());
                main += piece.kind().material() == Material.MAIN ? 2 * area : 0;
            }
            assertEquals(main, CuttingList.of(set).area("40", Material.MAIN), 1e-6 * main);
        }
    }
}
