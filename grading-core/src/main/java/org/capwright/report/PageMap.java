package org.capwright.report;

import java.util.List;
import org.capwright.drawing.Canvas;
import org.capwright.drawing.Ink;
import org.capwright.drawing.Letters;
import org.capwright.drawing.Place;
import org.capwright.drawing.Stroke;
import org.capwright.geometry.Box;
import org.capwright.geometry.Point;
import org.capwright.quantity.Decimals;
import org.capwright.words.Language;
import org.capwright.words.Text;

/** The whole sheet drawn small: pages with their labels, and the pieces on them. */
final class PageMap {

    private static final double GREATEST_HEIGHT = 125;

    /** Steps of a millimetre. */
    private static final double GRID = 10;

    private final Tiling tiling;
    private final boolean roll;

    PageMap(Tiling tiling, boolean roll) {
        this.tiling = tiling;
        this.roll = roll;
    }

    String heading(Language language) {
        if (tiling.single()) {
            return language.say(roll ? "Where the pieces lie" : "Page map: 1 sheet");
        }
        String last = Tiling.label(tiling.rows() - 1, 0).replaceAll("\\d", "");
        return Text.of("Page map: {sheets} sheets, {rows} rows ({letters}) of up to {columns}")
                .with("sheets", tiling.count())
                .with("rows", tiling.rows())
                .with("letters", tiling.rows() > 1 ? "A – " + last : "A")
                .with("columns", tiling.columns())
                .in(language);
    }

    /** On a roll its height does not depend on what is on it, because the cover pages themselves lie on the roll. */
    Band band(Language language, double width) {
        Box all = tiling.printed(0, 0).including(tiling.printed(tiling.rows() - 1, tiling.columns() - 1));
        double greatest = roll ? 90 : GREATEST_HEIGHT;
        double scale = Math.min(width / all.width(), greatest / all.height());
        double height = roll ? greatest : all.height() * scale;
        return Band.of(height + 8, (canvas, left, top) -> {
            canvas.save().transform(scale, 0, 0, scale, left, top - 1);
            pages(canvas, scale);
            for (Sheet.Placed placed : tiling.sheet().placed()) {
                piece(canvas, placed, language, scale);
            }
            canvas.restore();
            if (!tiling.single()) {
                String words =
                        language.say("Sheets that would be empty are left out. Cut each sheet along its upper and"
                                + " left frame where another joins it, and glue it onto the strip of its neighbour.");
                canvas.text(
                        Letters.regular(2.6, Ink.QUIET).within(words, width),
                        Place.LEFT,
                        left,
                        top - height - 5,
                        words);
            }
        });
    }

    private void pages(Canvas canvas, double scale) {
        double line = 0.15 / scale;
        for (int row = 0; row < tiling.rows(); row++) {
            for (int column = 0; column < tiling.columns(); column++) {
                Box page = tiling.printed(row, column);
                boolean lastColumn = column == tiling.columns() - 1;
                boolean lastRow = row == tiling.rows() - 1;
                double width = lastColumn ? page.width() : tiling.stepX();
                double height = lastRow ? page.height() : tiling.stepY();
                if (tiling.needs(row, column)) {
                    canvas.ink(Ink.TINT)
                            .stroke(Stroke.solid(Ink.SHEET, line))
                            .box(page.left(), page.top() - height, width, height)
                            .fillAndDraw();
                    if (!tiling.single()) {
                        double size = Math.min(3.4 / scale, height * 0.3);
                        canvas.text(
                                Letters.bold(size, Ink.SHEET),
                                Place.LEFT,
                                page.left() + size * 0.4,
                                page.top() - size * 1.15,
                                Tiling.label(row, column));
                    }
                } else {
                    canvas.stroke(Stroke.dashed(Ink.RULE, line, 0.8 / scale, 0.8 / scale))
                            .box(page.left(), page.top() - height, width, height)
                            .draw();
                }
            }
        }
    }

    private static void piece(Canvas canvas, Sheet.Placed placed, Language language, double scale) {
        Block block = placed.block();
        canvas.save().move(placed.at().x(), placed.at().y());
        for (int i = 0; i < block.layers().size(); i++) {
            canvas.stroke(
                    Stroke.solid(i == block.lead() ? Ink.TEXT : Ink.QUIET, (i == block.lead() ? 0.22 : 0.08) / scale));
            coarse(canvas, block.contours().all().get(i).line(), 0.4 / scale);
            canvas.draw();
        }
        double size = 2.3 / scale;
        Letters letters = Letters.bold(size, Ink.TEXT);
        Point at = block.layers()
                .get(0)
                .piece()
                .label()
                .topLeft()
                .plus(block.layers().get(0).shift());
        double room = block.layers().get(0).piece().label().width();
        for (String word : block.words(language).split(" ")) {
            room = Math.max(room, letters.width(word) * 1.001);
        }
        List<String> words = Wrapped.lines(block.words(language), letters, room);
        for (int i = 0; i < words.size(); i++) {
            canvas.text(letters, Place.LEFT, at.x(), at.y() - size * (0.75 + 1.2 * i), words.get(i));
        }
        canvas.restore();
    }

    /** The outline without points nearer to one another than can be seen, and to a tenth of a millimetre of the piece, which cannot be seen either. */
    private static void coarse(Canvas canvas, double[] outline, double least) {
        double x = outline[0];
        double y = outline[1];
        canvas.from(Decimals.clean(x, GRID), Decimals.clean(y, GRID));
        for (int i = 2; i < outline.length; i += 2) {
            if (Math.hypot(outline[i] - x, outline[i + 1] - y) >= least) {
                x = outline[i];
                y = outline[i + 1];
                canvas.to(Decimals.clean(x, GRID), Decimals.clean(y, GRID));
            }
        }
        canvas.close();
    }
}
