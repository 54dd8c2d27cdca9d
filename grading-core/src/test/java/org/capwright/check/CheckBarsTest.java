package org.capwright.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.capwright.Sample;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * What the checks are worth, measured. A sample by default; {@code -Pthorough} measures all and leaves the tables in {@code target/check-bars}, as docs/checks/README.md has them.
 */
class CheckBarsTest {

    private static final int FAULTS = Sample.of(120, 1000);
    private static final int STYLES = Sample.of(40, 500);
    private static final Path TABLES = Path.of("target", "check-bars");

    private static void keep(String name, String text) throws IOException {
        Files.createDirectories(TABLES);
        Files.writeString(TABLES.resolve(name + ".txt"), text);
    }

    @Test
    void faultsInFiguresAndLinesAreNamed() throws IOException {
        SeededFaults.Table table = SeededFaults.count(1, Sample.of(350, 1000));
        named("grade", table);
        table.faults().forEach((kind, count) -> assertTrue(count.found() >= 0.95 * count.seeded(), table::text));
    }

    @ParameterizedTest
    @EnumSource(DrawnFaults.Way.class)
    void faultsThroughFilesAreNamed(DrawnFaults.Way way) throws IOException {
        named(way.name(), DrawnFaults.count(way, 1, FAULTS));
    }

    private static void named(String name, SeededFaults.Table table) throws IOException {
        String text = table.text() + String.join("\n", table.missed()) + String.join("\n", table.falseAlarms());
        keep(name, text);
        assertTrue(table.found() >= 0.95 * table.seeded(), text);
        assertTrue(table.alarms() < 0.02 * table.clean() || table.alarms() == 0, text);
    }

    @Test
    void ownFilesComeBack() throws IOException {
        List<RoundTrip.Outcome> outcomes = RoundTrip.of(STYLES);
        StringBuilder text = new StringBuilder();
        outcomes.forEach(outcome -> text.append(outcome.text()));
        keep("round-trip", text.toString());
        for (RoundTrip.Outcome outcome : outcomes) {
            assertTrue(outcome.values() <= 0.05 && outcome.jumps() <= 0.05, outcome.text());
            assertEquals(List.of(), outcome.falseStops());
            assertEquals(List.of(), outcome.lost());
            assertTrue(outcome.told().size() <= outcome.styles() / 100, outcome::text);
        }
    }
}
