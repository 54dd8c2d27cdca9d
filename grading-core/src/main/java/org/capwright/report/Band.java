package org.capwright.report;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.capwright.drawing.Canvas;
import org.capwright.drawing.svg.SvgCanvas;
import org.capwright.words.Language;

/**
 * A strip of a cover page that is not broken.
 *
 * @param height its height with the free space below it, mm
 * @param withNext whether the next one must stand on the same page
 * @param header drawn again where a table goes on overleaf
 * @param drawing draws it
 */
record Band(double height, boolean withNext, Optional<Band> header, Drawing drawing) {

    /** Free about a document, mm. */
    private static final double EDGE = 10;

    /** Draws a band. */
    interface Drawing {
        /**
         * Draws.
         *
         * @param canvas where
         * @param left left edge, mm
         * @param top upper edge, mm, y up
         */
        void draw(Canvas canvas, double left, double top);
    }

    static Band of(double height, Drawing drawing) {
        return new Band(height, false, Optional.empty(), drawing);
    }

    Band keptWithNext() {
        return new Band(height, true, header, drawing);
    }

    Band under(Band tableHeader) {
        return new Band(height, withNext, Optional.of(tableHeader), drawing);
    }

    /** Bands one below another as a document of their own. */
    static String svg(String title, String description, Language language, List<Band> bands, double width) {
        double height = bands.stream().mapToDouble(Band::height).sum();
        SvgCanvas canvas = SvgCanvas.begin(title, description, language, width + 2 * EDGE, height + 2 * EDGE);
        double top = -EDGE;
        for (Band band : bands) {
            band.drawing.draw(canvas, EDGE, top);
            top -= band.height;
        }
        return new String(canvas.finish(), StandardCharsets.UTF_8);
    }
}
