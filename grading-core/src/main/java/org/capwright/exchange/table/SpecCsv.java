package org.capwright.exchange.table;

import java.util.List;
import java.util.Optional;
import org.capwright.grade.PointOfMeasure;
import org.capwright.grade.SpecTable;
import org.capwright.pattern.PatternSet;
import org.capwright.quantity.Decimals;
import org.capwright.quantity.Rounding;

/**
 * Writes a spec table as comma-separated values by RFC 4180: CRLF, a header line, quotes where a field needs them. One line per point of measure; figures per
 * size, then the jumps.
 */
public final class SpecCsv {

    /** Decimals of an unrounded figure: a millionth of any unit. */
    private static final int DECIMALS = 6;

    private SpecCsv() {}

    /**
     * The table as text.
     *
     * @param title style, revision and the unit of the figures
     * @param table the spec table
     * @param rounding the grid for the figures; none leaves them unrounded
     * @return the file, every line ended by CRLF
     */
    public static String write(PatternSet.Title title, SpecTable table, Optional<Rounding> rounding) {
        StringBuilder out = new StringBuilder(256 * (table.rows().size() + 1));
        String unit = title.unit().symbol();
        out.append("style,revision,code,point of measure,unit");
        for (String size : table.sizes()) {
            CsvText.field(out.append(','), size);
        }
        for (int i = 1; i < table.sizes().size(); i++) {
            CsvText.field(
                    out.append(','),
                    "jump " + table.sizes().get(i - 1) + " to " + table.sizes().get(i));
        }
        out.append(",tolerance,base size,how measured,tolerance source\r\n");
        for (PointOfMeasure row : table.rows()) {
            CsvText.field(out, title.style());
            CsvText.field(out.append(','), title.revision());
            CsvText.field(out.append(','), row.code());
            CsvText.field(out.append(','), title.language().say(row.name()));
            out.append(',').append(unit);
            List<Double> values = shown(row.values(), rounding);
            for (double value : values) {
                out.append(',').append(figure(title, value));
            }
            for (int i = 1; i < values.size(); i++) {
                out.append(',').append(figure(title, values.get(i) - values.get(i - 1)));
            }
            out.append(',').append(figure(title, row.tolerance()));
            CsvText.field(out.append(','), table.sizes().get(table.base()));
            CsvText.field(out.append(','), title.language().say(row.definition()));
            CsvText.field(out.append(','), title.language().say(row.toleranceSource()));
            out.append("\r\n");
        }
        return out.toString();
    }

    private static List<Double> shown(List<Double> values, Optional<Rounding> rounding) {
        return rounding.isEmpty()
                ? values
                : values.stream().map(rounding.get()::round).toList();
    }

    private static String figure(PatternSet.Title title, double millimetres) {
        return Decimals.text(title.unit().fromMillimetres(millimetres), DECIMALS);
    }
}
