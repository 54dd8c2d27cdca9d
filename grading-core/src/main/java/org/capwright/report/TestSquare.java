package org.capwright.report;

import org.capwright.drawing.Canvas;
import org.capwright.drawing.Ink;
import org.capwright.drawing.Letters;
import org.capwright.drawing.Place;
import org.capwright.drawing.Stroke;
import org.capwright.words.Language;

/** A square to measure on paper, drawn so that the middles of its lines are the given length apart. */
final class TestSquare {

    private TestSquare() {}

    static void draw(Canvas canvas, double left, double top, double side, String words, Language language) {
        canvas.stroke(Stroke.solid(Ink.BLACK, 0.25))
                .box(left, top - side, side, side)
                .draw();
        double x = left + side / 2;
        double y = top - side / 2;
        canvas.text(Letters.bold(5, Ink.TEXT), Place.CENTRE, x, y - 0.5, words);
        canvas.text(Letters.regular(2.8, Ink.QUIET), Place.CENTRE, x, y - 5.5, language.say("measure before cutting"));
    }
}
