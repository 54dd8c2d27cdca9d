package org.capwright.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.capwright.check.BodyReference;
import org.capwright.check.CheckedGrade;
import org.capwright.check.CheckedMeasure;
import org.capwright.exchange.PrintedName;
import org.capwright.quantity.Unit;
import org.capwright.tables.BodyDimension;
import org.capwright.words.Language;

/** The jumps of a grade as rows of a table, a column for each interval between neighbouring sizes. */
final class JumpTable {

    private JumpTable() {}

    static List<Band> bands(CheckedGrade grade, List<FigureTable.Row> rows, double width) {
        return new FigureTable("", intervals(grade), -1, "").bands(rows, width);
    }

    private static List<String> intervals(CheckedGrade grade) {
        List<String> names = new ArrayList<>();
        for (int i = 0; i < grade.intervals(); i++) {
            names.add(String.join("–", grade.pair(i)));
        }
        return names;
    }

    /** Garment, body, and what the garment has more, for every measure that a body has. */
    static List<FigureTable.Row> jumps(CheckedGrade grade, Unit unit, Language language) {
        List<FigureTable.Row> rows = new ArrayList<>();
        for (CheckedMeasure measure : CheckedMeasure.values()) {
            List<String> garment = new ArrayList<>();
            List<String> body = new ArrayList<>();
            List<String> more = new ArrayList<>();
            Optional<BodyDimension> dimension = grade.body().flatMap(reference -> reference.counterpart(measure));
            for (int i = 0; i < grade.intervals(); i++) {
                OptionalDouble jump = grade.jump(i, measure);
                OptionalDouble grown = grown(grade, dimension, i);
                garment.add(
                        jump.isPresent() ? PrintedName.signed(language.figures(unit.format(jump.getAsDouble()))) : "");
                body.add(
                        grown.isPresent()
                                ? PrintedName.signed(language.figures(unit.format(grown.getAsDouble())))
                                : "");
                more.add(
                        jump.isPresent() && grown.isPresent()
                                ? PrintedName.signed(
                                        language.figures(unit.format(jump.getAsDouble() - grown.getAsDouble())))
                                : "");
            }
            if (measure.body().isEmpty() || garment.stream().allMatch(String::isEmpty)) {
                continue;
            }
            rows.add(FigureTable.Row.of(language.say(PrintedName.capital(measure.code())), TextBands.BOLD, garment));
            dimension.ifPresent(of -> {
                rows.add(FigureTable.Row.of("   " + language.say(PrintedName.of(of.id())), TextBands.BODY, body));
                rows.add(FigureTable.Row.of("   " + language.say("garment less body"), TextBands.BODY, more));
            });
        }
        return rows;
    }

    private static OptionalDouble grown(CheckedGrade grade, Optional<BodyDimension> dimension, int interval) {
        Optional<BodyReference> body = grade.body();
        return body.isPresent() && dimension.isPresent()
                ? body.get().jump(grade.label(interval), grade.label(interval + 1), dimension.get())
                : OptionalDouble.empty();
    }
}
