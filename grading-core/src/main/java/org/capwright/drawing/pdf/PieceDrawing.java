package org.capwright.drawing.pdf;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.capwright.geometry.Box;
import org.capwright.geometry.Cubic;
import org.capwright.geometry.Curve;
import org.capwright.geometry.Point;
import org.capwright.pattern.MarkKind;
import org.capwright.pattern.MarkLine;
import org.capwright.pattern.NestWords;
import org.capwright.pattern.Notch;
import org.capwright.pattern.Piece;
import org.capwright.pattern.PieceEdge;
import org.capwright.pattern.PieceLabel;

/** Draws a block: cut and net lines of every size, notches, marks, and once the label. */
final class PieceDrawing {

    static final Stroke NET = Stroke.dashed(new Ink(0.25, 0.25, 0.25), 0.18, 3.0, 1.5);
    static final Stroke CUT = Stroke.solid(Ink.BLACK, 0.45);
    static final Stroke GRAIN = Stroke.solid(Ink.BLACK, 0.3);
    static final Stroke FOLD = Stroke.dashed(Ink.BLACK, 0.5, 8.0, 1.5, 1.5, 1.5);
    static final Stroke CENTRE = Stroke.dashed(new Ink(0.25, 0.25, 0.25), 0.2, 8.0, 1.5, 1.5, 1.5);
    static final Stroke LEVEL = Stroke.dashed(new Ink(0.25, 0.25, 0.25), 0.2, 1.5, 1.5);
    static final Stroke PLEAT_FOLD = Stroke.solid(new Ink(0.15, 0.15, 0.15), 0.25);
    static final Stroke PLEAT_PLACEMENT = Stroke.dashed(new Ink(0.15, 0.15, 0.15), 0.25, 4.0, 2.0);
    static final Stroke DART = Stroke.dashed(new Ink(0.15, 0.15, 0.15), 0.25, 3.0, 1.5);
    static final Stroke NOTCH = Stroke.solid(Ink.BLACK, 0.4);

    /** Of the sizes in a nest that do not carry the label, pleats are marked this far from the edge only, mm. */
    private static final double TICK = 8;

    private static final double SIZE_LABEL = 3.2;
    private static final double NOTCH_LENGTH = 6;

    private final Canvas canvas;
    private final Block block;
    private final List<Outline> outlines;

    private PieceDrawing(Canvas canvas, Block block) {
        this.canvas = canvas;
        this.block = block;
        outlines = block.layers().stream()
                .map(layer -> new Outline(layer.piece().cutLine()))
                .toList();
    }

    static void draw(Canvas canvas, Block block) {
        PieceDrawing drawing = new PieceDrawing(canvas, block);
        for (int i = 0; i < block.layers().size(); i++) {
            if (i != block.lead()) {
                drawing.layer(i);
            }
        }
        drawing.layer(block.lead()); // last, so that it lies on top
        drawing.label();
    }

    private void layer(int position) {
        Block.Layer layer = block.layers().get(position);
        Piece piece = layer.piece();
        boolean lead = position == block.lead();
        canvas.save();
        if (!layer.shift().equals(Point.ORIGIN)) {
            canvas.move(layer.shift().x(), layer.shift().y());
        }
        Ink ink = layer.stroke().ink();
        canvas.stroke(lead ? NET : new Stroke(ink, 0.12, List.of(1.2, 1.2)));
        for (PieceEdge edge : piece.edges()) {
            if (edge.allowance() > 0) {
                path(edge.curve());
                canvas.draw();
            }
        }
        for (MarkLine mark : piece.marks()) {
            mark(mark, piece, lead, ink);
        }
        pleatArrows(piece, lead);
        cutLine(layer, position);
        for (Notch notch : piece.notches()) {
            notch(notch, piece, ink);
        }
        canvas.restore();
    }

    private void path(Curve curve) {
        canvas.from(curve.start());
        for (Cubic segment : curve.segments()) {
            canvas.curve(segment);
        }
    }

    private void cutLine(Block.Layer layer, int position) {
        Piece piece = layer.piece();
        Outline outline = outlines.get(position);
        canvas.stroke(layer.stroke());
        List<double[]> labels = new ArrayList<>();
        if (block.nested()) {
            double width = Typeface.BOLD.width(piece.size(), SIZE_LABEL);
            for (double at : SizeLabels.places(block, outlines, position, width + 1.6)) {
                labels.add(new double[] {at - width / 2 - 0.8, at + width / 2 + 0.8});
            }
        }
        List<double[]> folds = FoldEdge.stretches(piece, outline);
        List<double[]> gaps = new ArrayList<>(labels);
        gaps.addAll(folds);
        gaps.sort(Comparator.comparingDouble(gap -> gap[0]));
        if (gaps.isEmpty()) {
            canvas.polyline(piece.cutLine()).close().draw();
        }
        for (int i = 0; i < gaps.size(); i++) {
            double from = gaps.get(i)[1];
            double to = i + 1 < gaps.size() ? gaps.get(i + 1)[0] : gaps.get(0)[0] + outline.length();
            if (to > from + 1e-6) {
                canvas.polyline(outline.part(from, to)).draw();
            }
        }
        canvas.ink(layer.stroke().ink());
        for (double[] gap : labels) {
            Point along = outline.at(gap[1]).minus(outline.at(gap[0])).unit();
            Point upright = upright(along);
            Point middle =
                    outline.at((gap[0] + gap[1]) / 2).minus(upright.left().times(SIZE_LABEL * Typeface.CAPITAL / 2));
            written(Typeface.BOLD, SIZE_LABEL, middle, upright, piece.size());
        }
        boolean lead = position == block.lead();
        canvas.stroke(lead ? FOLD : coloured(FOLD, layer.stroke().ink()));
        for (double[] fold : folds) {
            Point a = outline.at(fold[0]);
            Point b = outline.at(fold[1]);
            if (lead) {
                canvas.polyline(List.of(a, b)).draw();
            } else {
                FoldEdge.beyond(block, a.plus(layer.shift()), b.plus(layer.shift()))
                        .forEach(part -> canvas.from(part.start().minus(layer.shift()))
                                .to(part.end().minus(layer.shift()))
                                .draw());
            }
        }
    }

    /** A direction turned so that words along it can be read from below or from the right. */
    private static Point upright(Point along) {
        return along.x() < -1e-9 || Math.abs(along.x()) <= 1e-9 && along.y() < 0 ? along.times(-1) : along;
    }

    /** Text along a direction, centred on a point of its base line. */
    private void written(Typeface face, double size, Point middle, Point along, String text) {
        canvas.save()
                .transform(along.x(), along.y(), -along.y(), along.x(), middle.x(), middle.y())
                .text(face, size, Canvas.Place.CENTRE, 0, 0, text)
                .restore();
    }

    private void mark(MarkLine mark, Piece piece, boolean lead, Ink ink) {
        Curve line = mark.line();
        switch (mark.kind()) {
            case GRAIN -> {
                if (piece == block.layers().get(0).piece()) {
                    grain(mark);
                }
            }
            case FOLD_LINE -> {
                if (lead) {
                    fold(piece, line);
                }
            }
            case CENTRE_LINE -> {
                if (lead) {
                    stroke(CENTRE, line);
                }
            }
            case BICEP_LINE, ELBOW_LINE -> {
                stroke(lead ? LEVEL : coloured(LEVEL, ink), line);
                if (lead) {
                    along(line, mark.name(), 0.72);
                }
            }
            case PLEAT_FOLD, PLEAT_PLACEMENT -> {
                Stroke stroke = mark.kind() == MarkKind.PLEAT_FOLD ? PLEAT_FOLD : PLEAT_PLACEMENT;
                double length = line.length();
                stroke(lead ? stroke : coloured(stroke, ink), lead || length <= TICK ? line : line.part(0, TICK));
            }
            case DART_LEG -> stroke(lead ? DART : coloured(DART, ink), line);
        }
    }

    private static Stroke coloured(Stroke stroke, Ink ink) {
        return new Stroke(ink, stroke.width() * 0.8, stroke.dash());
    }

    private void stroke(Stroke stroke, Curve line) {
        canvas.stroke(stroke);
        path(line);
        canvas.draw();
    }

    private void grain(MarkLine mark) {
        Curve line = mark.line();
        stroke(GRAIN, line);
        Point along = line.end().minus(line.start()).unit();
        canvas.ink(Ink.BLACK);
        canvas.arrowHead(line.end(), along, 5);
        canvas.arrowHead(line.start(), along.times(-1), 5);
        along(line, mark.name(), 0.5);
    }

    /** Small words just above a line, at a share of its length. */
    private void along(Curve line, String words, double share) {
        Point along = line.end().minus(line.start()).unit();
        Point upright = upright(along);
        canvas.ink(Ink.TEXT);
        written(
                Typeface.REGULAR,
                2.8,
                line.start().towards(line.end(), share).plus(upright.left().times(1)),
                upright,
                words);
    }

    /** A bracket whose arrows point at the fold edge; a fold line inside the piece is only drawn. */
    private void fold(Piece piece, Curve line) {
        if (!piece.onFold()) {
            stroke(FOLD, line);
            return;
        }
        Point start = line.start();
        Point along = line.end().minus(start).unit();
        Box bounds = Box.EMPTY;
        for (Point p : piece.cutLine()) {
            bounds = bounds.including(p);
        }
        Point middle = new Point((bounds.left() + bounds.right()) / 2, (bounds.bottom() + bounds.top()) / 2);
        Point inward = along.left().dot(middle.minus(start)) > 0
                ? along.left()
                : along.left().times(-1);
        double length = line.length();
        double depth = 7;
        Point a = line.start().plus(along.times(length * 0.2));
        Point b = line.start().plus(along.times(length * 0.8));
        Point aIn = a.plus(inward.times(depth));
        Point bIn = b.plus(inward.times(depth));
        canvas.stroke(GRAIN).polyline(List.of(a, aIn, bIn, b)).draw();
        canvas.ink(Ink.BLACK);
        canvas.arrowHead(a, inward.times(-1), 4);
        canvas.arrowHead(b, inward.times(-1), 4);
        along(Curve.line(aIn, bIn), "place on the fold of the cloth", 0.5);
    }

    /** Arrows from each pleat fold to the line on which it is placed, well inside. */
    private void pleatArrows(Piece piece, boolean lead) {
        if (!lead) {
            return;
        }
        List<Curve> folds = lines(piece, MarkKind.PLEAT_FOLD);
        List<Curve> placements = lines(piece, MarkKind.PLEAT_PLACEMENT);
        if (folds.size() != placements.size()) {
            return;
        }
        canvas.ink(PLEAT_FOLD.ink());
        for (int i = 0; i < folds.size(); i++) {
            Curve fold = folds.get(i);
            Curve placement = placements.get(i);
            double depth = Math.min(fold.length(), placement.length()) * 0.4;
            Point from = fold.pointAtLength(depth);
            Point to = placement.pointAtLength(depth);
            if (from.distanceTo(to) > 3) {
                canvas.stroke(PLEAT_FOLD).line(from.x(), from.y(), to.x(), to.y());
                canvas.arrowHead(to, to.minus(from).unit(), 2.2);
            }
        }
    }

    private static List<Curve> lines(Piece piece, MarkKind kind) {
        return piece.marks().stream()
                .filter(mark -> mark.kind() == kind)
                .map(MarkLine::line)
                .toList();
    }

    private void notch(Notch notch, Piece piece, Ink ink) {
        double allowance = notch.onCut().distanceTo(notch.at());
        double length = allowance > 1 ? Math.min(NOTCH_LENGTH, allowance * 0.75) : NOTCH_LENGTH * 0.75;
        Point in = notch.inward();
        Point side = in.left();
        Point cut = notch.onCut();
        canvas.stroke(new Stroke(ink, NOTCH.width(), List.of())).ink(ink);
        switch (notch.kind()) {
            case SINGLE, BALANCE -> snip(cut, in, length);
            case DOUBLE -> {
                snip(cut.plus(side.times(2)), in, length);
                snip(cut.minus(side.times(2)), in, length);
            }
            case APEX -> {
                snip(cut, in, length);
                Point centre = cut.plus(in.times(length + 1.2));
                canvas.circle(centre.x(), centre.y(), 1.2).draw();
            }
            case OVERLAY_END -> {
                snip(cut, in, length);
                Point end = cut.plus(in.times(length));
                Point left = end.plus(side.times(2.5));
                Point right = end.minus(side.times(2.5));
                canvas.line(left.x(), left.y(), right.x(), right.y());
            }
            case CLIP -> {
                snip(cut, in, Math.max(allowance - 1, length));
                canvas.arrowHead(cut.plus(in.times(Math.max(allowance - 1, length))), in, 2);
            }
        }
    }

    private void snip(Point cut, Point inward, double length) {
        Point end = cut.plus(inward.times(length));
        canvas.line(cut.x(), cut.y(), end.x(), end.y());
    }

    /** Label and grain line lie where the smallest size has them: there they are clear of its lines, and inside all the others. */
    private void label() {
        Block.Layer layer = block.layers().get(0);
        PieceLabel label = layer.piece().label();
        List<String> lines = block.nested()
                ? NestWords.of(block.layers().stream().map(Block.Layer::piece).toList(), 0)
                : label.lines();
        int named = linesOfName(lines, block.words());
        double natural = label.lineHeight() * 0.6 / Typeface.CAPITAL;
        double size = natural;
        for (int i = 0; i < lines.size(); i++) {
            size = Math.min(size, face(i, named).sizeWithin(lines.get(i), size, label.width()));
        }
        Point at = label.topLeft().plus(layer.shift());
        canvas.ink(Ink.BLACK);
        for (int i = 0; i < lines.size(); i++) {
            canvas.text(
                    face(i, named),
                    size,
                    Canvas.Place.LEFT,
                    at.x(),
                    at.y() - label.lineHeight() * size / natural * (i + 0.8),
                    lines.get(i));
        }
    }

    private static Typeface face(int line, int named) {
        return line < named ? Typeface.BOLD : Typeface.REGULAR;
    }

    /** How many of the lines the name of the piece takes, which may have been broken at its spaces. */
    private static int linesOfName(List<String> lines, String name) {
        String joined = "";
        for (int i = 0; i < lines.size(); i++) {
            joined = (joined + " " + lines.get(i)).strip();
            if (!name.startsWith(joined)) {
                return Math.max(i, 1);
            }
        }
        return lines.size();
    }
}
