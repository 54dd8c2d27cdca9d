package org.capwright.gradeimport;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.capwright.Sample;
import org.capwright.exchange.OutsideTool;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Nests drawn by two scripts that share nothing with this project (ezdxf, Debian package python3-ezdxf): turned, mirrored, in blocks, of lines, arcs, bulges and splines, in three units, with notches,
 * seam allowances, frames and legends, clean ones and ones with a fault. A sample by default; {@code -Pthorough} draws all and leaves the table in {@code target/check-bars}, as docs/checks/README.md
 * has it.
 */
class OtherHandsTest {

    private static final int CASES = Sample.of(25, 400);
    private static final int FIRST_OF_WORKROOMS = 10_000;

    @TempDir
    private Path folder;

    @Test
    void everyFigureIsReadRightOrRefusedAndEveryFaultNamed() throws IOException {
        OtherHands.Table table =
                OtherHands.count(List.of(drawn("other_hands.py", 0), drawn("workrooms.py", FIRST_OF_WORKROOMS)));
        Path tables = Path.of("target", "check-bars");
        Files.createDirectories(tables);
        Files.writeString(tables.resolve("outlines.txt"), table.text());
        assertEquals(0, table.wrong(), table.text());
        assertTrue(table.faults(c -> c.named) >= 0.98 * table.faults(c -> c.drawn), table.text());
        assertTrue(table.faults(c -> c.cured) >= 0.97 * table.faults(c -> c.figures), table.text());
        assertTrue(table.clean().alarms <= 0.01 * table.clean().drawn, table.text());
        assertTrue(table.clean().refused <= 0.01 * table.clean().drawn, table.text());
    }

    /** What a script draws, in a folder of its own. */
    private Path drawn(String name, int first) throws IOException {
        Path into = Files.createDirectory(folder.resolve("of-" + name));
        OutsideTool.runScript(
                "python3-ezdxf",
                OtherHandsTest.class,
                name,
                folder,
                List.of(into.toString(), Integer.toString(first), Integer.toString(CASES)));
        return into;
    }
}
