package org.capwright.exchange.dxf;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.capwright.exchange.TestPatterns;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The rules must be able to fail: one break of a drawing of one size for each. A bar stands for the end of a line. */
class R12RulesTest {

    private static final String SOUND =
            new String(DxfExport.blocks(TestPatterns.random(0, 1)), StandardCharsets.US_ASCII);

    private static List<String> broken(String drawing) {
        return R12Rules.broken(drawing.getBytes(StandardCharsets.ISO_8859_1));
    }

    @Test
    void theDrawingIsSound() {
        assertEquals(List.of(), broken(SOUND));
    }

    @ParameterizedTest
    @CsvSource({
        "STYLE NAME: Random, STYLE NAME: R\u00e4ndom, 7-bit",
        "STYLE NAME: Random, 'STYLE NAME:\tChoir', 7-bit",
        "STYLE NAME: Random, LONG, 255",
        "'|POINT|  8|', '|POINT|100|AcDbPoint|  8|', group code",
        "'|     1|', '|   1.0|', whole number",
        "'| 20|0.0|', '| 20|NaN|', fixed-point",
        "'| 20|0.0|', '| 20|0e0|', fixed-point",
        "'|  2|BLOCKS|', '|  2|HEADER|', SECTION out of order",
        "'|  2|STYLE|', '|  2|LTYPE|', TABLE out of order",
        "OVERLAY-MAIN-36, overlay-main-36, no name",
        "OVERLAY-MAIN-36, OVERLAY-MAIN-36-OF-THE-CHOIR-GOWNS, no name",
        "OVERLAY-MAIN-36, UNDER-SLEEVE-36, defined twice",
        "'|VERTEX|  8|1|', '|VERTEX|  8|NOWHERE|', no layer",
        "'|POINT|  8|', '|ELLIPSE|  8|', no entity",
        "'|POINT|  8|', '|POINT|  5|1F|  8|', handles",
        "'| 66|     1|', '|', vertices follow",
    })
    void eachRuleCanFail(String from, String to, String what) {
        String sound = from.replace("|", "\r\n");
        assertTrue(SOUND.contains(sound), "nothing to break: " + from);
        String changed = to.equals("LONG") ? "C".repeat(256) : to.replace("|", "\r\n");
        List<String> faults = broken(SOUND.replace(sound, changed));
        assertTrue(faults.stream().anyMatch(fault -> fault.contains(what)), () -> what + ": " + faults);
    }

    @Test
    void endsOfLinesAndVerticesAreLookedAt() {
        assertTrue(broken(SOUND.replace("\r\n", "\n")).toString().contains("CR LF"));
        int first = SOUND.indexOf("  0\r\nVERTEX");
        int second = SOUND.indexOf("  0\r\nVERTEX", first + 1);
        int end = SOUND.indexOf("  0\r\nSEQEND");
        String vertex = SOUND.substring(first, second);
        String repeated = SOUND.substring(0, end) + vertex + SOUND.substring(end);
        assertTrue(broken(repeated).toString().contains("repeats its first point"));
        String single = SOUND.substring(0, first) + vertex + SOUND.substring(end);
        assertTrue(broken(single).toString().contains("fewer than two"));
    }
}
