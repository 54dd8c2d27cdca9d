package org.capwright.drawing;

import java.util.List;
import org.capwright.geometry.Cubic;
import org.capwright.geometry.Curve;
import org.capwright.geometry.Point;
import org.capwright.geometry.Points;
import org.capwright.quantity.FileBytes;

/**
 * What a picture is drawn into: lines, fills and words, in groups. Lengths are mm, y points up. A canvas writes what is drawn as it comes and keeps nothing of it, so that a picture costs
 * little more than its bytes. Not for use by several threads. Every method that gives a canvas gives this one.
 */
public abstract class Canvas {

    /** Distance of the control points that makes a cubic run along a quarter circle of radius 1 to 2.7e-4: 4/3 (√2 - 1). */
    private static final double QUARTER = 4.0 / 3 * (Math.sqrt(2) - 1);

    /** What is drawn, as it is written. */
    protected final FileBytes file = new FileBytes();

    /** An empty canvas. */
    protected Canvas() {}

    /**
     * Begins a group: what belongs together and can be told from the rest.
     *
     * @param kind what sort of thing it is, letters and hyphens
     * @param name which one of its sort
     * @param move where its own origin lies
     * @return this
     */
    public abstract Canvas group(String kind, String name, Point move);

    /**
     * Ends the group begun last.
     *
     * @return this
     */
    public abstract Canvas end();

    /**
     * Says what the next line or fill is; a format that has no place for it leaves it out.
     *
     * @param kind what sort of thing it is, letters, hyphens and spaces
     * @param words what to tell whoever points at it; may be empty
     * @return this
     */
    public abstract Canvas about(String kind, String words);

    /**
     * Remembers coordinates, stroke and ink until {@link #restore}.
     *
     * @return this
     */
    public abstract Canvas save();

    /**
     * Goes back to what was saved last.
     *
     * @return this
     */
    public abstract Canvas restore();

    /**
     * From now on (x, y) means (a x + c y + e, b x + d y + f).
     *
     * @param a x to x
     * @param b x to y
     * @param c y to x
     * @param d y to y
     * @param e shift along x, mm
     * @param f shift along y, mm
     * @return this
     */
    public abstract Canvas transform(double a, double b, double c, double d, double e, double f);

    /**
     * How lines are drawn from now on.
     *
     * @param stroke colour, width and dashes
     * @return this
     */
    public abstract Canvas stroke(Stroke stroke);

    /**
     * How areas are filled from now on.
     *
     * @param ink the colour
     * @return this
     */
    public abstract Canvas ink(Ink ink);

    /**
     * Begins a line.
     *
     * @param x mm
     * @param y mm
     * @return this
     */
    public abstract Canvas from(double x, double y);

    /**
     * Goes on straight.
     *
     * @param x mm
     * @param y mm
     * @return this
     */
    public abstract Canvas to(double x, double y);

    /**
     * Goes on along a cubic.
     *
     * @param cubic it starts where the line has come to
     * @return this
     */
    public abstract Canvas curve(Cubic cubic);

    /**
     * Goes back to where the line began.
     *
     * @return this
     */
    public abstract Canvas close();

    /**
     * An upright rectangle, which is a line of its own.
     *
     * @param x left, mm
     * @param y bottom, mm
     * @param width mm
     * @param height mm
     * @return this
     */
    public abstract Canvas box(double x, double y, double width, double height);

    /**
     * Draws the line.
     *
     * @return this
     */
    public abstract Canvas draw();

    /**
     * Fills what the line encloses.
     *
     * @return this
     */
    public abstract Canvas fill();

    /**
     * Fills what the line encloses, and draws the line.
     *
     * @return this
     */
    public abstract Canvas fillAndDraw();

    /**
     * Writes a line of text.
     *
     * @param letters typeface, size and colour
     * @param place how it lies about x
     * @param x mm
     * @param y its base line, mm
     * @param words the text
     * @return this
     */
    public abstract Canvas text(Letters letters, Place place, double x, double y, String words);

    /**
     * Shows a picture of dots that the file holds; a format that has no place for it leaves it out.
     *
     * @param name its name in the file
     * @param x left, mm
     * @param y bottom, mm
     * @param width mm
     * @param height mm
     * @return this
     */
    public Canvas picture(String name, double x, double y, double width, double height) {
        return this;
    }

    /**
     * Writes text along a direction, centred on a point of its base line.
     *
     * @param letters typeface, size and colour
     * @param middle the point
     * @param along unit vector
     * @param words the text
     * @return this
     */
    public final Canvas written(Letters letters, Point middle, Point along, String words) {
        return save().transform(along.x(), along.y(), -along.y(), along.x(), middle.x(), middle.y())
                .text(letters, Place.CENTRE, 0, 0, words)
                .restore();
    }

    /**
     * Moves the origin.
     *
     * @param x mm
     * @param y mm
     * @return this
     */
    public final Canvas move(double x, double y) {
        return transform(1, 0, 0, 1, x, y);
    }

    /**
     * Begins a line.
     *
     * @param p its first point
     * @return this
     */
    public final Canvas from(Point p) {
        return from(p.x(), p.y());
    }

    /**
     * Goes on straight.
     *
     * @param p the next point
     * @return this
     */
    public final Canvas to(Point p) {
        return to(p.x(), p.y());
    }

    /**
     * A line along a curve, not yet drawn.
     *
     * @param curve the curve
     * @return this
     */
    public final Canvas path(Curve curve) {
        from(curve.start());
        List<Cubic> segments = curve.segments();
        for (int i = 0; i < segments.size(); i++) {
            curve(segments.get(i));
        }
        return this;
    }

    /**
     * A line through points, not yet drawn.
     *
     * @param points one or more
     * @return this
     */
    public final Canvas polyline(List<Point> points) {
        Points line = Points.of(points);
        from(line.x(0), line.y(0));
        for (int i = 1; i < line.size(); i++) {
            to(line.x(i), line.y(i));
        }
        return this;
    }

    /**
     * Draws a straight line.
     *
     * @param x1 mm
     * @param y1 mm
     * @param x2 mm
     * @param y2 mm
     * @return this
     */
    public final Canvas line(double x1, double y1, double x2, double y2) {
        return from(x1, y1).to(x2, y2).draw();
    }

    /**
     * A circle, as part of the line.
     *
     * @param middle its middle
     * @param radius mm
     * @return this
     */
    public final Canvas circle(Point middle, double radius) {
        Point arm = new Point(radius, 0);
        from(middle.plus(arm));
        for (int i = 0; i < 4; i++) {
            Point next = arm.left();
            Point start = middle.plus(arm);
            Point end = middle.plus(next);
            curve(new Cubic(start, start.plus(next.times(QUARTER)), end.plus(arm.times(QUARTER)), end));
            arm = next;
        }
        return close();
    }

    /**
     * The two barbs of an arrow, as part of the line.
     *
     * @param tip its tip
     * @param direction where it points, unit vector
     * @param size their length along it, mm
     * @return this
     */
    public final Canvas arrow(Point tip, Point direction, double size) {
        Point back = tip.minus(direction.times(size));
        Point side = direction.left().times(size * 0.32);
        return from(back.plus(side)).to(tip).to(back.minus(side));
    }
}
