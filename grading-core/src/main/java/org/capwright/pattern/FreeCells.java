package org.capwright.pattern;

import java.util.Arrays;
import java.util.List;
import org.capwright.geometry.Box;
import org.capwright.geometry.Curve;
import org.capwright.geometry.Points;

/**
 * A grid over a piece that knows which cells lie inside its net line and clear of every line drawn in it.
 *
 * <p>A cell is taken if a part of a line comes into it or within the clearance of it; of the rest those are free whose middle lies inside. A cell that no part of the net line enters
 * is wholly inside or wholly outside, so free cells are inside without doubt.
 */
final class FreeCells {

    /** How many cells there are each way: those of a row fit into the bits of a number. */
    static final int CELLS = 48;

    private static final long ALL = (1L << CELLS) - 1;

    /** Far above the rounding of a place, mm. */
    private static final double ROUNDING = 1e-6;

    private final double clearance;
    private final double left;
    private final double bottom;
    private final double width;
    private final double height;

    /** How many cells a millimetre has, across and up. */
    private final double across;

    private final double up;

    /** Of each row the cells that are taken, the lowest bit for the first column. */
    private final long[] taken = new long[CELLS];

    /** Of each the first and last column and the lowest and highest row, in a byte each. */
    private int[] rectangles = new int[256];

    private int count;

    /** What a line may not leave without coming near to other cells than those it has taken last, mm; empty at first. */
    private double clearLeft;

    private double clearBottom;
    private double clearRight = Double.NEGATIVE_INFINITY;
    private double clearTop;

    private FreeCells(Box box, double clearance) {
        this.clearance = clearance;
        this.left = box.left();
        this.bottom = box.bottom();
        this.width = box.width() / CELLS;
        this.height = box.height() / CELLS;
        this.across = 1 / width;
        this.up = 1 / height;
    }

    /**
     * Looks at a piece.
     *
     * @param net net line
     * @param drawn open lines drawn inside
     * @param flattening how far chords may lie from those, mm
     * @param clearance least distance of a free cell from every line along x and y, mm
     */
    static FreeCells of(Ring net, List<Curve> drawn, double flattening, double clearance) {
        FreeCells free = new FreeCells(net.box(), clearance);
        free.takeOutside(net);
        for (int i = 0; i < net.points().size(); i++) {
            free.take(net.startX(i), net.startY(i), net.endX(i), net.endY(i));
        }
        for (Curve line : drawn) {
            if (line.isStraight()) {
                free.take(
                        line.start().x(),
                        line.start().y(),
                        line.end().x(),
                        line.end().y());
                continue;
            }
            Points points = line.flattened(flattening);
            for (int i = 1; i < points.size(); i++) {
                free.take(points.x(i - 1), points.y(i - 1), points.x(i), points.y(i));
            }
        }
        free.findRectangles();
        return free;
    }

    /** Takes the cells whose middle lies outside: to the right of an even number of crossings of the net line with the middle of their row. Each crossing turns over all cells to its right. */
    private void takeOutside(Ring net) {
        Arrays.fill(taken, ALL);
        int above = rowsBelow(net.startY(0));
        for (int i = 0; i < net.points().size(); i++) {
            double y = net.endY(i);
            if (above < CELLS && middle(above) < y || above > 0 && y <= middle(above - 1)) {
                int next = rowsBelow(y);
                double lastX = net.startX(i);
                double lastY = net.startY(i);
                for (int row = Math.min(above, next); row < Math.max(above, next); row++) {
                    double at = lastX + (net.endX(i) - lastX) * (middle(row) - lastY) / (y - lastY);
                    taken[row] ^= ALL << columnsUpTo(at);
                }
                above = next;
            }
        }
        for (int row = 0; row < CELLS; row++) {
            taken[row] &= ALL;
        }
    }

    /** How many columns have their middle at a place or before it. */
    private int columnsUpTo(double x) {
        int columns = (int) Math.max(0, Math.min(CELLS, (x - left) * across + 0.5));
        while (columns > 0 && left + (columns - 0.5) * width > x) {
            columns--;
        }
        while (columns < CELLS && left + (columns + 0.5) * width <= x) {
            columns++;
        }
        return columns;
    }

    private double middle(int row) {
        return bottom + (row + 0.5) * height;
    }

    /** How many rows have their middle below a height. */
    private int rowsBelow(double y) {
        int rows = (int) Math.max(0, Math.min(CELLS, (y - bottom) * up + 0.5));
        while (rows > 0 && middle(rows - 1) >= y) {
            rows--;
        }
        while (rows < CELLS && middle(rows) < y) {
            rows++;
        }
        return rows;
    }

    /** Takes the cells near a straight line, row by row. Most lines are chords of a curve, far shorter than a cell: where one stays as clear of other cells as the one before, nothing is new. */
    private void take(double fromX, double fromY, double toX, double toY) {
        if (isClear(fromX, fromY) && isClear(toX, toY)) {
            return;
        }
        boolean rises = fromY <= toY;
        double lowX = rises ? fromX : toX;
        double low = rises ? fromY : toY;
        double highX = rises ? toX : fromX;
        double high = rises ? toY : fromY;
        int first = cell((low - clearance - bottom) * up);
        int last = cell((high + clearance - bottom) * up);
        if (fromX == toX) {
            long columns =
                    columns(cell((fromX - clearance - left) * across), cell((fromX + clearance - left) * across));
            for (int row = first; row <= last; row++) {
                taken[row] |= columns;
            }
            return;
        }
        double lean = low == high ? 0 : (highX - lowX) / (high - low);
        for (int row = first; row <= last; row++) {
            double enters = Math.min(high, Math.max(low, bottom + row * height - clearance));
            double leaves = Math.max(low, Math.min(high, bottom + (row + 1) * height + clearance));
            double a = lowX + lean * (enters - low);
            double b = low == high ? highX : lowX + lean * (leaves - low);
            int start = cell((Math.min(a, b) - clearance - left) * across);
            int end = cell((Math.max(a, b) + clearance - left) * across);
            taken[row] |= columns(start, end);
            if (first == last) {
                clearLeft = left + start * width + clearance + ROUNDING;
                clearRight = left + (end + 1) * width - clearance - ROUNDING;
                clearBottom = bottom + row * height + clearance + ROUNDING;
                clearTop = bottom + (row + 1) * height - clearance - ROUNDING;
            }
        }
    }

    /** The bits of neighbouring columns. */
    private static long columns(int first, int last) {
        return ALL >>> CELLS - 1 - last & ALL << first;
    }

    private boolean isClear(double x, double y) {
        return x > clearLeft && x < clearRight && y > clearBottom && y < clearTop;
    }

    private int cell(double place) {
        return Math.max(0, Math.min(CELLS - 1, (int) place));
    }

    /** Looks for all rectangles of free cells that cannot be made wider or taller upwards, row by row (the histogram method). */
    private void findRectangles() {
        int[] tall = new int[CELLS];
        int[] lower = new int[CELLS]; // the next column to the right that is less tall
        for (int row = 0; row < CELLS; row++) {
            long open = ~taken[row] & ALL;
            int first = Math.min(CELLS, Long.numberOfTrailingZeros(open));
            int end = Long.SIZE - Long.numberOfLeadingZeros(open);
            Arrays.fill(tall, 0, first, 0);
            Arrays.fill(tall, end, CELLS, 0);
            for (int column = end - 1; column >= first; column--) {
                tall[column] = (open >>> column & 1) == 0 ? 0 : tall[column] + 1;
                int next = column + 1;
                while (next < end && tall[next] >= tall[column]) {
                    next = lower[next];
                }
                lower[column] = next;
            }
            int before = 0;
            for (int start = first; start < end; start++) {
                for (int column = start; column < end && tall[column] > before; column = lower[column]) {
                    add(start, lower[column] - 1, row - tall[column] + 1, row);
                }
                before = tall[start];
            }
        }
    }

    private void add(int first, int last, int lowest, int highest) {
        if (count == rectangles.length) {
            rectangles = Arrays.copyOf(rectangles, 2 * count);
        }
        rectangles[count++] = first | last << 8 | lowest << 16 | highest << 24;
    }

    /** How many rectangles of free cells there are that cannot be made wider or taller upwards. */
    int count() {
        return count;
    }

    /** The width of such a rectangle, mm. */
    double widthOf(int rectangle) {
        return rightOf(rectangle) - leftOf(rectangle);
    }

    /** The height of such a rectangle, mm. */
    double heightOf(int rectangle) {
        return topOf(rectangle) - bottomOf(rectangle);
    }

    /** Such a rectangle. */
    Box box(int rectangle) {
        return new Box(leftOf(rectangle), bottomOf(rectangle), rightOf(rectangle), topOf(rectangle));
    }

    private double leftOf(int rectangle) {
        return left + (rectangles[rectangle] & 0xff) * width;
    }

    private double rightOf(int rectangle) {
        return left + ((rectangles[rectangle] >> 8 & 0xff) + 1) * width;
    }

    private double bottomOf(int rectangle) {
        return bottom + (rectangles[rectangle] >> 16 & 0xff) * height;
    }

    private double topOf(int rectangle) {
        return bottom + ((rectangles[rectangle] >> 24) + 1) * height;
    }
}
