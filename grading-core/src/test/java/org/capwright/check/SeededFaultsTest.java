package org.capwright.check;

import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** A sample of the seeded faults; {@link SeededFaults#main} counts a thousand and prints the table. */
class SeededFaultsTest {

    @Test
    void faultsAreFoundAndNamedRightAndCleanRunsPass() {
        SeededFaults.Table table = SeededFaults.count(20_001, 1000);
        String text = table.text() + table.missed() + table.falseAlarms();
        assertTrue(table.found() >= 0.95 * table.seeded(), text);
        table.faults().forEach((kind, count) -> assertTrue(count.found() >= 0.95 * count.seeded(), text));
        assertTrue(table.alarms() < 0.02 * table.clean(), text);
    }
}
