package org.capwright.exchange.dxf;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.capwright.geometry.Box;
import org.capwright.geometry.Point;
import org.capwright.pattern.PatternSet;

/** The base size as blocks, with the number of its rule at every grade point. */
final class GradedDrawing {

    private static final double SPACE = 50;
    private static final double NUMBER = 2;

    /** One number per place and rule is enough: lines that share a point share its number. */
    private record Numbered(Point at, int rule) {}

    private GradedDrawing() {}

    static byte[] of(
            PatternSet set,
            List<GradedPiece> pieces,
            RuleTable rules,
            List<String> leftOut,
            Optional<LocalDate> created) {
        DxfWriter writer = DxfWriter.with(AstmLayer.all());
        Set<String> taken = new HashSet<>();
        List<String> names = new ArrayList<>(pieces.size());
        writer.beginBlocks();
        for (GradedPiece piece : pieces) {
            String name = BlockDrawing.blockName(piece.base(), taken);
            names.add(name);
            writer.beginBlock(name);
            piece(writer, piece);
            BlockDrawing.texts(writer, piece.base());
            writer.endBlock();
        }
        writer.beginEntities();
        double left = 0;
        for (int i = 0; i < pieces.size(); i++) {
            Box box = Box.of(pieces.get(i).base().cutLine());
            writer.insert(AstmLayer.BOUNDARY.id(), names.get(i), new Point(Math.ceil(left - box.left()), 0));
            left += Math.ceil(box.width()) + SPACE;
        }
        List<String> texts = new ArrayList<>(Style.texts(set, created));
        texts.add("GRADE RULE TABLE: " + rules.name());
        leftOut.forEach(part -> texts.add("ANNOTATION: not in every size, not graded: " + part));
        Style.write(writer, AstmLayer.BOUNDARY.id(), texts);
        return writer.finish();
    }

    private static void piece(DxfWriter writer, GradedPiece piece) {
        Set<Numbered> numbered = new HashSet<>();
        writer.closedLine(AstmLayer.BOUNDARY.id(), places(piece.boundary()));
        for (GradedPoint point : piece.boundary()) {
            AstmLayer layer = point.kind() == GradedPoint.Kind.TURN ? AstmLayer.TURN_POINTS : AstmLayer.CURVE_POINTS;
            writer.point(layer.id(), point.base());
            number(writer, layer, point, numbered);
        }
        for (GradedPoint notch : piece.notches()) {
            writer.point(AstmLayer.NOTCHES.id(), notch.base());
            number(writer, AstmLayer.NOTCHES, notch, numbered);
        }
        writer.closedLine(AstmLayer.SEW.id(), places(piece.sewLine()));
        for (GradedPoint point : piece.sewLine()) {
            number(writer, AstmLayer.SEW, point, numbered);
        }
        for (GradedPiece.Line line : piece.lines()) {
            writer.openLine(line.layer().id(), places(line.points()));
            for (GradedPoint point : line.points()) {
                number(writer, line.layer(), point, numbered);
            }
        }
    }

    private static void number(DxfWriter writer, AstmLayer layer, GradedPoint point, Set<Numbered> numbered) {
        if (numbered.add(new Numbered(point.base(), point.rule()))) {
            writer.text(layer.id(), point.base(), NUMBER, "# " + point.rule());
        }
    }

    private static List<Point> places(List<GradedPoint> points) {
        return points.stream().map(GradedPoint::base).toList();
    }
}
