package org.capwright.pattern;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.LongStream;
import org.capwright.check.ChoirGown;
import org.capwright.geometry.Point;
import org.capwright.grade.Alignment;
import org.capwright.quantity.InvalidMeasuresException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.util.AffineTransformation;

/** The words of nests over the whole space that the interface takes: capitals of 5 mm over a line, as DXF has them, against the lines of all sizes by JTS. */
class NestHalvesTest {

    /** Where the smallest size has its words, a line of a larger one runs through them. */
    private static final long[] CROSSED = {29, 30, 232};

    @Test
    void noLineOfAnySizeRunsThroughTheWords() {
        int words = 0;
        List<String> crossed = new ArrayList<>();
        for (long seed : LongStream.concat(LongStream.of(CROSSED), LongStream.range(0, 20))
                .toArray()) {
            PatternSet set;
            try {
                set = RandomRuns.of(seed).drafted();
            } catch (InvalidMeasuresException e) {
                continue;
            }
            for (int kind = 0; kind < set.sizes().get(0).size(); kind++) {
                List<Piece> pieces = set.acrossSizes(kind);
                List<Point> moves = moves(set, Alignment.APEX);
                Piece placed = NestHalves.smallest(pieces, moves);
                assertEquals(pieces.get(0).marks().size(), placed.marks().size());
                assertEquals(pieces.get(0).cutLine(), placed.cutLine());
                for (MarkLine mark : placed.marks()) {
                    if (mark.kind() == MarkKind.HALF) {
                        words++;
                        if (isCrossed(mark, pieces, moves)) {
                            crossed.add("seed " + seed + " " + placed.kind() + " " + mark.name());
                        }
                    }
                }
            }
        }
        assertEquals(List.of(), crossed);
        assertTrue(words > 30, words + " words");
    }

    /** Every size has its bicep line elsewhere where the sizes lie over one another on their apexes: the name of the piece stands between none of them. */
    @ParameterizedTest
    @EnumSource
    void noLineOfAnySizeRunsThroughTheNameOfThePiece(Alignment alignment) {
        PatternSet set = PatternDrafter.draft(RandomStyles.TITLE, ChoirGown.run(), PatternOptions.usual());
        for (int kind = 0; kind < set.sizes().get(0).size(); kind++) {
            List<Piece> pieces = set.acrossSizes(kind);
            List<Point> moves = moves(set, alignment);
            Piece placed = NestHalves.smallest(pieces, moves);
            PieceLabel label = placed.label();
            Geometry room = Outline.PLANE.toGeometry(new Envelope(
                    label.topLeft().x(),
                    label.topLeft().x() + label.width(),
                    label.topLeft().y() - label.lineHeight() * label.lines().size(),
                    label.topLeft().y()));
            assertTrue(Check.polygon(placed.netLine()).contains(room), placed.kind() + " holds its name");
            for (int i = 0; i < pieces.size(); i++) {
                String which = placed.kind() + ", size " + pieces.get(i).size();
                Point move = moves.get(i).minus(moves.get(0));
                assertFalse(runsThrough(pieces.get(i).cutLine(), move, room), which);
                assertFalse(runsThrough(pieces.get(i).netLine(), move, room), which);
                for (MarkLine mark : pieces.get(i).marks()) {
                    if (mark.kind() != MarkKind.HALF && (i == 0 || mark.kind() != MarkKind.GRAIN)) {
                        assertFalse(runsThrough(mark.line().flattened(0.1), move, room), which + ", " + mark.name());
                    }
                }
            }
        }
    }

    private static List<Point> moves(PatternSet set, Alignment alignment) {
        List<Point> moves = new ArrayList<>();
        for (int i = 0; i < set.sizes().size(); i++) {
            moves.add(set.run().shift(i, alignment));
        }
        return moves;
    }

    private static boolean runsThrough(List<Point> line, Point move, Geometry room) {
        return Outline.PLANE
                .createLineString(line.stream()
                        .map(point -> Outline.coordinate(point.plus(move)))
                        .toArray(Coordinate[]::new))
                .intersects(room);
    }

    private static boolean isCrossed(MarkLine mark, List<Piece> pieces, List<Point> moves) {
        double left = Math.min(mark.line().start().x(), mark.line().end().x());
        double y = mark.line().start().y();
        // Five letters, each 0.8 as wide as it is high, 1.5 mm above the line.
        Geometry word = Outline.PLANE.toGeometry(
                new Envelope(left, left + Math.max(20, mark.line().length()), y, y + 6.5));
        for (int i = 0; i < pieces.size(); i++) {
            Point move = moves.get(i).minus(moves.get(0));
            AffineTransformation moved = AffineTransformation.translationInstance(move.x(), move.y());
            for (List<Point> line :
                    List.of(pieces.get(i).cutLine(), pieces.get(i).netLine())) {
                if (moved.transform(Check.polygon(line).getExteriorRing()).intersects(word)) {
                    return true;
                }
            }
        }
        return false;
    }
}
