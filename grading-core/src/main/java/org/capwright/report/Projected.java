package org.capwright.report;

import java.util.List;
import org.capwright.drawing.Appearance;
import org.capwright.drawing.Canvas;
import org.capwright.drawing.Ink;
import org.capwright.drawing.Letters;
import org.capwright.drawing.Place;
import org.capwright.drawing.Stroke;
import org.capwright.drawing.pdf.PdfCanvas;
import org.capwright.drawing.pdf.PdfFile;
import org.capwright.geometry.Point;
import org.capwright.measure.SleeveSubject.Option;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Violation;
import org.capwright.words.Language;

/** The page for a projector: every piece on one page over a grid, with a length each way to set the projector by. Its sides are whole parts of the grid. */
final class Projected {

    /** Distance of the lines of the grid, mm. */
    static final double GRID = 100;

    /** What is measured on the table, each way, mm. */
    static final double CHECK = 500;

    /** Left free above and at the left of the pieces for the lengths and the words, mm. */
    private static final double HEAD = GRID;

    private static final Stroke GRID_LINE = Stroke.solid(Ink.SHEET, 0);
    private static final Stroke CHECK_LINE = Stroke.solid(Ink.BLACK, 0.5);

    /** The widest table whose page, its sides whole parts of the grid, is no larger than a PDF page can be, mm. */
    private static final double GREATEST_TABLE = Math.floor(Paper.GREATEST / GRID) * GRID - HEAD;

    private static final double TICK = 15;
    private static final double WORDS = 14;

    private final Sheet sheet;
    private final double width;
    private final double height;

    private Projected(Sheet sheet) {
        this.sheet = sheet;
        this.width = whole(HEAD + sheet.width());
        this.height = whole(HEAD + sheet.height());
    }

    private static double whole(double length) {
        return Math.max(CHECK + 2 * HEAD, Math.ceil(length / GRID) * GRID);
    }

    static Projected of(List<Block> blocks, Paper.Projection projection) {
        double widest = 2 * Sheet.RIM;
        for (Block block : blocks) {
            widest = Math.max(widest, block.bounds().width() + 2 * Sheet.RIM);
        }
        double least = Math.ceil(widest);
        if (!(projection.width() >= least && projection.width() <= GREATEST_TABLE)) {
            throw refused(
                    "the table must take the widest piece, and be no wider than a PDF page can be",
                    projection,
                    narrowest(blocks, least));
        }
        Projected projected = laid(blocks, projection.width());
        if (projected.tooLong()) {
            throw refused(
                    "the pieces would reach beyond the longest PDF page; give more width, or fewer sizes",
                    projection,
                    narrowest(blocks, least));
        }
        return projected;
    }

    private static Projected laid(List<Block> blocks, double width) {
        return new Projected(Sheet.laid(blocks, width, 0, Point.ORIGIN));
    }

    private boolean tooLong() {
        return height > Paper.GREATEST;
    }

    /** The least width from which on the page is short enough, sought in steps of the grid from the widest table down. */
    private static double narrowest(List<Block> blocks, double least) {
        double width = GREATEST_TABLE;
        while (width > least && !laid(blocks, Math.max(least, width - GRID)).tooLong()) {
            width = Math.max(least, width - GRID);
        }
        return width;
    }

    private static InvalidMeasuresException refused(String why, Paper.Projection projection, double least) {
        return new InvalidMeasuresException(
                Violation.lengthOutside(Option.PAPER_WIDTH, why, projection.width(), least, GREATEST_TABLE));
    }

    PdfFile.Page page(PdfFile file, Paper.Ground ground, String words, Language language) {
        Appearance appearance = ground == Paper.Ground.DARK ? Appearance.DARK_GROUND : Appearance.LIGHT_GROUND;
        PdfCanvas canvas = file.canvas(appearance);
        canvas.ink(Ink.WHITE).box(0, -height, width, height).fill();
        grid(canvas);
        lengths(canvas, language);
        Letters name = Letters.bold(WORDS, Ink.BLACK).within(words, width - HEAD - WORDS);
        canvas.text(name, Place.LEFT, HEAD, -HEAD / 2 - TICK - WORDS, words);
        DrawnWords drawn = new DrawnWords(language);
        for (Sheet.Placed placed : sheet.placed()) {
            canvas.save().move(HEAD + placed.at().x(), -HEAD + placed.at().y());
            PieceDrawing.draw(canvas, placed.block(), drawn);
            canvas.restore();
        }
        return new PdfFile.Page(width, height, 0, canvas);
    }

    private void grid(Canvas canvas) {
        canvas.stroke(GRID_LINE);
        for (double x = GRID; x < width; x += GRID) {
            canvas.line(x, 0, x, -height);
        }
        for (double y = GRID; y < height; y += GRID) {
            canvas.line(0, -y, width, -y);
        }
    }

    /** Both ways, for a projector may stretch one of them. */
    private static void lengths(Canvas canvas, Language language) {
        canvas.stroke(CHECK_LINE);
        double at = -HEAD / 2;
        canvas.from(HEAD, at).to(HEAD + CHECK, at).draw();
        canvas.from(-at, -HEAD).to(-at, -HEAD - CHECK).draw();
        for (double end : new double[] {HEAD, HEAD + CHECK}) {
            canvas.line(end, at - TICK, end, at + TICK);
            canvas.line(-at - TICK, -end, -at + TICK, -end);
        }
        String words = language.say("50 cm on the table, both ways; if not, adjust the projector");
        Letters letters = Letters.bold(WORDS, Ink.BLACK);
        canvas.text(letters, Place.CENTRE, HEAD + CHECK / 2, at + WORDS, words);
        canvas.written(letters, new Point(-at - WORDS / 2, -HEAD - CHECK / 2), new Point(0, 1), "50 cm");
    }
}
