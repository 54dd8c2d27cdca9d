package org.capwright.exchange.table;

import java.util.List;
import java.util.Optional;
import org.capwright.grade.PointOfMeasure;
import org.capwright.grade.SpecTable;
import org.capwright.pattern.PatternSet;
import org.capwright.quantity.Decimals;
import org.capwright.quantity.FileBytes;
import org.capwright.quantity.Rounding;
import org.capwright.quantity.Unit;

/**
 * Writes a spec table as comma-separated values by RFC 4180: CRLF, a header line, quotes where a field needs them. One line per point of measure; figures per
 * size, then the jumps.
 */
public final class SpecCsv {

    /** Decimals of an unrounded figure: a millionth of any unit. */
    private static final int DECIMALS = 6;

    private SpecCsv() {}

    /**
     * Writes the table.
     *
     * @param title style, revision and the unit of the figures
     * @param table the spec table
     * @param rounding the grid for the figures; none leaves them unrounded
     * @return the file in UTF-8, every line ended by CRLF
     */
    public static byte[] write(PatternSet.Title title, SpecTable table, Optional<Rounding> rounding) {
        FileBytes out = new FileBytes();
        List<String> sizes = table.sizes();
        out.put("style,revision,code,point of measure,unit");
        for (String size : sizes) {
            CsvText.next(out, size);
        }
        for (int i = 1; i < sizes.size(); i++) {
            CsvText.next(out, "jump " + sizes.get(i - 1) + " to " + sizes.get(i));
        }
        out.put(",tolerance,base size,how measured,tolerance source\r\n");
        for (PointOfMeasure row : table.rows()) {
            CsvText.field(out, title.style());
            CsvText.next(out, title.revision());
            CsvText.next(out, row.code());
            CsvText.next(out, title.language().say(row.name()));
            CsvText.next(out, title.unit().symbol());
            double[] values = shown(row.values(), title.unit(), rounding);
            for (double value : values) {
                figure(out, value);
            }
            for (int i = 1; i < values.length; i++) {
                figure(out, values[i] - values[i - 1]);
            }
            figure(out, title.unit().fromMillimetres(row.tolerance()));
            CsvText.next(out, sizes.get(table.base()));
            CsvText.next(out, title.language().say(row.definition()));
            CsvText.next(out, title.language().say(row.toleranceSource()));
            out.put("\r\n");
        }
        return out.all();
    }

    /** The figures as they are written, so that the jumps are what a reader of the file finds between them. */
    private static double[] shown(List<Double> values, Unit unit, Optional<Rounding> rounding) {
        double[] shown = new double[values.size()];
        for (int i = 0; i < shown.length; i++) {
            double value = values.get(i);
            double rounded = rounding.isPresent() ? rounding.get().round(value) : value;
            shown[i] = Decimals.asWritten(unit.fromMillimetres(rounded), DECIMALS);
        }
        return shown;
    }

    private static void figure(FileBytes out, double value) {
        out.put(',');
        out.put(value, 0, DECIMALS);
    }
}
