package org.capwright.service.sizerun;

import java.io.IOException;
import java.util.Optional;
import org.capwright.service.http.load.Remembered;
import org.capwright.words.Language;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Component;
import org.springframework.util.unit.DataSize;
import tools.jackson.databind.JsonNode;

/**
 * Remembers answered size runs where the setting {@code capwright.finished-runs} gives room for it, those asked for last. Runs of a style alone: whoever drafts for a wearer does not come here, and nothing is kept but in
 * memory. The same request gets the same answer, however its fields are ordered and spaced.
 */
@Component
final class FinishedRuns {

    /** What an entry takes beside the two bodies, bytes. */
    private static final int ENTRY = 1024;

    /**
     * What an answer follows from.
     *
     * @param body the request
     * @param bytes how long it was
     * @param form the end of the file name of the form
     * @param language what is said beside the figures
     */
    record Asked(JsonNode body, int bytes, String form, Language language) {}

    /** Drafts and writes a run. */
    @FunctionalInterface
    interface Drafting {
        /** The answer. */
        ResponseEntity<byte[]> answer() throws IOException;
    }

    private final long most;
    private final Remembered<Asked, ResponseEntity<byte[]>> kept;

    FinishedRuns(@Value("${capwright.finished-runs}") DataSize most) {
        this.most = most.toBytes();
        this.kept = new Remembered<>(this.most, FinishedRuns::size);
    }

    /** The answer as it was given before, or a new one. */
    ResponseEntity<byte[]> answer(Asked asked, Drafting drafting) throws IOException {
        if (most == 0) {
            return drafting.answer();
        }
        Optional<ResponseEntity<byte[]>> known = kept.find(asked);
        if (known.isPresent()) {
            return known.get();
        }
        ResponseEntity<byte[]> made = drafting.answer();
        kept.keep(asked, made);
        return made;
    }

    /** A parsed body takes several times its text. */
    private static long size(Asked asked, ResponseEntity<byte[]> made) {
        byte[] body = made.getBody();
        return ENTRY + 8L * asked.bytes() + (body == null ? 0 : body.length);
    }

    /** How many bytes are taken up. */
    long taken() {
        return kept.taken();
    }
}
