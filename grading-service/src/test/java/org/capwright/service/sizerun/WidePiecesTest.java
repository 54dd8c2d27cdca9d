package org.capwright.service.sizerun;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.capwright.exchange.hpgl.HpglExport;
import org.capwright.json.problem.FieldViolation;
import org.capwright.json.problem.RefusedRequestException;
import org.capwright.json.style.SizeRunReader;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A piece over 900 mm both ways, the width of a usual roll. */
class WidePiecesTest {

    /** A bell of an overlay: unequal halves are cut flat, not on the fold. */
    private static final String WIDE = "{\"sizes\":[\"40\"],\"grade\":null,\"underSleeve\":null,"
            + "\"sleeve\":{\"bicep\":95,\"length\":null,\"capHeight\":20,\"capOutward\":null,\"capInward\":null,\"armhole\":100,\"front\":{\"width\":46}},"
            + "\"overlay\":{\"rise\":14,\"length\":95,\"hem\":\"level\",\"pleats\":null}%s}";

    private static SizeRunResult drafted(String more) {
        return SizeRunService.draft(SizeRunReader.read(Requests.patched(WIDE.formatted(more))));
    }

    private static byte[] plot(SizeRunResult result) throws IOException {
        return new PieceFormats().hpglFormat().render(result);
    }

    private static String contents(byte[] archive) throws IOException {
        try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(archive))) {
            for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
                if (entry.getName().equals("contents.txt")) {
                    return new String(zip.readAllBytes(), StandardCharsets.UTF_8);
                }
            }
        }
        throw new AssertionError("the archive says what it holds");
    }

    @Test
    void theRollIsAsWideAsThePieceNeedsWhereNoneIsStated() throws IOException {
        SizeRunResult result = drafted("");
        assertTrue(HpglExport.leastWidth(result.patterns()) > 900);
        assertTrue(new String(plot(result), StandardCharsets.US_ASCII).startsWith("IN"));
        String contents = contents(new ZipFormat(new JsonFormat(Requests.MAPPER)).render(result));
        assertTrue(contents.matches("(?s).* Here a piece needs \\d{3,4} mm: .*"), contents);
    }

    @Test
    void aStatedRollThatIsTooNarrowIsRefusedAtItsFieldWhateverTheForm() throws IOException {
        FieldViolation violation = assertThrows(
                        RefusedRequestException.class, () -> drafted(",\"plotter\":{\"width\":91.4}"))
                .violations()
                .get(0);
        assertEquals("/plotter/width", violation.field());
        assertEquals(91.4, (double) violation.value().orElseThrow(), 1e-9);
        double enough = Math.ceil(violation.minimum().orElseThrow());
        assertTrue(plot(drafted(",\"plotter\":{\"width\":" + enough + "}")).length > 0);
    }

    @Test
    void paperAndPlotterThatAreBothTooNarrowAreToldAtOnce() {
        List<FieldViolation> violations = assertThrows(
                        RefusedRequestException.class,
                        () -> drafted(",\"plotter\":{\"width\":60},\"paper\":{\"format\":\"roll\",\"width\":60}"))
                .violations();
        assertEquals(
                List.of("/plotter/width", "/paper/width"),
                violations.stream().map(FieldViolation::field).toList());
    }

    /** Widths that no run takes, below and above: both ends of the range that is named are sent back. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
        /plotter/width | "plotter":{"width":%s}
        /paper/width   | "paper":{"format":"roll","width":%s}
        /paper/width   | "paper":{"format":"projector","width":%s}
        """)
    void aWidthThatNoRunTakesIsRefusedWithThoseThatTakeThesePieces(String field, String width) throws IOException {
        for (String given : List.of("1", "509")) {
            FieldViolation violation = assertThrows(
                            RefusedRequestException.class, () -> drafted("," + width.formatted(given)))
                    .violations()
                    .get(0);
            assertEquals(field, violation.field());
            assertTrue(violation.minimum().orElseThrow() > 91.4, violation::toString);
            for (double end :
                    List.of(violation.minimum().get(), violation.maximum().orElseThrow())) {
                SizeRunResult result = drafted("," + width.formatted(end));
                assertTrue(plot(result).length > 0 && result.pages() > 0);
            }
        }
    }
}
