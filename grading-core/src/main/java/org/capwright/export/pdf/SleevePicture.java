package org.capwright.export.pdf;

import java.util.ArrayList;
import java.util.List;
import org.capwright.geometry.Cubic;
import org.capwright.geometry.Curve;
import org.capwright.pattern.EdgeKind;
import org.capwright.pattern.Material;
import org.capwright.pattern.PatternSet;
import org.capwright.pattern.Piece;
import org.capwright.pattern.PieceEdge;

/** The pieces of the base size drawn small, opened out where they are cut on the fold, seams only. */
final class SleevePicture {

    private static final double BETWEEN = 3;
    private static final double WORDS = 8;

    private final List<Piece> pieces;
    private final List<Box> boxes = new ArrayList<>();
    private final double scale;
    private final double height;
    private final String size;

    SleevePicture(PatternSet set, double width, double height) {
        pieces = set.sizes().get(set.run().base());
        size = set.run().baseSize().label();
        this.height = height;
        double together = 0;
        double highest = 0;
        for (Piece piece : pieces) {
            Box box = box(piece);
            boxes.add(box);
            together += box.width();
            highest = Math.max(highest, box.height());
        }
        scale = Math.min((width - BETWEEN * (pieces.size() - 1)) / together, (height - WORDS) / highest);
    }

    private static Box box(Piece piece) {
        Box box = Box.EMPTY;
        for (PieceEdge edge : piece.edges()) {
            for (Cubic segment : edge.curve().segments()) {
                for (int i = 0; i <= 8; i++) {
                    box = box.including(segment.pointAt(i / 8.0));
                }
            }
        }
        double reach = Math.max(-box.left(), box.right());
        return piece.onFold() ? new Box(-reach, box.bottom(), reach, box.top()) : box;
    }

    void draw(Canvas canvas, double left, double top) {
        double x = left;
        for (int i = 0; i < pieces.size(); i++) {
            Piece piece = pieces.get(i);
            Box box = boxes.get(i);
            canvas.save()
                    .transform(scale, 0, 0, scale, x - box.left() * scale, top - box.top() * scale)
                    .ink(ink(piece.kind().material()))
                    .stroke(Stroke.solid(Ink.TEXT, 0.2 / scale));
            outline(canvas, piece);
            canvas.restore();
            double room = box.width() * scale + BETWEEN - 0.6;
            List<String> words = Wrapped.lines(piece.kind().words(), Typeface.REGULAR, 2.3, room);
            canvas.ink(Ink.TEXT);
            for (int k = 0; k < words.size(); k++) {
                canvas.text(
                        Typeface.REGULAR,
                        Typeface.REGULAR.sizeWithin(words.get(k), 2.3, room),
                        Canvas.Place.CENTRE,
                        x + box.width() * scale / 2,
                        top - box.height() * scale - 3.2 - 2.8 * k,
                        words.get(k));
            }
            x += box.width() * scale + BETWEEN;
        }
        canvas.ink(Ink.QUIET)
                .text(
                        Typeface.REGULAR,
                        2.5,
                        Canvas.Place.LEFT,
                        left,
                        top - height - 2.5,
                        "Base size " + size + ", net lines, 1 : " + Math.round(1 / scale));
    }

    /** A piece on the fold is closed by its own image on the other side of the fold. */
    private static void outline(Canvas canvas, Piece piece) {
        List<PieceEdge> edges = piece.edges();
        int fold = -1;
        for (int i = 0; i < edges.size(); i++) {
            if (edges.get(i).kind() == EdgeKind.FOLD) {
                fold = i;
            }
        }
        List<Curve> seams = new ArrayList<>();
        for (int k = 1; k <= edges.size(); k++) {
            PieceEdge edge = edges.get((fold + k) % edges.size());
            if (fold < 0 || edge.kind() != EdgeKind.FOLD) {
                seams.add(edge.curve());
            }
        }
        canvas.from(seams.get(0).start());
        seams.forEach(seam -> seam.segments().forEach(canvas::curve));
        if (piece.onFold()) {
            for (int i = seams.size() - 1; i >= 0; i--) {
                seams.get(i).mirrored().reversed().segments().forEach(canvas::curve);
            }
        }
        canvas.close().fillAndDraw();
    }

    private static Ink ink(Material material) {
        return switch (material) {
            case MAIN -> new Ink(0.87, 0.91, 0.95);
            case LINING -> new Ink(0.96, 0.93, 0.87);
            case INTERFACING -> new Ink(0.93, 0.93, 0.93);
        };
    }
}
