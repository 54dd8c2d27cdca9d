package org.capwright.exchange.dxf;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.capwright.geometry.Box;
import org.capwright.geometry.Curve;
import org.capwright.geometry.Point;
import org.capwright.pattern.MarkKind;
import org.capwright.pattern.MarkLine;
import org.capwright.pattern.Notch;
import org.capwright.pattern.PatternSet;
import org.capwright.pattern.Piece;
import org.capwright.pattern.PieceLabel;

/** One block per piece and size, in the coordinates of the draft, and an insert of each: a row per kind of piece, a column per size. */
final class BlockDrawing {

    private static final double SPACE = 50;
    private static final double CAPITALS = 0.6;

    /** Height of the words front and back, mm. */
    private static final double HALF_WORD = 5;

    private BlockDrawing() {}

    static byte[] of(PatternSet set, Optional<LocalDate> created) {
        DxfWriter writer = DxfWriter.with(AstmLayer.all());
        Set<String> names = new HashSet<>();
        List<List<String>> blocks = new ArrayList<>(set.sizes().size());
        writer.beginBlocks();
        for (List<Piece> pieces : set.sizes()) {
            List<String> ofSize = new ArrayList<>(pieces.size());
            for (Piece piece : pieces) {
                String name = blockName(piece, names);
                ofSize.add(name);
                writer.beginBlock(name);
                piece(writer, piece);
                writer.endBlock();
            }
            blocks.add(ofSize);
        }
        writer.beginEntities();
        insert(writer, set, blocks);
        Style.write(writer, AstmLayer.BOUNDARY.id(), Style.texts(set, created));
        return writer.finish();
    }

    static String blockName(Piece piece, Set<String> taken) {
        return DxfText.name(piece.kind().id().toUpperCase(Locale.ROOT) + "-" + piece.size(), taken);
    }

    private static void insert(DxfWriter writer, PatternSet set, List<List<String>> blocks) {
        double top = 0;
        int kinds = set.sizes().isEmpty() ? 0 : set.sizes().get(0).size();
        for (int kind = 0; kind < kinds; kind++) {
            double left = 0;
            double highest = 0;
            for (int size = 0; size < blocks.size(); size++) {
                Box box = Box.of(set.sizes().get(size).get(kind).cutLine());
                // Whole millimetres, so that a moved coordinate keeps its decimals.
                Point at = new Point(Math.ceil(left - box.left()), Math.floor(top - box.top()));
                writer.insert(AstmLayer.BOUNDARY.id(), blocks.get(size).get(kind), at);
                left += Math.ceil(box.width()) + SPACE;
                highest = Math.max(highest, box.height());
            }
            top -= Math.ceil(highest) + SPACE;
        }
    }

    private static void piece(DxfWriter writer, Piece piece) {
        writer.closedLine(AstmLayer.BOUNDARY.id(), piece.cutLine());
        Set<Integer> corners = new HashSet<>(piece.cutCorners());
        for (int i = 0; i < piece.cutLine().size(); i++) {
            AstmLayer layer = corners.contains(i) ? AstmLayer.TURN_POINTS : AstmLayer.CURVE_POINTS;
            writer.point(layer.id(), piece.cutLine().get(i));
        }
        Path cut = Path.around(piece.cutLine(), 0);
        for (Notch notch : piece.notches()) {
            for (Point snip : Snips.points(notch, cut)) {
                writer.point(AstmLayer.NOTCHES.id(), snip);
            }
        }
        writer.closedLine(AstmLayer.SEW.id(), piece.netLine());
        marks(writer, piece);
        texts(writer, piece);
    }

    static void marks(DxfWriter writer, Piece piece) {
        for (List<Point> fold : FoldLine.of(piece)) {
            writer.openLine(AstmLayer.MIRROR.id(), fold);
        }
        for (MarkLine mark : piece.marks()) {
            AstmLayer layer = AstmLayer.of(mark.kind());
            // A half piece has its fold line from its fold edge already.
            if (layer == AstmLayer.DRILL_HOLES) {
                writer.point(layer.id(), mark.line().pointAtLength(mark.line().length() / 2));
            } else if (layer != AstmLayer.MIRROR) {
                writer.openLine(layer.id(), flattened(mark.line()));
            }
            if (mark.kind() == MarkKind.HALF) {
                word(writer, AstmLayer.ANNOTATION.id(), mark, Point.ORIGIN);
            }
        }
    }

    /** Writes the word of a mark above its line, which is moved first. */
    static void word(DxfWriter writer, String layer, MarkLine mark, Point move) {
        Point start = mark.line().start();
        Point end = mark.line().end();
        Point left = start.x() < end.x() ? start : end;
        writer.text(
                layer,
                left.plus(new Point(0, 1.5)).plus(move),
                HALF_WORD,
                mark.name().toUpperCase(Locale.ROOT));
    }

    static List<Point> flattened(Curve line) {
        return line.segments().size() == 1 && line.segments().get(0).isStraight()
                ? List.of(line.start(), line.end())
                : line.flattened(Piece.FLATTENING);
    }

    static void texts(DxfWriter writer, Piece piece) {
        PieceLabel label = piece.label();
        double height = CAPITALS * label.lineHeight();
        double down = label.topLeft().y() - height;
        for (String line : label.lines()) {
            writer.text(AstmLayer.ANNOTATION.id(), new Point(label.topLeft().x(), down), height, line);
            down -= label.lineHeight();
        }
        for (String line : statements(piece)) {
            writer.text(AstmLayer.BOUNDARY.id(), new Point(label.topLeft().x(), down), height / 2, line);
            down -= label.lineHeight() / 2;
        }
    }

    private static List<String> statements(Piece piece) {
        return List.of(
                "PIECE NAME: " + piece.kind().words(),
                "SIZE: " + piece.size(),
                "QUANTITY: " + piece.cut().count(),
                "MATERIAL: " + piece.kind().material().name(),
                "CATEGORY: " + piece.kind().id(),
                "ANNOTATION: " + piece.cut().words());
    }
}
