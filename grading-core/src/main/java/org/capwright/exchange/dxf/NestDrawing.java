package org.capwright.exchange.dxf;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import org.capwright.geometry.Box;
import org.capwright.geometry.Point;
import org.capwright.grade.Alignment;
import org.capwright.pattern.MarkKind;
import org.capwright.pattern.MarkLine;
import org.capwright.pattern.NestHalves;
import org.capwright.pattern.Notch;
import org.capwright.pattern.PatternSet;
import org.capwright.pattern.Piece;

/** All sizes of each kind of piece over one another, the kinds side by side. */
final class NestDrawing {

    private static final double SPACE = 50;
    private static final double TEXT = 6;
    private static final double LINE = 12;
    private static final double SAMPLE = 20;
    private static final double SNIP = 5;

    /** Red, yellow, green, cyan, blue, magenta: the colours that every reader has. The base size is white or black, 7. */
    private static final int COLOURS = 6;

    private static final String TEXTS = "TEXT";

    /** The three layers of a size. */
    private record SizeLayers(String cut, String net, String marks) {}

    private NestDrawing() {}

    static byte[] of(PatternSet set, Alignment alignment, Optional<LocalDate> created) {
        List<DxfWriter.Layer> layers = new ArrayList<>();
        layers.add(new DxfWriter.Layer(TEXTS, 7, DxfWriter.LineType.CONTINUOUS));
        List<SizeLayers> bySize = layers(set, layers);
        DxfWriter writer = DxfWriter.with(layers);
        writer.beginBlocks();
        writer.beginEntities();
        int kinds = set.sizes().isEmpty() ? 0 : set.sizes().get(0).size();
        double left = 0;
        for (int kind = 0; kind < kinds; kind++) {
            left = nest(writer, set, alignment, bySize, kind, left);
        }
        List<String> texts = Style.texts(set, created);
        texts.add("ANNOTATION: sizes aligned on "
                + alignment.name().toLowerCase(Locale.ROOT).replace('_', ' '));
        texts.add("ANNOTATION: cut line solid, net line dashed");
        Style.write(writer, TEXTS, texts);
        return writer.finish();
    }

    private static List<SizeLayers> layers(PatternSet set, List<DxfWriter.Layer> layers) {
        Set<String> names = new HashSet<>(Set.of("0", TEXTS));
        List<SizeLayers> bySize = new ArrayList<>();
        int next = 0;
        for (int i = 0; i < set.sizes().size(); i++) {
            String label = set.run().sizes().get(i).label();
            int colour = i == set.run().base() ? 7 : 1 + next++ % COLOURS;
            SizeLayers size = new SizeLayers(
                    DxfText.name("CUT-" + label, names),
                    DxfText.name("NET-" + label, names),
                    DxfText.name("MARKS-" + label, names));
            layers.add(new DxfWriter.Layer(size.cut, colour, DxfWriter.LineType.CONTINUOUS));
            layers.add(new DxfWriter.Layer(size.net, colour, DxfWriter.LineType.DASHED));
            layers.add(new DxfWriter.Layer(size.marks, colour, DxfWriter.LineType.CONTINUOUS));
            bySize.add(size);
        }
        return bySize;
    }

    private static double nest(
            DxfWriter writer, PatternSet set, Alignment alignment, List<SizeLayers> layers, int kind, double left) {
        List<Piece> pieces = set.acrossSizes(kind);
        List<Point> shifts = IntStream.range(0, pieces.size())
                .mapToObj(i -> set.shift(kind, i, alignment))
                .toList();
        Box box = Box.EMPTY;
        for (int i = 0; i < pieces.size(); i++) {
            Box own = Box.of(pieces.get(i).cutLine());
            box = box.including(own.moved(shifts.get(i)));
        }
        Point place = new Point(Math.ceil(left - box.left()), 0);
        for (int i = 0; i < pieces.size(); i++) {
            Point move = shifts.get(i).plus(place);
            Path cut = Path.around(pieces.get(i).cutLine(), 0);
            piece(writer, pieces.get(i), cut, move, layers.get(i));
            // The size is written on its own cut line, every size at another place along it.
            Point number = cut.pointAt(cut.length() * (i + 0.5) / pieces.size());
            writer.centredText(
                    layers.get(i).cut, number.plus(move), TEXT, pieces.get(i).size());
        }
        words(writer, NestHalves.smallest(pieces, shifts), shifts.get(0).plus(place));
        double right = left + Math.ceil(box.width()) + SPACE / 2;
        legend(writer, pieces, layers, new Point(right, Math.floor(box.top())));
        return right + SAMPLE + SPACE + longest(pieces) * TEXT;
    }

    private static void piece(DxfWriter writer, Piece piece, Path cut, Point move, SizeLayers layers) {
        writer.closedLine(layers.cut, piece.cutLine(), move);
        writer.closedLine(layers.net, piece.netLine(), move);
        for (List<Point> fold : FoldLine.of(piece)) {
            writer.openLine(layers.marks, fold, move);
        }
        for (MarkLine mark : piece.marks()) {
            if (mark.kind() != MarkKind.HALF) {
                writer.openLine(layers.marks, BlockDrawing.flattened(mark.line()), move);
            }
        }
        for (Notch notch : piece.notches()) {
            for (Point snip : Snips.points(notch, cut)) {
                Point at = snip.plus(move);
                writer.line(layers.marks, at, at.plus(notch.inward().times(SNIP)));
            }
        }
    }

    /** What points to front and back is the same in all sizes, and stands there once. */
    private static void words(DxfWriter writer, Piece piece, Point move) {
        for (MarkLine mark : piece.marks()) {
            if (mark.kind() == MarkKind.HALF) {
                writer.openLine(TEXTS, BlockDrawing.flattened(mark.line()), move);
                BlockDrawing.word(writer, TEXTS, mark, move);
            }
        }
    }

    /** What piece it is, what is cut, and a sample of every size's line. */
    private static void legend(DxfWriter writer, List<Piece> pieces, List<SizeLayers> layers, Point topLeft) {
        Point at = topLeft.minus(new Point(0, TEXT));
        for (String words : heading(pieces)) {
            writer.text(TEXTS, at, TEXT, words);
            at = at.minus(new Point(0, LINE));
        }
        for (int i = 0; i < pieces.size(); i++) {
            String layer = layers.get(i).cut;
            Point middle = at.plus(new Point(0, TEXT / 2));
            writer.line(layer, middle, middle.plus(new Point(SAMPLE, 0)));
            writer.text(
                    layer,
                    at.plus(new Point(SAMPLE + TEXT, 0)),
                    TEXT,
                    "size " + pieces.get(i).size());
            at = at.minus(new Point(0, LINE));
        }
    }

    private static List<String> heading(List<Piece> pieces) {
        Piece any = pieces.get(0);
        return List.of(
                any.kind().words(),
                any.cut().words().toString(),
                "material: " + any.kind().material().name().toLowerCase(Locale.ROOT));
    }

    private static int longest(List<Piece> pieces) {
        int longest = 0;
        for (String words : heading(pieces)) {
            longest = Math.max(longest, words.length());
        }
        for (Piece piece : pieces) {
            longest = Math.max(longest, piece.size().length() + 8);
        }
        return longest;
    }
}
