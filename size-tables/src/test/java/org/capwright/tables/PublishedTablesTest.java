package org.capwright.tables;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What must hold of every shipped table, whatever its source: metadata, units, order, growth. */
class PublishedTablesTest {

    /**
     * Class means that fall back from the size before although the dimension grows with the key. Each is sampling
     * noise of an end class of few people, and is what the survey data give.
     */
    private static final Set<String> KNOWN_DIPS = Set.of("ansur-2012-men-by-bust 880 wristGirth");

    static List<SizeTable> tables() {
        return SizeTables.all();
    }

    @Test
    void everyListedTableIsThereOnceAndIsFoundByItsId() {
        Set<String> ids = new HashSet<>();
        for (SizeTable table : SizeTables.all()) {
            assertTrue(ids.add(table.id()), table.id());
            assertTrue(table.id().matches("[a-z0-9]+(-[a-z0-9]+)*"), table.id());
            assertEquals(Optional.of(table), SizeTables.find(table.id()));
        }
        assertEquals(26, ids.size());
        assertEquals(Optional.empty(), SizeTables.find("no-such-table"));
    }

    @ParameterizedTest
    @MethodSource("tables")
    void everyTableNamesItsSource(SizeTable table) {
        TableInfo info = table.info();
        for (String text : List.of(
                info.title(), info.source(), info.licence(), info.readFrom(), info.figureType(), info.population())) {
            assertFalse(text.isBlank(), table.id());
        }
        assertFalse(info.notes().isEmpty(), table.id());
        assertFalse(info.readFrom().toLowerCase().contains("memory"), "nothing rests on memory: " + table.id());
    }

    @ParameterizedTest
    @MethodSource("tables")
    void everyValueIsOfAPlausibleSizeSoThatNoUnitIsMistaken(SizeTable table) {
        assertFalse(table.rows().isEmpty());
        for (Row row : table.rows()) {
            for (String size : row.values().keySet()) {
                assertTrue(table.sizes().contains(size), size);
                double value = row.value(size).orElseThrow().millimetres();
                String what = table.id() + " " + size + " " + row.dimension().id() + " " + value;
                if (row.dimension() instanceof BodyDimension body) {
                    // The middle nine tenths of the plausible range: a class mean is no extreme.
                    assertTrue(body.plausible().contains(value), what);
                    assertTrue(value > body.plausible().lower() * 1.05, what);
                    assertTrue(value < body.plausible().upper() * 0.95, what);
                } else {
                    assertEquals(TableKind.GARMENT, table.info().kind(), what);
                    assertTrue(value >= 80 && value <= 1000, what);
                }
                table.limits(size, row.dimension()).ifPresent(limits -> {
                    assertTrue(limits.contains(value), what);
                    assertEquals(limits.middle(), value, 1e-9, what);
                });
            }
        }
    }

    @ParameterizedTest
    @MethodSource("tables")
    void theKeyGrowsStrictlyAndHasNoGap(SizeTable table) {
        if (table.info().key().isEmpty()) {
            assertEquals("nhanes-2015-2016-women-by-age", table.id(), "age classes are the only sizes without a key");
            return;
        }
        double last = 0;
        for (String size : table.sizes()) {
            double key =
                    table.value(size, table.info().key().get()).orElseThrow().millimetres();
            assertTrue(key > last, table.id() + " " + size);
            last = key;
        }
    }

    @ParameterizedTest
    @MethodSource("tables")
    void girthsGrowWithTheBustAndLengthsWithTheStature(SizeTable table) {
        if (table.info().key().isEmpty()) {
            return;
        }
        for (Row row : table.rows()) {
            boolean mustGrow = !(row.dimension() instanceof BodyDimension body)
                    || body.family() == table.info().key().get().family();
            if (!mustGrow) {
                continue;
            }
            for (Increment increment : table.increments(row.dimension())) {
                String what = table.id() + " " + increment.toSize() + " "
                        + row.dimension().id();
                assertEquals(
                        KNOWN_DIPS.contains(what),
                        increment.millimetres() < 0,
                        what + " grows by " + increment.millimetres());
            }
        }
    }

    @ParameterizedTest
    @MethodSource("tables")
    void classLimitsLeaveNoHoleInTablesOfClasses(SizeTable table) {
        if (table.info().statistic() == Statistic.STANDARD_FIGURE || table.id().startsWith("gost")) {
            // A pair such as 88-92 and 96-100 names typical figures with a step between the pairs.
            return;
        }
        BodyDimension key = table.info().key().orElse(BodyDimension.STATURE);
        for (int i = 1; i < table.sizes().size(); i++) {
            Optional<Interval> before = table.limits(table.sizes().get(i - 1), key);
            Optional<Interval> here = table.limits(table.sizes().get(i), key);
            if (before.isPresent() && here.isPresent()) {
                assertEquals(before.get().upper(), here.get().lower(), 1e-9, table.id() + " " + i);
            }
        }
    }
}
