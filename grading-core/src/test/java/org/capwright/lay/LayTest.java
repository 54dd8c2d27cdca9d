package org.capwright.lay;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.capwright.measure.SleeveSubject.ClothFigure;
import org.capwright.pattern.CutInstruction.Laying;
import org.capwright.pattern.Material;
import org.capwright.pattern.Piece;
import org.capwright.pattern.PieceKind;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Violation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class LayTest {

    /** A cloth of which all is used: no selvedge, no gap. */
    private static Fabric bare(double width) {
        return new Fabric(Material.MAIN, width, Fabric.Laying.OPEN, Fabric.Nap.WITHOUT, 0, 0, 0, 0, 0, 50);
    }

    private static Lay lay(double width, Piece... pieces) {
        List<PieceToCut> cuts =
                java.util.Arrays.stream(pieces).map(PieceToCut::onePair).toList();
        Lay lay = Lay.of(cuts, bare(width));
        LayChecks.assertSound(lay, cuts, "");
        return lay;
    }

    @Test
    void equalRectanglesTile() {
        Lay lay = lay(1000, LayPieces.rectangle("a", 12, 250, 300));
        assertEquals(900, lay.length(), 1e-9);
        assertEquals(1, lay.utilisation(), 1e-12);
    }

    @Test
    void twoKindsOfRectangleTile() {
        Lay lay = lay(1000, LayPieces.rectangle("a", 3, 600, 200), LayPieces.rectangle("b", 4, 400, 150));
        assertEquals(600, lay.length(), 1e-9);
        assertEquals(1, lay.utilisation(), 1e-12);
    }

    @Test
    void twoTrominoesMakeARectangle() {
        Piece l = LayPieces.polygon("L", 4, Laying.FLAT, 0, 0, 200, 0, 200, 100, 100, 100, 100, 200, 0, 200);
        assertEquals(1, lay(300, l).utilisation(), 1e-12);
        assertEquals(1, lay(200, l).utilisation(), 1e-12);
        assertEquals(1, lay(600, l).utilisation(), 1e-12);
    }

    @Test
    void rightTrianglesTurnedByHalfMakeRectangles() {
        Lay lay = lay(900, LayPieces.polygon("t", 6, Laying.FLAT, 0, 0, 300, 0, 0, 400));
        assertEquals(400, lay.length(), 1e-6);
        assertEquals(1, lay.utilisation(), 1e-8);
    }

    @Test
    void trapeziaTurnedByHalfMakeRectangles() {
        Lay lay = lay(600, LayPieces.polygon("t", 8, Laying.FLAT, 0, 0, 200, 0, 100, 300, 0, 300));
        assertEquals(600, lay.length(), 1e-6);
    }

    /** With the nap the triangles cannot turn: three side by side, the next three nested point to notch no closer than a whole height. */
    @Test
    void napForbidsTheTurn() {
        Piece triangle = LayPieces.polygon("t", 6, Laying.FLAT, 0, 0, 300, 0, 0, 400);
        Lay lay = Lay.of(List.of(PieceToCut.onePair(triangle)), bare(900).withNap(Fabric.Nap.WITH));
        LayChecks.assertSound(lay, List.of(PieceToCut.onePair(triangle)), "");
        assertEquals(800, lay.length(), 1e-6);
    }

    /** A small piece must go into the notch of a large one: a lay of boxes would be longer. */
    @Test
    void hollowsAreUsed() {
        Piece frame = LayPieces.polygon("v", 1, Laying.FLAT, 0, 0, 400, 0, 400, 500, 200, 100, 0, 500);
        Piece wedge = LayPieces.polygon("w", 1, Laying.FLAT, 0, 300, 150, 0, 300, 300);
        assertEquals(500, lay(400, frame, wedge).length(), 1e-6);
    }

    /** Perfect squared rectangle of order 9, 32 x 33 (Moroń, 1925): the best lay has no waste. */
    @Test
    void squaredRectangle() {
        Lay lay = lay(330, squares(10, 18, 15, 14, 10, 9, 8, 7, 4, 1));
        assertTrue(lay.utilisation() > 0.93, () -> "utilisation " + lay.utilisation());
    }

    /** Perfect squared square of order 21, side 112 (Duijvestijn, 1978). A packing without waste exists; no quick method is expected to find it. */
    @Test
    void squaredSquare() {
        Lay lay = lay(1120, squares(10, 50, 35, 27, 8, 19, 15, 17, 11, 6, 24, 29, 25, 9, 2, 7, 18, 16, 42, 4, 37, 33));
        assertTrue(lay.utilisation() > 0.88, () -> "utilisation " + lay.utilisation());
    }

    private static Piece[] squares(double unit, int... sides) {
        return IntStream.of(sides)
                .mapToObj(side -> LayPieces.rectangle("s" + side, 1, side * unit, side * unit))
                .toArray(Piece[]::new);
    }

    static IntStream seeds() {
        return IntStream.range(0, 60);
    }

    /** Random pieces, most not convex, on random cloths: soundness, both naps, and widths side by side. */
    @ParameterizedTest
    @MethodSource("seeds")
    void everyLayIsSound(int seed) {
        SplittableRandom random = new SplittableRandom(seed);
        String named = "seed " + seed;
        List<PieceToCut> pieces = randomPieces(random);
        Fabric cloth = randomCloth(random);
        Lay with = Lay.of(pieces, cloth.withNap(Fabric.Nap.WITH));
        Lay without = Lay.of(pieces, cloth.withNap(Fabric.Nap.WITHOUT));
        LayChecks.assertSound(with, pieces, named);
        LayChecks.assertSound(without, pieces, named);
        assertTrue(without.length() <= with.length(), named + ": leaving the nap out of account never costs length");
        assertEquals(without, Lay.of(pieces, cloth.withNap(Fabric.Nap.WITHOUT)), named + ": the same again");
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2, 3, 4, 5})
    void widerClothNeedsNoMoreSideBySide(int seed) {
        SplittableRandom random = new SplittableRandom(1000 + seed);
        List<PieceToCut> pieces = randomPieces(random);
        List<Double> widths = List.of(1500.0, 1180.0, 1600.0, 1400.0, 1190.0, 1200.0);
        Fabric cloth = randomCloth(random);
        List<Lay> lays = Lay.acrossWidths(pieces, cloth, widths);
        for (int i = 0; i < widths.size(); i++) {
            Lay lay = lays.get(i);
            assertEquals(widths.get(i), lay.fabric().width());
            LayChecks.assertSound(lay, pieces, "seed " + seed);
            for (int j = 0; j < widths.size(); j++) {
                if (widths.get(i) > widths.get(j)) {
                    assertTrue(lay.length() <= lays.get(j).length(), "seed " + seed);
                }
            }
        }
    }

    private static List<PieceToCut> randomPieces(SplittableRandom random) {
        List<PieceToCut> pieces = new ArrayList<>();
        int kinds = 1 + random.nextInt(4);
        for (int i = 0; i < kinds; i++) {
            double size = 150 + 350 * random.nextDouble();
            Piece piece = switch (random.nextInt(4)) {
                case 0 -> LayPieces.star(random, "s" + i, Laying.FLAT, size);
                case 1 -> LayPieces.star(random, "s" + i, Laying.MIRRORED_PAIR, size);
                case 2 ->
                    LayPieces.sleeve(
                            PieceKind.OVERLAY_MAIN, "s" + i, Laying.ON_FOLD, size / 2, size * 0.6, size / 2, 30);
                default ->
                    LayPieces.sleeve(
                            PieceKind.UNDER_SLEEVE, "s" + i, Laying.MIRRORED_PAIR, size / 2, size / 3, size, size / 3);
            };
            pieces.add(new PieceToCut(piece, 1 + random.nextInt(2)));
        }
        return pieces;
    }

    private static Fabric randomCloth(SplittableRandom random) {
        return new Fabric(
                Material.MAIN,
                1180 + 500 * random.nextDouble(),
                random.nextBoolean() ? Fabric.Laying.OPEN : Fabric.Laying.FOLDED,
                Fabric.Nap.WITHOUT,
                0.1 * random.nextDouble(),
                0.02 * random.nextDouble(),
                0.1 * random.nextDouble(),
                10 * random.nextDouble(),
                random.nextInt(3) == 0 ? 0 : 12 * random.nextDouble(),
                50);
    }

    /** Eight halves, each 500 mm along the fold, would take 4 m of fold; opened out on double cloth, four go side by side, 200 mm each. */
    @Test
    void halvesAreOpenedOutWhereTheFoldIsTooShort() {
        Piece half = LayPieces.polygon("h", 8, Laying.ON_FOLD, 0, 0, 100, 0, 100, 500, 0, 500);
        Fabric folded = new Fabric(Material.MAIN, 1600, Fabric.Laying.FOLDED, Fabric.Nap.WITH, 0, 0, 0, 0, 0, 50);
        List<PieceToCut> pieces = List.of(PieceToCut.onePair(half));
        Lay lay = Lay.of(pieces, folded);
        LayChecks.assertSound(lay, pieces, "");
        assertEquals(500, lay.length(), 1e-9);
        Lay narrow = Lay.of(pieces, folded.withWidth(200));
        LayChecks.assertSound(narrow, pieces, "");
        assertEquals(4000, narrow.length(), 1e-9);
    }

    /** Many pieces are laid in sections. */
    @Test
    void largeOrder() {
        Piece sleeve = LayPieces.sleeve(PieceKind.UNDER_SLEEVE, "40", Laying.MIRRORED_PAIR, 190, 135, 450, 130);
        Piece overlay = LayPieces.sleeve(PieceKind.OVERLAY_MAIN, "40", Laying.ON_FOLD, 190, 270, 200, 20);
        List<PieceToCut> pieces = List.of(new PieceToCut(sleeve, 70), new PieceToCut(overlay, 65));
        Lay lay = Lay.of(pieces, Fabric.plain(Material.MAIN, 1500, Fabric.Laying.OPEN));
        LayChecks.assertSound(lay, pieces, "70 and 65 pairs");
        assertEquals(270, lay.placements().size());
        assertTrue(lay.utilisation() > 0.6, () -> "utilisation " + lay.utilisation());
    }

    @ParameterizedTest
    @ValueSource(strings = {"OPEN", "FOLDED"})
    void tooNarrowClothNamesTheLeastWidthThatWorks(Fabric.Laying laying) {
        Piece sleeve = LayPieces.sleeve(PieceKind.UNDER_SLEEVE, "44", Laying.MIRRORED_PAIR, 190, 135, 450, 130);
        List<PieceToCut> pieces = List.of(PieceToCut.onePair(sleeve));
        Fabric narrow = new Fabric(Material.LINING, 350, laying, Fabric.Nap.WITH, 0.03, 0.02, 0.05, 8, 4, 50);
        Violation violation = assertThrows(InvalidMeasuresException.class, () -> Lay.of(pieces, narrow))
                .violations()
                .get(0);
        assertEquals(ClothFigure.WIDTH, violation.subject());
        assertEquals(350, violation.value().orElseThrow());
        double least = violation.least().orElseThrow();
        // By hand: 380 mm of sleeve, two selvedges; folded: two layers, each with its selvedge and the gap off the
        // fold; then 2 % of shrinkage.
        double byHand = laying == Fabric.Laying.OPEN ? (380 + 16) / 0.98 : 2 * (380 + 8 + 4) / 0.98;
        assertEquals(byHand, least, 0.001);
        LayChecks.assertSound(Lay.of(pieces, narrow.withWidth(least)), pieces, "least width");
        assertThrows(InvalidMeasuresException.class, () -> Lay.of(pieces, narrow.withWidth(least - 0.01)));
    }

    /** By hand: 1800 mm of lay, a tenth of the cloth lost by shrinking (1800 / 0.9 = 2000), 5 % waste, eighths of a yard of 114.3 mm (yard of 1959). */
    @Test
    void lengthToBuy() {
        Purchase purchase = Purchase.of(1800, 0.1, 0.05, 114.3);
        assertEquals(1 / 0.9, purchase.shrinkageFactor(), 1e-12);
        assertEquals(1.05, purchase.wasteFactor(), 1e-12);
        assertEquals(2100, purchase.exactLength(), 1e-9);
        assertEquals(19 * 114.3, purchase.length(), 1e-9);
        assertEquals(2000, Purchase.of(1800, 0.1, 0, 50).length(), 1e-9, "a whole number of steps stays");
    }

    @Test
    void figuresOfAClothAreChecked() {
        InvalidMeasuresException thrown = assertThrows(
                InvalidMeasuresException.class,
                () -> new Fabric(
                        Material.MAIN, Double.NaN, Fabric.Laying.OPEN, Fabric.Nap.WITH, 0.6, -0.1, 2, 0, 200, 0));
        assertEquals(
                List.of(
                        ClothFigure.WIDTH,
                        ClothFigure.SHRINKAGE_LENGTHWISE,
                        ClothFigure.SHRINKAGE_CROSSWISE,
                        ClothFigure.WASTE,
                        ClothFigure.GAP,
                        ClothFigure.STEP),
                thrown.violations().stream().map(Violation::subject).toList());
        assertEquals(
                ClothFigure.SELVEDGE,
                assertThrows(
                                InvalidMeasuresException.class,
                                () -> new Fabric(
                                        Material.MAIN, 100, Fabric.Laying.OPEN, Fabric.Nap.WITH, 0, 0, 0, 50, 0, 50))
                        .violations()
                        .get(0)
                        .subject());
    }
}
