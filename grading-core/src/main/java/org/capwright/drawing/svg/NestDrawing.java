package org.capwright.drawing.svg;

import java.util.List;
import java.util.Locale;
import org.capwright.geometry.Cubic;
import org.capwright.geometry.Curve;
import org.capwright.geometry.Point;
import org.capwright.pattern.EdgeKind;
import org.capwright.pattern.MarkKind;
import org.capwright.pattern.MarkLine;
import org.capwright.pattern.NestWords;
import org.capwright.pattern.Notch;
import org.capwright.pattern.NotchKind;
import org.capwright.pattern.Piece;
import org.capwright.pattern.PieceEdge;

/** One kind of piece in all its sizes over one another. */
final class NestDrawing {

    private static final double NOTCH = 5;
    private static final double SIZE_LETTERS = 3.6;

    private final List<Piece> pieces;
    private final List<Point> shifts;
    private final int base;
    private final double left;
    private final double top;
    private final double right;
    private final double bottom;
    private double dx;
    private double dy;

    NestDrawing(List<Piece> pieces, List<Point> shifts, int base) {
        this.pieces = pieces;
        this.shifts = shifts;
        this.base = base;
        double minX = Double.POSITIVE_INFINITY;
        double minY = Double.POSITIVE_INFINITY;
        double maxX = Double.NEGATIVE_INFINITY;
        double maxY = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < pieces.size(); i++) {
            for (Point point : pieces.get(i).cutLine()) {
                double x = point.x() + shifts.get(i).x();
                double y = point.y() + shifts.get(i).y();
                minX = Math.min(minX, x);
                maxX = Math.max(maxX, x);
                minY = Math.min(minY, y);
                maxY = Math.max(maxY, y);
            }
        }
        this.left = minX;
        this.right = maxX;
        this.bottom = minY;
        this.top = maxY;
    }

    double width() {
        return right - left;
    }

    double height() {
        return top - bottom;
    }

    /** Puts the upper left corner of the nest at a place of the drawing. */
    void place(double x, double y) {
        dx = x - left;
        dy = y + top;
    }

    void draw(SvgText out) {
        out.raw("<g class=\"piece\"")
                .attribute("data-piece", pieces.get(base).kind().id())
                .attribute("transform", transform(dx, dy))
                .raw(">\n");
        for (int i = 0; i < pieces.size(); i++) {
            if (i != base) {
                size(out, i);
            }
        }
        size(out, base);
        words(out);
        out.raw("</g>\n");
    }

    private static String transform(double x, double y) {
        return new SvgText(40).raw("translate(").pair(x, y).raw(")").toString();
    }

    private void size(SvgText out, int position) {
        Piece piece = pieces.get(position);
        Point shift = shifts.get(position);
        out.raw("<g class=\"size\"").attribute("data-size", piece.size());
        if (shift.x() != 0 || shift.y() != 0) {
            out.attribute("transform", transform(shift.x(), -shift.y()));
        }
        out.raw(">\n<path class=\"cut\" d=\"");
        polygon(out, piece.cutLine());
        out.raw("\"");
        stroke(out, SizeStroke.of(position, base), position == base ? 0.7 : 0.5);
        out.raw("/>\n");
        if (position == base) {
            netLine(out, piece);
            for (MarkLine mark : piece.marks()) {
                mark(out, mark);
            }
        }
        for (Notch notch : piece.notches()) {
            notch(out, notch, SizeStroke.of(position, base).colour());
        }
        sizeLabel(out, piece, position);
        out.raw("</g>\n");
    }

    static void stroke(SvgText out, SizeStroke stroke, double width) {
        out.attribute("stroke", stroke.colour()).attribute("stroke-width", width);
        if (!stroke.dashes().isEmpty()) {
            out.attribute("stroke-dasharray", stroke.dashes());
        }
    }

    private static void polygon(SvgText out, List<Point> points) {
        for (int i = 0; i < points.size(); i++) {
            out.raw(i == 0 ? "M" : i == 1 ? "L" : " ")
                    .pair(points.get(i).x(), -points.get(i).y());
        }
        out.raw("Z");
    }

    private static void curve(SvgText out, Curve curve) {
        out.raw("M").pair(curve.start().x(), -curve.start().y());
        for (Cubic segment : curve.segments()) {
            if (segment.isStraight()) {
                out.raw("L").pair(segment.end().x(), -segment.end().y());
            } else {
                out.raw("C").pair(segment.control1().x(), -segment.control1().y());
                out.raw(" ").pair(segment.control2().x(), -segment.control2().y());
                out.raw(" ").pair(segment.end().x(), -segment.end().y());
            }
        }
    }

    private static void netLine(SvgText out, Piece piece) {
        for (PieceEdge edge : piece.edges()) {
            out.raw("<path class=\"net\" d=\"");
            curve(out, edge.curve());
            out.raw(
                    edge.kind() == EdgeKind.FOLD
                            ? "\" stroke=\"#111111\" stroke-width=\"0.4\" stroke-dasharray=\"10 2 2 2\"/>\n"
                            : "\" stroke=\"#444444\" stroke-width=\"0.3\" stroke-dasharray=\"2.5 1.5\"/>\n");
            if (edge.kind() == EdgeKind.FOLD) {
                foldWords(out, edge.curve());
            }
        }
    }

    /** Written along the fold, inside the piece, read from the right. */
    private static void foldWords(SvgText out, Curve fold) {
        Point middle = fold.start().towards(fold.end(), 0.5);
        out.raw("<text class=\"fold\" text-anchor=\"middle\" font-size=\"4\" fill=\"#111111\" transform=\"translate(")
                .pair(middle.x() + 6, -middle.y())
                .raw(") rotate(-90)\">fold of the cloth</text>\n");
    }

    private static void mark(SvgText out, MarkLine mark) {
        String name = mark.kind().name().toLowerCase(Locale.ROOT).replace('_', '-');
        out.raw("<path").attribute("class", "mark " + name).raw(" d=\"");
        curve(out, mark.line());
        if (mark.kind() == MarkKind.GRAIN) {
            arrow(out, mark.line().end(), mark.line().start());
            arrow(out, mark.line().start(), mark.line().end());
        }
        out.raw("\" stroke=\"#333333\"").attribute("stroke-width", mark.kind() == MarkKind.GRAIN ? 0.4 : 0.25);
        String dashes = switch (mark.kind()) {
            case GRAIN, PLEAT_FOLD -> "";
            case PLEAT_PLACEMENT -> "4 2";
            case FOLD_LINE, CENTRE_LINE -> "10 2 2 2";
            default -> "1.5 1.5";
        };
        if (!dashes.isEmpty()) {
            out.attribute("stroke-dasharray", dashes);
        }
        out.raw("><title>").words(mark.name()).raw("</title></path>\n");
    }

    private static void arrow(SvgText out, Point from, Point tip) {
        Point back = from.minus(tip).unit().times(4);
        Point side = back.left().times(0.35);
        Point a = tip.plus(back).plus(side);
        Point b = tip.plus(back).minus(side);
        out.raw("M")
                .pair(a.x(), -a.y())
                .raw("L")
                .pair(tip.x(), -tip.y())
                .raw("L")
                .pair(b.x(), -b.y());
    }

    private static void notch(SvgText out, Notch notch, String colour) {
        out.raw("<path class=\"notch\" d=\"");
        Point along = notch.inward().left();
        double spread = notch.kind() == NotchKind.DOUBLE ? 2.5 : 0;
        snip(out, notch.onCut().plus(along.times(spread)), notch.inward());
        if (spread > 0) {
            snip(out, notch.onCut().minus(along.times(spread)), notch.inward());
        }
        out.raw("\"").attribute("stroke", colour).raw(" stroke-width=\"0.5\"><title>");
        out.words(notch.kind().name().toLowerCase(Locale.ROOT).replace('_', ' ') + " notch, " + notch.edge())
                .raw("</title></path>\n");
    }

    private static void snip(SvgText out, Point from, Point inward) {
        Point to = from.plus(inward.times(NOTCH));
        out.raw("M").pair(from.x(), -from.y()).raw("L").pair(to.x(), -to.y());
    }

    /** The size stands on its own cut line, each size a little further along, so that the labels do not cover one another. */
    private void sizeLabel(SvgText out, Piece piece, int position) {
        List<Point> line = piece.cutLine();
        double total = 0;
        for (int i = 0; i < line.size(); i++) {
            total += line.get(i).distanceTo(line.get((i + 1) % line.size()));
        }
        double share = 0.08 + 0.34 * (position + 0.5) / pieces.size();
        double wanted = total * share;
        for (int i = 0; i < line.size(); i++) {
            Point from = line.get(i);
            Point to = line.get((i + 1) % line.size());
            double length = from.distanceTo(to);
            if (wanted <= length) {
                Point at = from.towards(to, length == 0 ? 0 : wanted / length);
                double half = SIZE_LETTERS * (0.35 + 0.32 * piece.size().length());
                out.raw("<rect class=\"size-label\"")
                        .attribute("x", at.x() - half)
                        .attribute("y", -at.y() - SIZE_LETTERS * 0.6)
                        .attribute("width", 2 * half)
                        .attribute("height", SIZE_LETTERS * 1.2)
                        .raw(
                                " rx=\"0.8\" fill=\"#ffffff\" fill-opacity=\"0.85\" stroke=\"none\"/>\n<text class=\"size-label\"")
                        .attribute("x", at.x())
                        .attribute("y", -at.y() + SIZE_LETTERS * 0.36)
                        .attribute("font-size", SIZE_LETTERS)
                        .attribute("fill", SizeStroke.of(position, base).colour())
                        .raw(" text-anchor=\"middle\" font-weight=\"bold\">")
                        .words(piece.size())
                        .raw("</text>\n");
                return;
            }
            wanted -= length;
        }
    }

    private void words(SvgText out) {
        Piece piece = pieces.get(base);
        List<String> lines = NestWords.of(pieces, base);
        double letters = piece.label().lineHeight() * 0.72;
        out.raw("<g class=\"words\" fill=\"#111111\"")
                .attribute("font-size", letters)
                .raw(">\n");
        for (int i = 0; i < lines.size(); i++) {
            out.raw("<text")
                    .attribute("x", piece.label().topLeft().x())
                    .attribute("y", -piece.label().topLeft().y() + piece.label().lineHeight() * (i + 0.8))
                    .raw(i == 0 ? " font-weight=\"bold\">" : ">")
                    .words(lines.get(i))
                    .raw("</text>\n");
        }
        out.raw("</g>\n");
    }
}
