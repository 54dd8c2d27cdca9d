package org.capwright.pattern;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.capwright.exchange.TestPatterns;
import org.capwright.geometry.Point;
import org.capwright.quantity.Unit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;

/** Labels over the style space: inside the piece, off the marks, legible. */
class LabelPlacementTest {

    @ParameterizedTest
    @ValueSource(
            strings = {
                "A",
                "Choir gown with shoulder overlay, winter, second fitting, for the large hall in the north",
                "聖歌隊のガウン、肩の重ね布つき、冬用",
                "Χορωδία — φόρεμα με επένδυση",
                "جبة الكورال مع طبقة الكتف",
                "Robe de chœur e\u0301te\u0301",
                "Unbreakablywordywithoutanyspaceinitatallfromonesideofthepaperquiteovertotheother"
            })
    void labelsStayInsideAndOffTheMarks(String style) {
        PatternSet.Title title = new PatternSet.Title(style, "12", Unit.INCH);
        int[] legible = {0};
        int[] all = {0};
        RandomStyles.seeds().limit(120).forEach(seed -> {
            List<Piece> pieces;
            try {
                pieces = PatternDrafter.draft(title, RandomStyles.run(seed), PatternOptions.usual())
                        .sizes()
                        .get(0);
            } catch (org.capwright.quantity.InvalidMeasuresException e) {
                return;
            }
            for (Piece piece : pieces) {
                requireRoom(piece, "seed " + seed);
                all[0]++;
                legible[0] += piece.label().lineHeight() >= LabelPlacement.LEAST ? 1 : 0;
            }
        });
        assertTrue(legible[0] >= 0.99 * all[0], legible[0] + " of " + all[0] + " labels are legible");
    }

    private static void requireRoom(Piece piece, String where) {
        PieceLabel label = piece.label();
        String which = where + " " + piece.kind() + " " + label;
        assertFalse(label.lines().isEmpty(), which);
        double height = label.lineHeight() * label.lines().size();
        Geometry block = Check.PLANE.toGeometry(new Envelope(
                label.topLeft().x(),
                label.topLeft().x() + label.width(),
                label.topLeft().y() - height,
                label.topLeft().y()));
        assertTrue(Check.polygon(piece.netLine()).contains(block), which);
        for (MarkLine mark : piece.marks()) {
            assertFalse(Check.line(mark.line().flattened(0.01)).intersects(block), which + mark.name());
        }
        for (String line : label.lines()) {
            assertTrue(TextWidth.of(line) * label.lineHeight() <= label.width() + 1e-9, which + line);
        }
    }

    @Test
    void everySizeOfARunHasRoomForItsWordsMostlyWhereTheBaseSizeHasThem() {
        int alike = 0;
        int all = 0;
        for (long seed = 0; seed < 24; seed++) {
            PatternSet set = TestPatterns.random(seed, 5);
            List<Piece> base = set.sizes().get(set.run().base());
            for (List<Piece> size : set.sizes()) {
                for (int i = 0; i < size.size(); i++) {
                    Piece piece = size.get(i);
                    requireRoom(piece, "seed " + seed + " size " + piece.size());
                    Point here = piece.label().topLeft();
                    all++;
                    alike += here.distanceTo(base.get(i).label().topLeft()) < 20 ? 1 : 0;
                }
            }
        }
        assertTrue(alike >= 0.6 * all, alike + " of " + all + " lie where the base size has them");
    }

    @Test
    void wordsAreBrokenAtSpacesAndLongOnesInside() {
        assertEquals(List.of("one two", "three"), TextWidth.broken(List.of("one two three"), 0.62 * 7.5));
        assertEquals(List.of("abcdefghij"), TextWidth.broken(List.of("abcdefghij"), 0.62 * 7.5));
        // 20 letters of 0.62 are wider than a word may be, 12 line heights, which hold 19.
        assertEquals(
                List.of("abcdefghijklmnopqrs", "t"), TextWidth.broken(List.of("abcdefghijklmnopqrst"), 0.62 * 7.5));
        assertEquals("abc…", TextWidth.shortened("abcdefghij", 0.62 * 4.5));
        assertEquals(3, TextWidth.of("聖歌隊"), 1e-12);
        assertEquals(0.62, TextWidth.of("e\u0301"), 1e-12);
    }
}
