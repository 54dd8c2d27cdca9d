package org.capwright.report;

import org.capwright.drawing.Canvas;
import org.capwright.drawing.Ink;
import org.capwright.drawing.Letters;
import org.capwright.drawing.Place;
import org.capwright.drawing.Stroke;
import org.capwright.geometry.Point;
import org.capwright.words.Language;
import org.capwright.words.Text;

/** What helps to put pages together: frame, glue lines, registration crosses, labels. All of it is pale, and drawn beneath the pattern. */
final class SheetFurniture {

    private static final double CROSS = 3.5;

    private final Canvas canvas;
    private final Tiling tiling;
    private final double width;
    private final double height;
    private final Language language;

    private SheetFurniture(Canvas canvas, Tiling tiling, Language language) {
        this.canvas = canvas;
        this.tiling = tiling;
        this.language = language;
        width = tiling.printedWidth();
        height = tiling.printedHeight();
    }

    /**
     * Draws what is the same on every page.
     *
     * @param canvas its origin is the upper left corner between the margins
     * @param words what the sheets belong to
     */
    static void drawShared(Canvas canvas, Tiling tiling, String words, Language language) {
        SheetFurniture furniture = new SheetFurniture(canvas, tiling, language);
        furniture.frame();
        furniture.crosses();
        furniture.name(words);
    }

    /**
     * Draws what is a page's own.
     *
     * @param canvas its origin is the upper left corner between the margins
     */
    static void draw(Canvas canvas, Tiling tiling, int row, int column, Language language) {
        SheetFurniture furniture = new SheetFurniture(canvas, tiling, language);
        furniture.glue(row, column);
        furniture.label(row, column);
    }

    private void frame() {
        canvas.stroke(Stroke.solid(Ink.SHEET, 0.15))
                .box(0, -height, width, height)
                .draw();
    }

    private void glue(int row, int column) {
        canvas.stroke(Stroke.dashed(Ink.SHEET, 0.2, 4.0, 2.0));
        Letters letters = Letters.regular(2.6, Ink.SHEET);
        double strip = Paper.OVERLAP;
        if (tiling.needs(row, column + 1)) {
            canvas.line(width - strip, 0, width - strip, -height);
            Point middle = new Point(width - strip / 2 - 0.9, -height * 0.25);
            canvas.written(letters, middle, new Point(0, -1), glued(row, column + 1));
        }
        if (tiling.needs(row + 1, column)) {
            canvas.line(0, -height + strip, width, -height + strip);
            String words = glued(row + 1, column);
            canvas.text(letters, Place.CENTRE, width * 0.25, -height + strip / 2 - 0.9, words);
        }
    }

    private String glued(int otherRow, int otherColumn) {
        return Text.of("glue {sheet} here")
                .with("sheet", Tiling.label(otherRow, otherColumn))
                .in(language);
    }

    /** Crosses in the middle of the strips in common: each is printed on every page that shares it. */
    private void crosses() {
        canvas.stroke(Stroke.solid(Ink.SHEET, 0.2));
        double in = Paper.OVERLAP / 2;
        for (double x : new double[] {in, width / 2, width - in}) {
            for (double y : new double[] {in, height / 2, height - in}) {
                if (x == in || x == width - in || y == in || y == height - in) {
                    canvas.line(x - CROSS, -y, x + CROSS, -y).line(x, -y - CROSS, x, -y + CROSS);
                    canvas.circle(new Point(x, -y), CROSS * 0.5).draw();
                }
            }
        }
    }

    private void name(String words) {
        canvas.text(
                Letters.regular(2.6, Ink.SHEET).within(words, width / 2 - Paper.OVERLAP - 3 - 2 * CROSS),
                Place.LEFT,
                Paper.OVERLAP + 3,
                -Paper.OVERLAP / 2 - 0.9,
                words);
    }

    private void label(int row, int column) {
        canvas.text(
                Letters.bold(8, Ink.SHEET),
                Place.LEFT,
                Paper.OVERLAP + 3,
                -Paper.OVERLAP - 8,
                Tiling.label(row, column));
    }
}
