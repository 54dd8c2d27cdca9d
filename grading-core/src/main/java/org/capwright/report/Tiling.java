package org.capwright.report;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.capwright.geometry.Box;
import org.capwright.geometry.Point;
import org.capwright.measure.SleeveSubject.Option;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Violation;

/**
 * A sheet cut into pages. Rows run from the top (A, B, ...), columns from the left (1, 2, ...). Neighbouring pages share a strip; the strip along its left and
 * upper edge belongs to a page itself, so that every place of the sheet belongs to just one page.
 *
 * @param sheet what is on it
 * @param pageWidth width of a page with its margins, mm
 * @param pageHeight height of a page with its margins, mm
 * @param columns pages side by side
 * @param rows pages one below another
 * @param needed which pages have something on them, row by row
 */
record Tiling(Sheet sheet, double pageWidth, double pageHeight, int columns, int rows, boolean[] needed) {

    /** What lies nearer to the border of a page is looked at more closely, mm. */
    private static final double EDGE = 1e-6;

    private static final Point ANYWHERE = Point.ORIGIN;

    /** The width that pages of a given width share out: each printed area less the strip in common. */
    private static double step(double page) {
        return page - 2 * Paper.MARGIN - Paper.OVERLAP;
    }

    double stepX() {
        return step(pageWidth);
    }

    double stepY() {
        return step(pageHeight);
    }

    double printedWidth() {
        return pageWidth - 2 * Paper.MARGIN;
    }

    double printedHeight() {
        return pageHeight - 2 * Paper.MARGIN;
    }

    boolean single() {
        return columns == 1 && rows == 1;
    }

    boolean needs(int row, int column) {
        return row >= 0 && row < rows && column >= 0 && column < columns && needed[row * columns + column];
    }

    int count() {
        int count = 0;
        for (boolean tile : needed) {
            count += tile ? 1 : 0;
        }
        return count;
    }

    /** The part of the sheet that a page shows. */
    Box printed(int row, int column) {
        double left = column * stepX();
        double top = -row * stepY();
        return new Box(left, top - printedHeight(), left + printedWidth(), top);
    }

    /** What stands on a page, for example {@code B3}. */
    static String label(int row, int column) {
        StringBuilder letters = new StringBuilder();
        for (int r = row; r >= 0; r = r / 26 - 1) {
            letters.insert(0, (char) ('A' + r % 26));
        }
        return letters.append(column + 1).toString();
    }

    /** Cuts a sheet into pages of a given size. */
    static Tiling of(Sheet sheet, double pageWidth, double pageHeight) {
        Tiling tiling = empty(sheet, pageWidth, pageHeight);
        tiling.markBelow(Integer.MAX_VALUE);
        return tiling;
    }

    private static Tiling empty(Sheet sheet, double pageWidth, double pageHeight) {
        int columns = along(sheet.width(), step(pageWidth));
        int rows = along(sheet.height(), step(pageHeight));
        return new Tiling(sheet, pageWidth, pageHeight, columns, rows, new boolean[rows * columns]);
    }

    /** Marks the pages that have something on them; gives up as soon as these are as many as asked. The largest sizes come first, which meet most pages. */
    private boolean markBelow(int most) {
        int sizes = 0;
        for (Sheet.Placed placed : sheet.placed()) {
            sizes = Math.max(sizes, placed.block().contours().all().size());
        }
        for (int smaller = 1; smaller <= sizes; smaller++) {
            for (Sheet.Placed placed : sheet.placed()) {
                List<Contours.Contour> contours = placed.block().contours().all();
                if (contours.size() >= smaller) {
                    mark(contours.get(contours.size() - smaller), placed.at(), placed.bounds());
                }
            }
            if (count() >= most) {
                return false;
            }
        }
        return true;
    }

    private static int along(double length, double step) {
        return Math.max(1, (int) Math.ceil((length - Paper.OVERLAP) / step - 1e-9));
    }

    private void mark(Contours.Contour contour, Point at, Box bounds) {
        double[] outline = contour.line();
        double[] stretches = contour.boxes();
        int last = outline.length - 2;
        double stepX = stepX();
        double stepY = stepY();
        int columnBefore = column(outline[last] + at.x());
        int rowBefore = row(outline[last + 1] + at.y());
        for (int i = 0; i <= last; i += 2) {
            double left = columnBefore * stepX - at.x();
            double top = -rowBefore * stepY - at.y();
            int stretch = i / (2 * Contours.STRETCH) * 4;
            if (i > 0
                    && i % (2 * Contours.STRETCH) == 0
                    && stretch < stretches.length
                    && stretches[stretch] > left + EDGE
                    && stretches[stretch + 2] < left + stepX - EDGE
                    && stretches[stretch + 3] < top - EDGE
                    && stretches[stretch + 1] > top - stepY + EDGE) {
                needed[rowBefore * columns + columnBefore] = true; // all of it is still on the same page
                i += 2 * Contours.STRETCH - 2;
                continue;
            }
            double right = outline[i] + at.x() - columnBefore * stepX;
            double down = -rowBefore * stepY - outline[i + 1] - at.y();
            if (i > 0 && right > EDGE && right < stepX - EDGE && down > EDGE && down < stepY - EDGE) {
                needed[rowBefore * columns + columnBefore] = true; // still on the same page
                continue;
            }
            int column = column(outline[i] + at.x());
            int row = row(outline[i + 1] + at.y());
            if (column == columnBefore || row == rowBefore) {
                for (int r = Math.min(row, rowBefore); r <= Math.max(row, rowBefore); r++) {
                    for (int c = Math.min(column, columnBefore); c <= Math.max(column, columnBefore); c++) {
                        needed[r * columns + c] = true;
                    }
                }
            } else {
                int j = i == 0 ? last : i - 2;
                crossing(outline[j] + at.x(), outline[j + 1] + at.y(), outline[i] + at.x(), outline[i + 1] + at.y());
            }
            columnBefore = column;
            rowBefore = row;
        }
        // Pages wholly inside a piece: they meet no line, but their middle lies within.
        for (int r = row(bounds.top()); r <= row(bounds.bottom()); r++) {
            for (int c = column(bounds.left()); c <= column(bounds.right()); c++) {
                if (!needed[r * columns + c]) {
                    needed[r * columns + c] =
                            inside(contour, (c + 0.5) * stepX() - at.x(), -(r + 0.5) * stepY() - at.y());
                }
            }
        }
    }

    /** Marks the pages that a slanted line runs over: between neighbouring row borders it has a stretch in each row. */
    private void crossing(double x1, double y1, double x2, double y2) {
        int from = Math.min(row(y1), row(y2));
        int to = Math.max(row(y1), row(y2));
        for (int r = from; r <= to; r++) {
            double upper = Math.min(Math.max(y1, y2), r == 0 ? Double.POSITIVE_INFINITY : -r * stepY());
            double lower = Math.max(Math.min(y1, y2), r == rows - 1 ? Double.NEGATIVE_INFINITY : -(r + 1) * stepY());
            int a = column(x1 + (x2 - x1) * (upper - y1) / (y2 - y1));
            int b = column(x1 + (x2 - x1) * (lower - y1) / (y2 - y1));
            for (int c = Math.min(a, b); c <= Math.max(a, b); c++) {
                needed[r * columns + c] = true;
            }
        }
    }

    private int column(double x) {
        return Math.max(0, Math.min(columns - 1, (int) Math.floor(x / stepX())));
    }

    private int row(double y) {
        return Math.max(0, Math.min(rows - 1, (int) Math.floor(-y / stepY())));
    }

    /** Whether a point lies inside an outline: a ray to the right meets it an odd number of times. Stretches that lie all above it or all below do not meet the ray. */
    private static boolean inside(Contours.Contour contour, double x, double y) {
        double[] outline = contour.line();
        double[] stretches = contour.boxes();
        boolean inside = false;
        for (int i = 0, j = outline.length - 2; i < outline.length; j = i, i += 2) {
            double yi = outline[i + 1];
            double yj = outline[j + 1];
            if (yi > y != yj > y && x < outline[i] + (outline[j] - outline[i]) * (y - yi) / (yj - yi)) {
                inside = !inside;
            }
            int stretch = i / (2 * Contours.STRETCH) * 4;
            if (i % (2 * Contours.STRETCH) == 0
                    && stretch < stretches.length
                    && (stretches[stretch + 1] > y || stretches[stretch + 3] <= y)) {
                i += 2 * Contours.STRETCH - 2;
            }
        }
        return inside;
    }

    /** Tries both ways of laying the sheets and every number of them side by side; of equals the first is kept: upright, and the narrowest. */
    static Tiling fewest(List<Block> blocks, Paper.Sheets paper) {
        double widest = 0;
        double together = -Sheet.GAP;
        for (Block block : blocks) {
            widest = Math.max(widest, block.bounds().width());
            together += block.bounds().width() + Sheet.GAP;
        }
        Tiling best = null;
        for (boolean upright : new boolean[] {true, false}) {
            double pageWidth = upright ? paper.width() : paper.height();
            double pageHeight = upright ? paper.height() : paper.width();
            Point grid = new Point(step(pageWidth), step(pageHeight));
            int most = along(together + 2 * Sheet.RIM, grid.x()) + blocks.size();
            Set<List<Point>> tried = new HashSet<>();
            for (int columns = along(widest + 2 * Sheet.RIM, grid.x()); columns <= most; columns++) {
                double width = columns * grid.x() + Paper.OVERLAP;
                for (Point snap : List.of(ANYWHERE, new Point(0, grid.y()), new Point(grid.x(), 0), grid)) {
                    Sheet sheet = Sheet.laid(blocks, width, 0, snap);
                    if (!tried.add(sheet.places())) {
                        continue; // nothing lies elsewhere than on a narrower one
                    }
                    Tiling tiling = empty(sheet, pageWidth, pageHeight);
                    if (tiling.markBelow(best == null ? Integer.MAX_VALUE : best.count())) {
                        best = tiling;
                    }
                }
            }
        }
        if (best == null) {
            throw new IllegalArgumentException("a pattern without pieces cannot be printed");
        }
        return best;
    }

    /** Lays the blocks on a roll; one page if it may be that long, else pages of equal length. */
    static Tiling roll(List<Block> blocks, Paper.Roll roll, double head, double least) {
        double widest = least;
        for (Block block : blocks) {
            widest = Math.max(widest, block.bounds().width() + 2 * Sheet.RIM);
        }
        double minimum = Math.ceil((widest + 2 * Paper.MARGIN) * 10) / 10;
        if (!(roll.width() >= minimum && roll.width() <= Paper.GREATEST)) {
            throw new InvalidMeasuresException(Violation.lengthOutside(
                    Option.PAPER_WIDTH,
                    "the roll must take the widest piece and a margin on both sides, and be no wider than a PDF page"
                            + " can be",
                    roll.width(),
                    minimum,
                    Paper.GREATEST));
        }
        double usable = roll.width() - 2 * Paper.MARGIN;
        Sheet sheet = Sheet.laid(blocks, usable, head, ANYWHERE);
        double whole = Math.ceil(sheet.height()) + 2 * Paper.MARGIN;
        double page = whole;
        for (int pages = 2; page > Paper.GREATEST; pages++) {
            page = Math.ceil((Math.ceil(sheet.height()) - Paper.OVERLAP) / pages) + Paper.OVERLAP + 2 * Paper.MARGIN;
        }
        return of(new Sheet(sheet.placed(), usable, Math.max(sheet.height(), head)), roll.width(), page);
    }
}
