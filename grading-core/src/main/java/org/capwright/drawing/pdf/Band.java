package org.capwright.drawing.pdf;

import java.util.Optional;

/**
 * A strip of a cover page that is not broken.
 *
 * @param height its height with the free space below it, mm
 * @param withNext whether the next one must stand on the same page
 * @param header drawn again where a table goes on overleaf
 * @param drawing draws it
 */
record Band(double height, boolean withNext, Optional<Band> header, Drawing drawing) {

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
}
