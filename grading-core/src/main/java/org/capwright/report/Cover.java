package org.capwright.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import org.capwright.drawing.Ink;
import org.capwright.drawing.Letters;
import org.capwright.drawing.Place;
import org.capwright.drawing.Script;
import org.capwright.drawing.Typeface;
import org.capwright.pattern.PatternSet;
import org.capwright.pattern.Piece;
import org.capwright.words.Language;
import org.capwright.words.Text;

/** What stands on the cover: title, test squares, picture, tables, sewing order, map of the sheets. */
final class Cover {

    /** The name of the picture of the worn sleeve in the file. */
    static final String WORN = "W";

    private static final double WORN_HEIGHT = 90;

    private static final double[] COLUMNS = {0, 0.34, 0.70};

    private final PatternSet set;
    private final PdfOptions options;
    private final List<Block> blocks;
    private final double width;
    private final Language language;

    Cover(PatternSet set, PdfOptions options, List<Block> blocks, double width) {
        this.set = set;
        this.options = options;
        this.blocks = blocks;
        this.width = width;
        language = set.title().language();
    }

    List<Band> bands(Optional<PageMap> map) {
        List<Band> bands = new ArrayList<>();
        title(bands);
        squares(bands);
        options.worn().ifPresent(picture -> worn(bands, picture));
        cuttingList(bands);
        options.materials()
                .ifPresent(needs -> bands.addAll(
                        MaterialSheet.bands(needs, set.run().baseSize().label(), set.title(), width)));
        bands.addAll(SpecSheet.bands(set, width));
        list(bands, language.say("Sewing order"), options.sewingOrder(), number -> number + ".");
        list(bands, language.say("Cautions"), options.cautions(), number -> "–");
        bands.add(TextBands.heading(language.say("Lines and marks")));
        bands.add(Legend.band(blocks, language, width));
        map.ifPresent(drawn -> {
            bands.add(TextBands.heading(drawn.heading(language)));
            bands.add(drawn.band(language, width));
        });
        return bands;
    }

    private void title(List<Band> bands) {
        PatternSet.Title title = set.title();
        String line = Text.joined(
                        List.of(
                                Text.of("Revision {revision}").with("revision", title.revision()),
                                SizeNames.named(blocks.get(0)),
                                Text.of("base size {size}")
                                        .with("size", set.run().baseSize().label()),
                                Text.of("figures in {unit}")
                                        .with("unit", title.unit().symbol())),
                        "   ·   ")
                .in(language);
        bands.add(TextBands.title(title.style(), line, width));
        if (isReplaced(title.style())) {
            replaced(
                    bands,
                    Text.of("The embedded font cannot show some characters of the style name; they are shown as {sign}."
                            + " The properties of this document give the name in full."));
        }
        if (set.run().sizes().stream().anyMatch(size -> isReplaced(size.label()))) {
            replaced(
                    bands,
                    Text.of("The embedded font cannot show some characters of the names of sizes; they are shown as"
                            + " {sign}. Sizes stand in their order, the smallest first, and the layers of this"
                            + " document give their names in full."));
        }
    }

    private static boolean isReplaced(String name) {
        return IntStream.of(Script.of(name, Typeface.BOLD).shown()).anyMatch(c -> c == Typeface.REPLACEMENT);
    }

    private void replaced(List<Band> bands, Text note) {
        bands.addAll(TextBands.paragraph(
                note.with("sign", Character.toString(Typeface.REPLACEMENT)).in(language), width));
    }

    private void squares(List<Band> bands) {
        double pictureWidth = width - 118;
        boolean beside = pictureWidth >= 60;
        bands.add(Band.of(70, (canvas, left, top) -> {
            TestSquare.draw(canvas, left + 1, top - 4, 50, "50 mm", language);
            TestSquare.draw(canvas, left + 57, top - 4, 50.8, "2 in", language);
            canvas.text(
                    Letters.bold(3, Ink.TEXT),
                    Place.LEFT,
                    left + 1,
                    top - 60.5,
                    language.say("Measure before cutting: the squares must be exact."));
            canvas.text(
                    Letters.regular(2.7, Ink.QUIET),
                    Place.LEFT,
                    left + 1,
                    top - 64.5,
                    language.say("Print at 100 %, without “fit to page”."));
            if (beside) {
                new SleevePicture(set, pictureWidth, 60).draw(canvas, left + 118, top - 2);
            }
        }));
        if (!beside) {
            bands.add(
                    Band.of(66, (canvas, left, top) -> new SleevePicture(set, width, 60).draw(canvas, left, top - 2)));
        }
    }

    private void worn(List<Band> bands, WornPicture picture) {
        double height = Math.min(WORN_HEIGHT, WORN_HEIGHT * width / picture.width(WORN_HEIGHT));
        bands.add(TextBands.heading(language.say("As worn")));
        bands.add(Band.of(
                        height + 3,
                        (canvas, left, top) -> canvas.picture(WORN, left, top - height, picture.width(height), height))
                .keptWithNext());
        bands.addAll(TextBands.paragraph(
                language.say(
                        "A simulation of the base size, sent with the request; not a fitting. Sew a trial sleeve."),
                width));
    }

    private void cuttingList(List<Band> bands) {
        bands.add(TextBands.heading(language.say("Cutting list, for one pair of sleeves")));
        Band header = row(TextBands.QUIET, language.say("Piece"), language.say("Cut"), language.say("Material"))
                .keptWithNext();
        bands.add(header);
        for (int i = 0; i < blocks.size(); i++) {
            Piece piece = blocks.get(i).leading().piece();
            Band row = row(
                            TextBands.BODY,
                            blocks.get(i).words(language),
                            piece.cut().words().in(language),
                            language.say(piece.kind().material().words()))
                    .under(header);
            bands.add(i == 0 ? row.keptWithNext() : row);
        }
        bands.add(TextBands.space());
    }

    private Band row(Letters letters, String... cells) {
        return TextBands.row(letters, width, COLUMNS, cells);
    }

    private void list(List<Band> bands, String words, List<String> items, IntFunction<String> sign) {
        if (items.isEmpty()) {
            return;
        }
        bands.add(TextBands.heading(words));
        for (int i = 0; i < items.size(); i++) {
            String before = sign.apply(i + 1);
            Band item = TextBands.lines(items.get(i), TextBands.BODY, TextBands.LEADING, width - 7);
            bands.add(Band.of(item.height() - 0.8, (canvas, left, top) -> {
                canvas.text(Letters.bold(2.9, Ink.ACCENT), Place.RIGHT, left + 5, top - 3.2, before);
                item.drawing().draw(canvas, left + 7, top);
            }));
        }
        bands.add(TextBands.space());
    }
}
