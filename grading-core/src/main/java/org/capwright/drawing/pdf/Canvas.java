package org.capwright.drawing.pdf;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import org.capwright.geometry.Cubic;
import org.capwright.geometry.Point;

/** Writes the operators of a content stream (PDF Reference 1.6, chapter 4). Coordinates and widths are mm, y up; decimals end at a micrometre. */
final class Canvas {

    /** How a line of text lies about its place. */
    enum Place {
        LEFT,
        CENTRE,
        RIGHT
    }

    /** Distance of the control points that makes a cubic run along a quarter circle of radius 1 to 2.7e-4: 4/3 (√2 - 1). */
    private static final double QUARTER = 4.0 / 3 * (Math.sqrt(2) - 1);

    private static final byte[] HEX = "0123456789ABCDEF".getBytes(StandardCharsets.US_ASCII);

    private final Lettering lettering;
    private byte[] bytes = new byte[8192];
    private int length;

    Canvas(Lettering lettering) {
        this.lettering = lettering;
    }

    byte[] bytes() {
        return Arrays.copyOf(bytes, length);
    }

    /** Takes over what another canvas of the same document holds. */
    Canvas append(Canvas other) {
        bytes = Arrays.copyOf(bytes, Math.max(bytes.length, length + other.length));
        System.arraycopy(other.bytes, 0, bytes, length, other.length);
        length += other.length;
        return this;
    }

    private void put(int b) {
        if (length == bytes.length) {
            bytes = Arrays.copyOf(bytes, length * 2);
        }
        bytes[length++] = (byte) b;
    }

    private Canvas op(String operator) {
        for (int i = 0; i < operator.length(); i++) {
            put(operator.charAt(i));
        }
        put('\n');
        return this;
    }

    private Canvas number(double value) {
        return fixed(Math.round(value * 1000), 100);
    }

    /** For matrices: nine decimals, so that true scale holds over the longest page. */
    private Canvas precise(double value) {
        return fixed(Math.round(value * 1e9), 100_000_000);
    }

    private Canvas fixed(long scaled, long firstDecimal) {
        long rest = scaled;
        if (rest < 0) {
            put('-');
            rest = -rest;
        }
        long one = firstDecimal * 10;
        whole(rest / one);
        long fraction = rest % one;
        if (fraction != 0) {
            put('.');
            for (long unit = firstDecimal; fraction != 0; unit /= 10) {
                put((int) ('0' + fraction / unit));
                fraction %= unit;
            }
        }
        put(' ');
        return this;
    }

    private void whole(long value) {
        long unit = 1;
        while (value / unit >= 10) {
            unit *= 10;
        }
        for (; unit > 0; unit /= 10) {
            put((int) ('0' + value / unit % 10));
        }
    }

    Canvas save() {
        return op("q");
    }

    Canvas restore() {
        return op("Q");
    }

    Canvas transform(double a, double b, double c, double d, double e, double f) {
        return precise(a).precise(b).precise(c).precise(d).precise(e).precise(f).op("cm");
    }

    Canvas move(double x, double y) {
        return transform(1, 0, 0, 1, x, y);
    }

    /** From points of 1/72 inch to millimetres. */
    Canvas millimetres() {
        return transform(72 / 25.4, 0, 0, 72 / 25.4, 0, 0);
    }

    Canvas turn(double radians) {
        double cos = Math.cos(radians);
        double sin = Math.sin(radians);
        return transform(cos, sin, -sin, cos, 0, 0);
    }

    Canvas stroke(Stroke stroke) {
        colour(stroke.ink(), "RG").number(stroke.width()).op("w");
        op(stroke.dash().isEmpty() ? "1 J 1 j" : "0 J 1 j");
        put('[');
        for (double part : stroke.dash()) {
            number(part);
        }
        return op("] 0 d");
    }

    /** Butt ends, so that a square measured at its corners is exact and dashes keep their lengths. */
    Canvas square() {
        return op("0 J 0 j");
    }

    Canvas ink(Ink ink) {
        return colour(ink, "rg");
    }

    private Canvas colour(Ink ink, String operator) {
        return number(ink.red()).number(ink.green()).number(ink.blue()).op(operator);
    }

    Canvas from(double x, double y) {
        return number(x).number(y).op("m");
    }

    Canvas to(double x, double y) {
        return number(x).number(y).op("l");
    }

    Canvas from(Point p) {
        return from(p.x(), p.y());
    }

    Canvas to(Point p) {
        return to(p.x(), p.y());
    }

    Canvas curve(Cubic cubic) {
        if (cubic.isStraight()) {
            return to(cubic.end());
        }
        return number(cubic.control1().x())
                .number(cubic.control1().y())
                .number(cubic.control2().x())
                .number(cubic.control2().y())
                .number(cubic.end().x())
                .number(cubic.end().y())
                .op("c");
    }

    Canvas polyline(List<Point> points) {
        from(points.get(0));
        for (int i = 1; i < points.size(); i++) {
            to(points.get(i));
        }
        return this;
    }

    Canvas box(double x, double y, double width, double height) {
        return number(x).number(y).number(width).number(height).op("re");
    }

    Canvas circle(double x, double y, double r) {
        double k = QUARTER * r;
        Point centre = new Point(x, y);
        Point arm = new Point(r, 0);
        from(centre.plus(arm));
        for (int i = 0; i < 4; i++) {
            Point next = arm.left();
            Point out = next.times(k / r);
            Point in = arm.times(k / r);
            curve(new Cubic(
                    centre.plus(arm),
                    centre.plus(arm).plus(out),
                    centre.plus(next).plus(in),
                    centre.plus(next)));
            arm = next;
        }
        return close();
    }

    Canvas line(double x1, double y1, double x2, double y2) {
        return from(x1, y1).to(x2, y2).draw();
    }

    Canvas close() {
        return op("h");
    }

    Canvas draw() {
        return op("S");
    }

    Canvas fill() {
        return op("f");
    }

    Canvas fillAndDraw() {
        return op("B");
    }

    Canvas clip() {
        return op("W n");
    }

    Canvas form(String name) {
        put('/');
        return op(name + " Do");
    }

    /** A filled arrow head with its tip at a point, pointing along a unit vector. */
    Canvas arrowHead(Point tip, Point direction, double size) {
        Point back = tip.minus(direction.times(size));
        Point side = direction.left().times(size * 0.32);
        return from(tip).to(back.plus(side)).to(back.minus(side)).close().fill();
    }

    /**
     * Writes a line of text.
     *
     * @param size font size, mm
     * @param x where the line starts, is centred or ends
     * @param y its base line
     */
    Canvas text(Typeface face, double size, Place place, double x, double y, String text) {
        Script script = Script.of(text, face);
        int[] shown = script.shown();
        if (shown.length == 0) {
            return this;
        }
        double shift = place == Place.LEFT ? 0 : face.width(script, size) * (place == Place.RIGHT ? 1 : 0.5);
        if (script.altered()) {
            actualText(script.text());
        }
        op("BT");
        put('/');
        for (char c : Lettering.name(face).toCharArray()) {
            put(c);
        }
        put(' ');
        number(size).op("Tf");
        number(x - shift).number(y).op("Td");
        put('<');
        for (int codePoint : shown) {
            lettering.use(face, codePoint);
            hex(face.glyph(codePoint));
        }
        op("> Tj");
        op("ET");
        return script.altered() ? op("EMC") : this;
    }

    /** What stands here in truth, for whoever searches or copies (PDF Reference 1.6, section 10.8.3). */
    private void actualText(String text) {
        for (char c : "/Span <</ActualText <FEFF".toCharArray()) {
            put(c);
        }
        for (char c : text.toCharArray()) {
            hex(c);
        }
        op(">>> BDC");
    }

    private void hex(int sixteenBits) {
        for (int shift = 12; shift >= 0; shift -= 4) {
            put(HEX[sixteenBits >> shift & 15]);
        }
    }
}
