package org.capwright.drawing.svg;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.capwright.check.BodyReference;
import org.capwright.check.CheckedGrade;
import org.capwright.check.CheckedMeasure;
import org.capwright.exchange.PrintedName;
import org.capwright.measure.Unit;
import org.capwright.tables.survey.ConfidenceInterval;

/**
 * Draws the jumps of a grade beside those of the body, size by size. Garment and body differ in fill and dash, not in colour, so that a print or a copy in black
 * and white tells as much.
 */
public final class JumpChart {

    private static final double MARGIN = 10;
    private static final double AXIS = 24;
    private static final double STEP = 24;
    private static final double BAR = 7;
    private static final double PANEL = 46;
    private static final double BARS = 26;
    private static final double HEAD = 34;
    private static final double LEAST_WIDTH = 190;

    private final CheckedGrade grade;
    private final Unit unit;
    private final SvgText out = new SvgText(8192);

    private JumpChart(CheckedGrade grade, Unit unit) {
        this.grade = grade;
        this.unit = unit;
    }

    /** Whose jump a bar shows. The garment is solid, the body hatched with a dashed line round it. */
    private enum Kind {
        GARMENT(" class=\"garment\" fill=\"#222\"/>\n"),
        BODY(
                " class=\"body\" fill=\"url(#body)\" stroke=\"#000\" stroke-width=\"0.35\" stroke-dasharray=\"1.2 0.7\"/>\n");

        private final String style;

        Kind(String style) {
            this.style = style;
        }
    }

    private record Jump(
            String from, String to, OptionalDouble garment, OptionalDouble body, Optional<ConfidenceInterval> survey) {}

    private record Panel(CheckedMeasure measure, String title, List<Jump> jumps, double lowest, double highest) {}

    /**
     * The chart as an SVG document, one panel per measure that grows with a dimension of the body.
     *
     * @param title name of the style
     * @param grade the grade; without bodies only its own jumps are drawn
     * @param unit unit of the figures
     * @return the document, UTF-8, in millimetres
     */
    public static String write(String title, CheckedGrade grade, Unit unit) {
        return new JumpChart(grade, unit).document(title);
    }

    private String document(String title) {
        List<Panel> panels = panels();
        double width = Math.max(LEAST_WIDTH, 2 * MARGIN + AXIS + STEP * grade.intervals());
        double height = HEAD + PANEL * Math.max(1, panels.size()) + MARGIN;
        out.raw("<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"")
                .number(width)
                .raw("mm\" height=\"")
                .number(height);
        out.raw("mm\" viewBox=\"0 0 ")
                .pair(width, height)
                .raw("\" role=\"img\" font-family=\"sans-serif\" font-size=\"3.2\">\n");
        out.raw("<title>")
                .words("Jumps of " + title)
                .raw("</title>\n<desc>")
                .words(description(panels))
                .raw("</desc>\n");
        out.raw(
                        "<defs><pattern id=\"body\" width=\"1.6\" height=\"1.6\" patternUnits=\"userSpaceOnUse\" patternTransform=\"rotate(45)\">")
                .raw(
                        "<rect width=\"1.6\" height=\"1.6\" fill=\"#fff\"/><path d=\"M0 0V1.6\" stroke=\"#000\" stroke-width=\"0.4\"/></pattern></defs>\n");
        out.raw("<rect width=\"100%\" height=\"100%\" fill=\"#fff\"/>\n");
        text(MARGIN, 10, "start", 4.5, "Jumps of " + title + ", " + unit.symbol());
        legend();
        if (panels.isEmpty()) {
            text(
                    MARGIN,
                    HEAD + 10,
                    "start",
                    3.2,
                    "There is no jump to draw: the grade has one size, or no measure that a body has.");
        }
        for (int i = 0; i < panels.size(); i++) {
            panel(panels.get(i), HEAD + PANEL * i, width);
        }
        return out.raw("</svg>\n").toString();
    }

    private List<Panel> panels() {
        List<Panel> panels = new ArrayList<>();
        for (CheckedMeasure measure : CheckedMeasure.values()) {
            if (measure.body().isEmpty()) {
                continue;
            }
            List<Jump> jumps = new ArrayList<>();
            boolean any = false;
            double lowest = 0;
            double highest = 0;
            for (int i = 0; i < grade.intervals(); i++) {
                Jump jump = jump(measure, i);
                jumps.add(jump);
                any |= jump.garment.isPresent();
                double low = Math.min(jump.garment.orElse(0), jump.body.orElse(0));
                double high = Math.max(jump.garment.orElse(0), jump.body.orElse(0));
                lowest = Math.min(
                        lowest,
                        Math.min(low, jump.survey.map(s -> s.interval().lower()).orElse(0.0)));
                highest = Math.max(
                        highest,
                        Math.max(
                                high, jump.survey.map(s -> s.interval().upper()).orElse(0.0)));
            }
            if (any) {
                String body = grade.body()
                        .flatMap(reference -> reference.counterpart(measure))
                        .map(dimension -> " beside " + PrintedName.of(dimension.id()))
                        .orElse("");
                panels.add(new Panel(measure, PrintedName.capital(measure.code()) + body, jumps, lowest, highest));
            }
        }
        return panels;
    }

    private Jump jump(CheckedMeasure measure, int interval) {
        String from = grade.label(interval);
        String to = grade.label(interval + 1);
        OptionalDouble body = OptionalDouble.empty();
        Optional<ConfidenceInterval> survey = Optional.empty();
        if (grade.body().isPresent() && grade.body().get().counterpart(measure).isPresent()) {
            BodyReference reference = grade.body().get();
            body = reference.jump(from, to, reference.counterpart(measure).get());
            survey = reference.growth(from, to, reference.counterpart(measure).get());
        }
        return new Jump(from, to, grade.jump(interval, measure), body, survey);
    }

    private String description(List<Panel> panels) {
        StringBuilder words = new StringBuilder();
        for (Panel panel : panels) {
            words.append(panel.title).append(": ");
            for (Jump jump : panel.jumps) {
                words.append(jump.from)
                        .append(" to ")
                        .append(jump.to)
                        .append(' ')
                        .append(figure(jump.garment));
                if (grade.body().isPresent()) {
                    words.append(" (body ").append(figure(jump.body)).append(')');
                }
                words.append("; ");
            }
        }
        return words.append("lengths in ").append(unit.symbol()).append('.').toString();
    }

    private String figure(OptionalDouble millimetres) {
        return millimetres.isPresent() ? unit.format(millimetres.getAsDouble()) : "no figure";
    }

    private void legend() {
        bar(MARGIN, 14, 5, 4, Kind.GARMENT);
        text(MARGIN + 7, 17.4, "start", 3.2, "garment");
        if (grade.body().isPresent()) {
            bar(MARGIN + 30, 14, 5, 4, Kind.BODY);
            text(
                    MARGIN + 37,
                    17.4,
                    "start",
                    3.2,
                    "body, " + grade.body().get().table().id());
            if (grade.body().get().survey().isPresent()) {
                whisker(MARGIN + 120, 14, 18);
                text(MARGIN + 123, 17.4, "start", 3.2, "mean body, survey, 95 %");
            }
            text(
                    MARGIN,
                    24,
                    "start",
                    2.4,
                    shortened(grade.body().get().table().info().source()));
        }
    }

    private static String shortened(String text) {
        return text.length() > 130 ? text.substring(0, 130) + "\u2026" : text;
    }

    private void panel(Panel panel, double top, double width) {
        double range = Math.max(panel.highest - panel.lowest, 1e-3);
        double zero = top + 10 + BARS * panel.highest / range;
        double scale = BARS / range;
        out.raw("<g").attribute("data-measure", panel.measure.code()).raw(">\n");
        text(MARGIN, top + 4, "start", 3.6, panel.title);
        line(MARGIN + AXIS - 4, zero, width - MARGIN, zero, 0.25);
        text(MARGIN + AXIS - 6, zero + 1.1, "end", 3.2, "0");
        for (int i = 0; i < panel.jumps.size(); i++) {
            Jump jump = panel.jumps.get(i);
            double x = MARGIN + AXIS + STEP * i;
            if (jump.garment.isPresent()) {
                drawn(x, zero, scale, jump.garment.getAsDouble(), Kind.GARMENT);
            }
            if (jump.body.isPresent()) {
                drawn(x + BAR + 1.5, zero, scale, jump.body.getAsDouble(), Kind.BODY);
            } else if (grade.body().isPresent()) {
                text(x + BAR * 1.5 + 1.5, zero - 1, "middle", 2.8, "?");
            }
            jump.survey.ifPresent(survey -> whisker(
                    x + 2 * BAR + 3.5,
                    zero - scale * survey.interval().upper(),
                    zero - scale * survey.interval().lower()));
            text(x + BAR, top + 10 + BARS + 7.5, "middle", 2.8, jump.from + "\u2013" + jump.to);
        }
        out.raw("</g>\n");
    }

    private void drawn(double x, double zero, double scale, double jump, Kind kind) {
        double end = zero - scale * jump;
        bar(x, Math.min(zero, end), BAR, Math.abs(end - zero), kind);
        text(x + BAR / 2, jump < 0 ? end + 3.2 : end - 1, "middle", 2.6, unit.format(jump));
    }

    private void bar(double x, double y, double width, double height, Kind kind) {
        out.raw("<rect")
                .attribute("x", x)
                .attribute("y", y)
                .attribute("width", width)
                .attribute("height", height);
        out.raw(kind.style);
    }

    private void whisker(double x, double top, double bottom) {
        out.raw("<path class=\"survey\" fill=\"none\" stroke=\"#000\" stroke-width=\"0.35\" d=\"M");
        out.pair(x - 1, top)
                .raw("H")
                .number(x + 1)
                .raw("M")
                .pair(x, top)
                .raw("V")
                .number(bottom);
        out.raw("M").pair(x - 1, bottom).raw("H").number(x + 1).raw("\"/>\n");
    }

    private void line(double x1, double y1, double x2, double y2, double stroke) {
        out.raw("<line")
                .attribute("x1", x1)
                .attribute("y1", y1)
                .attribute("x2", x2)
                .attribute("y2", y2);
        out.attribute("stroke-width", stroke).raw(" stroke=\"#000\"/>\n");
    }

    private void text(double x, double y, String anchor, double size, String words) {
        out.raw("<text").attribute("x", x).attribute("y", y).attribute("text-anchor", anchor);
        out.attribute("font-size", size).raw(">").words(words).raw("</text>\n");
    }
}
