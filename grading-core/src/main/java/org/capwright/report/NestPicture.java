package org.capwright.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.capwright.check.CheckedGrade;
import org.capwright.check.Crossing;
import org.capwright.check.NestLine;
import org.capwright.drawing.Canvas;
import org.capwright.drawing.Ink;
import org.capwright.drawing.Letters;
import org.capwright.drawing.Place;
import org.capwright.drawing.Stroke;
import org.capwright.geometry.Box;
import org.capwright.geometry.Point;
import org.capwright.quantity.Unit;
import org.capwright.words.Language;
import org.capwright.words.Text;

/**
 * Draws the lines of a checked grade over one another on fold line and bicep line, the overlay beside the sleeve, and marks where a larger size dips inside a smaller one. Each size has dashes of its own and its name on
 * the line; crossings are circled and numbered, and told in words below.
 */
public final class NestPicture {

    private static final double WIDTH = 250;
    private static final double KEY = 34;
    private static final double KEY_LINE = 6;
    private static final double HEAD = 8;
    private static final double CIRCLE = 3.2;

    /** Between sleeve and overlay, as a share of the sleeve's width. */
    private static final double BESIDE = 0.15;

    private static final int MOST_CROSSINGS = 60;
    private static final Letters WORDS = Letters.regular(3.2, Ink.BLACK);

    private final CheckedGrade grade;
    private final Unit unit;
    private final Language language;
    private final List<Crossing> crossings;
    private final Optional<Box> sleeve;
    private final Optional<Box> overlay;
    private final Box box;
    private final double scale;

    private NestPicture(CheckedGrade grade, Unit unit, Language language) {
        this.grade = grade;
        this.unit = unit;
        this.language = language;
        this.crossings = Crossing.of(grade);
        this.sleeve = room(grade, false);
        this.overlay = room(grade, true);
        this.box = Box.of(grade.sizes().stream()
                        .flatMap(size -> size.lines().stream())
                        .flatMap(line -> placed(line).stream())
                        .toList())
                .including(Point.ORIGIN);
        this.scale = box.width() > 0 ? (WIDTH - KEY - 8) / box.width() : 1;
    }

    /**
     * The nest as an SVG document.
     *
     * @param title name of the style
     * @param grade the grade; without lines, as from a spec table, the picture says so
     * @param unit unit of the figures
     * @param language what its words are in
     * @return the document, UTF-8, in millimetres
     */
    public static String write(String title, CheckedGrade grade, Unit unit, Language language) {
        NestPicture picture = new NestPicture(grade, unit, language);
        List<String> words = picture.words();
        List<Band> bands = new ArrayList<>();
        String heading = Text.of("Nest of {style}").with("style", title).in(language);
        bands.add(TextBands.heading(heading, Ink.BLACK));
        if (!picture.empty()) {
            double nest = picture.box.height() * picture.scale;
            bands.add(Band.of(HEAD + Math.max(nest, KEY_LINE * grade.sizes().size()) + 8, picture::draw));
        }
        words.forEach(line -> bands.add(TextBands.lines(line, WORDS, 5, WIDTH)));
        return Band.svg(heading, String.join("; ", words), language, bands, WIDTH);
    }

    private static Optional<Box> room(CheckedGrade grade, boolean ofOverlay) {
        List<Point> points = grade.sizes().stream()
                .flatMap(size -> size.lines().stream())
                .filter(line -> isOfOverlay(line.kind()) == ofOverlay)
                .flatMap(line -> line.points().stream())
                .toList();
        return points.isEmpty() ? Optional.empty() : Optional.of(Box.of(points).including(Point.ORIGIN));
    }

    private static boolean isOfOverlay(NestLine.Kind kind) {
        return kind != NestLine.Kind.CAP_LINE;
    }

    /** The overlay lies beside the sleeve: over it, the hem of the one would look like that of the other. */
    private double aside(NestLine.Kind kind) {
        return isOfOverlay(kind) && sleeve.isPresent() && overlay.isPresent()
                ? sleeve.get().right()
                        - overlay.get().left()
                        + BESIDE * sleeve.get().width()
                : 0;
    }

    private List<Point> placed(NestLine line) {
        Point by = new Point(aside(line.kind()), 0);
        return line.points().stream().map(point -> point.plus(by)).toList();
    }

    private boolean empty() {
        return grade.sizes().stream().allMatch(size -> size.lines().isEmpty());
    }

    private List<String> words() {
        if (crossings.isEmpty()) {
            return List.of(language.say(
                    empty()
                            ? "There are no lines to draw: a spec table has figures only."
                            : "No line crosses another where it should not."));
        }
        List<String> words = new ArrayList<>();
        for (int i = 0; i < Math.min(MOST_CROSSINGS, crossings.size()); i++) {
            Crossing crossing = crossings.get(i);
            Text line = Text.of(
                            crossing.kind() == NestLine.Kind.CAP_LINE
                                    ? "cap line: size {larger} dips {depth} inside size {smaller}"
                                    : "top edge of the overlay: size {larger} dips {depth} inside size {smaller}")
                    .with("larger", grade.label(crossing.interval() + 1))
                    .with("depth", Text.figures(unit.format(crossing.depth()) + " " + unit.symbol()))
                    .with("smaller", grade.label(crossing.interval()));
            words.add((i + 1) + "  " + line.in(language));
        }
        if (crossings.size() > MOST_CROSSINGS) {
            words.add(Text.of("and {count} more")
                    .with("count", crossings.size() - MOST_CROSSINGS)
                    .in(language));
        }
        return words;
    }

    private void draw(Canvas canvas, double left, double top) {
        canvas.text(
                WORDS,
                Place.LEFT,
                left,
                top - 3,
                Text.of("on fold line and bicep line, 1 : {scale}, front to the left")
                        .with("scale", Text.figures(String.valueOf(Math.round(10 / scale) / 10.0)))
                        .in(language));
        canvas.group("nest", "", new Point(left - box.left() * scale, top - HEAD - box.top() * scale));
        sleeve.ifPresent(room -> axes(canvas, room, aside(NestLine.Kind.CAP_LINE), language.say("Sleeve")));
        overlay.ifPresent(room -> axes(canvas, room, aside(NestLine.Kind.OVERLAY_HEM), language.say("Overlay")));
        canvas.text(
                Letters.regular(2.6, Ink.BLACK), Place.LEFT, box.right() * scale + 1, -0.9, language.say("bicep line"));
        for (int i = 0; i < grade.sizes().size(); i++) {
            size(canvas, i);
        }
        for (int i = 0; i < Math.min(MOST_CROSSINGS, crossings.size()); i++) {
            circles(canvas, crossings.get(i), i + 1);
        }
        canvas.end();
        key(canvas, left + WIDTH - KEY, top - HEAD);
    }

    private void axes(Canvas canvas, Box room, double aside, String piece) {
        double x = aside * scale;
        canvas.stroke(Stroke.solid(Ink.grey(0.6), 0.2)).about("axis", "");
        canvas.from(room.left() * scale + x, 0).to(room.right() * scale + x, 0);
        canvas.from(x, room.top() * scale + 2).to(x, room.bottom() * scale - 2).draw();
        canvas.text(WORDS, Place.CENTRE, x, room.bottom() * scale - 6, piece);
    }

    private Stroke stroke(int position) {
        return Stroke.ofSize(position, grade.base());
    }

    private void size(Canvas canvas, int position) {
        canvas.group("size", grade.label(position), Point.ORIGIN).stroke(stroke(position));
        for (NestLine line : grade.sizes().get(position).lines()) {
            List<Point> points = placed(line).stream().map(p -> p.times(scale)).toList();
            canvas.about("line", "").polyline(points).draw();
            if (line.kind() != NestLine.Kind.OVERLAY_HEM) {
                name(canvas, points, position);
            }
        }
        canvas.end();
    }

    /** Names stand on the front half, on a ground of white, from size to size further up the line, so that they do not hide one another. */
    private void name(Canvas canvas, List<Point> line, int position) {
        int sizes = grade.sizes().size();
        double share = 0.06 + 0.3 * (sizes == 1 ? 0.5 : (double) position / (sizes - 1));
        Point at = along(line, share);
        Letters letters = Letters.bold(2.8, stroke(position).ink());
        double width = letters.width(grade.label(position)) + 0.8;
        canvas.ink(Ink.WHITE).box(at.x() - width / 2, at.y() - 1.4, width, 2.8).fill();
        canvas.about("name", "").text(letters, Place.CENTRE, at.x(), at.y() - 1, grade.label(position));
    }

    private static Point along(List<Point> line, double share) {
        double length = 0;
        for (int i = 1; i < line.size(); i++) {
            length += line.get(i).distanceTo(line.get(i - 1));
        }
        double left = share * length;
        for (int i = 1; i < line.size(); i++) {
            double step = line.get(i).distanceTo(line.get(i - 1));
            if (step >= left && step > 0) {
                return line.get(i - 1).towards(line.get(i), left / step);
            }
            left -= step;
        }
        return line.get(line.size() - 1);
    }

    private void key(Canvas canvas, double x, double top) {
        for (int i = 0; i < grade.sizes().size(); i++) {
            double y = top - KEY_LINE * i;
            canvas.stroke(stroke(i)).about("key", "").line(x, y, x + 16, y);
            canvas.text(WORDS, Place.LEFT, x + 18, y - 1.1, named(i));
        }
    }

    private void circles(Canvas canvas, Crossing crossing, int number) {
        Point by = new Point(aside(crossing.kind()), 0);
        List<Point> places =
                crossing.at().stream().map(p -> p.plus(by).times(scale)).toList();
        for (Point place : places) {
            canvas.stroke(Stroke.solid(Ink.BLACK, 0.5))
                    .about("crossing", "")
                    .circle(place, CIRCLE)
                    .draw();
        }
        if (!places.isEmpty()) {
            Point at = places.get(places.size() - 1).plus(new Point(CIRCLE + 2.6, CIRCLE + 1));
            canvas.ink(Ink.BLACK).circle(at, 2.3).fill();
            canvas.about("number", "");
            canvas.text(Letters.bold(3, Ink.WHITE), Place.CENTRE, at.x(), at.y() - 1.05, Integer.toString(number));
        }
    }

    private String named(int size) {
        return size == grade.base()
                ? Text.of("{size}, base").with("size", grade.label(size)).in(language)
                : grade.label(size);
    }
}
