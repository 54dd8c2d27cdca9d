package org.capwright.json.tables;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.capwright.quantity.Unit;
import org.capwright.tables.BodyDimension;
import org.capwright.tables.Row;
import org.capwright.tables.SizeTable;
import org.capwright.tables.SizeTables;
import org.capwright.tables.TableKind;

/** Writes a size table as a request takes it: the inverse of {@link TableReader}. */
public final class OwnTableWriter {

    private OwnTableWriter() {}

    /**
     * A table as the field {@code sizeTable}.
     *
     * @param table any table
     * @return the id of a published table; else the whole table, figures in its own unit
     */
    public static Object idOrTable(SizeTable table) {
        return SizeTables.find(table.id()).isPresent() ? table.id() : whole(table);
    }

    private static Map<String, Object> whole(SizeTable table) {
        Map<String, Object> written = new LinkedHashMap<>();
        written.put("id", table.id());
        written.put("title", table.info().title());
        written.put("source", table.info().source());
        written.put("licence", table.info().licence());
        written.put("figureType", table.info().figureType());
        written.put("population", table.info().population());
        written.put("unit", table.info().unit().symbol());
        if (table.info().kind() == TableKind.GARMENT) {
            written.put("kind", "garment");
        }
        table.info().key().map(BodyDimension::id).ifPresent(key -> written.put("key", key));
        written.put("sizes", table.sizes());
        List<Object> rows = new ArrayList<>();
        for (Row row : table.rows()) {
            rows.add(row(row, table));
        }
        written.put("rows", rows);
        return written;
    }

    private static Map<String, Object> row(Row row, SizeTable table) {
        Unit unit = table.info().unit();
        List<Object> values = new ArrayList<>();
        for (String size : table.sizes()) {
            values.add(row.value(size)
                    .map(value -> (Object) unit.figure(value.millimetres()))
                    .orElse(null));
        }
        Map<String, Object> written = new LinkedHashMap<>();
        written.put("dimension", row.dimension().id());
        written.put("values", values);
        return written;
    }
}
