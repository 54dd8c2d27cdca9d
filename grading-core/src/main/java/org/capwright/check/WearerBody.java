package org.capwright.check;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.capwright.quantity.Unit;
import org.capwright.tables.BodyDimension;
import org.capwright.tables.Confidence;
import org.capwright.tables.Provenance;
import org.capwright.tables.Row;
import org.capwright.tables.SizeTable;
import org.capwright.tables.Statistic;
import org.capwright.tables.TableInfo;
import org.capwright.tables.TableKind;
import org.capwright.tables.TableValue;

/** One wearer as a table of bodies with one size, so that a sleeve is compared with her as a run is compared with a table. */
public final class WearerBody {

    private static final String MEASURED = "measurements of the wearer";

    private WearerBody() {}

    /**
     * The table.
     *
     * @param size name of the one size, as in the run
     * @param measured measured or estimated, mm; one at least
     * @return a table that nothing else is known of
     */
    public static SizeTable of(String size, Map<BodyDimension, Double> measured) {
        List<Row> rows = new ArrayList<>();
        new LinkedHashMap<>(measured)
                .forEach((dimension, value) -> rows.add(new Row(
                        dimension,
                        Map.of(size, new TableValue(value, Provenance.USER_SUPPLIED)),
                        Map.of(),
                        OptionalDouble.empty())));
        TableInfo info = new TableInfo(
                "wearer",
                MEASURED,
                MEASURED,
                "private",
                "given with the order",
                Confidence.NOT_JUDGED,
                "one wearer",
                "one wearer",
                Unit.MILLIMETRE,
                TableKind.BODY,
                Statistic.STANDARD_FIGURE,
                measured.keySet().stream().findFirst(),
                List.of());
        return new SizeTable(info, List.of(size), Map.of(), Map.of(), rows);
    }
}
