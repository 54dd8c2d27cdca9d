package org.capwright.service.sizerun;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import org.capwright.exchange.hpgl.HpglExport;
import org.capwright.service.http.problem.FieldViolation;
import org.capwright.service.http.problem.ProblemException;
import org.junit.jupiter.api.Test;

/** A piece over 900 mm both ways, the width of a usual roll. */
class WidePiecesTest {

    /** A bell of an overlay: unequal halves are cut flat, not on the fold. */
    private static final String WIDE = "{\"sizes\":[\"40\"],\"grade\":null,\"underSleeve\":null,"
            + "\"sleeve\":{\"bicep\":95,\"length\":null,\"capHeight\":20,\"capOutward\":null,\"capInward\":null,\"armhole\":100,\"front\":{\"width\":46}},"
            + "\"overlay\":{\"rise\":14,\"length\":95,\"hem\":\"level\",\"pleats\":null}%s}";

    private static SizeRunResult drafted(String more) {
        return SizeRunService.draft(SizeRunReader.read(Requests.patched(WIDE.formatted(more))));
    }

    @Test
    void theRollIsAsWideAsThePieceNeedsWhereNoneIsStated() {
        SizeRunResult result = drafted("");
        assertTrue(HpglExport.leastWidth(result.patterns()) > 900);
        HpglFormat format = new HpglFormat();
        assertTrue(new String(format.render(result), StandardCharsets.US_ASCII).startsWith("IN"));
        assertTrue(format.meaning(result).matches(".* Here a piece needs \\d{3,4} mm: .*"), format.meaning(result));
    }

    @Test
    void aStatedRollThatIsTooNarrowIsRefusedAtItsFieldWhateverTheForm() {
        FieldViolation violation = assertThrows(ProblemException.class, () -> drafted(",\"plotter\":{\"width\":91.4}"))
                .problem()
                .violations()
                .get(0);
        assertEquals("/plotter/width", violation.field());
        assertEquals(91.4, (double) violation.value().orElseThrow(), 1e-9);
        double enough = Math.ceil(violation.minimum().orElseThrow());
        assertTrue(new HpglFormat().render(drafted(",\"plotter\":{\"width\":" + enough + "}")).length > 0);
    }
}
