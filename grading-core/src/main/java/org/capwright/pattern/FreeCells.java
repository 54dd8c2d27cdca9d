package org.capwright.pattern;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.capwright.geometry.Box;
import org.capwright.geometry.Point;

/**
 * A grid over a piece that knows which cells lie inside its net line and clear of every line drawn in it.
 *
 * <p>A cell is taken if a part of a line comes into it or within the clearance of it; of the rest those are free whose middle lies inside. A cell that no part of the net line enters
 * is wholly inside or wholly outside, so free cells are inside without doubt.
 */
final class FreeCells {

    private final int cells;
    private final double clearance;
    private final double left;
    private final double bottom;
    private final double width;
    private final double height;
    private final boolean[] taken;

    private FreeCells(List<Point> net, int cells, double clearance) {
        Box box = Box.of(net);
        this.cells = cells;
        this.clearance = clearance;
        this.left = box.left();
        this.bottom = box.bottom();
        this.width = box.width() / cells;
        this.height = box.height() / cells;
        this.taken = new boolean[cells * cells];
    }

    /**
     * Looks at a piece.
     *
     * @param net net line, first point not repeated
     * @param drawn open lines drawn inside
     * @param cells how many cells the grid has each way
     * @param clearance least distance of a free cell from every line along x and y, mm
     */
    static FreeCells of(List<Point> net, List<List<Point>> drawn, int cells, double clearance) {
        FreeCells free = new FreeCells(net, cells, clearance);
        free.takeOutside(net);
        Point last = net.get(net.size() - 1);
        for (Point point : net) {
            free.take(last, point);
            last = point;
        }
        for (List<Point> line : drawn) {
            for (int i = 1; i < line.size(); i++) {
                free.take(line.get(i - 1), line.get(i));
            }
        }
        return free;
    }

    private void takeOutside(List<Point> net) {
        double[] crossings = new double[16];
        for (int row = 0; row < cells; row++) {
            double y = bottom + (row + 0.5) * height;
            int count = 0;
            Point last = net.get(net.size() - 1);
            for (Point point : net) {
                if ((last.y() <= y) != (point.y() <= y)) {
                    if (count == crossings.length) {
                        crossings = Arrays.copyOf(crossings, 2 * count);
                    }
                    crossings[count++] = last.x() + (point.x() - last.x()) * (y - last.y()) / (point.y() - last.y());
                }
                last = point;
            }
            Arrays.sort(crossings, 0, count);
            int passed = 0;
            for (int column = 0; column < cells; column++) {
                double x = left + (column + 0.5) * width;
                while (passed < count && crossings[passed] < x) {
                    passed++;
                }
                taken[row * cells + column] = passed % 2 == 0;
            }
        }
    }

    private void take(Point from, Point to) {
        boolean up = from.y() <= to.y();
        Point low = up ? from : to;
        Point high = up ? to : from;
        int first = cell((low.y() - clearance - bottom) / height);
        int last = cell((high.y() + clearance - bottom) / height);
        for (int row = first; row <= last; row++) {
            double fromY = Math.min(high.y(), Math.max(low.y(), bottom + row * height - clearance));
            double toY = Math.max(low.y(), Math.min(high.y(), bottom + (row + 1) * height + clearance));
            double a = xAt(low, high, fromY, low.x());
            double b = xAt(low, high, toY, high.x());
            int start = cell((Math.min(a, b) - clearance - left) / width);
            int end = cell((Math.max(a, b) + clearance - left) / width);
            Arrays.fill(taken, row * cells + start, row * cells + end + 1, true);
        }
    }

    private static double xAt(Point low, Point high, double y, double level) {
        double rise = high.y() - low.y();
        return rise == 0 ? level : low.x() + (high.x() - low.x()) * (y - low.y()) / rise;
    }

    private int cell(double place) {
        return (int) Math.max(0, Math.min(cells - 1, Math.floor(place)));
    }

    /** All rectangles of free cells that cannot be made wider or taller upwards, row by row (the histogram method). */
    List<Box> rectangles() {
        List<Box> found = new ArrayList<>();
        int[] tall = new int[cells];
        for (int row = 0; row < cells; row++) {
            for (int column = 0; column < cells; column++) {
                tall[column] = taken[row * cells + column] ? 0 : tall[column] + 1;
            }
            for (int start = 0; start < cells; start++) {
                if (tall[start] > (start == 0 ? 0 : tall[start - 1])) {
                    addFrom(found, tall, row, start);
                }
            }
        }
        return found;
    }

    private void addFrom(List<Box> found, int[] tall, int row, int start) {
        int low = tall[start];
        int before = start == 0 ? 0 : tall[start - 1];
        for (int end = start; end < cells && tall[end] > before; end++) {
            low = Math.min(low, tall[end]);
            if (end + 1 == cells || tall[end + 1] < low) {
                found.add(new Box(
                        left + start * width,
                        bottom + (row + 1 - low) * height,
                        left + (end + 1) * width,
                        bottom + (row + 1) * height));
            }
        }
    }
}
