package org.capwright.service.materials;

import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import org.capwright.service.sizerun.MaterialAnswer;
import tools.jackson.databind.json.JsonMapper;

/** Writes how far a search for lays is as server-sent events (HTML standard, section 9.2). For one thread. */
final class LayEvents {

    private static final double PERCENT = 100;

    private final OutputStream out;
    private final JsonMapper mapper;
    private long told = -1;

    LayEvents(OutputStream out, JsonMapper mapper) {
        this.out = out;
        this.mapper = mapper;
    }

    /**
     * Tells how far it is, where that is a whole percent more than was told last.
     *
     * @param done the share that is done, 0 to 1
     * @throws UncheckedIOException if nobody listens any more
     */
    void progress(double done) {
        long percent = (long) (done * PERCENT);
        if (percent > told) {
            told = percent;
            send("progress", Map.of("done", percent / PERCENT));
        }
    }

    /** Tells the end of it. */
    void done(MaterialAnswer answer) {
        send("done", answer);
    }

    private void send(String event, Object data) {
        try {
            out.write(("event: " + event + "\ndata: " + mapper.writeValueAsString(data) + "\n\n")
                    .getBytes(StandardCharsets.UTF_8));
            out.flush();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
