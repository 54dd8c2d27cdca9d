package org.capwright.drawing.pdf;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.capwright.check.BodyReference;
import org.capwright.check.CheckedGrade;
import org.capwright.check.CheckedMeasure;
import org.capwright.check.Finding;
import org.capwright.check.Severity;
import org.capwright.exchange.PrintedName;
import org.capwright.measure.Unit;
import org.capwright.tables.BodyDimension;
import org.capwright.tables.Interval;

/**
 * The jumps of a grade beside those of the body as bands of panels, one panel per measure. The garment is a solid bar, the body a hatched one with a dashed outline, the survey's interval a
 * line with ends: no colour is needed to tell them apart.
 */
final class JumpPanels {

    private static final double HEIGHT = 52;
    private static final double BARS = 28;
    private static final double LEFT = 6;
    private static final double BETWEEN = 8;
    private static final int MOST_BESIDE = 6;
    private static final int MOST_INTERVALS = 14;
    private static final double HATCH = 1.3;
    private static final double FIGURE = 2.3;

    private final CheckedGrade grade;
    private final Unit unit;
    private final List<Finding> findings;

    private JumpPanels(CheckedGrade grade, Unit unit, List<Finding> findings) {
        this.grade = grade;
        this.unit = unit;
        this.findings = findings;
    }

    /** Part of the jumps of a measure. */
    private record Panel(CheckedMeasure measure, int first, int last) {}

    static List<Band> bands(CheckedGrade grade, Unit unit, List<Finding> findings, double width) {
        return new JumpPanels(grade, unit, findings).bands(width);
    }

    private List<Band> bands(double width) {
        List<Panel> panels = new ArrayList<>();
        for (CheckedMeasure measure : CheckedMeasure.values()) {
            if (measure.body().isPresent() && known(measure)) {
                for (int first = 0; first < grade.intervals(); first += MOST_INTERVALS) {
                    panels.add(new Panel(measure, first, Math.min(grade.intervals(), first + MOST_INTERVALS)));
                }
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

    private boolean known(CheckedMeasure measure) {
        for (int i = 0; i < grade.intervals(); i++) {
            if (grade.jump(i, measure).isPresent()) {
                return true;
            }
        }
        return false;
    }

    private void legend(Canvas canvas, double left, double top) {
        garment(canvas, left, top - 5, 5, 3);
        canvas.ink(Ink.TEXT).text(Typeface.REGULAR, 2.7, Canvas.Place.LEFT, left + 6.5, top - 4.6, "garment");
        if (grade.body().isEmpty()) {
            return;
        }
        body(canvas, left + 26, top - 5, 5, 3);
        canvas.ink(Ink.TEXT)
                .text(Typeface.REGULAR, 2.7, Canvas.Place.LEFT, left + 32.5, top - 4.6, "body, by the table");
        if (grade.body().get().survey().isPresent()) {
            whisker(canvas, left + 66, top - 5.2, top - 1.8);
            canvas.ink(Ink.TEXT)
                    .text(
                            Typeface.REGULAR,
                            2.7,
                            Canvas.Place.LEFT,
                            left + 69,
                            top - 4.6,
                            "mean body, by the survey, "
                                    + Math.round(100 * grade.body().get().confidence()) + " % confidence");
        }
    }

    private Optional<BodyDimension> dimension(CheckedMeasure measure) {
        return grade.body().flatMap(reference -> reference.counterpart(measure));
    }

    private OptionalDouble bodyJump(CheckedMeasure measure, int interval) {
        Optional<BodyDimension> dimension = dimension(measure);
        return dimension.isPresent()
                ? grade.body()
                        .map(reference ->
                                reference.jump(grade.label(interval), grade.label(interval + 1), dimension.get()))
                        .orElse(OptionalDouble.empty())
                : OptionalDouble.empty();
    }

    private Optional<Interval> survey(CheckedMeasure measure, int interval) {
        Optional<BodyReference> reference = grade.body();
        return dimension(measure)
                .flatMap(dimension -> reference.flatMap(
                        bodies -> bodies.growth(grade.label(interval), grade.label(interval + 1), dimension)))
                .map(growth -> growth.interval());
    }

    private void panel(Canvas canvas, Panel panel, double left, double top, double width) {
        double lowest = 0;
        double highest = 1e-3;
        for (int i = panel.first; i < panel.last; i++) {
            double garment = grade.jump(i, panel.measure).orElse(0);
            double body = bodyJump(panel.measure, i).orElse(0);
            Optional<Interval> survey = survey(panel.measure, i);
            lowest = Math.min(
                    lowest,
                    Math.min(
                            Math.min(garment, body), survey.map(Interval::lower).orElse(0.0)));
            highest = Math.max(
                    highest,
                    Math.max(
                            Math.max(garment, body), survey.map(Interval::upper).orElse(0.0)));
        }
        String words = PrintedName.capital(panel.measure.code())
                + dimension(panel.measure)
                        .map(dimension -> " beside " + PrintedName.of(dimension.id()))
                        .orElse("")
                + ", " + unit.symbol();
        canvas.ink(Ink.TEXT)
                .text(
                        Typeface.BOLD,
                        Typeface.BOLD.sizeWithin(words, 3.1, width),
                        Canvas.Place.LEFT,
                        left,
                        top - 3.6,
                        words);
        double scale = BARS / (highest - lowest);
        double zero = top - 11 - scale * highest;
        canvas.stroke(Stroke.solid(Ink.QUIET, 0.2)).line(left + LEFT - 2, zero, left + width, zero);
        canvas.ink(Ink.QUIET).text(Typeface.REGULAR, FIGURE, Canvas.Place.RIGHT, left + LEFT - 3, zero - 0.8, "0");
        double step = (width - LEFT) / (panel.last - panel.first);
        for (int i = panel.first; i < panel.last; i++) {
            jump(canvas, panel.measure, i, left + LEFT + step * (i - panel.first), step, zero, scale);
            String pair = grade.label(i) + "–" + grade.label(i + 1);
            canvas.ink(Ink.TEXT)
                    .text(
                            Typeface.REGULAR,
                            Typeface.REGULAR.sizeWithin(pair, 2.6, step - 1),
                            Canvas.Place.CENTRE,
                            left + LEFT + step * (i - panel.first + 0.5),
                            top - 11 - BARS - 5.5,
                            pair);
        }
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
            canvas.ink(Ink.QUIET)
                    .text(Typeface.REGULAR, FIGURE, Canvas.Place.CENTRE, middle + bar / 2 + 0.6, zero + 1, "?");
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
                .filter(finding -> finding.measure().equals(measure.code())
                        && finding.sizes().equals(pair)
                        && finding.severity() != Severity.INFO)
                .map(Finding::severity)
                .max(java.util.Comparator.naturalOrder());
    }

    private void figure(Canvas canvas, double jump, double x, double end) {
        canvas.ink(Ink.TEXT)
                .text(
                        Typeface.REGULAR,
                        FIGURE,
                        Canvas.Place.CENTRE,
                        x,
                        jump < 0 ? end - 2.6 : end + 0.9,
                        unit.format(jump).replace('-', '−'));
    }

    private static void garment(Canvas canvas, double x, double y, double width, double height) {
        canvas.ink(Ink.TEXT).box(x, y, width, height).fill();
    }

    private static void body(Canvas canvas, double x, double y, double width, double height) {
        if (height < 1e-6) {
            return;
        }
        canvas.save().box(x, y, width, height).clip();
        canvas.stroke(Stroke.solid(Ink.QUIET, 0.22));
        for (double at = -height; at < width; at += HATCH) {
            canvas.from(x + at, y).to(x + at + height, y + height);
        }
        canvas.draw().restore();
        canvas.stroke(Stroke.dashed(Ink.TEXT, 0.25, 1.0, 0.6))
                .box(x, y, width, height)
                .draw();
    }

    private static void whisker(Canvas canvas, double x, double bottom, double top) {
        canvas.stroke(Stroke.solid(Ink.TEXT, 0.3))
                .from(x, bottom)
                .to(x, top)
                .from(x - 0.9, bottom)
                .to(x + 0.9, bottom)
                .from(x - 0.9, top)
                .to(x + 0.9, top)
                .draw();
    }
}
