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

/** Who of the people surveyed finds a size: a bar for the whole, one per size, and the gaps in words. */
final class CoverageBands {

    private static final double CONFIDENCE = 0.95;
    private static final double NAME = 24;
    private static final double FIGURES = 42;

    private CoverageBands() {}

    static List<Band> bands(RunCoverage.Covered covered, Unit unit, double width) {
        Coverage coverage = covered.coverage();
        Interval range = coverage.shareInterval(CONFIDENCE);
        List<Band> bands = new ArrayList<>();
        String symbol = " " + unit.symbol();
        bands.addAll(TextBands.paragraph(
                percent(coverage.share())
                        + " of the people surveyed find a size whose sleeve fits upper arm and arm length both ("
                        + coverage.covered() + " of " + coverage.people() + "; " + percent(range.lower()) + " to "
                        + percent(range.upper())
                        + " of the population of the survey, 95 % confidence). A size fits as the base"
                        + " size fits its own body, give or take "
                        + unit.format(covered.girthSlack()) + symbol + " of girth and "
                        + unit.format(covered.lengthSlack()) + symbol + " of length.",
                width));
        bands.add(bar("all sizes", coverage.covered(), coverage.people(), width, TextBands.BOLD));
        for (Map.Entry<String, Integer> size : coverage.peopleBySize().entrySet()) {
            bands.add(bar(size.getKey(), size.getValue(), coverage.people(), width, TextBands.BODY));
        }
        bands.add(Band.of(2, (canvas, left, top) -> {}));
        for (CoverageGap gap : coverage.gaps()) {
            bands.addAll(TextBands.paragraph(words(gap, coverage, unit), width));
        }
        bands.addAll(TextBands.small(
                "Survey: " + coverage.survey().source()
                        + ". It says nothing of other populations. Slack of length: common" + " practice, no source.",
                width));
        return bands;
    }

    private static String words(CoverageGap gap, Coverage coverage, Unit unit) {
        String where = switch (gap.place()) {
            case BELOW -> "below the smallest size";
            case BETWEEN -> "between two sizes";
            case ABOVE -> "above the largest size";
        };
        return PrintedName.capital(gap.dimension().id()) + " "
                + unit.format(gap.range().lower()) + " to "
                + unit.format(gap.range().upper()) + " " + unit.symbol() + ", "
                + where + ": " + gap.people() + " people, " + percent((double) gap.people() / coverage.people()) + ".";
    }

    private static String percent(double share) {
        return String.format(Locale.ROOT, "%.1f %%", 100 * share);
    }

    private static Band bar(String name, int people, int all, double width, Letters letters) {
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
                    people + " people, " + percent((double) people / all));
        });
    }
}
