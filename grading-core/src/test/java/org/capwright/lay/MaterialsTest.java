package org.capwright.lay;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.DoubleAdder;
import java.util.stream.LongStream;
import org.capwright.exchange.TestPatterns;
import org.capwright.geometry.Point;
import org.capwright.measure.SleeveSubject;
import org.capwright.measure.SleeveSubject.Option;
import org.capwright.pattern.CuttingList;
import org.capwright.pattern.EdgeKind;
import org.capwright.pattern.Material;
import org.capwright.pattern.PatternSet;
import org.capwright.pattern.Piece;
import org.capwright.pattern.PieceEdge;
import org.capwright.pattern.PieceKind;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Subject;
import org.capwright.quantity.Violation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

class MaterialsTest {

    private static final PatternSet GOWN = TestPatterns.choirGown();

    private static List<Fabric> cloths(Fabric.Laying laying) {
        return List.of(
                Fabric.plain(Material.MAIN, 1500, laying),
                Fabric.plain(Material.MAIN, 1150, laying),
                Fabric.plain(Material.LINING, 1400, laying),
                Fabric.plain(Material.INTERFACING, 900, laying));
    }

    @ParameterizedTest
    @EnumSource(Fabric.Laying.class)
    void everySizeOfTheGown(Fabric.Laying laying) {
        Materials needs = Materials.of(GOWN, cloths(laying));
        CuttingList cutting = CuttingList.of(GOWN);
        assertEquals(4 * 6, needs.cloths().size());
        for (int i = 0; i < needs.cloths().size(); i++) {
            MaterialNeed need = needs.cloths().get(i);
            Fabric cloth = cloths(laying).get(i % 4);
            String size = GOWN.sizes().get(i / 4).get(0).size();
            assertEquals(Map.of(size, 1), need.pairs());
            assertEquals(cloth, need.lay().fabric());
            assertEquals(cutting.area(size, cloth.material()), need.area(), 1e-6 * need.area());
            // On double cloth an outline off the fold is cut twice; a half on the fold is opened out.
            double layers = laying == Fabric.Laying.FOLDED ? 2 : 1;
            assertEquals(need.area(), layers * need.lay().area(), 1e-6 * need.area(), "no spare piece is cut");
            assertTrue(need.lay().purchase().length() >= need.lay().length());
            LayChecks.assertSound(need.lay(), pieces(i / 4, cloth.material()), size + " " + cloth);
        }
        for (int size = 0; size < 6; size++) {
            Lay wide = needs.cloths().get(4 * size).lay();
            Lay narrow = needs.cloths().get(4 * size + 1).lay();
            assertTrue(wide.length() <= narrow.length(), "the wider cloth needs no more");
        }
    }

    private static List<PieceToCut> pieces(int size, Material material) {
        return GOWN.sizes().get(size).stream()
                .filter(piece -> piece.kind().material() == material)
                .map(PieceToCut::onePair)
                .toList();
    }

    /** A thorough search of these takes long; each thread asks before every lay that it tries. */
    @Test
    void aSearchThatIsGivenUpEndsAtOnce() {
        List<Fabric> cloths = cloths(Fabric.Laying.OPEN);
        Map<String, Integer> order = Map.of("36", 20, "40", 20, "46", 20);
        AtomicInteger asked = new AtomicInteger();
        LayWatch soon = more -> asked.incrementAndGet() <= 200;
        assertThrows(
                CancellationException.class,
                () -> Materials.ofOrder(GOWN, cloths, Trimming.USUAL, order, LayEffort.THOROUGH, soon));
        assertTrue(asked.get() > 200 && asked.get() <= 200 + cloths.size(), "asked " + asked + " times");
        asked.set(0);
        assertThrows(
                CancellationException.class,
                () -> Materials.of(GOWN, cloths, Trimming.USUAL, LayEffort.THOROUGH, soon));
        assertTrue(asked.get() > 200 && asked.get() <= 200 + 6 * cloths.size(), "asked " + asked + " times");
    }

    @ParameterizedTest
    @EnumSource(Fabric.Nap.class)
    void theWatchOfASearchIsToldOfTheWholeOfIt(Fabric.Nap nap) {
        List<Fabric> cloths = cloths(Fabric.Laying.OPEN).stream()
                .map(cloth -> cloth.withNap(nap))
                .toList();
        DoubleAdder told = new DoubleAdder();
        DoubleAdder back = new DoubleAdder();
        LayWatch watch = more -> {
            told.add(more);
            back.add(Math.min(0, more));
            return true;
        };
        Materials watched = Materials.of(GOWN, cloths, Trimming.USUAL, LayEffort.QUICK, watch);
        assertEquals(1, told.sum(), 1e-9);
        assertEquals(0, back.sum(), "never back");
        assertEquals(watched, Materials.of(GOWN, cloths, Trimming.USUAL, LayEffort.QUICK, LayWatch.UNWATCHED));
        told.reset();
        // So many pairs that they are laid in sections of one mix.
        Materials.ofOrder(GOWN, cloths, Trimming.USUAL, Map.of("40", 40), LayEffort.QUICK, watch);
        assertEquals(1, told.sum(), 1e-9);
        assertEquals(0, back.sum(), "never back");
    }

    @Test
    void orderIsLaidTogether() {
        Map<String, Integer> order = Map.of("36", 2, "38", 4, "46", 1, "40", 0);
        List<Fabric> main = List.of(Fabric.plain(Material.MAIN, 1500, Fabric.Laying.OPEN));
        Materials needs = Materials.ofOrder(GOWN, main, Trimming.USUAL, order, LayEffort.USUAL, LayWatch.UNWATCHED);
        MaterialNeed need = needs.cloths().get(0);
        assertEquals(Map.of("36", 2, "38", 4, "46", 1), need.pairs());
        assertEquals(List.of("36", "38", "46"), List.copyOf(need.pairs().keySet()), "in the order of the run");
        assertEquals(7 * 4, need.pieces());
        assertEquals(28, need.lay().placements().size());
        CuttingList cutting = CuttingList.of(GOWN);
        double area = 2 * cutting.area("36", Material.MAIN)
                + 4 * cutting.area("38", Material.MAIN)
                + cutting.area("46", Material.MAIN);
        assertEquals(area, need.area(), 1e-6 * area);
        LayChecks.assertSound(need.lay(), List.of(), "order " + order);
        double apart = 0;
        Materials single = Materials.of(GOWN, main);
        for (MaterialNeed one : single.cloths()) {
            apart += one.lay().length()
                    * order.getOrDefault(one.pairs().keySet().iterator().next(), 0);
        }
        double together = need.lay().length();
        double separate = apart;
        assertTrue(together < separate, () -> together + " laid together, " + separate + " pair by pair");
    }

    /** Hem and attached edge measured along their chords, opened out, for two overlays; one twentieth more; sold by 100 mm. */
    @Test
    void trimming() {
        TrimmingNeed need = Materials.of(GOWN, List.of()).trimmings().get(2);
        Piece overlay = GOWN.sizes().get(2).stream()
                .filter(piece -> piece.kind() == PieceKind.OVERLAY_MAIN)
                .findFirst()
                .orElseThrow();
        int times = (overlay.onFold() ? 2 : 1) * 2;
        assertEquals(times * chords(overlay, EdgeKind.HEM), need.hem(), 0.1);
        assertEquals(times * chords(overlay, EdgeKind.ATTACHED_EDGE), need.attachedEdge(), 0.1);
        // Two overlays with a vee of two straight sides each: 180 mm across, 340 - 135 mm down.
        assertEquals(4 * Math.hypot(180, 340 - 135), need.hem(), 1e-6);
        assertEquals(Math.ceil((need.hem() + need.attachedEdge()) * 1.05 / 100) * 100, need.length(), 1e-9);
    }

    private static double chords(Piece piece, EdgeKind kind) {
        double sum = 0;
        for (PieceEdge edge : piece.edges()) {
            if (edge.kind() == kind) {
                List<Point> points = edge.curve().flattened(0.001);
                for (int i = 1; i < points.size(); i++) {
                    sum += points.get(i).distanceTo(points.get(i - 1));
                }
            }
        }
        return sum;
    }

    @Test
    void wrongOrdersAreRefused() {
        assertEquals(new SleeveSubject.PairsOf("37/a"), refused(Map.of("37/a", 1, "36", 1)));
        assertEquals(new SleeveSubject.PairsOf("36"), refused(Map.of("36", -1)));
        assertEquals(new SleeveSubject.PairsOf("36"), refused(Map.of("36", 1001)));
        assertEquals(Option.ORDER, refused(Map.of("36", 0)));
        assertEquals(Option.ORDER, refused(Map.of()));
    }

    private static Subject refused(Map<String, Integer> order) {
        List<Violation> violations = assertThrows(
                        InvalidMeasuresException.class,
                        () -> Materials.ofOrder(
                                GOWN, List.of(), Trimming.USUAL, order, LayEffort.USUAL, LayWatch.UNWATCHED))
                .violations();
        assertEquals(1, violations.size());
        return violations.get(0).subject();
    }

    static LongStream seeds() {
        return LongStream.range(0, 60);
    }

    /** Styles from all over the style space, each on the narrowest cloth that takes it and on a wider one. */
    @ParameterizedTest
    @MethodSource("seeds")
    void everyStyleCanBeLaid(long seed) {
        PatternSet set = TestPatterns.random(seed, 1);
        Fabric.Laying laying = seed % 2 == 0 ? Fabric.Laying.OPEN : Fabric.Laying.FOLDED;
        for (Material material : Material.values()) {
            List<PieceToCut> pieces = set.sizes().get(0).stream()
                    .filter(piece -> piece.kind().material() == material)
                    .map(PieceToCut::onePair)
                    .toList();
            if (pieces.isEmpty()) {
                continue;
            }
            Fabric narrow = Fabric.plain(material, 100, laying);
            double least = assertThrows(InvalidMeasuresException.class, () -> Lay.of(pieces, narrow))
                    .violations()
                    .get(0)
                    .least()
                    .orElseThrow();
            String named = "seed " + seed + " " + material;
            LayChecks.assertSound(Lay.of(pieces, narrow.withWidth(least)), pieces, named);
            LayChecks.assertSound(Lay.of(pieces, narrow.withWidth(1.9 * least)), pieces, named);
        }
    }
}
