package org.capwright.report;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.capwright.drawing.Ink;
import org.capwright.drawing.Letters;
import org.capwright.drawing.Place;
import org.capwright.drawing.Stroke;
import org.capwright.geometry.Point;
import org.capwright.pattern.MarkKind;
import org.capwright.pattern.MarkLine;
import org.capwright.pattern.Notch;
import org.capwright.pattern.NotchKind;
import org.capwright.pattern.Piece;
import org.capwright.words.Language;
import org.capwright.words.Text;

/** Says what each kind of line and mark means; only those that are on the pattern. */
final class Legend {

    private static final double ROW = 6.2;
    private static final double SAMPLE = 17;

    private record Entry(Text words, Band.Drawing sample) {}

    private Legend() {}

    static Band band(List<Block> blocks, Language language, double width) {
        List<Entry> entries = entries(blocks);
        int columns = Math.max(2, (int) (width / 62));
        int rows = (entries.size() + columns - 1) / columns;
        double column = width / columns;
        return Band.of(rows * ROW + 4, (canvas, left, top) -> {
            for (int i = 0; i < entries.size(); i++) {
                double x = left + i / rows * column;
                double y = top - (i % rows + 0.5) * ROW;
                entries.get(i).sample.draw(canvas, x, y);
                String words = entries.get(i).words.in(language);
                canvas.text(
                        Letters.regular(2.8, Ink.TEXT).within(words, column - SAMPLE - 4),
                        Place.LEFT,
                        x + SAMPLE + 3,
                        y - 1,
                        words);
            }
        });
    }

    private static List<Entry> entries(List<Block> blocks) {
        List<Entry> entries = new ArrayList<>();
        Block first = blocks.get(0);
        if (first.nested()) {
            for (int i = 0; i < first.layers().size(); i++) {
                Block.Layer layer = first.layers().get(i);
                entries.add(new Entry(
                        Text.of(i == first.lead() ? "cut line, size {size}, full marks" : "cut line, size {size}")
                                .with("size", layer.piece().size()),
                        line(layer.stroke())));
            }
        } else {
            entries.add(new Entry(Text.of("cut line"), line(PieceDrawing.CUT)));
        }
        entries.add(new Entry(Text.of("net line (seam line)"), line(PieceDrawing.NET)));
        Set<MarkKind> marks = new LinkedHashSet<>();
        Set<NotchKind> notches = new LinkedHashSet<>();
        boolean fold = false;
        for (Block block : blocks) {
            Piece piece = block.leading().piece();
            fold |= piece.onFold();
            piece.marks().stream().map(MarkLine::kind).forEach(marks::add);
            piece.notches().stream().map(Notch::kind).forEach(notches::add);
        }
        for (MarkKind kind : MarkKind.values()) {
            if (marks.contains(kind)) {
                entries.add(mark(kind, fold));
            }
        }
        for (NotchKind kind : NotchKind.values()) {
            if (notches.contains(kind)) {
                entries.add(notch(kind));
            }
        }
        return entries;
    }

    private static Band.Drawing line(Stroke stroke) {
        return (canvas, left, top) -> canvas.stroke(stroke).line(left, top, left + SAMPLE, top);
    }

    private static Entry mark(MarkKind kind, boolean fold) {
        return switch (kind) {
            case GRAIN ->
                new Entry(Text.of("grain line, along the selvedge"), (canvas, left, top) -> {
                    Point right = new Point(1, 0);
                    Point tip = new Point(left + SAMPLE, top);
                    canvas.stroke(PieceDrawing.GRAIN).from(left, top).to(tip);
                    canvas.arrow(tip, right, 3)
                            .arrow(new Point(left, top), right.times(-1), 3)
                            .draw();
                });
            case FOLD_LINE ->
                new Entry(Text.of(fold ? "fold: lay on the fold of the cloth" : "fold line"), line(PieceDrawing.FOLD));
            case CENTRE_LINE -> new Entry(Text.of("centre line"), line(PieceDrawing.CENTRE));
            case BICEP_LINE -> new Entry(Text.of("bicep line"), line(PieceDrawing.LEVEL));
            case ELBOW_LINE -> new Entry(Text.of("elbow line"), line(PieceDrawing.LEVEL));
            case PLEAT_FOLD ->
                new Entry(Text.of("pleat fold: bring to the placement line"), line(PieceDrawing.PLEAT_FOLD));
            case PLEAT_PLACEMENT -> new Entry(Text.of("pleat placement line"), line(PieceDrawing.PLEAT_PLACEMENT));
            case DART_LEG -> new Entry(Text.of("dart leg"), line(PieceDrawing.DART));
            case HALF -> new Entry(Text.of("points to the front or the back of the garment"), line(PieceDrawing.GRAIN));
            case DRILL_HOLE ->
                new Entry(
                        Text.of("drill hole, through all layers"),
                        (canvas, left, top) -> PieceDrawing.hole(canvas, new Point(left + SAMPLE / 2, top)));
        };
    }

    private static Entry notch(NotchKind kind) {
        return new Entry(
                Text.of(
                        switch (kind) {
                            case SINGLE -> "single notch: front";
                            case DOUBLE -> "double notch: back";
                            case APEX -> "apex, to the shoulder seam";
                            case OVERLAY_END -> "end of the overlay";
                            case BALANCE -> "balance notch";
                            case CLIP -> "clip up to the seam line";
                            case PLEAT -> "pleat: fold or placement line";
                            case BACK_ONLY -> "second snip, in the layer of the back only";
                        }),
                (canvas, left, top) -> {
                    double x = left + SAMPLE / 2;
                    double y = top + 2.2;
                    canvas.stroke(Stroke.solid(Ink.BLACK, 0.3)).line(left + 2, y, left + SAMPLE - 2, y);
                    canvas.stroke(PieceDrawing.NOTCH);
                    PieceDrawing.notch(canvas, kind, new Point(x, y), new Point(0, -1), 3.6);
                });
    }
}
