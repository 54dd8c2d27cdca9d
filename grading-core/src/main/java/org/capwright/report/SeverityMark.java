package org.capwright.report;

import org.capwright.check.Severity;
import org.capwright.drawing.Canvas;
import org.capwright.drawing.Ink;
import org.capwright.drawing.Stroke;
import org.capwright.geometry.Point;

/** Signs of severity that differ in shape as well as in colour: a filled square, a triangle, a ring. */
final class SeverityMark {

    private static final Ink STOP = new Ink(0.62, 0.07, 0.10);
    private static final Ink CAUTION = new Ink(0.72, 0.42, 0.00);

    private SeverityMark() {}

    static Ink ink(Severity severity) {
        return switch (severity) {
            case STOP -> STOP;
            case CAUTION -> CAUTION;
            case INFO -> Ink.ACCENT;
        };
    }

    static String word(Severity severity) {
        return switch (severity) {
            case STOP -> "Stop";
            case CAUTION -> "Caution";
            case INFO -> "Info";
        };
    }

    /** Draws the sign about a point. */
    static void draw(Canvas canvas, Severity severity, double x, double y, double size) {
        double r = size / 2;
        canvas.ink(ink(severity));
        switch (severity) {
            case STOP -> {
                canvas.box(x - 0.9 * r, y - 0.9 * r, 1.8 * r, 1.8 * r).fill();
                canvas.ink(Ink.WHITE)
                        .box(x - 0.55 * r, y - 0.17 * r, 1.1 * r, 0.34 * r)
                        .fill();
            }
            case CAUTION ->
                canvas.from(x, y + r)
                        .to(x + 1.08 * r, y - 0.85 * r)
                        .to(x - 1.08 * r, y - 0.85 * r)
                        .close()
                        .fill();
            case INFO ->
                canvas.stroke(Stroke.solid(ink(severity), 0.36 * r))
                        .circle(new Point(x, y), 0.78 * r)
                        .draw();
        }
    }
}
