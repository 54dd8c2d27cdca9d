package org.capwright.report;

import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.capwright.check.Cause;
import org.capwright.check.CheckedGrade;
import org.capwright.check.Finding;
import org.capwright.check.RunCoverage;
import org.capwright.check.Severity;
import org.capwright.check.WhatIf;
import org.capwright.drawing.Canvas;
import org.capwright.drawing.Ink;
import org.capwright.drawing.Letters;
import org.capwright.drawing.Place;
import org.capwright.drawing.pdf.PdfCanvas;
import org.capwright.drawing.pdf.PdfFile;
import org.capwright.exchange.PrintedName;
import org.capwright.gradeimport.Unread;
import org.capwright.quantity.Unit;
import org.capwright.words.Language;
import org.capwright.words.Text;

/**
 * A checked grade as a report on A4: verdict, the jumps drawn beside those of the body, every finding with its source and remedy, the jumps as a table, what-if and coverage. Severity and
 * bars differ in shape and fill, so that a print in black and white tells as much. The same report gives the same bytes.
 *
 * @param name name of the style
 * @param unit unit of the figures
 * @param language what the report is written in
 * @param grade what was checked
 * @param findings what was found
 * @param cures the fewest figures whose change takes findings away, the most telling first
 * @param whatIf the change of the rules that clears the stops, if one was looked for
 * @param coverage who of a survey finds a size, if it was counted
 */
public record GradeReport(
        String name,
        Unit unit,
        Language language,
        CheckedGrade grade,
        List<Finding> findings,
        List<WhatIf.Cure> cures,
        Optional<WhatIf.Proposal> whatIf,
        Optional<RunCoverage.Covered> coverage) {

    private static final double FOOT = 8;

    /**
     * Copies the lists.
     *
     * @param name name of the style
     * @param unit unit of the figures
     * @param language what the report is written in
     * @param grade what was checked
     * @param findings what was found
     * @param cures the fewest figures whose change takes findings away, the most telling first
     * @param whatIf the change of the rules that clears the stops, if one was looked for
     * @param coverage who of a survey finds a size, if it was counted
     */
    public GradeReport {
        findings = List.copyOf(findings);
        cures = List.copyOf(cures);
    }

    /**
     * Writes the report as PDF.
     *
     * @param out where the file goes; it is not closed
     * @throws IOException if it cannot be written
     */
    public void write(OutputStream out) throws IOException {
        PdfFile file = new PdfFile(language);
        Paper.Sheets paper = Paper.A4;
        CoverFlow flow = CoverFlow.within(paper.width() - 2 * Paper.MARGIN, paper.height() - 2 * Paper.MARGIN - FOOT);
        List<PdfCanvas> pages = flow.pages(bands(flow.columnWidth()), file);
        for (int i = 0; i < pages.size(); i++) {
            foot(pages.get(i), flow, i + 1, pages.size());
            file.add(new PdfFile.Page(paper.width(), paper.height(), Paper.MARGIN, pages.get(i)));
        }
        String subject = Text.of("Report of a checked grade, sizes {sizes}")
                .with("sizes", Text.names(labels()))
                .in(language);
        file.save(name, subject, labels(), Optional.empty(), PdfFile.Scale.AS_USUAL, out);
    }

    private List<String> labels() {
        return grade.sizes().stream().map(size -> size.label()).toList();
    }

    private void foot(Canvas canvas, CoverFlow flow, int page, int pages) {
        double y = -flow.height() - FOOT + 1;
        String words = Text.of("page {page} of {pages}")
                .with("page", page)
                .with("pages", pages)
                .in(language);
        canvas.text(Letters.regular(2.5, Ink.QUIET).within(name, flow.width() - 40), Place.LEFT, 0, y, name)
                .text(Letters.regular(2.5, Ink.QUIET), Place.RIGHT, flow.width(), y, words);
    }

    private List<Band> bands(double width) {
        List<Band> bands = new ArrayList<>();
        bands.add(title(width));
        verdict(bands, width);
        List<Cause> causes = Cause.of(cures, findings);
        causes(bands, causes, width);
        List<Band> chart = JumpChart.bands(grade, unit, language, findings, width);
        if (!chart.isEmpty()) {
            bands.add(TextBands.heading(language.say("Jumps from size to size")));
            bands.addAll(chart);
        }
        if (!findings.isEmpty()) {
            bands.add(TextBands.heading(language.say("Findings")));
            for (int i = 0; i < causes.size(); i++) {
                if (causes.size() > 1) {
                    bands.addAll(TextBands.paragraph(
                            causes.get(i).cure().isPresent()
                                    ? (i + 1) + ". " + causes.get(i).words().in(language)
                                    : language.say("Findings of their own:"),
                            width));
                }
                bands.addAll(FindingBands.bands(causes.get(i).findings(), unit, language, width));
            }
            bands.add(TextBands.space());
        }
        whatIf.ifPresent(proposal -> whatIf(bands, proposal, width));
        List<FigureTable.Row> rows = JumpTable.jumps(grade, unit, language);
        if (!rows.isEmpty()) {
            bands.add(TextBands.heading(Text.of("Table of jumps, {unit}")
                    .with("unit", unit.symbol())
                    .in(language)));
            bands.addAll(JumpTable.bands(grade, rows, width));
        }
        coverage.ifPresent(covered -> {
            bands.add(TextBands.heading(language.say("Who finds a size")));
            bands.addAll(CoverageBands.bands(covered, unit, language, width));
            bands.add(TextBands.space());
        });
        sources(bands, width);
        return bands;
    }

    /** The report opens with what is behind its findings: the figure, where it stands, and what mends it. */
    private void causes(List<Band> bands, List<Cause> causes, double width) {
        if (causes.stream().allMatch(cause -> cause.cure().isEmpty())) {
            return;
        }
        bands.add(TextBands.heading(language.say("What is behind it")));
        for (int i = 0; i < causes.size(); i++) {
            Cause cause = causes.get(i);
            String number = (i + 1) + ". ";
            cause.cure()
                    .ifPresent(cure -> bands.addAll(TextBands.paragraph(
                            number + cause.words().in(language) + " "
                                    + Text.of("It is {before}; {after} mends it. From {lower} to {upper} passes as"
                                                    + " well.")
                                            .with("before", length(cure.before()))
                                            .with("after", length(cure.after()))
                                            .with(
                                                    "lower",
                                                    Text.figures(unit.format(
                                                            cure.passing().lower())))
                                            .with("upper", length(cure.passing().upper()))
                                            .in(language),
                            width)));
        }
        bands.add(TextBands.space());
    }

    private Band title(double width) {
        String line = Text.joined(
                        List.of(
                                Text.of("Grade checked against body measurements"),
                                Text.of("sizes {sizes}").with("sizes", SizeNames.sizes(labels())),
                                Text.of("base size {size}")
                                        .with("size", grade.baseSize().label()),
                                Text.of("figures in {unit}").with("unit", unit.symbol())),
                        "   ·   ")
                .in(language);
        return TextBands.title(name, line, width);
    }

    private long count(Severity severity) {
        return findings.stream()
                .filter(finding -> finding.severity() == severity)
                .count();
    }

    private void verdict(List<Band> bands, double width) {
        long unread = findings.stream().filter(Unread::is).count();
        String words = Text.of(
                        unread == 1
                                ? "Not judged: {count} part of the file not read."
                                : unread > 0
                                        ? "Not judged: {count} parts of the file not read."
                                        : count(Severity.STOP) > 0
                                                ? "Do not cut before every stop is corrected, or known to be intended."
                                                : count(Severity.CAUTION) > 0
                                                        ? "Nothing stops this grade. Look at the cautions before"
                                                                + " cutting."
                                                        : "Nothing stops this grade.")
                .with("count", unread)
                .in(language);
        bands.add(Band.of(20, (canvas, left, top) -> {
            canvas.ink(Ink.TINT).box(left, top - 17, width, 16).fill();
            double x = left + 6;
            for (Severity severity : List.of(Severity.STOP, Severity.CAUTION, Severity.INFO)) {
                SeverityMark.draw(canvas, severity, x, top - 9, 5);
                String number = Long.toString(count(severity));
                Letters large = Letters.bold(6, Ink.TEXT);
                canvas.text(large, Place.LEFT, x + 5, top - 11.2, number);
                String word = language.say(SeverityMark.word(severity)).toLowerCase(Locale.ROOT);
                canvas.text(
                        Letters.regular(2.7, Ink.QUIET), Place.LEFT, x + 6.5 + large.width(number), top - 11.2, word);
                x += 29;
            }
            canvas.text(
                    Letters.bold(3.6, Ink.TEXT).within(words, width - 100), Place.LEFT, left + 95, top - 10.4, words);
        }));
    }

    private void whatIf(List<Band> bands, WhatIf.Proposal proposal, double width) {
        bands.add(TextBands.heading(language.say("What if: the smallest change of the rules")));
        List<FigureTable.Row> rows = new ArrayList<>();
        for (WhatIf.Change change : proposal.changes()) {
            Text dimension = Text.of(PrintedName.capital(change.dimension().gradeName()));
            rows.add(FigureTable.Row.of(
                    Text.of("{dimension}, as it is")
                            .with("dimension", dimension)
                            .in(language),
                    TextBands.BODY,
                    figures(change.before().increments())));
            rows.add(FigureTable.Row.of(
                    Text.of("{dimension}, proposed")
                            .with("dimension", dimension)
                            .in(language),
                    TextBands.BOLD,
                    figures(change.after().increments())));
        }
        bands.addAll(TextBands.paragraph(
                Text.of(
                                proposal.changes().isEmpty()
                                        ? "No change of the grade rules clears the gravest of these findings; the base"
                                                + " size itself has to change."
                                        : !proposal.cleared()
                                                ? "With these rules, drafted again and checked, some of the gravest"
                                                        + " findings are left: they lie in the base size or in lines"
                                                        + " that no rule moves. Increments in {unit}."
                                                : stopped()
                                                        ? "With these rules, drafted again and checked, no stop is"
                                                                + " left. Increments in {unit}."
                                                        : "With these rules, drafted again and checked, no caution is"
                                                                + " left. Increments in {unit}.")
                        .with("unit", unit.symbol())
                        .in(language),
                width));
        if (!rows.isEmpty()) {
            bands.addAll(JumpTable.bands(grade, rows, width));
        }
        if (!proposal.cleared() && !proposal.changes().isEmpty()) {
            bands.addAll(FindingBands.bands(proposal.remaining(), unit, language, width));
            bands.add(TextBands.space());
        }
    }

    private boolean stopped() {
        return findings.stream().anyMatch(finding -> finding.severity() == Severity.STOP);
    }

    private List<String> figures(List<Double> increments) {
        return increments.stream()
                .map(unit::format)
                .map(language::figures)
                .map(PrintedName::signed)
                .toList();
    }

    private void sources(List<Band> bands, double width) {
        bands.add(TextBands.heading(language.say("Sources")));
        grade.body()
                .ifPresentOrElse(
                        body -> {
                            bands.addAll(TextBands.small(
                                    Text.of("Bodies: {table}. {source}.")
                                            .with("table", body.table().info().title())
                                            .with("source", body.table().info().source())
                                            .in(language),
                                    width));
                            body.survey()
                                    .ifPresent(survey -> bands.addAll(TextBands.small(
                                            Text.of("Second opinion: {survey}.")
                                                    .with("survey", survey.source())
                                                    .in(language),
                                            width)));
                        },
                        () -> bands.addAll(TextBands.small(
                                language.say("No body table was chosen: the grade was only checked against itself."),
                                width)));
        bands.addAll(TextBands.small(
                language.say("Every finding names the source of its limit; where it says common practice, no source, no"
                        + " publication gives the figure. A report is no substitute for a toile."),
                width));
    }

    private Text length(double millimetres) {
        return Text.figures(unit.format(millimetres) + " " + unit.symbol());
    }
}
