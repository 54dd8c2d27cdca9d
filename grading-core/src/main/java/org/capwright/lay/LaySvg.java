package org.capwright.lay;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.capwright.geometry.Point;
import org.capwright.measure.Unit;
import org.capwright.pattern.Piece;
import org.locationtech.jts.algorithm.construct.MaximumInscribedCircle;
import org.locationtech.jts.geom.Polygon;

/** Draws a lay as an SVG picture at true scale: one user unit is one millimetre, the length of the cloth runs to the right. */
public final class LaySvg {

    private static final double BORDER = 20;
    private static final double RULER = 46;
    private static final double HEAD = 60;

    private final Lay lay;
    private final Unit unit;
    private final StringBuilder svg = new StringBuilder(16_384);

    /** Bottom of the drawn cloth in SVG coordinates (y down) is the lower edge of the usable width. */
    private final double base;

    private final double selvedge;
    private final double clothWidth;

    private LaySvg(Lay lay, Unit unit) {
        this.lay = lay;
        this.unit = unit;
        this.selvedge = lay.fabric().selvedge();
        this.clothWidth = folded() ? lay.usableWidth() + selvedge : lay.usableWidth() + 2 * selvedge;
        this.base = HEAD + selvedge + lay.usableWidth();
    }

    /**
     * The picture.
     *
     * @param lay the lay
     * @param unit unit of the figures and of the ruler
     * @return an SVG document; the same lay gives the same text
     */
    public static String of(Lay lay, Unit unit) {
        return new LaySvg(lay, unit).draw();
    }

    private boolean folded() {
        return lay.fabric().laying() == Fabric.Laying.FOLDED;
    }

    private String draw() {
        double width = Math.max(lay.length(), 900) + 2 * BORDER;
        double height = HEAD + clothWidth + RULER + 10;
        svg.append("<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"")
                .append(number(width))
                .append("mm\" height=\"")
                .append(number(height))
                .append("mm\" viewBox=\"")
                .append(number(-BORDER))
                .append(" 0 ")
                .append(number(width))
                .append(' ')
                .append(number(height))
                .append("\" font-family=\"sans-serif\" fill=\"#111\">\n<title>")
                .append(escaped(lay.fabric().words(unit)))
                .append("</title>\n<rect x=\"")
                .append(number(-BORDER))
                .append("\" y=\"0\" width=\"")
                .append(number(width))
                .append("\" height=\"")
                .append(number(height))
                .append("\" fill=\"#fff\"/>\n");
        text(0, 24, 20, "start", lay.fabric().words(unit));
        text(0, 46, 15, "start", figures());
        cloth();
        Map<Piece, Integer> counts = new HashMap<>();
        for (Placement placement : lay.placements()) {
            piece(placement, counts.merge(placement.piece(), placement.yields(), Integer::sum));
        }
        ruler();
        return svg.append("</svg>\n").toString();
    }

    private String figures() {
        Purchase purchase = lay.purchase();
        return "Lay " + length(lay.length()) + "; area bound " + length(lay.areaBound()) + "; utilisation "
                + number(Math.floor(lay.utilisation() * 1000) / 10) + " %; buy " + length(purchase.length());
    }

    private String length(double millimetres) {
        return unit.format(millimetres) + " " + unit.symbol();
    }

    private void cloth() {
        double top = HEAD;
        rect(0, top, lay.length(), clothWidth, "fill=\"#f6f1e7\" stroke=\"#555\" stroke-width=\"1\"");
        if (selvedge > 0) {
            rect(0, top, lay.length(), selvedge, "fill=\"#d8cdb8\"");
            if (!folded()) {
                rect(0, base, lay.length(), selvedge, "fill=\"#d8cdb8\"");
            }
        }
        text(-6, top + clothWidth * 0.25, 12, "middle", folded() ? "selvedges" : "selvedge", -90);
        text(-6, top + clothWidth * 0.75, 12, "middle", folded() ? "fold" : "selvedge", -90);
        if (folded()) {
            svg.append("<path d=\"M0 ")
                    .append(number(base))
                    .append('H')
                    .append(number(lay.length()))
                    .append("\" stroke=\"#a00\" stroke-width=\"2.5\" stroke-dasharray=\"24 5 4 5\" fill=\"none\"/>\n");
        }
    }

    private void rect(double x, double y, double width, double height, String style) {
        svg.append("<rect x=\"")
                .append(number(x))
                .append("\" y=\"")
                .append(number(y))
                .append("\" width=\"")
                .append(number(width))
                .append("\" height=\"")
                .append(number(height))
                .append("\" ")
                .append(style)
                .append("/>\n");
    }

    private void piece(Placement placement, int upTo) {
        svg.append("<g class=\"piece\"><path d=\"");
        char command = 'M';
        for (Point point : placement.outline()) {
            svg.append(command).append(number(point.x())).append(' ').append(number(base - point.y()));
            command = 'L';
        }
        svg.append("Z\" fill=\"")
                .append(mirrored(placement) ? "#cfe0ee" : "#e3edd8")
                .append("\" stroke=\"#111\" stroke-width=\"1.2\" stroke-linejoin=\"round\"/>\n");
        Polygon polygon = Outlines.polygon(placement.outline());
        MaximumInscribedCircle circle = new MaximumInscribedCircle(polygon, 2);
        double cx = circle.getCenter().getX();
        double cy = base - circle.getCenter().getY();
        double radius = circle.getRadiusLine().getLength();
        arrow(placement, cx, cy, radius);
        label(placement, upTo, cx, cy, radius);
        svg.append("</g>\n");
    }

    /** The grain arrow points to the top of the piece. */
    private void arrow(Placement placement, double cx, double cy, double radius) {
        double half = 0.8 * radius;
        double y = cy + 0.42 * radius;
        double tip = placement.rotation() == 0 ? cx + half : cx - half;
        double tail = placement.rotation() == 0 ? cx - half : cx + half;
        double barb = Math.min(12, 0.25 * radius) * (placement.rotation() == 0 ? -1 : 1);
        svg.append("<path class=\"grain\" d=\"M")
                .append(number(tail))
                .append(' ')
                .append(number(y))
                .append('H')
                .append(number(tip))
                .append('m')
                .append(number(barb))
                .append(' ')
                .append(number(-Math.abs(barb) / 2))
                .append('L')
                .append(number(tip))
                .append(' ')
                .append(number(y))
                .append('l')
                .append(number(barb))
                .append(' ')
                .append(number(Math.abs(barb) / 2))
                .append("\" fill=\"none\" stroke=\"#111\" stroke-width=\"1.2\"/>\n");
    }

    private void label(Placement placement, int upTo, double cx, double cy, double radius) {
        int from = upTo - placement.yields() + 1;
        List<String> lines = List.of(
                placement.piece().kind().words(),
                "size " + placement.piece().size() + ", no. " + from + (from < upTo ? "–" + upTo : ""),
                manner(placement));
        int longest = lines.stream().mapToInt(String::length).max().orElse(1);
        // A character is about 0.55 of the type size wide; the block stays inside the circle.
        double size = Math.min(22, Math.min(1.7 * radius / (0.55 * longest), radius / 4));
        for (int i = 0; i < lines.size(); i++) {
            text(cx, cy + (i - 1.2) * 1.25 * size, size, "middle", lines.get(i));
        }
    }

    private static String manner(Placement placement) {
        return switch (placement.cover()) {
            case HALF_ON_FOLD -> "on the fold";
            case OPENED_OUT -> "opened out";
            case DRAWN -> mirrored(placement) ? "mirrored" : "as drawn";
        };
    }

    /** A piece that is its own mirror image is not called mirrored. */
    private static boolean mirrored(Placement placement) {
        return placement.cover() == Placement.Cover.DRAWN && placement.facing() == Placement.Facing.MIRRORED;
    }

    private void ruler() {
        double y = HEAD + clothWidth + 6;
        boolean inches = unit == Unit.INCH;
        double step = inches ? 25.4 : 10;
        int every = inches ? 6 : 10;
        svg.append("<path class=\"ruler\" d=\"M0 ")
                .append(number(y))
                .append('H')
                .append(number(lay.length()));
        int marks = (int) Math.floor(lay.length() / step + 1e-9);
        for (int i = 0; i <= marks; i++) {
            double tick = i % every == 0 ? 14 : 2 * i % every == 0 ? 10 : 6;
            svg.append('M')
                    .append(number(i * step))
                    .append(' ')
                    .append(number(y))
                    .append('v')
                    .append(number(tick));
        }
        svg.append("\" fill=\"none\" stroke=\"#111\" stroke-width=\"0.8\"/>\n");
        for (int i = 0; i <= marks; i += every) {
            text(i * step, y + 30, 14, i == 0 ? "start" : "middle", unit.format(i * step));
        }
    }

    private void text(double x, double y, double size, String anchor, String words) {
        text(x, y, size, anchor, words, 0);
    }

    private void text(double x, double y, double size, String anchor, String words, int turn) {
        svg.append("<text x=\"").append(number(x)).append("\" y=\"").append(number(y));
        if (turn != 0) {
            svg.append("\" transform=\"rotate(")
                    .append(turn)
                    .append(' ')
                    .append(number(x))
                    .append(' ')
                    .append(number(y))
                    .append(')');
        }
        svg.append("\" font-size=\"")
                .append(number(size))
                .append("\" text-anchor=\"")
                .append(anchor)
                .append("\">")
                .append(escaped(words))
                .append("</text>\n");
    }

    /** A hundredth of a millimetre is finer than any line of the picture. */
    private static String number(double value) {
        long hundredths = Math.round(value * 100);
        StringBuilder text = new StringBuilder(12);
        if (hundredths < 0) {
            text.append('-');
        }
        long whole = Math.abs(hundredths) / 100;
        long rest = Math.abs(hundredths) % 100;
        text.append(whole);
        if (rest != 0) {
            text.append('.').append(rest / 10);
            if (rest % 10 != 0) {
                text.append(rest % 10);
            }
        }
        return text.toString();
    }

    /** XML text: markup escaped, characters that XML 1.0 forbids left out. */
    private static String escaped(String words) {
        StringBuilder text = new StringBuilder(words.length() + 16);
        words.codePoints().forEach(c -> {
            switch (c) {
                case '<' -> text.append("&lt;");
                case '>' -> text.append("&gt;");
                case '&' -> text.append("&amp;");
                default -> {
                    boolean allowed = c == '\t'
                            || c == '\n'
                            || (c >= 0x20 && c <= 0xD7FF)
                            || (c >= 0xE000 && c <= 0xFFFD)
                            || c >= 0x10000;
                    if (allowed) {
                        text.appendCodePoint(c);
                    }
                }
            }
        });
        return text.toString();
    }
}
