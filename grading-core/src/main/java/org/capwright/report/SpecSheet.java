package org.capwright.report;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.capwright.exchange.PrintedName;
import org.capwright.grade.SpecTable;
import org.capwright.pattern.PatternSet;
import org.capwright.quantity.Unit;
import org.capwright.words.Language;
import org.capwright.words.Text;

/** The spec table as bands: each point of measure with its values, and the jumps between the columns they lie between. */
final class SpecSheet {

    private SpecSheet() {}

    static List<Band> bands(PatternSet set, double width) {
        SpecTable table = SpecTable.of(set.run());
        Unit unit = set.title().unit();
        Language language = set.title().language();
        Function<Double, String> figure = length -> language.figures(unit.format(length));
        List<FigureTable.Row> rows = table.rows().stream()
                .map(row -> new FigureTable.Row(
                        language.say(row.name()),
                        TextBands.BODY,
                        row.values().stream().map(figure).toList(),
                        row.jumps().stream()
                                .map(figure)
                                .map(PrintedName::signed)
                                .toList(),
                        figure.apply(row.tolerance())))
                .toList();
        List<Band> bands = new ArrayList<>();
        bands.add(TextBands.heading(
                Text.of("Spec table, {unit}").with("unit", unit.symbol()).in(language)));
        bands.addAll(
                new FigureTable(language.say("Point of measure"), table.sizes(), table.base(), "±").bands(rows, width));
        return bands;
    }
}
