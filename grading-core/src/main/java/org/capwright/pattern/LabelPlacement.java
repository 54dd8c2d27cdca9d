package org.capwright.pattern;

import java.util.ArrayList;
import java.util.List;
import org.capwright.geometry.Point;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;

/**
 * Finds the place where the words on a piece can be largest: inside the net line and off every line drawn in the piece.
 *
 * <p>The piece is divided into a grid; a cell is free if it lies wholly inside and touches no mark. Of all rectangles of free cells the one is taken in which the lines of the label,
 * set as they are or broken further, can be written with the greatest line height.
 */
final class LabelPlacement {

    /** Widest line height that is used, mm. */
    static final double TALLEST = 8;

    /** The least line height that is read with ease, mm; rather than writing smaller, lines are shortened. Common practice, no source. */
    static final double LEAST = 3;

    private static final int CELLS = 40;

    private LabelPlacement() {}

    static PieceLabel place(List<String> lines, Polygon net, List<MarkLine> marks) {
        FreeCells free = FreeCells.of(net, marks, CELLS);
        List<List<String>> settings = new ArrayList<>();
        settings.add(lines);
        for (int words = 2; words <= 4; words++) {
            settings.add(TextWidth.broken(lines, TextWidth.widest(lines) / words));
        }
        Choice best = Choice.NONE;
        for (Envelope rectangle : free.rectangles()) {
            for (List<String> setting : settings) {
                double byHeight = rectangle.getHeight() / setting.size();
                double byWidth = rectangle.getWidth() / TextWidth.widest(setting);
                double height = Math.min(TALLEST, Math.min(byHeight, byWidth));
                if (height > best.lineHeight() + 1e-9) {
                    best = new Choice(setting, rectangle, height);
                }
            }
        }
        if (best.lineHeight() < LEAST) {
            best = shortened(lines, free, best);
        }
        Envelope place = best.rectangle();
        double used = best.lineHeight() * best.lines().size();
        double slack = Math.max(0, place.getHeight() - used) / 2;
        return new PieceLabel(
                best.lines(), new Point(place.getMinX(), place.getMaxY() - slack), best.lineHeight(), place.getWidth());
    }

    /** As many lines as there is room for at the least height, each cut short to the width. */
    private static Choice shortened(List<String> lines, FreeCells free, Choice otherwise) {
        Choice best = otherwise;
        double most = -1;
        for (Envelope rectangle : free.rectangles()) {
            int count = (int) Math.min(lines.size(), Math.floor(rectangle.getHeight() / LEAST));
            double letters = rectangle.getWidth() / LEAST;
            if (count > 0 && letters >= 2 && count * Math.min(letters, TextWidth.widest(lines)) > most) {
                most = count * Math.min(letters, TextWidth.widest(lines));
                List<String> kept = lines.subList(0, count).stream()
                        .map(line -> TextWidth.shortened(line, letters))
                        .toList();
                best = new Choice(kept, rectangle, LEAST);
            }
        }
        return best;
    }

    /** A way to write the label. */
    private record Choice(List<String> lines, Envelope rectangle, double lineHeight) {
        static final Choice NONE = new Choice(List.of(), new Envelope(0, 0, 0, 0), 0);
    }

    /** Which cells of a grid over a piece are free. */
    static final class FreeCells {
        private final boolean[][] free;
        private final Envelope box;
        private final double width;
        private final double height;

        private FreeCells(boolean[][] free, Envelope box, double width, double height) {
            this.free = free;
            this.box = box;
            this.width = width;
            this.height = height;
        }

        static FreeCells of(Polygon net, List<MarkLine> marks, int cells) {
            Envelope box = net.getEnvelopeInternal();
            double width = box.getWidth() / cells;
            double height = box.getHeight() / cells;
            PreparedGeometry inside = PreparedGeometryFactory.prepare(net);
            List<Geometry> lines = new ArrayList<>(marks.size());
            for (MarkLine mark : marks) {
                lines.add(lineString(mark));
            }
            PreparedGeometry drawn = PreparedGeometryFactory.prepare(Outline.PLANE.buildGeometry(lines));
            boolean[][] free = new boolean[cells][cells];
            for (int row = 0; row < cells; row++) {
                for (int column = 0; column < cells; column++) {
                    Geometry cell = Outline.PLANE.toGeometry(new Envelope(
                            box.getMinX() + column * width,
                            box.getMinX() + (column + 1) * width,
                            box.getMinY() + row * height,
                            box.getMinY() + (row + 1) * height));
                    free[row][column] = inside.containsProperly(cell) && !drawn.intersects(cell);
                }
            }
            return new FreeCells(free, box, width, height);
        }

        private static LineString lineString(MarkLine mark) {
            return Outline.PLANE.createLineString(
                    mark.line().flattened(0.5).stream().map(Outline::coordinate).toArray(Coordinate[]::new));
        }

        /** All rectangles of free cells that cannot be made wider or taller upwards, row by row (the histogram method). */
        List<Envelope> rectangles() {
            List<Envelope> found = new ArrayList<>();
            int cells = free.length;
            int[] tall = new int[cells];
            for (int row = 0; row < cells; row++) {
                for (int column = 0; column < cells; column++) {
                    tall[column] = free[row][column] ? tall[column] + 1 : 0;
                }
                for (int left = 0; left < cells; left++) {
                    if (tall[left] == 0 || (left > 0 && tall[left - 1] >= tall[left] && tall[left - 1] > 0)) {
                        continue;
                    }
                    int low = tall[left];
                    for (int right = left; right < cells && tall[right] > 0; right++) {
                        low = Math.min(low, tall[right]);
                        if (right + 1 == cells || tall[right + 1] < low) {
                            found.add(new Envelope(
                                    box.getMinX() + left * width,
                                    box.getMinX() + (right + 1) * width,
                                    box.getMinY() + (row + 1 - low) * height,
                                    box.getMinY() + (row + 1) * height));
                        }
                    }
                }
            }
            return found;
        }
    }
}
