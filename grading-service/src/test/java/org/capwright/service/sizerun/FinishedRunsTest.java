package org.capwright.service.sizerun;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotSame;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import org.capwright.json.problem.RefusedRequestException;
import org.capwright.json.style.SizeRunReader;
import org.capwright.words.Language;
import org.junit.jupiter.api.Test;
import org.springframework.http.ResponseEntity;
import org.springframework.util.unit.DataSize;
import tools.jackson.databind.JsonNode;

class FinishedRunsTest {

    private static final int SENT = Requests.DEMO.length();

    private static FinishedRuns.Asked asked(JsonNode body) {
        return new FinishedRuns.Asked(body, SENT, "csv", Language.ENGLISH);
    }

    private static FinishedRuns.Asked asked(String json) {
        return asked(Requests.MAPPER.readTree(json));
    }

    private static ResponseEntity<byte[]> answer(FinishedRuns runs, FinishedRuns.Asked asked) throws IOException {
        return runs.answer(asked, () -> ResponseEntity.ok(new byte[1000]));
    }

    @Test
    void theSameRequestIsNotDraftedTwice() throws IOException {
        FinishedRuns runs = new FinishedRuns(DataSize.ofKilobytes(100));
        ResponseEntity<byte[]> first = answer(runs, asked("{\"a\": 1, \"b\": [2, 3]}"));
        assertSame(first, answer(runs, asked("{\"b\":[2,3],\"a\":1}")));
        assertNotSame(first, answer(runs, asked("{\"b\":[3,2],\"a\":1}")));
    }

    @Test
    void anotherFormOrLanguageIsAnotherAnswer() throws IOException {
        FinishedRuns runs = new FinishedRuns(DataSize.ofKilobytes(100));
        JsonNode body = Requests.demo();
        ResponseEntity<byte[]> first = answer(runs, asked(body));
        assertNotSame(first, answer(runs, new FinishedRuns.Asked(body, SENT, "svg", Language.ENGLISH)));
        assertNotSame(first, answer(runs, new FinishedRuns.Asked(body, SENT, "csv", Language.accepted("fr"))));
        assertSame(first, answer(runs, asked(body)));
    }

    @Test
    void whatWasAskedForLastStaysWithinTheBound() throws IOException {
        FinishedRuns runs = new FinishedRuns(DataSize.ofKilobytes(20));
        FinishedRuns.Asked often = asked("{\"a\":0}");
        ResponseEntity<byte[]> first = answer(runs, often);
        for (int i = 1; i < 50; i++) {
            answer(runs, asked("{\"a\":" + i + "}"));
            assertSame(first, answer(runs, often));
            assertTrue(runs.taken() <= 20 * 1024, runs.taken() + " bytes are held");
        }
        ResponseEntity<byte[]> large = runs.answer(asked("{}"), () -> ResponseEntity.ok(new byte[30_000]));
        assertNotSame(large, answer(runs, asked("{}")));
    }

    @Test
    void nothingIsHeldWithoutRoom() throws IOException {
        FinishedRuns runs = new FinishedRuns(DataSize.ofBytes(0));
        assertNotSame(answer(runs, asked(Requests.demo())), answer(runs, asked(Requests.demo())));
        assertEquals(0, runs.taken());
    }

    @Test
    void aRefusalIsSaidEveryTimeAndNotHeld() {
        FinishedRuns runs = new FinishedRuns(DataSize.ofKilobytes(100));
        JsonNode wrong = Requests.patched("{\"baseSize\":\"99\"}");
        for (int i = 0; i < 2; i++) {
            assertThrows(
                    RefusedRequestException.class,
                    () -> runs.answer(asked(wrong), () -> {
                        SizeRunReader.read(wrong);
                        return ResponseEntity.ok(new byte[0]);
                    }));
        }
        assertEquals(0, runs.taken());
    }
}
