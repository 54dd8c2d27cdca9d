package org.capwright.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.capwright.check.Finding;
import org.capwright.drawing.Canvas;
import org.capwright.drawing.Ink;
import org.capwright.drawing.Letters;
import org.capwright.drawing.Place;
import org.capwright.exchange.PrintedName;
import org.capwright.gradeimport.Unread;
import org.capwright.quantity.Quantity;
import org.capwright.quantity.Unit;
import org.capwright.words.Language;
import org.capwright.words.Text;

/** Findings as bands, the gravest first: sign, sizes, measure, value and range in one line, then what is the matter, what to change and the source. */
final class FindingBands {

    private static final double INDENT = 8;
    private static final double LEADING = 4.1;
    private static final Letters REMEDY = Letters.bold(2.9, Ink.ACCENT);
    private static final Letters SOURCE = Letters.regular(2.4, Ink.QUIET);

    private final Unit unit;
    private final Language language;
    private final double width;
    private final List<Text> sources = new ArrayList<>();

    private FindingBands(Unit unit, Language language, double width) {
        this.unit = unit;
        this.language = language;
        this.width = width;
    }

    static List<Band> bands(List<Finding> findings, Unit unit, Language language, double width) {
        FindingBands made = new FindingBands(unit, language, width);
        List<Band> bands = new ArrayList<>();
        findings.stream()
                .sorted(Comparator.comparing(Unread::is)
                        .thenComparing(Finding::severity)
                        .reversed())
                .forEach(finding -> bands.add(made.band(finding)));
        return bands;
    }

    private Band band(Finding finding) {
        double room = width - INDENT;
        List<Band> lines = List.of(
                TextBands.lines(finding.sentence().in(language), TextBands.BODY, LEADING, room),
                TextBands.lines(finding.remedy().in(language), REMEDY, LEADING, room),
                TextBands.lines(source(finding.source()).in(language), SOURCE, 3.4, room));
        double height =
                8 + lines.stream().mapToDouble(line -> line.height() - 1.5).sum();
        return Band.of(height, (canvas, left, top) -> {
            SeverityMark.draw(canvas, finding.severity(), left + 3, top - 3.4, 3.6);
            head(canvas, finding, left + INDENT, top - 4.4);
            double y = top - 5.8;
            for (Band line : lines) {
                line.drawing().draw(canvas, left + INDENT, y);
                y -= line.height() - 1.5;
            }
            canvas.stroke(TextBands.RULE).line(left + INDENT, top - height + 1, left + width, top - height + 1);
        });
    }

    /** In full where it stands first, afterwards by its number. */
    private Text source(Text words) {
        int known = sources.indexOf(words);
        if (words.equals(Text.of(Finding.PRACTICE))) {
            return Text.of("Source: {source}").with("source", words);
        } else if (known >= 0) {
            return Text.of("Source: [{number}] above").with("number", known + 1);
        }
        sources.add(words);
        return Text.of("Source [{number}]: {source}")
                .with("number", sources.size())
                .with("source", words);
    }

    private void head(Canvas canvas, Finding finding, double left, double y) {
        String about = language.say(SeverityMark.word(finding.severity()))
                + (finding.sizes().isEmpty() ? "" : "   " + String.join("–", finding.sizes()))
                + "   " + language.say(PrintedName.of(finding.subject().code()));
        String figures = figures(finding);
        double room = Math.max(30, width - INDENT - TextBands.BODY.width(figures) - 4);
        Letters bold = Letters.bold(3.3, SeverityMark.ink(finding.severity())).within(about, room);
        canvas.text(bold, Place.LEFT, left, y, about);
        canvas.text(TextBands.BODY, Place.RIGHT, left - INDENT + width, y, figures);
    }

    private String figures(Finding finding) {
        if (finding.value().isEmpty()) {
            return "";
        }
        String symbol = finding.quantity() == Quantity.LENGTH ? " " + unit.symbol() : "";
        Optional<Text> range = finding.expected().text(bound -> finding.figure(bound, unit));
        return range.map(bounds -> Text.of("{value}; expected {range}{unit}").with("range", bounds))
                .orElse(Text.of("{value}"))
                .with(
                        "value",
                        finding.figure(finding.value().getAsDouble(), unit).in(language) + symbol)
                .with("unit", symbol)
                .in(language);
    }
}
