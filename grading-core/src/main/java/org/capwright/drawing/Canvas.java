package org.capwright.drawing;

import java.nio.ByteBuffer;
import java.util.Arrays;
import java.util.List;
import org.capwright.geometry.Cubic;
import org.capwright.geometry.Curve;
import org.capwright.geometry.Point;
import org.capwright.quantity.Decimals;

/**
 * What a picture is drawn into: lines, fills and words, in groups. Lengths are mm, y points up. A canvas writes what is drawn as it comes and keeps nothing of it, so that a picture costs
 * little more than its bytes. Not for use by several threads. Every method that gives a canvas gives this one.
 */
public abstract class Canvas {

    /** The longest number stays below this. */
    private static final int NUMBER = 32;

    /** Distance of the control points that makes a cubic run along a quarter circle of radius 1 to 2.7e-4: 4/3 (√2 - 1). */
    private static final double QUARTER = 4.0 / 3 * (Math.sqrt(2) - 1);

    private byte[] bytes = new byte[8192];
    private int length;

    /** An empty canvas. */
    protected Canvas() {}

    /**
     * What was written so far.
     *
     * @return to be read only, and before anything more is written
     */
    public final ByteBuffer written() {
        return ByteBuffer.wrap(bytes, 0, length);
    }

    private void reserve(int more) {
        if (length + more > bytes.length) {
            bytes = Arrays.copyOf(bytes, Math.max(length + more, bytes.length * 2));
        }
    }

    /**
     * Writes a byte.
     *
     * @param b the byte
     */
    protected final void put(int b) {
        reserve(1);
        bytes[length++] = (byte) b;
    }

    /**
     * Writes bytes.
     *
     * @param more the bytes
     */
    protected final void put(byte[] more) {
        reserve(more.length);
        System.arraycopy(more, 0, bytes, length, more.length);
        length += more.length;
    }

    /**
     * Writes letters of ASCII.
     *
     * @param ascii the letters
     */
    @SuppressWarnings("deprecation") // The quickest way for letters of one byte each.
    protected final void put(String ascii) {
        int count = ascii.length();
        reserve(count);
        ascii.getBytes(0, count, bytes, length);
        length += count;
    }

    /**
     * Writes a number.
     *
     * @param value at most 1e9 in size
     * @param decimals the most decimals, 1 to 9
     */
    protected final void put(double value, int decimals) {
        reserve(NUMBER);
        length = Decimals.put(value, 0, decimals, bytes, length);
    }

    /**
     * Writes a pair of numbers with what stands before each.
     *
     * @param before a byte before the first; 0 for none
     * @param x the first
     * @param between a byte between them
     * @param y the second
     * @param decimals the most decimals, 1 to 9
     */
    protected final void put(int before, double x, int between, double y, int decimals) {
        reserve(2 * NUMBER);
        if (before != 0) {
            bytes[length++] = (byte) before;
        }
        length = Decimals.put(x, 0, decimals, bytes, length);
        bytes[length++] = (byte) between;
        length = Decimals.put(y, 0, decimals, bytes, length);
    }

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
        curve.segments().forEach(this::curve);
        return this;
    }

    /**
     * A line through points, not yet drawn.
     *
     * @param points one or more
     * @return this
     */
    public final Canvas polyline(List<Point> points) {
        from(points.get(0));
        for (int i = 1; i < points.size(); i++) {
            to(points.get(i));
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
