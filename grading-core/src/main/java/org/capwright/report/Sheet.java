package org.capwright.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.capwright.geometry.Box;
import org.capwright.geometry.Point;

/**
 * Where the blocks lie on the whole paper before it is cut into pages. Its origin is the top left corner, so that y is 0 or below.
 *
 * @param placed the blocks with their places
 * @param width width in use, mm
 * @param height height in use, mm
 */
record Sheet(List<Placed> placed, double width, double height) {

    /** Free between neighbouring blocks, mm. */
    static final double GAP = 10;

    /** Free at the rim of the sheet, so that no line lies half outside, mm. */
    static final double RIM = 2;

    /**
     * A block and its place.
     *
     * @param block the block
     * @param at from the coordinates of the block to those of the sheet
     */
    record Placed(Block block, Point at) {
        Box bounds() {
            return block.bounds().moved(at);
        }
    }

    /**
     * Lays blocks side by side on shelves, the highest first, each on the first shelf with room for it (first fit by decreasing height: Coffman, Garey, Johnson
     * and Tarjan, Performance bounds for level-oriented two-dimensional packing algorithms, SIAM J. Comput. 9, 1980).
     *
     * @param width width of the paper, at least that of the widest block and its rim
     * @param head height left free at the top
     * @param grid blocks begin at multiples of its two sides, so that they meet fewer pages; 0 for anywhere
     */
    static Sheet laid(List<Block> blocks, double width, double head, Point grid) {
        List<Block> order = new ArrayList<>(blocks);
        // To the micrometre: equal ones keep their order, whatever their last digits.
        order.sort(Comparator.comparingDouble(
                block -> -Math.rint(1000 * block.bounds().height())));
        List<Shelf> shelves = new ArrayList<>();
        List<Placed> placed = new ArrayList<>(blocks.size());
        double down = head;
        double right = 0;
        for (Block block : order) {
            Box bounds = block.bounds();
            Shelf shelf = null;
            for (Shelf open : shelves) {
                if (shelf == null && next(open.right, grid.x()) + bounds.width() + 2 * RIM <= width + 1e-9) {
                    shelf = open;
                }
            }
            if (shelf == null) {
                shelf = new Shelf(next(down, grid.y()));
                shelves.add(shelf);
                down = shelf.top + bounds.height() + GAP;
            }
            double x = next(shelf.right, grid.x()) + RIM;
            placed.add(new Placed(block, new Point(x - bounds.left(), -shelf.top - RIM - bounds.top())));
            shelf.right = x - RIM + bounds.width() + GAP;
            right = Math.max(right, x + bounds.width() + RIM);
        }
        return new Sheet(List.copyOf(placed), right, down - GAP + 2 * RIM);
    }

    /** Where the blocks lie. */
    List<Point> places() {
        return placed.stream().map(Placed::at).toList();
    }

    private static double next(double from, double grid) {
        return grid == 0 ? from : Math.ceil(from / grid - 1e-9) * grid;
    }

    private static final class Shelf {
        final double top;
        double right;

        Shelf(double top) {
            this.top = top;
        }
    }
}
