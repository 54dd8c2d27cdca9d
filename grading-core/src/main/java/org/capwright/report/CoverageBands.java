package org.capwright.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.capwright.check.RunCoverage;
import org.capwright.drawing.Ink;
import org.capwright.drawing.Letters;
import org.capwright.drawing.Place;
import org.capwright.exchange.PrintedName;
import org.capwright.quantity.Unit;
import org.capwright.tables.Interval;
import org.capwright.tables.survey.Coverage;
import org.capwright.tables.survey.CoverageGap;
import org.capwright.words.Language;
import org.capwright.words.Text;

/** Who of the people surveyed finds a size: a bar for the whole, one per size, and the gaps in words. */
final class CoverageBands {

    private static final double CONFIDENCE = 0.95;
    private static final double NAME = 24;
    private static final double FIGURES = 42;

    private CoverageBands() {}

    static List<Band> bands(RunCoverage.Covered covered, Unit unit, Language language, double width) {
        Coverage coverage = covered.coverage();
        Interval range = coverage.shareInterval(CONFIDENCE);
        List<Band> bands = new ArrayList<>();
        bands.addAll(TextBands.paragraph(
                Text.of("{share} of the people surveyed find a size whose sleeve fits upper arm and arm length both"
                                + " ({covered} of {people}; {lower} to {upper} of the population of the survey, 95 % confidence)."
                                + " A size fits as the base size fits its own body, give or take {girth} of girth and {length} of"
                                + " length.")
                        .with("share", percent(coverage.share()))
                        .with("covered", coverage.covered())
                        .with("people", coverage.people())
                        .with("lower", percent(range.lower()))
                        .with("upper", percent(range.upper()))
                        .with("girth", Text.figures(unit.format(covered.girthSlack()) + " " + unit.symbol()))
                        .with("length", Text.figures(unit.format(covered.lengthSlack()) + " " + unit.symbol()))
                        .in(language),
                width));
        bands.add(
                bar(language.say("all sizes"), coverage.covered(), coverage.people(), language, width, TextBands.BOLD));
        for (Map.Entry<String, Integer> size : coverage.peopleBySize().entrySet()) {
            bands.add(bar(size.getKey(), size.getValue(), coverage.people(), language, width, TextBands.BODY));
        }
        bands.add(Band.of(2, (canvas, left, top) -> {}));
        for (CoverageGap gap : coverage.gaps()) {
            bands.addAll(TextBands.paragraph(words(gap, coverage, unit).in(language), width));
        }
        bands.addAll(TextBands.small(
                Text.of("Survey: {survey}. It says nothing of other populations. Slack of length: common practice, no"
                                + " source.")
                        .with("survey", coverage.survey().source())
                        .in(language),
                width));
        return bands;
    }

    private static Text words(CoverageGap gap, Coverage coverage, Unit unit) {
        return Text.of(
                        switch (gap.place()) {
                            case BELOW ->
                                "{measure} {lower} to {upper}, below the smallest size: {people} people, {share}.";
                            case BETWEEN ->
                                "{measure} {lower} to {upper}, between two sizes: {people} people, {share}.";
                            case ABOVE ->
                                "{measure} {lower} to {upper}, above the largest size: {people} people, {share}.";
                        })
                .with("measure", Text.of(PrintedName.capital(gap.dimension().id())))
                .with("lower", Text.figures(unit.format(gap.range().lower())))
                .with("upper", Text.figures(unit.format(gap.range().upper()) + " " + unit.symbol()))
                .with("people", gap.people())
                .with("share", percent((double) gap.people() / coverage.people()));
    }

    private static Text percent(double share) {
        return Text.figures(String.format(Locale.ROOT, "%.1f %%", 100 * share));
    }

    private static Band bar(String name, int people, int all, Language language, double width, Letters letters) {
        double room = width - NAME - FIGURES;
        return Band.of(5, (canvas, left, top) -> {
            canvas.text(letters.within(name, NAME - 2), Place.LEFT, left, top - 3.5, name);
            canvas.ink(Ink.TINT).box(left + NAME, top - 4.1, room, 3.2).fill();
            canvas.ink(Ink.ACCENT)
                    .box(left + NAME, top - 4.1, room * people / all, 3.2)
                    .fill();
            canvas.text(
                    letters,
                    Place.RIGHT,
                    left + width,
                    top - 3.5,
                    Text.of("{people} people, {share}")
                            .with("people", people)
                            .with("share", percent((double) people / all))
                            .in(language));
        });
    }
}
