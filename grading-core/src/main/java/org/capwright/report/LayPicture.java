package org.capwright.report;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.capwright.drawing.Canvas;
import org.capwright.drawing.Ink;
import org.capwright.drawing.Letters;
import org.capwright.drawing.Place;
import org.capwright.drawing.Stroke;
import org.capwright.geometry.Point;
import org.capwright.lay.Fabric;
import org.capwright.lay.Lay;
import org.capwright.lay.Placement;
import org.capwright.pattern.Piece;
import org.capwright.quantity.Decimals;
import org.capwright.quantity.Unit;
import org.capwright.words.Language;
import org.capwright.words.Text;
import org.locationtech.jts.algorithm.construct.MaximumInscribedCircle;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;

/** A lay drawn to scale: the length of the cloth runs to the right, the fold or the lower selvedge lies at the bottom, a ruler below it. */
public final class LayPicture {

    private static final double HIGHEST = 44;
    private static final double LEAST_PAGE = 900;
    private static final Ink SELVEDGE = Ink.grey(0.85);
    private static final GeometryFactory GEOMETRY = new GeometryFactory();

    private final Lay lay;
    private final Unit unit;
    private final Language language;
    private final double scale;

    /** Font size; all that is not to scale goes by it. */
    private final double size;

    private final Letters words;
    private final Stroke line;
    private final boolean folded;
    private final double cloth;

    private LayPicture(Lay lay, Unit unit, Language language, double scale, double size) {
        this.lay = lay;
        this.unit = unit;
        this.language = language;
        this.scale = scale;
        this.size = size;
        words = Letters.regular(size, Ink.TEXT);
        line = Stroke.solid(Ink.TEXT, size * 0.075);
        folded = lay.fabric().laying() == Fabric.Laying.FOLDED;
        cloth = scale * (lay.usableWidth() + lay.fabric().selvedge() * (folded ? 1 : 2));
    }

    /**
     * The lay at true scale.
     *
     * @param lay the lay
     * @param unit unit of the figures and of the ruler
     * @param language what its words are in
     * @return an SVG document, one user unit a millimetre; the same lay gives the same text
     */
    public static String svg(Lay lay, Unit unit, Language language) {
        LayPicture picture = new LayPicture(lay, unit, language, 1, 16);
        double width = Math.max(lay.length(), LEAST_PAGE) + 2 * picture.size;
        return Band.svg(
                language.say("Lay"),
                lay.fabric().words(unit).in(language),
                language,
                List.of(picture.band(width)),
                width);
    }

    /** The lay drawn small. */
    static Band band(Lay lay, Unit unit, Language language, double width) {
        double size = 2.7;
        double scale = Math.min((width - 2 * size) / lay.length(), HIGHEST / lay.usableWidth());
        return new LayPicture(lay, unit, language, scale, size).band(width);
    }

    private Band band(double width) {
        return Band.of(cloth + 6.5 * size, (canvas, left, top) -> draw(canvas, left + 1.6 * size, top, width));
    }

    private void draw(Canvas canvas, double left, double top, double width) {
        String fabric = lay.fabric().words(unit).in(language);
        canvas.text(words.within(fabric, width - 2 * size), Place.LEFT, left, top - 1.1 * size, fabric);
        String figures = Text.of("lay {length}, at least {least} by area, {used} % of the cloth used, buy {buy}")
                .with("length", length(lay.length()))
                .with("least", length(lay.areaBound()))
                .with("used", Text.figures(Decimals.text(Math.floor(lay.utilisation() * 1000) / 10, 1)))
                .with("buy", length(lay.purchase().length()))
                .in(language);
        canvas.text(words.within(figures, width - 2 * size), Place.LEFT, left, top - 2.4 * size, figures);
        double upper = top - 3 * size;
        double lower = upper - cloth;
        double base = upper - scale * (lay.fabric().selvedge() + lay.usableWidth());
        cloth(canvas, left, upper, lower, base);
        Map<Piece, Integer> counts = new HashMap<>();
        for (Placement placement : lay.placements()) {
            piece(canvas, left, base, placement, counts.merge(placement.piece(), placement.yields(), Integer::sum));
        }
        ruler(canvas, left, lower - 0.3 * size);
    }

    private Text length(double millimetres) {
        return Text.figures(unit.format(millimetres) + " " + unit.symbol());
    }

    private void cloth(Canvas canvas, double left, double upper, double lower, double base) {
        double length = scale * lay.length();
        double selvedge = scale * lay.fabric().selvedge();
        canvas.ink(Ink.TINT).stroke(Stroke.solid(Ink.QUIET, line.width()));
        canvas.about("cloth", "").box(left, lower, length, cloth).fillAndDraw();
        if (selvedge > 0) {
            canvas.ink(SELVEDGE).box(left, upper - selvedge, length, selvedge).fill();
            if (!folded) {
                canvas.box(left, lower, length, selvedge).fill();
            }
        }
        Letters small = Letters.regular(0.75 * size, Ink.TEXT);
        Point upward = new Point(0, 1);
        double x = left - 0.5 * size;
        canvas.written(
                small, new Point(x, lower + 0.75 * cloth), upward, language.say(folded ? "selvedges" : "selvedge"));
        canvas.written(small, new Point(x, lower + 0.25 * cloth), upward, language.say(folded ? "fold" : "selvedge"));
        if (folded) {
            canvas.stroke(Stroke.dashed(Ink.BLACK, 0.18 * size, 1.5 * size, 0.4 * size, 0.4 * size, 0.4 * size));
            canvas.line(left, base, left + length, base);
        }
    }

    private void piece(Canvas canvas, double left, double base, Placement placement, int upTo) {
        canvas.group("piece", placement.piece().kind().id(), new Point(left, base));
        List<Point> outline =
                placement.outline().stream().map(p -> p.times(scale)).toList();
        Ink ink = SleevePicture.ink(placement.piece().kind().material());
        canvas.ink(mirrored(placement) ? ink.times(0.92) : ink).stroke(line);
        canvas.about("cut", "").polyline(outline).close().fillAndDraw();
        Coordinate[] ring = new Coordinate[outline.size() + 1];
        for (int i = 0; i < ring.length; i++) {
            Point point = outline.get(i % outline.size());
            ring[i] = new Coordinate(point.x(), point.y());
        }
        MaximumInscribedCircle circle = new MaximumInscribedCircle(GEOMETRY.createPolygon(ring), 2 * scale);
        double radius = circle.getRadiusLine().getLength();
        Point middle = new Point(circle.getCenter().getX(), circle.getCenter().getY());
        label(canvas, placement, upTo, middle, radius);
        arrow(canvas, middle.minus(new Point(0, 0.55 * radius)), radius, placement.rotation() == 0 ? 1 : -1);
        canvas.end();
    }

    /** Words in the largest circle within the outline. */
    private void label(Canvas canvas, Placement placement, int upTo, Point middle, double radius) {
        int from = upTo - placement.yields() + 1;
        List<String> lines = List.of(
                language.say(placement.piece().kind().words()),
                Text.of("size {size}, no. {number}")
                        .with("size", placement.piece().size())
                        .with("number", from < upTo ? from + "–" + upTo : String.valueOf(from))
                        .in(language),
                language.say(manner(placement)));
        Letters letters = Letters.regular(Math.min(size * 1.3, radius / 4), Ink.TEXT);
        for (String text : lines) {
            letters = letters.within(text, 1.7 * radius);
        }
        for (int i = 0; i < lines.size(); i++) {
            double y = middle.y() + (1.2 - i) * 1.25 * letters.size();
            canvas.text(letters, Place.CENTRE, middle.x(), y, lines.get(i));
        }
    }

    /** The grain arrow points to the top of the piece. */
    private void arrow(Canvas canvas, Point middle, double radius, int way) {
        double half = way * 0.7 * radius;
        double barb = way * Math.min(size * 0.75, 0.25 * radius);
        Point tip = middle.plus(new Point(half, 0));
        canvas.stroke(line)
                .about("grain", "")
                .from(middle.x() - half, middle.y())
                .to(tip);
        canvas.from(tip.x() - barb, tip.y() + barb / 2)
                .to(tip)
                .to(tip.x() - barb, tip.y() - barb / 2)
                .draw();
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

    /** A mark every centimetre or inch, figures every ten or six of them; in a small picture as many fewer as it takes to read them. */
    private void ruler(Canvas canvas, double left, double y) {
        int every = unit == Unit.INCH ? 6 : 10;
        double step = unit == Unit.INCH ? 25.4 : 10;
        while (scale * step * every < 3.5 * size) {
            step *= 2;
        }
        int marks = (int) Math.floor(lay.length() / step + 1e-9);
        canvas.stroke(line).about("ruler", "").from(left, y).to(left + scale * lay.length(), y);
        for (int i = 0; i <= marks; i++) {
            double tick = i % every == 0 ? 0.9 : 2 * i % every == 0 ? 0.65 : 0.4;
            double x = left + scale * i * step;
            canvas.from(x, y).to(x, y - tick * size);
        }
        canvas.draw();
        for (int i = 0; i <= marks; i += every) {
            canvas.text(words, Place.CENTRE, left + scale * i * step, y - 1.9 * size, unit.format(i * step));
        }
    }
}
