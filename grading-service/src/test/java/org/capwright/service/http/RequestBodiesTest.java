package org.capwright.service.http;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.capwright.service.http.problem.Problem;
import org.capwright.service.http.problem.ProblemException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RequestBodiesTest {

    private final RequestBodies bodies = new RequestBodies(JsonMapping.mapper());

    private Problem refused(byte[] body) {
        return assertThrows(ProblemException.class, () -> bodies.parse(body)).problem();
    }

    private Problem refused(String body) {
        return refused(body.getBytes(StandardCharsets.UTF_8));
    }

    /** RFC 8259, section 8.1. */
    @Test
    void aMarkOfTheByteOrderIsPassedOver() {
        assertEquals(
                36,
                bodies.parse("\uFEFF{\"bicep\":36}".getBytes(StandardCharsets.UTF_8))
                        .get("bicep")
                        .intValue());
        assertTrue(refused("\uFEFF").detail().toString().contains("empty"));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '~',
            value = {
                "{`a`:1                        | 1",
                "{`a`:NaN}                     | 1",
                "{`a`:Infinity}                | 1",
                "{`a`:-}                       | 1",
                "{`a`:01}                      | 1",
                "{'a':1}                       | 1",
                "{`a`:1,}                      | 1",
                "{`a`:1} x                     | 1",
                "{`a`:1}{`b`:2}                | 1",
                "{`a`:1,`a`:2}                 | 1",
                "/* c */ {}                    | 1",
                "{↵`a`:1,↵`b`:]}               | 3",
                "{`a`:`tab\there`,↵`b`:nul}    | 1",
                "{`a`:`x`,↵`b`:nul}            | 2"
            })
    void brokenJsonIsRefusedWithItsPlace(String body, int line) {
        Problem problem = refused(body.replace('`', '"').replace("↵", "\n"));
        assertEquals(400, problem.status());
        assertEquals(Optional.of(line), problem.line(), problem::toString);
        assertTrue(problem.column().orElse(0) > 0, problem::toString);
        assertFalse(
                problem.detail().toString().contains("Source")
                        || problem.detail().toString().contains("REDACTED"),
                () -> problem.detail().toString());
    }

    /** The parser's words about where it read from are left out, as the place is told by line and column. */
    @Test
    void saysWhatIsMissingInPlainWords() {
        assertEquals(
                "The body is not a JSON document: it ends before everything that was opened is closed.",
                refused("[[").detail().toString());
    }

    @Test
    void emptyBodiesAndOtherCharacterSetsAreRefused() {
        assertEquals(400, refused("").status());
        assertEquals(400, refused(" \n ").status());
        assertEquals(
                400,
                refused(new byte[] {'{', '"', (byte) 0xE9, '"', ':', '1', '}'}).status());
        assertEquals(400, refused("{\"a\":1}".getBytes(StandardCharsets.UTF_16)).status());
    }

    @Test
    void deepNestingIsRefusedBeforeItCostsAnything() {
        assertEquals(400, refused("[".repeat(100_000)).status());
        assertEquals(400, refused("{\"a\":".repeat(50_000)).status());
        assertTrue(refused("[".repeat(100_000)).detail().toString().contains("deeper than"));
    }

    @Test
    void longNumbersAndTextsAreRefused() {
        assertEquals(400, refused("{\"a\":" + "9".repeat(10_000) + "}").status());
        assertEquals(400, refused("{\"a\":\"" + "x".repeat(210_000) + "\"}").status());
        assertEquals(400, refused("{\"" + "x".repeat(50_000) + "\":1}").status());
    }

    /** Whatever is sent, the answer is in words for people: no name of a class or method, nothing of what was sent. */
    @Test
    void speaksInItsOwnWords() {
        String whole = "{\"units\":\"cm\",\"sleeve\":{\"bicep\":36.5,\"front\":null},\"sizes\":[\"36\",true]}";
        Random random = new Random(1);
        int refusals = 0;
        for (int i = 0; i < 1000; i++) {
            StringBuilder changed = new StringBuilder(whole);
            for (int j = 0; j < 2; j++) {
                changed.setCharAt(random.nextInt(whole.length()), (char) (1 + random.nextInt(126)));
            }
            String sent = i % 3 == 0 ? changed.substring(0, random.nextInt(whole.length())) : changed.toString();
            String said;
            try {
                bodies.parse(sent.getBytes(StandardCharsets.UTF_8));
                continue;
            } catch (ProblemException e) {
                said = e.problem().detail().toString();
            }
            refusals++;
            assertTrue(
                    said.matches("The body is (not a JSON document: [a-z0-9 ,]+|empty; it must be a JSON object)\\."),
                    said);
        }
        assertTrue(refusals > 400, "only " + refusals);
        for (String hostile : List.of(
                "[".repeat(5000),
                "{\"a\":1,\"a\":2}",
                "{} {}",
                "9".repeat(5000),
                "\"" + "x".repeat(50_000),
                "NaN",
                "{\"" + "n".repeat(9000))) {
            assertTrue(
                    refused(hostile).detail().toString().matches("The body is not a JSON document: [a-z0-9 ,]+\\."),
                    hostile);
        }
    }
}
