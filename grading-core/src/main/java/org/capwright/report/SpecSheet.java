package org.capwright.report;

import java.util.ArrayList;
import java.util.List;
import org.capwright.exchange.PrintedName;
import org.capwright.grade.SpecTable;
import org.capwright.pattern.PatternSet;
import org.capwright.quantity.Unit;

/** The spec table as bands: each point of measure with its values, and the jumps between the columns they lie between. */
final class SpecSheet {

    private SpecSheet() {}

    static List<Band> bands(PatternSet set, double width) {
        SpecTable table = SpecTable.of(set.run());
        Unit unit = set.title().unit();
        List<FigureTable.Row> rows = table.rows().stream()
                .map(row -> new FigureTable.Row(
                        row.name(),
                        TextBands.BODY,
                        row.values().stream().map(unit::format).toList(),
                        row.jumps().stream()
                                .map(unit::format)
                                .map(PrintedName::signed)
                                .toList(),
                        unit.format(row.tolerance())))
                .toList();
        List<Band> bands = new ArrayList<>();
        bands.add(TextBands.heading("Spec table, " + unit.symbol()));
        bands.addAll(new FigureTable("Point of measure", table.sizes(), table.base(), "±").bands(rows, width));
        return bands;
    }
}
