package org.capwright.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.capwright.drawing.Canvas;
import org.capwright.drawing.Ink;
import org.capwright.drawing.Letters;
import org.capwright.drawing.Place;
import org.capwright.drawing.Stroke;
import org.capwright.drawing.Typeface;
import org.capwright.geometry.Box;
import org.capwright.geometry.Curve;
import org.capwright.geometry.Point;
import org.capwright.pattern.MarkKind;
import org.capwright.pattern.MarkLine;
import org.capwright.pattern.NestWords;
import org.capwright.pattern.Notch;
import org.capwright.pattern.NotchKind;
import org.capwright.pattern.Piece;
import org.capwright.pattern.PieceEdge;
import org.capwright.pattern.PieceLabel;
import org.capwright.pattern.PleatArrow;

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
    private static final double FOLD_BRACKET = 7;

    /** How the lines inside a size are drawn. */
    private record Strokes(
            Stroke net, Stroke level, Stroke pleatFold, Stroke pleatPlacement, Stroke dart, Stroke hole, Stroke notch) {

        static final Strokes LEADING = new Strokes(
                NET,
                LEVEL,
                PLEAT_FOLD,
                PLEAT_PLACEMENT,
                DART,
                Stroke.solid(Ink.BLACK, GRAIN.width()),
                Stroke.solid(Ink.BLACK, NOTCH.width()));

        static Strokes beside(Ink ink) {
            return new Strokes(
                    new Stroke(ink, 0.12, List.of(1.2, 1.2)),
                    LEVEL.lighter(ink),
                    PLEAT_FOLD.lighter(ink),
                    PLEAT_PLACEMENT.lighter(ink),
                    DART.lighter(ink),
                    Stroke.solid(ink, GRAIN.width()),
                    Stroke.solid(ink, NOTCH.width()));
        }
    }

    private final Canvas canvas;
    private final Block block;
    private final List<Outline> outlines = new ArrayList<>();
    private final List<FoldEdge> folds = new ArrayList<>();
    private final DrawnWords words;

    private PieceDrawing(Canvas canvas, Block block, DrawnWords words) {
        this.canvas = canvas;
        this.words = words;
        this.block = block;
        for (Block.Layer layer : block.layers()) {
            Outline outline = new Outline(layer.piece().cutLine());
            outlines.add(outline);
            folds.add(new FoldEdge(layer.piece(), outline));
        }
    }

    static void draw(Canvas canvas, Block block, DrawnWords words) {
        PieceDrawing drawing = new PieceDrawing(canvas, block, words);
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
        canvas.group("size", piece.size(), layer.shift());
        Ink ink = layer.stroke().ink();
        Strokes strokes = lead ? Strokes.LEADING : Strokes.beside(ink);
        canvas.stroke(strokes.net);
        for (PieceEdge edge : piece.edges()) {
            if (edge.allowance() > 0) {
                canvas.about("net", "").path(edge.curve()).draw();
            }
        }
        for (MarkLine mark : piece.marks()) {
            mark(mark, piece, lead, strokes);
        }
        pleatArrows(piece, lead);
        cutLine(layer, position);
        canvas.stroke(strokes.notch);
        for (Notch notch : piece.notches()) {
            notch(notch);
        }
        canvas.end();
    }

    private void cutLine(Block.Layer layer, int position) {
        Piece piece = layer.piece();
        Outline outline = outlines.get(position);
        canvas.stroke(layer.stroke());
        Letters letters = Letters.bold(SIZE_LABEL, layer.stroke().ink());
        List<double[]> labels = new ArrayList<>();
        if (block.nested()) {
            double width = letters.width(piece.size());
            for (double at : SizeLabels.places(block, outlines, folds.get(position), position, width + 1.6)) {
                labels.add(new double[] {at - width / 2 - 0.8, at + width / 2 + 0.8});
            }
        }
        List<double[]> stretches = folds.get(position).stretches();
        List<double[]> gaps = new ArrayList<>(labels);
        gaps.addAll(stretches);
        gaps.sort(Comparator.comparingDouble(gap -> gap[0]));
        canvas.about("cut", "");
        if (gaps.isEmpty()) {
            canvas.polyline(piece.cutLine()).close();
        }
        for (int i = 0; i < gaps.size(); i++) {
            double from = gaps.get(i)[1];
            double to = i + 1 < gaps.size() ? gaps.get(i + 1)[0] : gaps.get(0)[0] + outline.length();
            if (to > from + 1e-6) {
                outline.part(canvas, from, to);
            }
        }
        canvas.draw();
        for (double[] gap : labels) {
            Point upright = upright(outline.at(gap[1]).minus(outline.at(gap[0])).unit());
            Point down = upright.left().times(-SIZE_LABEL * Typeface.CAPITAL / 2);
            canvas.written(letters, outline.at((gap[0] + gap[1]) / 2).plus(down), upright, piece.size());
        }
        boolean lead = position == block.lead();
        FoldEdge leadingFold = folds.get(block.lead());
        for (double[] fold : stretches) {
            Point a = outline.at(fold[0]).plus(layer.shift());
            Point b = outline.at(fold[1]).plus(layer.shift());
            for (Curve part : lead
                    ? List.of(Curve.line(a, b))
                    : leadingFold.beyond(block.leading().shift(), a, b)) {
                canvas.stroke(lead ? FOLD : FOLD.lighter(letters.ink()))
                        .about("cut", words.say("the fold of the cloth"));
                canvas.from(part.start().minus(layer.shift()))
                        .to(part.end().minus(layer.shift()))
                        .draw();
            }
        }
    }

    /** A direction turned so that words along it can be read from below or from the right. */
    private static Point upright(Point along) {
        return along.x() < -1e-9 || Math.abs(along.x()) <= 1e-9 && along.y() < 0 ? along.times(-1) : along;
    }

    private void mark(MarkLine mark, Piece piece, boolean lead, Strokes strokes) {
        Curve line = mark.line();
        switch (mark.kind()) {
            case GRAIN -> {
                if (piece == block.layers().get(0).piece()) {
                    grain(mark);
                }
            }
            case FOLD_LINE -> {
                if (lead) {
                    fold(mark, piece);
                }
            }
            case CENTRE_LINE -> {
                if (lead) {
                    mark(mark, CENTRE).path(line).draw();
                }
            }
            case BICEP_LINE, ELBOW_LINE -> {
                mark(mark, strokes.level).path(line).draw();
                if (lead) {
                    along(line, words.say(mark.name()), 0.72);
                }
            }
            case PLEAT_FOLD, PLEAT_PLACEMENT -> {
                Stroke stroke = mark.kind() == MarkKind.PLEAT_FOLD ? strokes.pleatFold : strokes.pleatPlacement;
                Curve shown = lead || line.length() <= TICK ? line : line.part(0, TICK);
                mark(mark, stroke).path(shown).draw();
            }
            case DART_LEG -> mark(mark, strokes.dart).path(line).draw();
            case HALF -> {
                if (piece == block.layers().get(0).piece()) {
                    half(mark);
                }
            }
            case DRILL_HOLE -> {
                mark(mark, strokes.hole);
                hole(canvas, line.pointAtLength(line.length() / 2));
            }
        }
    }

    private Canvas mark(MarkLine mark, Stroke stroke) {
        return canvas.stroke(stroke).about("mark", words.mark(mark.name()));
    }

    private void grain(MarkLine mark) {
        Curve line = mark.line();
        Point along = line.end().minus(line.start()).unit();
        mark(mark, GRAIN)
                .path(line)
                .arrow(line.end(), along, 5)
                .arrow(line.start(), along.times(-1), 5)
                .draw();
        along(line, words.say(mark.name()), 0.5);
    }

    /** An arrow that points to the front or the back, with the word. */
    private void half(MarkLine mark) {
        Curve line = mark.line();
        mark(mark, GRAIN)
                .path(line)
                .arrow(line.end(), line.end().minus(line.start()).unit(), 4)
                .draw();
        Point at = line.pointAtLength(line.length() / 2);
        canvas.about("half", "")
                .text(
                        Letters.bold(5, Ink.BLACK),
                        Place.CENTRE,
                        at.x(),
                        at.y() + 1.5,
                        words.say(mark.name()).toUpperCase(Locale.ROOT));
    }

    /** The sign of a hole, in the stroke of the canvas. */
    static void hole(Canvas canvas, Point at) {
        canvas.from(at.x() - 1.5, at.y()).to(at.x() + 1.5, at.y());
        canvas.from(at.x(), at.y() - 1.5).to(at.x(), at.y() + 1.5);
        canvas.circle(at, 1).draw();
    }

    /** Small words just above a line, at a share of its length. */
    private void along(Curve line, String said, double share) {
        Point upright = upright(line.end().minus(line.start()).unit());
        Point at = line.start().towards(line.end(), share).plus(upright.left());
        canvas.about("mark", "").written(Letters.regular(2.8, Ink.TEXT), at, upright, said);
    }

    /** A bracket whose arrows point at the fold edge; a fold line inside the piece is only drawn. */
    private void fold(MarkLine mark, Piece piece) {
        Curve line = mark.line();
        if (!piece.onFold()) {
            mark(mark, FOLD).path(line).draw();
            return;
        }
        Point along = line.end().minus(line.start()).unit();
        Point aside = along.left();
        Point inward = aside.times(
                Math.signum(aside.dot(Box.of(piece.cutLine()).middle().minus(line.start()))));
        Point a = line.start().towards(line.end(), 0.2);
        Point b = line.start().towards(line.end(), 0.8);
        Point aIn = a.plus(inward.times(FOLD_BRACKET));
        Point bIn = b.plus(inward.times(FOLD_BRACKET));
        Point outward = inward.times(-1);
        mark(mark, GRAIN)
                .polyline(List.of(a, aIn, bIn, b))
                .arrow(a, outward, 4)
                .arrow(b, outward, 4)
                .draw();
        along(Curve.line(aIn, bIn), words.say("place on the fold of the cloth"), 0.5);
    }

    /** Arrows from each pleat fold to the line on which it is placed. */
    private void pleatArrows(Piece piece, boolean lead) {
        if (!lead) {
            return;
        }
        for (PleatArrow arrow : PleatArrow.of(piece)) {
            if (arrow.length() > 3) {
                Point to = arrow.to();
                canvas.stroke(PLEAT_FOLD).about("pleat-arrow", "");
                canvas.from(arrow.from())
                        .to(to)
                        .arrow(to, to.minus(arrow.from()).unit(), 2.2)
                        .draw();
            }
        }
    }

    private void notch(Notch notch) {
        double allowance = notch.onCut().distanceTo(notch.at());
        double length = allowance > 1 ? Math.min(NOTCH_LENGTH, allowance * 0.75) : NOTCH_LENGTH * 0.75;
        if (notch.kind() == NotchKind.CLIP) {
            length = Math.max(allowance - 1, length);
        }
        canvas.about("notch", words.notch(notch.kind(), notch.edge()));
        notch(canvas, notch.kind(), notch.onCut(), notch.inward(), length);
    }

    /** The sign of a notch, in the stroke of the canvas. */
    static void notch(Canvas canvas, NotchKind kind, Point cut, Point inward, double length) {
        Point in = inward.times(length);
        Point end = cut.plus(in);
        Point side = inward.left().times(2);
        switch (kind) {
            case SINGLE, BALANCE -> canvas.from(cut).to(end);
            case DOUBLE -> {
                canvas.from(cut.plus(side)).to(end.plus(side));
                canvas.from(cut.minus(side)).to(end.minus(side));
            }
            case APEX -> canvas.from(cut).to(end).circle(end.plus(inward.times(1.2)), 1.2);
            case OVERLAY_END -> canvas.from(cut).to(end).from(end.plus(side)).to(end.minus(side));
            case CLIP -> canvas.from(cut).to(end).arrow(end, inward, 2);
            case PLEAT -> canvas.from(cut).to(cut.plus(in.times(0.5)));
            case BACK_ONLY ->
                canvas.from(cut)
                        .to(cut.plus(in.times(0.4)))
                        .from(cut.plus(in.times(0.6)))
                        .to(end);
        }
        canvas.draw();
    }

    /** Label and grain line lie where the smallest size has them: there they are clear of its lines, and inside all the others. */
    private void label() {
        Block.Layer layer = block.layers().get(0);
        PieceLabel label = layer.piece().label();
        List<String> lines = block.nested()
                ? NestWords.of(block.layers().stream().map(Block.Layer::piece).toList(), 0)
                : label.lines();
        int named = linesOfName(lines, block.words(words.language()));
        double natural = label.lineHeight() * 0.6 / Typeface.CAPITAL;
        double size = natural;
        for (int i = 0; i < lines.size(); i++) {
            Letters wished = new Letters(face(i, named), size, Ink.BLACK);
            size = wished.within(lines.get(i), label.width()).size();
        }
        Point at = label.topLeft().plus(layer.shift());
        double leading = label.lineHeight() * size / natural;
        canvas.group("words", "", Point.ORIGIN);
        for (int i = 0; i < lines.size(); i++) {
            Letters letters = new Letters(face(i, named), size, Ink.BLACK);
            canvas.text(letters, Place.LEFT, at.x(), at.y() - leading * (i + 0.8), lines.get(i));
        }
        canvas.end();
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
