package org.capwright.report;

import java.util.List;
import java.util.function.Supplier;
import org.capwright.geometry.Points;
import org.jspecify.annotations.Nullable;

/** Cut lines of a block in its coordinates, with boxes about their stretches; made when they are first asked for, as a drawing that is not cut into pages needs none. Not for use by several threads. */
final class Contours {

    /** Points of a stretch of a cut line. */
    static final int STRETCH = 16;

    /**
     * A cut line.
     *
     * @param line its points, x and y in turn
     * @param boxes about sixteen points each: left, bottom, right and top in turn; points left over have none
     */
    record Contour(double[] line, double[] boxes) {

        Contour(double[] line) {
            this(line, boxesOf(line));
        }

        static Contour of(Block.Layer layer) {
            Points cut = layer.piece().cutLine();
            double[] line = new double[2 * cut.size()];
            for (int i = 0; i < cut.size(); i++) {
                line[2 * i] = cut.x(i) + layer.shift().x();
                line[2 * i + 1] = cut.y(i) + layer.shift().y();
            }
            return new Contour(line);
        }

        private static double[] boxesOf(double[] line) {
            double[] boxes = new double[4 * (line.length / (2 * STRETCH))];
            for (int k = 0; k < boxes.length; k += 4) {
                int first = k / 4 * 2 * STRETCH;
                double left = line[first];
                double bottom = line[first + 1];
                double right = left;
                double top = bottom;
                for (int i = first + 2; i < first + 2 * STRETCH; i += 2) {
                    left = Math.min(left, line[i]);
                    bottom = Math.min(bottom, line[i + 1]);
                    right = Math.max(right, line[i]);
                    top = Math.max(top, line[i + 1]);
                }
                boxes[k] = left;
                boxes[k + 1] = bottom;
                boxes[k + 2] = right;
                boxes[k + 3] = top;
            }
            return boxes;
        }
    }

    private final Supplier<List<Contour>> making;
    private @Nullable List<Contour> known;

    Contours(Supplier<List<Contour>> making) {
        this.making = making;
    }

    /** One for each size, smallest first. */
    List<Contour> all() {
        List<Contour> all = known;
        if (all == null) {
            all = making.get();
            known = all;
        }
        return all;
    }
}
