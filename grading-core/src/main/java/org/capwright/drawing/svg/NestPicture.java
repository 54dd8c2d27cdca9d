package org.capwright.drawing.svg;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.capwright.check.CheckedGrade;
import org.capwright.check.Crossing;
import org.capwright.check.NestLine;
import org.capwright.geometry.Point;
import org.capwright.measure.Unit;

/**
 * Draws the lines of a checked grade over one another on fold line and bicep line, and marks where a larger size dips inside a smaller one. Each size has dashes of its own and its name on
 * the line; crossings are circled and numbered, and told in words below.
 */
public final class NestPicture {

    private static final double MARGIN = 10;
    private static final double WIDTH = 250;
    private static final double KEY = 34;
    private static final double HEAD = 22;
    private static final double CIRCLE = 3.2;
    private static final int MOST_CROSSINGS = 60;

    private final CheckedGrade grade;
    private final Unit unit;
    private final List<Crossing> crossings;
    private final double scale;
    private final double left;
    private final double top;
    private final double bottom;
    private final SvgText out = new SvgText(32_768);

    private NestPicture(CheckedGrade grade, Unit unit) {
        this.grade = grade;
        this.unit = unit;
        this.crossings = Crossing.of(grade);
        double minX = 0;
        double maxX = 0;
        double minY = 0;
        double maxY = 0;
        for (int i = 0; i < grade.sizes().size(); i++) {
            for (NestLine line : grade.sizes().get(i).lines()) {
                for (Point point : line.points()) {
                    minX = Math.min(minX, point.x());
                    maxX = Math.max(maxX, point.x());
                    minY = Math.min(minY, point.y());
                    maxY = Math.max(maxY, point.y());
                }
            }
        }
        this.scale = maxX > minX ? (WIDTH - KEY - 8) / (maxX - minX) : 1;
        this.left = minX;
        this.top = maxY;
        this.bottom = minY;
    }

    /**
     * The nest as an SVG document.
     *
     * @param title name of the style
     * @param grade the grade; without lines, as from a spec table, the picture says so
     * @param unit unit of the figures
     * @return the document, UTF-8, in millimetres
     */
    public static String write(String title, CheckedGrade grade, Unit unit) {
        return new NestPicture(grade, unit).document(title);
    }

    private boolean empty() {
        return grade.sizes().stream().allMatch(size -> size.lines().isEmpty());
    }

    private double x(Point point) {
        return MARGIN + (point.x() - left) * scale;
    }

    private double y(Point point) {
        return MARGIN + HEAD + (top - point.y()) * scale;
    }

    private List<String> words() {
        List<String> words = new ArrayList<>();
        for (int i = 0; i < Math.min(MOST_CROSSINGS, crossings.size()); i++) {
            Crossing crossing = crossings.get(i);
            words.add((i + 1) + "  "
                    + (crossing.kind() == NestLine.Kind.CAP_LINE ? "cap line" : "top edge of the overlay")
                    + ": size " + grade.label(crossing.interval() + 1) + " dips "
                    + unit.format(crossing.depth()) + " " + unit.symbol() + " inside size "
                    + grade.label(crossing.interval()));
        }
        if (crossings.size() > MOST_CROSSINGS) {
            words.add("and " + (crossings.size() - MOST_CROSSINGS) + " more");
        }
        if (crossings.isEmpty()) {
            words.add(
                    empty()
                            ? "There are no lines to draw: a spec table has figures only."
                            : "No line crosses another where it should not.");
        }
        return words;
    }

    private String document(String title) {
        List<String> words = words();
        double nest = (top - bottom) * scale;
        double keyHeight = 6.0 * grade.sizes().size();
        double height = MARGIN + HEAD + Math.max(nest, empty() ? 0 : keyHeight) + 10 + 5 * words.size() + MARGIN;
        out.raw("<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"")
                .number(WIDTH + 2 * MARGIN)
                .raw("mm\" height=\"")
                .number(height);
        out.raw("mm\" viewBox=\"0 0 ")
                .pair(WIDTH + 2 * MARGIN, height)
                .raw("\" role=\"img\" font-family=\"sans-serif\" font-size=\"3.2\">\n");
        out.raw("<title>")
                .words("Nest of " + title)
                .raw("</title>\n<desc>")
                .words(String.join("; ", words))
                .raw("</desc>\n");
        out.raw("<rect width=\"100%\" height=\"100%\" fill=\"#fff\"/>\n");
        text(MARGIN, MARGIN + 4, "start", 4.5, "Nest of " + title);
        if (!empty()) {
            text(
                    MARGIN,
                    MARGIN + 10,
                    "start",
                    3.2,
                    "on fold line and bicep line, 1 : " + Math.round(10 / scale) / 10.0 + ", front to the left");
            axes();
            for (int i = 0; i < grade.sizes().size(); i++) {
                size(i);
            }
            key();
            for (int i = 0; i < Math.min(MOST_CROSSINGS, crossings.size()); i++) {
                circles(crossings.get(i), i + 1);
            }
        }
        double at = height - MARGIN - 5 * words.size();
        for (String line : words) {
            at += 5;
            text(MARGIN, at - 1, "start", 3.4, line);
        }
        return out.raw("</svg>\n").toString();
    }

    private void axes() {
        double right = MARGIN + WIDTH - KEY - 8;
        out.raw("<path class=\"axis\" fill=\"none\" stroke=\"#999\" stroke-width=\"0.2\" d=\"M");
        out.pair(MARGIN, y(Point.ORIGIN)).raw("H").number(right);
        out.raw("M").pair(x(Point.ORIGIN), MARGIN + HEAD - 2).raw("V").number(y(new Point(0, bottom)) + 2);
        out.raw("\"/>\n");
        text(right + 1, y(Point.ORIGIN) + 0.9, "start", 2.6, "bicep line");
    }

    private void size(int position) {
        SizeStroke stroke = SizeStroke.of(position, grade.base());
        out.raw("<g class=\"size\"")
                .attribute("data-size", grade.label(position))
                .raw(">\n");
        for (NestLine line : grade.sizes().get(position).lines()) {
            out.raw("<path class=\"line\" fill=\"none\" stroke-linejoin=\"round\" d=\"");
            for (int i = 0; i < line.points().size(); i++) {
                Point point = line.points().get(i);
                out.raw(i == 0 ? "M" : i == 1 ? "L" : " ").pair(x(point), y(point));
            }
            out.raw("\"");
            NestDrawing.stroke(out, stroke, position == grade.base() ? 0.55 : 0.4);
            out.raw("/>\n");
        }
        for (NestLine line : grade.sizes().get(position).lines()) {
            if (line.kind() != NestLine.Kind.OVERLAY_HEM) {
                name(line, position);
            }
        }
        out.raw("</g>\n");
    }

    /** Names stand on the front half, from size to size further up the line, so that they do not hide one another. */
    private void name(NestLine line, int position) {
        int sizes = grade.sizes().size();
        double share = 0.06 + 0.3 * (sizes == 1 ? 0.5 : (double) position / (sizes - 1));
        Point at = along(line.points(), share);
        out.raw("<text class=\"name\" text-anchor=\"middle\" font-size=\"2.8\" font-weight=\"bold\"")
                .attribute("x", x(at))
                .attribute("y", y(at) + 1);
        out.attribute("fill", SizeStroke.of(position, grade.base()).colour())
                .raw(" stroke=\"#fff\" stroke-width=\"1.1\" paint-order=\"stroke\">")
                .words(grade.label(position))
                .raw("</text>\n");
    }

    private static Point along(List<Point> line, double share) {
        double length = 0;
        for (int i = 1; i < line.size(); i++) {
            length += line.get(i).minus(line.get(i - 1)).norm();
        }
        double left = share * length;
        for (int i = 1; i < line.size(); i++) {
            Point step = line.get(i).minus(line.get(i - 1));
            if (step.norm() >= left && step.norm() > 0) {
                return line.get(i - 1).plus(step.times(left / step.norm()));
            }
            left -= step.norm();
        }
        return line.get(line.size() - 1);
    }

    private void key() {
        double x = MARGIN + WIDTH - KEY;
        for (int i = 0; i < grade.sizes().size(); i++) {
            double y = MARGIN + HEAD + 6.0 * i;
            out.raw("<path class=\"key\" fill=\"none\" d=\"M")
                    .pair(x, y)
                    .raw("H")
                    .number(x + 16)
                    .raw("\"");
            NestDrawing.stroke(out, SizeStroke.of(i, grade.base()), i == grade.base() ? 0.55 : 0.4);
            out.raw("/>\n");
            text(x + 18, y + 1.1, "start", 3.2, grade.label(i) + (i == grade.base() ? ", base" : ""));
        }
    }

    private void circles(Crossing crossing, int number) {
        Optional<Point> last = Optional.empty();
        for (Point point : crossing.at()) {
            out.raw("<circle class=\"crossing\" fill=\"none\" stroke=\"#000\" stroke-width=\"0.5\"")
                    .attribute("cx", x(point))
                    .attribute("cy", y(point))
                    .attribute("r", CIRCLE)
                    .raw("/>\n");
            last = Optional.of(point);
        }
        last.ifPresent(point -> {
            double x = x(point) + CIRCLE + 2.6;
            double y = y(point) - CIRCLE - 1;
            out.raw("<circle fill=\"#000\"")
                    .attribute("cx", x)
                    .attribute("cy", y)
                    .attribute("r", 2.3)
                    .raw("/>\n");
            out.raw("<text class=\"number\" fill=\"#fff\" text-anchor=\"middle\" font-size=\"3\" font-weight=\"bold\"")
                    .attribute("x", x)
                    .attribute("y", y + 1.05)
                    .raw(">")
                    .words(Integer.toString(number))
                    .raw("</text>\n");
        });
    }

    private void text(double x, double y, String anchor, double size, String words) {
        out.raw("<text").attribute("x", x).attribute("y", y).attribute("text-anchor", anchor);
        out.attribute("font-size", size).raw(">").words(words).raw("</text>\n");
    }
}
