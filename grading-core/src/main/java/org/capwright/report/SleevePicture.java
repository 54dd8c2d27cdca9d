package org.capwright.report;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.capwright.drawing.Canvas;
import org.capwright.drawing.Ink;
import org.capwright.drawing.Letters;
import org.capwright.drawing.Place;
import org.capwright.drawing.Stroke;
import org.capwright.geometry.Box;
import org.capwright.geometry.Cubic;
import org.capwright.geometry.Curve;
import org.capwright.pattern.EdgeKind;
import org.capwright.pattern.Material;
import org.capwright.pattern.PatternSet;
import org.capwright.pattern.Piece;
import org.capwright.pattern.PieceEdge;
import org.capwright.words.Language;
import org.capwright.words.Text;

/** The pieces of the base size drawn small, opened out where they are cut on the fold, seams only; main cloth, lining and interfacing of a part lie in a stack. */
final class SleevePicture {

    private static final double BETWEEN = 4;
    private static final double STEP_RIGHT = 3.2;
    private static final double STEP_UP = 0.9;
    private static final double LINE = 3;
    private static final Letters CAPTION = Letters.regular(2.5, Ink.TEXT);

    /** Smaller letters take an effort to read, mm; common practice, no source. */
    private static final double LEAST_CAPTION = 2;

    private final List<Stack> stacks = new ArrayList<>();
    private final double scale;
    private final double width;
    private final double height;
    private final String size;
    private final Language language;

    /** Pieces of one part, the first on top, and the box about each of them. */
    private record Stack(String part, List<Piece> pieces, Box box) {
        double width(double scale) {
            return box.width() * scale + STEP_RIGHT * (pieces.size() - 1);
        }
    }

    SleevePicture(PatternSet set, double width, double height) {
        size = set.run().baseSize().label();
        language = set.title().language();
        this.width = width;
        this.height = height;
        for (Piece piece : set.sizes().get(set.run().base())) {
            String part = piece.kind().id().split("-")[0];
            Stack last = stacks.isEmpty() ? null : stacks.get(stacks.size() - 1);
            if (last != null && last.part.equals(part)) {
                last.pieces.add(piece);
                stacks.set(stacks.size() - 1, new Stack(part, last.pieces, last.box.including(box(piece))));
            } else {
                stacks.add(new Stack(part, new ArrayList<>(List.of(piece)), box(piece)));
            }
        }
        double together = 0;
        double room = width - BETWEEN * (stacks.size() - 1);
        double greatest = Double.POSITIVE_INFINITY;
        for (Stack stack : stacks) {
            together += stack.box.width();
            room -= STEP_RIGHT * (stack.pieces.size() - 1);
            double free = height - LINE * stack.pieces.size() - STEP_UP * (stack.pieces.size() - 1) - 2;
            greatest = Math.min(greatest, free / stack.box.height());
        }
        scale = Math.min(room / together, greatest);
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
        for (Stack stack : stacks) {
            Box box = stack.box;
            int count = stack.pieces.size();
            double y = top - STEP_UP * (count - 1);
            for (int i = count - 1; i >= 0; i--) {
                Piece piece = stack.pieces.get(i);
                canvas.save()
                        .transform(
                                scale,
                                0,
                                0,
                                scale,
                                x + STEP_RIGHT * i - box.left() * scale,
                                y + STEP_UP * i - box.top() * scale)
                        .ink(ink(piece.kind().material()))
                        .stroke(Stroke.solid(Ink.TEXT, 0.2 / scale));
                outline(canvas, piece);
                canvas.restore();
            }
            List<String> lines = captions(stack);
            for (int i = 0; i < lines.size(); i++) {
                Letters letters = CAPTION.within(lines.get(i), room(stack));
                double half = letters.width(lines.get(i)) / 2;
                canvas.text(
                        letters,
                        Place.CENTRE,
                        Math.max(left + half, Math.min(left + width - half, x + box.width() * scale / 2)),
                        y - box.height() * scale - 3.6 - LINE * i,
                        lines.get(i));
            }
            x += stack.width(scale) + BETWEEN;
        }
        canvas.text(
                Letters.regular(2.5, Ink.QUIET),
                Place.LEFT,
                left,
                top - height - 2.5,
                Text.of("Base size {size}, net lines, 1 : {scale}")
                        .with("size", size)
                        .with("scale", Math.round(1 / scale))
                        .in(language));
    }

    /** What stands below a stack: a line for each piece; more where one would be too small to read and the stack leaves room for them. */
    private List<String> captions(Stack stack) {
        List<String> names = stack.pieces.stream()
                .map(piece -> language.say(piece.kind().words()))
                .toList();
        double room = room(stack);
        List<String> wrapped = names.stream()
                .flatMap(name -> CAPTION.within(name, room).size() < LEAST_CAPTION
                        ? Wrapped.lines(name, CAPTION, room).stream()
                        : Stream.of(name))
                .toList();
        double below = height - STEP_UP * (names.size() - 1) - stack.box.height() * scale - 2;
        return LINE * wrapped.size() <= below ? wrapped : names;
    }

    private double room(Stack stack) {
        return stack.width(scale) + BETWEEN - 1;
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

    static Ink ink(Material material) {
        return switch (material) {
            case MAIN -> new Ink(0.87, 0.91, 0.95);
            case LINING -> new Ink(0.96, 0.93, 0.87);
            case INTERFACING -> new Ink(0.93, 0.93, 0.93);
        };
    }
}
