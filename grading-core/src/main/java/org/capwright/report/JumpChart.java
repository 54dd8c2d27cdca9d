package org.capwright.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.capwright.check.CheckedGrade;
import org.capwright.check.CheckedMeasure;
import org.capwright.check.Finding;
import org.capwright.check.Severity;
import org.capwright.drawing.Canvas;
import org.capwright.drawing.Ink;
import org.capwright.drawing.Letters;
import org.capwright.drawing.Place;
import org.capwright.drawing.Stroke;
import org.capwright.exchange.PrintedName;
import org.capwright.geometry.Point;
import org.capwright.quantity.Unit;
import org.capwright.tables.BodyDimension;
import org.capwright.tables.Interval;
import org.capwright.words.Language;
import org.capwright.words.Text;

/**
 * The jumps of a grade beside those of the body, one panel per measure. The garment is a solid bar, the body a hatched one with a dashed outline, the survey's interval a line with ends:
 * no colour is needed to tell them apart.
 */
public final class JumpChart {

    private static final double HEIGHT = 52;
    private static final double BARS = 28;
    private static final double LEFT = 6;
    private static final double BETWEEN = 8;
    private static final int MOST_BESIDE = 6;
    private static final int MOST_INTERVALS = 14;
    private static final double HATCH = 1.3;
    private static final double PAGE = 190;
    private static final Ink GREY = Ink.grey(0.4);
    private static final Letters WORDS = Letters.regular(2.7, Ink.BLACK);
    private static final Letters FIGURES = Letters.regular(2.3, Ink.BLACK);
    private static final Letters QUIET = Letters.regular(2.3, GREY);
    private static final Stroke OUTLINE = Stroke.dashed(Ink.BLACK, 0.25, 1.0, 0.6);

    private final CheckedGrade grade;
    private final Unit unit;
    private final Language language;
    private final List<Finding> findings;

    private JumpChart(CheckedGrade grade, Unit unit, Language language, List<Finding> findings) {
        this.grade = grade;
        this.unit = unit;
        this.language = language;
        this.findings = findings;
    }

    /** Part of the jumps of a measure. */
    private record Panel(CheckedMeasure measure, int first, int last) {}

    /**
     * The chart as an SVG document.
     *
     * @param title name of the style
     * @param grade the grade; without bodies only its own jumps are drawn
     * @param unit unit of the figures
     * @param language what its words are in
     * @return the document, UTF-8, in millimetres
     */
    public static String write(String title, CheckedGrade grade, Unit unit, Language language) {
        JumpChart chart = new JumpChart(grade, unit, language, List.of());
        List<Band> bands = new ArrayList<>();
        bands.add(TextBands.heading(
                Text.of("Jumps of {style}, {unit}")
                        .with("style", title)
                        .with("unit", unit.symbol())
                        .in(language),
                Ink.BLACK));
        List<Band> panels = chart.bands(PAGE);
        bands.addAll(
                panels.isEmpty()
                        ? TextBands.paragraph(
                                language.say(
                                        "There is no jump to draw: the grade has one size, or no measure that a body"
                                                + " has."),
                                PAGE)
                        : panels);
        grade.body()
                .ifPresent(body -> bands.add(TextBands.lines(
                        Text.of("Bodies: {table}. {source}.")
                                .with("table", body.table().id())
                                .with("source", body.table().info().source())
                                .in(language),
                        Letters.regular(2.4, GREY),
                        3.5,
                        PAGE)));
        return Band.svg(
                Text.of("Jumps of {style}").with("style", title).in(language),
                chart.description(),
                language,
                bands,
                PAGE);
    }

    static List<Band> bands(CheckedGrade grade, Unit unit, Language language, List<Finding> findings, double width) {
        return new JumpChart(grade, unit, language, findings).bands(width);
    }

    private List<Band> bands(double width) {
        List<Panel> panels = new ArrayList<>();
        for (CheckedMeasure measure : measures()) {
            for (int first = 0; first < grade.intervals(); first += MOST_INTERVALS) {
                panels.add(new Panel(measure, first, Math.min(grade.intervals(), first + MOST_INTERVALS)));
            }
        }
        int beside = grade.intervals() <= MOST_BESIDE ? 2 : 1;
        double each = (width - (beside - 1) * BETWEEN) / beside;
        List<Band> bands = new ArrayList<>();
        if (panels.isEmpty()) {
            return bands;
        }
        bands.add(Band.of(8, this::legend).keptWithNext());
        for (int i = 0; i < panels.size(); i += beside) {
            List<Panel> row = panels.subList(i, Math.min(panels.size(), i + beside));
            bands.add(Band.of(HEIGHT, (canvas, left, top) -> {
                for (int k = 0; k < row.size(); k++) {
                    panel(canvas, row.get(k), left + k * (each + BETWEEN), top, each);
                }
            }));
        }
        return bands;
    }

    /** Those that a body has and that the grade knows. */
    private List<CheckedMeasure> measures() {
        List<CheckedMeasure> measures = new ArrayList<>();
        for (CheckedMeasure measure : CheckedMeasure.values()) {
            boolean known = false;
            for (int i = 0; i < grade.intervals(); i++) {
                known |= grade.jump(i, measure).isPresent();
            }
            if (known && measure.body().isPresent()) {
                measures.add(measure);
            }
        }
        return measures;
    }

    private String description() {
        List<Text> words = new ArrayList<>();
        for (CheckedMeasure measure : measures()) {
            List<Text> jumps = new ArrayList<>();
            for (int i = 0; i < grade.intervals(); i++) {
                jumps.add(Text.of(
                                grade.body().isPresent()
                                        ? "{from} to {to} {jump} (body {body})"
                                        : "{from} to {to} {jump}")
                        .with("from", grade.pair(i).get(0))
                        .with("to", grade.pair(i).get(1))
                        .with("jump", figure(grade.jump(i, measure)))
                        .with("body", figure(bodyJump(measure, i))));
            }
            words.add(Text.of("{measure}: {jumps}; ")
                    .with("measure", title(measure))
                    .with("jumps", Text.joined(jumps, "; ")));
        }
        words.add(Text.of("lengths in {unit}.").with("unit", unit.symbol()));
        return Text.joined(words, "").in(language);
    }

    private Text figure(OptionalDouble millimetres) {
        return millimetres.isPresent() ? Text.figures(unit.format(millimetres.getAsDouble())) : Text.of("no figure");
    }

    private void legend(Canvas canvas, double left, double top) {
        garment(canvas, left, top - 5, 5, 3);
        canvas.text(WORDS, Place.LEFT, left + 6.5, top - 4.6, language.say("garment"));
        if (grade.body().isEmpty()) {
            return;
        }
        body(canvas, left + 26, top - 5, 5, 3);
        canvas.text(WORDS, Place.LEFT, left + 32.5, top - 4.6, language.say("body, by the table"));
        if (grade.body().get().survey().isPresent()) {
            whisker(canvas, left + 66, top - 5.2, top - 1.8);
            String words = Text.of("mean body, by the survey, {share} % confidence")
                    .with("share", Math.round(100 * grade.body().get().confidence()))
                    .in(language);
            canvas.text(WORDS, Place.LEFT, left + 69, top - 4.6, words);
        }
    }

    private Optional<BodyDimension> dimension(CheckedMeasure measure) {
        return grade.body().flatMap(reference -> reference.counterpart(measure));
    }

    private OptionalDouble bodyJump(CheckedMeasure measure, int interval) {
        Optional<BodyDimension> dimension = dimension(measure);
        return dimension.isEmpty()
                ? OptionalDouble.empty()
                : grade.body().orElseThrow().jump(grade.label(interval), grade.label(interval + 1), dimension.get());
    }

    private Optional<Interval> survey(CheckedMeasure measure, int interval) {
        return dimension(measure)
                .flatMap(dimension ->
                        grade.body().orElseThrow().growth(grade.label(interval), grade.label(interval + 1), dimension))
                .map(growth -> growth.mean().interval());
    }

    private Text title(CheckedMeasure measure) {
        Text garment = Text.of(PrintedName.capital(measure.code()));
        return dimension(measure)
                .map(dimension -> Text.of("{garment} beside {body}")
                        .with("garment", garment)
                        .with("body", Text.of(PrintedName.of(dimension.id()))))
                .orElse(garment);
    }

    private void panel(Canvas canvas, Panel panel, double left, double top, double width) {
        double lowest = 0;
        double highest = 1e-3;
        for (int i = panel.first; i < panel.last; i++) {
            double garment = grade.jump(i, panel.measure).orElse(0);
            double body = bodyJump(panel.measure, i).orElse(0);
            Interval survey = survey(panel.measure, i).orElse(new Interval(0, 0));
            lowest = Math.min(lowest, Math.min(Math.min(garment, body), survey.lower()));
            highest = Math.max(highest, Math.max(Math.max(garment, body), survey.upper()));
        }
        canvas.group("measure", panel.measure.code(), Point.ORIGIN);
        String words = title(panel.measure).in(language) + ", " + unit.symbol();
        canvas.text(Letters.bold(3.1, Ink.BLACK).within(words, width), Place.LEFT, left, top - 3.6, words);
        double scale = BARS / (highest - lowest);
        double zero = top - 11 - scale * highest;
        canvas.stroke(Stroke.solid(GREY, 0.2)).line(left + LEFT - 2, zero, left + width, zero);
        canvas.text(QUIET, Place.RIGHT, left + LEFT - 3, zero - 0.8, "0");
        double step = (width - LEFT) / (panel.last - panel.first);
        for (int i = panel.first; i < panel.last; i++) {
            double x = left + LEFT + step * (i - panel.first);
            jump(canvas, panel.measure, i, x, step, zero, scale);
            String pair = String.join("–", grade.pair(i));
            Letters letters = Letters.regular(2.6, Ink.BLACK).within(pair, step - 1);
            canvas.text(letters, Place.CENTRE, x + step / 2, top - 11 - BARS - 5.5, pair);
        }
        canvas.end();
    }

    private void jump(
            Canvas canvas, CheckedMeasure measure, int interval, double x, double step, double zero, double scale) {
        double bar = Math.min(7, (step - 3) * 0.42);
        double middle = x + step / 2;
        OptionalDouble garment = grade.jump(interval, measure);
        OptionalDouble body = bodyJump(measure, interval);
        if (garment.isPresent()) {
            double end = scale * garment.getAsDouble();
            garment(canvas, middle - bar - 0.6, Math.min(zero, zero + end), bar, Math.abs(end));
            figure(canvas, garment.getAsDouble(), middle - bar / 2 - 0.6, zero + end);
        }
        if (body.isPresent()) {
            double end = scale * body.getAsDouble();
            body(canvas, middle + 0.6, Math.min(zero, zero + end), bar, Math.abs(end));
            figure(canvas, body.getAsDouble(), middle + bar / 2 + 0.6, zero + end);
        } else if (grade.body().isPresent()) {
            canvas.text(QUIET, Place.CENTRE, middle + bar / 2 + 0.6, zero + 1, "?");
        }
        survey(measure, interval)
                .ifPresent(range -> whisker(
                        canvas, middle + bar + 2.2, zero + scale * range.lower(), zero + scale * range.upper()));
        gravest(measure, interval).ifPresent(severity -> {
            double above = Math.max(0, scale * garment.orElse(0));
            SeverityMark.draw(canvas, severity, middle - bar / 2 - 0.6, zero + above + 4.8, 2.8);
        });
    }

    /** Only what is to be looked at; a sign on every bar would be none. */
    private Optional<Severity> gravest(CheckedMeasure measure, int interval) {
        List<String> pair = grade.pair(interval);
        return findings.stream()
                .filter(finding -> finding.subject() == measure
                        && finding.sizes().equals(pair)
                        && finding.severity() != Severity.INFO)
                .map(Finding::severity)
                .max(Comparator.naturalOrder());
    }

    private void figure(Canvas canvas, double jump, double x, double end) {
        String words = language.figures(unit.format(jump)).replace('-', '−');
        canvas.text(FIGURES, Place.CENTRE, x, jump < 0 ? end - 2.6 : end + 0.9, words);
    }

    private static void garment(Canvas canvas, double x, double y, double width, double height) {
        canvas.ink(Ink.BLACK).about("garment", "").box(x, y, width, height).fill();
    }

    private static void body(Canvas canvas, double x, double y, double width, double height) {
        if (height > 1e-6) {
            canvas.stroke(Stroke.solid(GREY, 0.22));
            for (double at = HATCH - height; at < width; at += HATCH) {
                double from = Math.max(at, 0);
                double to = Math.min(at + height, width);
                canvas.from(x + from, y + from - at).to(x + to, y + to - at);
            }
            canvas.draw();
        }
        canvas.stroke(OUTLINE).about("body", "").box(x, y, width, height).draw();
    }

    private static void whisker(Canvas canvas, double x, double bottom, double top) {
        canvas.stroke(Stroke.solid(Ink.BLACK, 0.3)).about("survey", "");
        canvas.from(x, bottom).to(x, top);
        canvas.from(x - 0.9, bottom).to(x + 0.9, bottom);
        canvas.from(x - 0.9, top).to(x + 0.9, top).draw();
    }
}
