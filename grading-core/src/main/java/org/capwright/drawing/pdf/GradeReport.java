package org.capwright.drawing.pdf;

import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.capwright.check.CheckedGrade;
import org.capwright.check.Finding;
import org.capwright.check.RunCoverage;
import org.capwright.check.Severity;
import org.capwright.check.WhatIf;
import org.capwright.exchange.PrintedName;
import org.capwright.measure.Unit;

/**
 * A checked grade as a report on A4: verdict, the jumps drawn beside those of the body, every finding with its source and remedy, the jumps as a table, what-if and coverage. Severity and
 * bars differ in shape and fill, so that a print in black and white tells as much. The same report gives the same bytes.
 *
 * @param name name of the style
 * @param unit unit of the figures
 * @param grade what was checked
 * @param findings what was found
 * @param whatIf the change of the rules that clears the stops, if one was looked for
 * @param coverage who of a survey finds a size, if it was counted
 */
public record GradeReport(
        String name,
        Unit unit,
        CheckedGrade grade,
        List<Finding> findings,
        Optional<WhatIf.Proposal> whatIf,
        Optional<RunCoverage.Covered> coverage) {

    private static final double FOOT = 8;

    /**
     * Copies the findings.
     *
     * @param name name of the style
     * @param unit unit of the figures
     * @param grade what was checked
     * @param findings what was found
     * @param whatIf the change of the rules that clears the stops, if one was looked for
     * @param coverage who of a survey finds a size, if it was counted
     */
    public GradeReport {
        findings = List.copyOf(findings);
    }

    /**
     * Writes the report as PDF.
     *
     * @param out where the file goes; it is not closed
     * @throws IOException if it cannot be written
     */
    public void write(OutputStream out) throws IOException {
        Lettering lettering = new Lettering();
        CoverFlow flow =
                CoverFlow.within(Paper.A4.width() - 2 * Paper.MARGIN, Paper.A4.height() - 2 * Paper.MARGIN - FOOT);
        List<Canvas> pages = flow.pages(bands(flow.columnWidth()), lettering);
        for (int i = 0; i < pages.size(); i++) {
            foot(pages.get(i), flow, i + 1, pages.size());
        }
        PlainDocument.save(
                name,
                "Report of a checked grade, sizes " + String.join(", ", labels()),
                Paper.A4,
                pages,
                lettering,
                out);
    }

    private List<String> labels() {
        return grade.sizes().stream().map(size -> size.label()).toList();
    }

    private void foot(Canvas canvas, CoverFlow flow, int page, int pages) {
        double y = -flow.height() - FOOT + 1;
        String words = "page " + page + " of " + pages;
        canvas.ink(Ink.QUIET)
                .text(
                        Typeface.REGULAR,
                        Typeface.REGULAR.sizeWithin(name, 2.5, flow.width() - 40),
                        Canvas.Place.LEFT,
                        0,
                        y,
                        name)
                .text(Typeface.REGULAR, 2.5, Canvas.Place.RIGHT, flow.width(), y, words);
    }

    private List<Band> bands(double width) {
        List<Band> bands = new ArrayList<>();
        title(bands, width);
        verdict(bands, width);
        List<Band> chart = JumpPanels.bands(grade, unit, findings, width);
        if (!chart.isEmpty()) {
            bands.add(Cover.heading("Jumps from size to size").keptWithNext());
            bands.addAll(chart);
        }
        if (!findings.isEmpty()) {
            bands.add(Cover.heading("Findings").keptWithNext());
            bands.addAll(FindingBands.bands(findings, unit, width));
            bands.add(space());
        }
        whatIf.ifPresent(proposal -> whatIf(bands, proposal, width));
        List<JumpTable.Row> rows = JumpTable.jumps(grade, unit);
        if (!rows.isEmpty()) {
            bands.add(Cover.heading("Table of jumps, " + unit.symbol()).keptWithNext());
            bands.addAll(JumpTable.bands(JumpTable.intervals(grade), rows, width));
        }
        coverage.ifPresent(covered -> {
            bands.add(Cover.heading("Who finds a size").keptWithNext());
            bands.addAll(CoverageBands.bands(covered, unit, width));
            bands.add(space());
        });
        sources(bands, width);
        return bands;
    }

    private static Band space() {
        return Band.of(3, (canvas, left, top) -> {});
    }

    private void title(List<Band> bands, double width) {
        List<String> style = Wrapped.lines(name, Typeface.BOLD, 7.4, width);
        String line = "Grade held against bodies   ·   sizes " + SizeNames.sizes(labels()) + "   ·   base size "
                + grade.baseSize().label() + "   ·   figures in " + unit.symbol();
        bands.add(Band.of(8.6 * style.size() + 9, (canvas, left, top) -> {
            canvas.ink(Ink.TEXT);
            for (int i = 0; i < style.size(); i++) {
                canvas.text(Typeface.BOLD, 7.4, Canvas.Place.LEFT, left, top - 6 - 8.6 * i, style.get(i));
            }
            double y = top - 8.6 * style.size() - 2.6;
            canvas.ink(Ink.QUIET)
                    .text(
                            Typeface.REGULAR,
                            Typeface.REGULAR.sizeWithin(line, 3.5, width),
                            Canvas.Place.LEFT,
                            left,
                            y,
                            line);
            canvas.stroke(Stroke.solid(Ink.ACCENT, 0.6)).line(left, y - 2.6, left + width, y - 2.6);
        }));
    }

    private long count(Severity severity) {
        return findings.stream()
                .filter(finding -> finding.severity() == severity)
                .count();
    }

    private void verdict(List<Band> bands, double width) {
        String words = count(Severity.STOP) > 0
                ? "Do not cut before the stops are mended or meant."
                : count(Severity.CAUTION) > 0
                        ? "Nothing stops this grade. Look at the cautions before cutting."
                        : "Nothing stops this grade.";
        bands.add(Band.of(20, (canvas, left, top) -> {
            canvas.ink(Ink.TINT).box(left, top - 17, width, 16).fill();
            double x = left + 6;
            for (Severity severity : List.of(Severity.STOP, Severity.CAUTION, Severity.INFO)) {
                SeverityMark.draw(canvas, severity, x, top - 9, 5);
                canvas.ink(Ink.TEXT)
                        .text(Typeface.BOLD, 6, Canvas.Place.LEFT, x + 5, top - 11.2, Long.toString(count(severity)));
                canvas.ink(Ink.QUIET)
                        .text(
                                Typeface.REGULAR,
                                2.7,
                                Canvas.Place.LEFT,
                                x + 6.5 + Typeface.BOLD.width(Long.toString(count(severity)), 6),
                                top - 11.2,
                                SeverityMark.word(severity).toLowerCase(java.util.Locale.ROOT));
                x += 29;
            }
            canvas.ink(Ink.TEXT)
                    .text(
                            Typeface.BOLD,
                            Typeface.BOLD.sizeWithin(words, 3.6, width - 100),
                            Canvas.Place.LEFT,
                            left + 95,
                            top - 10.4,
                            words);
        }));
    }

    private void whatIf(List<Band> bands, WhatIf.Proposal proposal, double width) {
        bands.add(Cover.heading("What if: the smallest change of the rules").keptWithNext());
        List<JumpTable.Row> rows = new ArrayList<>();
        for (WhatIf.Change change : proposal.changes()) {
            String dimension = PrintedName.capital(change.dimension().gradeName());
            rows.add(new JumpTable.Row(
                    dimension + ", as it is", figures(change.before().increments()), Typeface.REGULAR));
            rows.add(new JumpTable.Row(
                    dimension + ", proposed", figures(change.after().increments()), Typeface.BOLD));
        }
        bands.addAll(TextBands.paragraph(
                proposal.changes().isEmpty()
                        ? "No change of the grade rules clears these stops; the base size itself has to change."
                        : proposal.cleared()
                                ? "With these rules, drafted anew and checked, no stop is left. Increments in "
                                        + unit.symbol() + "."
                                : "With these rules, drafted anew and checked, some stops are left: they lie in the base size or"
                                        + " in lines that no rule moves. Increments in " + unit.symbol() + ".",
                width));
        if (!rows.isEmpty()) {
            bands.addAll(JumpTable.bands(JumpTable.intervals(grade), rows, width));
        }
        if (!proposal.cleared() && !proposal.changes().isEmpty()) {
            bands.addAll(FindingBands.bands(proposal.remaining(), unit, width));
            bands.add(space());
        }
    }

    private List<String> figures(List<Double> increments) {
        return increments.stream().map(unit::format).map(PrintedName::signed).toList();
    }

    private void sources(List<Band> bands, double width) {
        bands.add(Cover.heading("Sources").keptWithNext());
        grade.body()
                .ifPresentOrElse(
                        body -> {
                            bands.addAll(TextBands.small(
                                    "Bodies: " + body.table().info().title() + ". "
                                            + body.table().info().source() + ".",
                                    width));
                            body.survey()
                                    .ifPresent(survey -> bands.addAll(
                                            TextBands.small("Second opinion: " + survey.source() + ".", width)));
                        },
                        () -> bands.addAll(TextBands.small(
                                "No table of bodies was chosen: the grade was held against itself alone.", width)));
        bands.addAll(TextBands.small(
                "Every finding names the source of its limit; where it says common practice, no source, no publication gives"
                        + " the figure. A report is no substitute for a toile.",
                width));
    }
}
