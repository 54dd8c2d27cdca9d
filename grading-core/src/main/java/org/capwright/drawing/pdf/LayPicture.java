package org.capwright.drawing.pdf;

import java.util.List;
import org.capwright.geometry.Point;
import org.capwright.lay.Fabric;
import org.capwright.lay.Lay;
import org.capwright.lay.Placement;
import org.capwright.measure.Unit;
import org.locationtech.jts.algorithm.construct.MaximumInscribedCircle;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;

/** A lay drawn small: the length of the cloth runs to the right, the fold or the lower selvedge lies at the bottom. */
final class LayPicture {

    private static final double HIGHEST = 44;
    private static final double CAPTION = 5;
    private static final GeometryFactory GEOMETRY = new GeometryFactory();

    private final Lay lay;
    private final String caption;
    private final double scale;

    LayPicture(Lay lay, Unit unit, double width) {
        this.lay = lay;
        this.scale = Math.min(width / lay.length(), HIGHEST / lay.usableWidth());
        this.caption = lay.fabric().words(unit) + ": lay " + unit.format(lay.length()) + " " + unit.symbol() + ", "
                + (int) Math.floor(100 * lay.utilisation()) + " % of the cloth used";
    }

    Band band() {
        return Band.of(scale * lay.usableWidth() + CAPTION + 4, this::draw);
    }

    private void draw(Canvas canvas, double left, double top) {
        canvas.ink(Ink.TEXT).text(Typeface.REGULAR, 2.7, Canvas.Place.LEFT, left, top - 3, caption);
        double base = top - CAPTION - scale * lay.usableWidth();
        canvas.ink(Ink.TINT)
                .box(left, base, scale * lay.length(), scale * lay.usableWidth())
                .fill();
        for (Placement placement : lay.placements()) {
            piece(canvas, left, base, placement);
        }
        double end = left + scale * lay.length();
        canvas.stroke(Stroke.solid(Ink.QUIET, 0.2))
                .line(left, base + scale * lay.usableWidth(), end, base + scale * lay.usableWidth());
        boolean folded = lay.fabric().laying() == Fabric.Laying.FOLDED;
        canvas.stroke(folded ? Stroke.dashed(Ink.BLACK, 0.5, 4.0, 1.2, 1.0, 1.2) : Stroke.solid(Ink.QUIET, 0.2))
                .line(left, base, end, base);
    }

    private void piece(Canvas canvas, double left, double base, Placement placement) {
        List<Point> outline = placement.outline();
        canvas.ink(SleevePicture.ink(placement.piece().kind().material())).stroke(Stroke.solid(Ink.TEXT, 0.2));
        canvas.from(at(outline.get(0), left, base));
        for (Point point : outline.subList(1, outline.size())) {
            canvas.to(at(point, left, base));
        }
        canvas.close().fillAndDraw();
        label(canvas, left, base, placement);
    }

    private Point at(Point point, double left, double base) {
        return new Point(left + scale * point.x(), base + scale * point.y());
    }

    /** Words in the largest circle within the outline, with an arrow to the top of the piece. */
    private void label(Canvas canvas, double left, double base, Placement placement) {
        List<Point> outline = placement.outline();
        Coordinate[] ring = new Coordinate[outline.size() + 1];
        for (int i = 0; i < ring.length; i++) {
            Point point = outline.get(i % outline.size());
            ring[i] = new Coordinate(point.x(), point.y());
        }
        MaximumInscribedCircle circle = new MaximumInscribedCircle(GEOMETRY.createPolygon(ring), 2);
        Point middle =
                at(new Point(circle.getCenter().getX(), circle.getCenter().getY()), left, base);
        double radius = scale * circle.getRadiusLine().getLength();
        String words = placement.piece().kind().words();
        double size = Typeface.REGULAR.sizeWithin(words, 2.4, 1.7 * radius);
        canvas.ink(Ink.TEXT).text(Typeface.REGULAR, size, Canvas.Place.CENTRE, middle.x(), middle.y() + 0.4, words);
        String manner = switch (placement.cover()) {
            case HALF_ON_FOLD -> "on the fold";
            case OPENED_OUT -> "opened out";
            case DRAWN -> placement.facing() == Placement.Facing.MIRRORED ? "mirrored" : "as drawn";
        };
        canvas.text(
                Typeface.REGULAR,
                Typeface.REGULAR.sizeWithin(manner, 2.4, 1.5 * radius),
                Canvas.Place.CENTRE,
                middle.x(),
                middle.y() - 2.4,
                manner);
        double half = Math.min(8, 0.6 * radius);
        double y = middle.y() - Math.min(5, 0.6 * radius);
        double way = placement.rotation() == 0 ? 1 : -1;
        double tip = middle.x() + way * half;
        canvas.stroke(Stroke.solid(Ink.TEXT, 0.2)).line(middle.x() - way * half, y, tip, y);
        canvas.line(tip - way * 1.6, y + 0.8, tip, y);
        canvas.line(tip - way * 1.6, y - 0.8, tip, y);
    }
}
