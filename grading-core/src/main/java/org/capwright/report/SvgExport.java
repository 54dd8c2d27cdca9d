package org.capwright.report;

import java.util.ArrayList;
import java.util.List;
import org.capwright.drawing.Canvas;
import org.capwright.drawing.Ink;
import org.capwright.drawing.Letters;
import org.capwright.drawing.Place;
import org.capwright.drawing.Stroke;
import org.capwright.drawing.svg.SvgCanvas;
import org.capwright.geometry.Point;
import org.capwright.grade.Alignment;
import org.capwright.pattern.PatternSet;
import org.capwright.pattern.Piece;
import org.capwright.words.Language;
import org.capwright.words.Text;

/**
 * Draws the nest of a pattern set as an SVG 1.1 file at true scale: width and height in mm, one user unit a millimetre. Each kind of piece stands by itself
 * with all its sizes over one another. The base size is drawn with all its marks and words; every cut line carries the label of its size. Groups have
 * the classes {@code piece} and {@code size} and a {@code data-} attribute each, so that a page can show and hide them.
 */
public final class SvgExport {

    private static final double MARGIN = 15;
    private static final double GAP = 25;
    private static final double HEADER = 98;
    private static final double SQUARE = 50;
    private static final double KEY = 24;
    private static final double LEAST = 275;
    private static final int KEYS_IN_ROW = 8;

    private SvgExport() {}

    /**
     * The nest of all pieces and sizes.
     *
     * @param set pieces per size
     * @param alignment the point on which the sizes lie over one another
     * @return the file, UTF-8
     */
    public static byte[] nest(PatternSet set, Alignment alignment) {
        return nest(set, alignment, List.of());
    }

    /**
     * The nest of all pieces in some sizes.
     *
     * @param set pieces per size
     * @param alignment the point on which the sizes lie over one another
     * @param labels labels of sizes; empty for all
     * @return the file, UTF-8
     * @throws org.capwright.quantity.InvalidMeasuresException if a size is not in the run
     */
    public static byte[] nest(PatternSet set, Alignment alignment, List<String> labels) {
        List<Integer> chosen = PdfExport.chosen(set, labels);
        List<Block> blocks = Block.of(set, chosen, alignment);
        Rows rows = Rows.of(blocks);
        SvgCanvas canvas = SvgCanvas.begin(
                title(set),
                description(set, chosen),
                set.title().language(),
                Math.max(rows.width + 2 * MARGIN, LEAST),
                HEADER + rows.height + MARGIN);
        header(canvas, set, chosen);
        DrawnWords words = new DrawnWords(set.title().language());
        for (int i = 0; i < blocks.size(); i++) {
            Block block = blocks.get(i);
            canvas.group("piece", block.leading().piece().kind().id(), rows.places.get(i));
            PieceDrawing.draw(canvas, block, words);
            canvas.end();
        }
        return canvas.finish();
    }

    /**
     * Where the pieces stand: side by side in one row, and strips, which are far longer than they are wide, in rows below, none much longer than the row of the pieces.
     *
     * @param places by how much each block is moved
     * @param width of the longest row, mm
     * @param height of all rows, mm
     */
    private record Rows(List<Point> places, double width, double height) {

        static Rows of(List<Block> blocks) {
            List<Point> places = new ArrayList<>(blocks.size());
            double widest = 0;
            double x = 0;
            double top = 0;
            double tallest = 0;
            boolean strips = false;
            for (Block block : blocks) {
                double width = block.bounds().width();
                boolean strip = block.leading().piece().kind().isStrip();
                if (x > 0 && strip && (!strips || x + width > widest)) {
                    x = 0;
                    top += tallest + GAP;
                    tallest = 0;
                }
                strips |= strip;
                places.add(new Point(
                        MARGIN + x - block.bounds().left(),
                        -HEADER - top - block.bounds().top()));
                widest = Math.max(widest, x + width);
                x += width + GAP;
                tallest = Math.max(tallest, block.bounds().height());
            }
            return new Rows(places, widest, top + tallest);
        }
    }

    private static String title(PatternSet set) {
        return Text.of("{style}, revision {revision}")
                .with("style", set.title().style())
                .with("revision", set.title().revision())
                .in(set.title().language());
    }

    private static String description(PatternSet set, List<Integer> chosen) {
        List<Text> sentences = new ArrayList<>();
        sentences.add(Text.of("Nest at true scale, one user unit is one millimetre. Sizes {sizes}; base size {base}."
                        + " Measures in {unit}.")
                .with(
                        "sizes",
                        Text.names(chosen.stream()
                                .map(i -> set.run().sizes().get(i).label())
                                .toList()))
                .with("base", set.run().baseSize().label())
                .with("unit", set.title().unit().symbol()));
        for (Piece piece : set.sizes().get(set.run().base())) {
            sentences.add(Text.of("{piece}: {cut}, {material}.")
                    .with("piece", Text.of(piece.kind().words()))
                    .with("cut", piece.cut().words())
                    .with("material", Text.of(piece.kind().material().words())));
        }
        sentences.add(Text.of("The test square measures 50 mm: check it before cutting."));
        return Text.joined(sentences, " ").in(set.title().language());
    }

    private static void header(Canvas canvas, PatternSet set, List<Integer> chosen) {
        canvas.group("header", "", Point.ORIGIN);
        canvas.text(Letters.bold(8, Ink.TEXT), Place.LEFT, MARGIN, -20, title(set));
        Language language = set.title().language();
        String words = Text.of("Nest at true scale · base size {size} · cut lines with allowance, net line dashed")
                .with("size", set.run().baseSize().label())
                .in(language);
        Letters small = Letters.regular(4.5, Ink.TEXT);
        canvas.text(small, Place.LEFT, MARGIN, -29, words);
        for (int place = 0; place < chosen.size(); place++) {
            int i = chosen.get(place);
            double x = MARGIN + SQUARE + 12 + KEY * (place % KEYS_IN_ROW);
            double y = -46 - 12.0 * (place / KEYS_IN_ROW);
            canvas.stroke(Stroke.ofSize(i, set.run().base())).line(x, y, x + 18, y);
            canvas.text(
                    small, Place.CENTRE, x + 9, y + 3, set.run().sizes().get(i).label());
        }
        canvas.end().group("test-square", "", Point.ORIGIN);
        TestSquare.draw(canvas, MARGIN, -36, SQUARE, "50 mm", language);
        canvas.end();
    }
}
