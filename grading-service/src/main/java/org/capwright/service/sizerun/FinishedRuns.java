package org.capwright.service.sizerun;

import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
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
    private final Map<Asked, ResponseEntity<byte[]>> kept = new LinkedHashMap<>(16, 0.75f, true);
    private long taken;

    FinishedRuns(@Value("${capwright.finished-runs}") DataSize most) {
        this.most = most.toBytes();
    }

    /** The answer as it was given before, or a new one. */
    ResponseEntity<byte[]> answer(Asked asked, Drafting drafting) throws IOException {
        if (most == 0) {
            return drafting.answer();
        }
        Optional<ResponseEntity<byte[]>> known = find(asked);
        if (known.isPresent()) {
            return known.get();
        }
        ResponseEntity<byte[]> made = drafting.answer();
        keep(asked, made);
        return made;
    }

    private synchronized Optional<ResponseEntity<byte[]>> find(Asked asked) {
        return Optional.ofNullable(kept.get(asked));
    }

    private synchronized void keep(Asked asked, ResponseEntity<byte[]> made) {
        if (size(asked, made) > most || kept.putIfAbsent(asked, made) != null) {
            return;
        }
        taken += size(asked, made);
        var eldest = kept.entrySet().iterator();
        while (taken > most) {
            var entry = eldest.next();
            taken -= size(entry.getKey(), entry.getValue());
            eldest.remove();
        }
    }

    /** A parsed body takes several times its text. */
    private static long size(Asked asked, ResponseEntity<byte[]> made) {
        byte[] body = made.getBody();
        return ENTRY + 8L * asked.bytes() + (body == null ? 0 : body.length);
    }

    /** How many bytes are taken up. */
    synchronized long taken() {
        return taken;
    }
}
