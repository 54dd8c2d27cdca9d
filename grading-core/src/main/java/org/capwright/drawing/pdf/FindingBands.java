package org.capwright.drawing.pdf;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.capwright.check.Finding;
import org.capwright.exchange.PrintedName;
import org.capwright.measure.Decimals;
import org.capwright.measure.Quantity;
import org.capwright.measure.Unit;

/** Findings as bands, the gravest first: sign, sizes, measure, value and range in one line, then what is the matter, what to change and the source. */
final class FindingBands {

    private static final double INDENT = 8;
    private static final double SIZE = 2.9;
    private static final double LEADING = 4.1;

    private final Unit unit;
    private final double width;
    private final List<String> sources = new ArrayList<>();

    private FindingBands(Unit unit, double width) {
        this.unit = unit;
        this.width = width;
    }

    static List<Band> bands(List<Finding> findings, Unit unit, double width) {
        FindingBands made = new FindingBands(unit, width);
        List<Band> bands = new ArrayList<>();
        findings.stream()
                .sorted(Comparator.comparing(Finding::severity).reversed())
                .forEach(finding -> bands.add(made.band(finding)));
        return bands;
    }

    private Band band(Finding finding) {
        List<String> message = Wrapped.lines(finding.sentence(), Typeface.REGULAR, SIZE, width - INDENT);
        List<String> remedy = Wrapped.lines(finding.remedy(), Typeface.BOLD, SIZE, width - INDENT);
        List<String> source = Wrapped.lines(source(finding.source()), Typeface.REGULAR, 2.4, width - INDENT);
        int lines = message.size() + remedy.size();
        double height = 6 + LEADING * lines + 3.4 * source.size() + 2.6;
        return Band.of(height, (canvas, left, top) -> {
            SeverityMark.draw(canvas, finding.severity(), left + 3, top - 3.4, 3.6);
            head(canvas, finding, left + INDENT, top - 4.4);
            double y = top - 9;
            y = lines(canvas.ink(Ink.TEXT), Typeface.REGULAR, SIZE, LEADING, left + INDENT, y, message);
            y = lines(canvas.ink(Ink.ACCENT), Typeface.BOLD, SIZE, LEADING, left + INDENT, y, remedy);
            lines(canvas.ink(Ink.QUIET), Typeface.REGULAR, 2.4, 3.4, left + INDENT, y, source);
            canvas.stroke(Stroke.solid(Ink.RULE, 0.15))
                    .line(left + INDENT, top - height + 1, left + width, top - height + 1);
        });
    }

    /** In full where it stands first, afterwards by its number. */
    private String source(String words) {
        int known = sources.indexOf(words);
        if (words.equals(Finding.PRACTICE)) {
            return "Source: " + words;
        } else if (known >= 0) {
            return "Source: [" + (known + 1) + "] above";
        }
        sources.add(words);
        return "Source [" + sources.size() + "]: " + words;
    }

    private static double lines(
            Canvas canvas, Typeface face, double size, double leading, double x, double y, List<String> lines) {
        for (int i = 0; i < lines.size(); i++) {
            canvas.text(face, size, Canvas.Place.LEFT, x, y - leading * i, lines.get(i));
        }
        return y - leading * lines.size();
    }

    private void head(Canvas canvas, Finding finding, double left, double y) {
        String about = SeverityMark.word(finding.severity())
                + (finding.sizes().isEmpty() ? "" : "   " + String.join("–", finding.sizes()))
                + "   " + PrintedName.of(finding.measure());
        String figures = figures(finding);
        double room = width - INDENT - Typeface.REGULAR.width(figures, SIZE) - 4;
        canvas.ink(SeverityMark.ink(finding.severity()))
                .text(
                        Typeface.BOLD,
                        Typeface.BOLD.sizeWithin(about, 3.3, Math.max(30, room)),
                        Canvas.Place.LEFT,
                        left,
                        y,
                        about);
        canvas.ink(Ink.TEXT).text(Typeface.REGULAR, SIZE, Canvas.Place.RIGHT, left - INDENT + width, y, figures);
    }

    private String figures(Finding finding) {
        if (finding.value().isEmpty()) {
            return "";
        }
        String symbol = finding.quantity() == Quantity.LENGTH ? " " + unit.symbol() : "";
        String value = number(finding, finding.value().getAsDouble()) + symbol;
        Optional<String> range = finding.expected().text(bound -> number(finding, bound));
        return value + range.map(text -> "; expected " + text + symbol).orElse("");
    }

    private String number(Finding finding, double number) {
        return switch (finding.quantity()) {
            case LENGTH -> unit.format(number);
            case COUNT -> Long.toString(Math.round(number));
            default -> Decimals.text(number, 3);
        };
    }
}
