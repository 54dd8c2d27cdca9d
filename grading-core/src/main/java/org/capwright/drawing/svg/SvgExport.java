package org.capwright.drawing.svg;

import java.util.ArrayList;
import java.util.List;
import org.capwright.geometry.Point;
import org.capwright.grade.Alignment;
import org.capwright.pattern.PatternSet;
import org.capwright.pattern.Piece;

/**
 * Draws the nest of a pattern set as an SVG 1.1 file at true scale: width and height in mm, one user unit a millimetre. Each kind of piece stands by itself
 * with all its sizes over one another. The base size is drawn with its notches, marks and words; every cut line carries the label of its size. Groups have
 * the classes {@code piece} and {@code size} and a {@code data-} attribute each, so that a page can show and hide them.
 */
public final class SvgExport {

    private static final double MARGIN = 15;
    private static final double GAP = 25;
    private static final double HEADER = 98;
    private static final double SQUARE = 50;

    private SvgExport() {}

    /**
     * The nest of all pieces and sizes.
     *
     * @param set pieces per size
     * @param alignment the point on which the sizes lie over one another
     * @return the file as text; encode it as UTF-8
     */
    public static String nest(PatternSet set, Alignment alignment) {
        List<Point> shifts = new ArrayList<>(set.sizes().size());
        for (int i = 0; i < set.sizes().size(); i++) {
            shifts.add(set.run().shift(i, alignment));
        }
        return draw(set, shifts);
    }

    private static String draw(PatternSet set, List<Point> shifts) {
        List<NestDrawing> nests = new ArrayList<>();
        double x = MARGIN;
        double tallest = 0;
        for (int kind = 0; kind < set.sizes().get(0).size(); kind++) {
            List<Piece> pieces = set.acrossSizes(kind);
            NestDrawing nest = new NestDrawing(pieces, shifts, set.run().base());
            nest.place(x, HEADER);
            nests.add(nest);
            x += nest.width() + GAP;
            tallest = Math.max(tallest, nest.height());
        }
        double legend = 20 + 24.0 * set.sizes().size();
        double width = Math.max(x - GAP, Math.max(legend, 260)) + MARGIN;
        double height = HEADER + tallest + MARGIN;
        SvgText out = new SvgText(64_000 * set.sizes().size());
        open(out, set, width, height);
        header(out, set);
        for (NestDrawing nest : nests) {
            nest.draw(out);
        }
        return out.raw("</svg>\n").toString();
    }

    private static void open(SvgText out, PatternSet set, double width, double height) {
        out.raw(
                        "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\" width=\"")
                .number(width)
                .raw("mm\" height=\"")
                .number(height)
                .raw("mm\" viewBox=\"0 0 ")
                .pair(width, height)
                .raw("\" fill=\"none\" stroke-linecap=\"round\" stroke-linejoin=\"round\""
                        + " font-family=\"DejaVu Sans, Verdana, Helvetica, sans-serif\">\n<title>")
                .words(title(set))
                .raw("</title>\n<desc>")
                .words(description(set))
                .raw("</desc>\n<rect class=\"paper\" x=\"0\" y=\"0\"")
                .attribute("width", width)
                .attribute("height", height)
                .raw(" fill=\"#ffffff\"/>\n");
    }

    private static String title(PatternSet set) {
        return set.title().style() + ", revision " + set.title().revision();
    }

    private static String description(PatternSet set) {
        StringBuilder words = new StringBuilder("Nest at true scale, one user unit is one millimetre. Sizes ");
        for (int i = 0; i < set.sizes().size(); i++) {
            words.append(i == 0 ? "" : ", ").append(set.run().sizes().get(i).label());
        }
        words.append("; base size ")
                .append(set.run().baseSize().label())
                .append(". Measures in ")
                .append(set.title().unit().symbol())
                .append('.');
        for (Piece piece : set.sizes().get(set.run().base())) {
            words.append(' ')
                    .append(piece.kind().words())
                    .append(": ")
                    .append(piece.cut().words())
                    .append(", ")
                    .append(piece.kind().material().name().toLowerCase(java.util.Locale.ROOT))
                    .append('.');
        }
        return words.append(" The test square measures 50 mm: check it before cutting.")
                .toString();
    }

    private static void header(SvgText out, PatternSet set) {
        out.raw("<g class=\"header\" fill=\"#111111\">\n<text x=\"15\" y=\"20\" font-size=\"8\" font-weight=\"bold\">")
                .words(title(set))
                .raw("</text>\n<text x=\"15\" y=\"29\" font-size=\"4.5\">")
                .words("Nest at true scale · base size " + set.run().baseSize().label()
                        + " · cut lines with allowance, net line dashed")
                .raw("</text>\n");
        double x = MARGIN + SQUARE + 12;
        for (int i = 0; i < set.sizes().size(); i++) {
            SizeStroke stroke = SizeStroke.of(i, set.run().base());
            out.raw("<path").attribute("d", "M" + (x + 24 * (i % 10)) + " " + (46 + 12 * (i / 10)) + "h18");
            NestDrawing.stroke(out, stroke, i == set.run().base() ? 0.8 : 0.6);
            out.raw("/>\n<text").attribute("x", x + 24 * (i % 10) + 9).attribute("y", 43 + 12.0 * (i / 10));
            out.raw(" font-size=\"4.5\" text-anchor=\"middle\">")
                    .words(set.run().sizes().get(i).label())
                    .raw("</text>\n");
        }
        out.raw(
                "</g>\n<g class=\"test-square\"><rect x=\"15\" y=\"36\" width=\"50\" height=\"50\" stroke=\"#111111\" stroke-width=\"0.3\"/>");
        out.raw("<text x=\"40\" y=\"58\" font-size=\"4\" text-anchor=\"middle\" fill=\"#111111\">50 mm</text>");
        out.raw(
                "<text x=\"40\" y=\"64\" font-size=\"3\" text-anchor=\"middle\" fill=\"#111111\">measure before cutting</text></g>\n");
    }
}
