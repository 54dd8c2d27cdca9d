package org.capwright.drawing.pdf;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.capwright.pattern.PatternSet;
import org.capwright.pattern.Piece;

/** What stands on the cover: title, test squares, picture, tables, sewing order, map of the sheets. */
final class Cover {

    private static final double HEADING = 4.2;
    private static final double BODY = 2.9;
    private static final double LEADING = 4.3;

    private final PatternSet set;
    private final PdfOptions options;
    private final List<Block> blocks;
    private final double width;

    Cover(PatternSet set, PdfOptions options, List<Block> blocks, double width) {
        this.set = set;
        this.options = options;
        this.blocks = blocks;
        this.width = width;
    }

    List<Band> bands(Optional<PageMap> map) {
        List<Band> bands = new ArrayList<>();
        title(bands);
        squares(bands);
        cuttingList(bands);
        options.materials()
                .ifPresent(needs -> bands.addAll(MaterialSheet.bands(
                        needs, set.run().baseSize().label(), set.title().unit(), width)));
        bands.addAll(SpecSheet.bands(
                set, width, heading("Spec table, " + set.title().unit().symbol())));
        numbered(bands, "Sewing order", options.sewingOrder());
        bulleted(bands, "Cautions", options.cautions());
        bands.add(heading("Lines and marks").keptWithNext());
        bands.add(Legend.band(blocks, width));
        map.ifPresent(drawn -> {
            bands.add(heading(drawn.heading()).keptWithNext());
            bands.add(drawn.band(width));
        });
        return bands;
    }

    static Band heading(String words) {
        return Band.of(
                9,
                (canvas, left, top) ->
                        canvas.ink(Ink.ACCENT).text(Typeface.BOLD, HEADING, Canvas.Place.LEFT, left, top - 5.4, words));
    }

    private void title(List<Band> bands) {
        PatternSet.Title title = set.title();
        String sizes = SizeNames.sizes(blocks.get(0).layers().stream()
                .map(layer -> layer.piece().size())
                .toList());
        String line = "Revision " + title.revision() + "   ·   "
                + (blocks.get(0).nested() ? "sizes " : "size ") + sizes + "   ·   base size "
                + set.run().baseSize().label() + "   ·   figures in "
                + title.unit().symbol();
        List<String> style = Wrapped.lines(title.style(), Typeface.BOLD, 8, width);
        bands.add(Band.of(9 * style.size() + 10, (canvas, left, top) -> {
            canvas.ink(Ink.TEXT);
            for (int i = 0; i < style.size(); i++) {
                canvas.text(Typeface.BOLD, 8, Canvas.Place.LEFT, left, top - 6.4 - 9 * i, style.get(i));
            }
            double y = top - 9 * style.size() - 3;
            canvas.ink(Ink.QUIET)
                    .text(
                            Typeface.REGULAR,
                            Typeface.REGULAR.sizeWithin(line, 3.6, width),
                            Canvas.Place.LEFT,
                            left,
                            y,
                            line);
            canvas.stroke(Stroke.solid(Ink.ACCENT, 0.6)).line(left, y - 2.6, left + width, y - 2.6);
        }));
        Script script = Script.of(title.style(), Typeface.BOLD);
        if (java.util.stream.IntStream.of(script.shown()).anyMatch(c -> c == Typeface.REPLACEMENT)) {
            paragraph(
                    bands,
                    "The embedded font has no sign for some characters of the style name; they are shown as "
                            + Character.toString(Typeface.REPLACEMENT)
                            + ". The properties of this document give the name in full.");
        }
    }

    private void squares(List<Band> bands) {
        double pictureWidth = width - 118;
        boolean beside = pictureWidth >= 60;
        SleevePicture picture = new SleevePicture(set, beside ? pictureWidth : width, 60);
        bands.add(Band.of(70, (canvas, left, top) -> {
            square(canvas, left + 1, top - 4, 50, "50 mm");
            square(canvas, left + 57, top - 4, 50.8, "2 in");
            canvas.ink(Ink.TEXT)
                    .text(
                            Typeface.BOLD,
                            3,
                            Canvas.Place.LEFT,
                            left + 1,
                            top - 60.5,
                            "Measure before cutting: the squares must be exact.");
            canvas.ink(Ink.QUIET)
                    .text(
                            Typeface.REGULAR,
                            2.7,
                            Canvas.Place.LEFT,
                            left + 1,
                            top - 64.5,
                            "Print at 100 %, without “fit to page”.");
            if (beside) {
                picture.draw(canvas, left + 118, top - 2);
            }
        }));
        if (!beside) {
            bands.add(Band.of(66, (canvas, left, top) -> picture.draw(canvas, left, top - 2)));
        }
    }

    /** Drawn so that the middles of the lines are the given length apart. */
    private static void square(Canvas canvas, double left, double top, double side, String words) {
        canvas.stroke(Stroke.solid(Ink.BLACK, 0.25)).square();
        canvas.box(left, top - side, side, side).draw();
        canvas.ink(Ink.TEXT)
                .text(Typeface.BOLD, 5, Canvas.Place.CENTRE, left + side / 2, top - side / 2 - 0.5, words)
                .ink(Ink.QUIET)
                .text(
                        Typeface.REGULAR,
                        2.8,
                        Canvas.Place.CENTRE,
                        left + side / 2,
                        top - side / 2 - 5.5,
                        "measure before cutting");
    }

    private void cuttingList(List<Band> bands) {
        bands.add(heading("Cutting list, for one pair of sleeves").keptWithNext());
        double[] columns = {0, 0.34, 0.70};
        Band header = row(columns, Typeface.BOLD, Ink.QUIET, List.of("Piece", "Cut", "Material"))
                .keptWithNext();
        bands.add(header);
        for (int i = 0; i < blocks.size(); i++) {
            Piece piece = blocks.get(i).leading().piece();
            Band row = row(
                            columns,
                            Typeface.REGULAR,
                            Ink.TEXT,
                            List.of(
                                    piece.kind().words(),
                                    piece.cut().words(),
                                    piece.kind().material().name().toLowerCase(java.util.Locale.ROOT)))
                    .under(header);
            bands.add(i == 0 ? row.keptWithNext() : row);
        }
        bands.add(Band.of(3, (canvas, left, top) -> {}));
    }

    private Band row(double[] columns, Typeface face, Ink ink, List<String> cells) {
        return Band.of(5.2, (canvas, left, top) -> {
            canvas.ink(ink);
            for (int i = 0; i < columns.length; i++) {
                double room = ((i + 1 < columns.length ? columns[i + 1] : 1) - columns[i]) * width - 2;
                String cell = cells.get(i);
                canvas.text(
                        face,
                        face.sizeWithin(cell, BODY, room),
                        Canvas.Place.LEFT,
                        left + columns[i] * width,
                        top - 3.5,
                        cell);
            }
            canvas.stroke(Stroke.solid(Ink.RULE, 0.15)).line(left, top - 5, left + width, top - 5);
        });
    }

    private void numbered(List<Band> bands, String words, List<String> items) {
        list(bands, words, items, true);
    }

    private void bulleted(List<Band> bands, String words, List<String> items) {
        list(bands, words, items, false);
    }

    private void list(List<Band> bands, String words, List<String> items, boolean numbers) {
        if (items.isEmpty()) {
            return;
        }
        bands.add(heading(words).keptWithNext());
        for (int i = 0; i < items.size(); i++) {
            String sign = numbers ? (i + 1) + "." : "–";
            List<String> lines = Wrapped.lines(items.get(i), Typeface.REGULAR, BODY, width - 7);
            bands.add(Band.of(LEADING * lines.size() + 0.7, (canvas, left, top) -> {
                canvas.ink(Ink.ACCENT).text(Typeface.BOLD, BODY, Canvas.Place.RIGHT, left + 5, top - 3.2, sign);
                body(canvas, left + 7, top, lines);
            }));
        }
        bands.add(Band.of(3, (canvas, left, top) -> {}));
    }

    private void paragraph(List<Band> bands, String words) {
        List<String> lines = Wrapped.lines(words, Typeface.REGULAR, BODY, width);
        bands.add(Band.of(LEADING * lines.size() + 2, (canvas, left, top) -> body(canvas, left, top, lines)));
    }

    private static void body(Canvas canvas, double left, double top, List<String> lines) {
        canvas.ink(Ink.TEXT);
        for (int i = 0; i < lines.size(); i++) {
            canvas.text(Typeface.REGULAR, BODY, Canvas.Place.LEFT, left, top - 3.2 - LEADING * i, lines.get(i));
        }
    }
}
