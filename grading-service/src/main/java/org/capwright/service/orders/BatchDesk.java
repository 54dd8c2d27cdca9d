package org.capwright.service.orders;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.IntStream;
import org.capwright.service.http.access.Caller;
import org.capwright.service.http.problem.Problem;
import org.capwright.service.http.problem.ProblemException;
import org.capwright.service.http.problem.ProblemKind;
import org.capwright.service.jobs.Scheduling;
import org.capwright.service.store.AuditTrail;
import org.capwright.service.store.Fingerprint;
import org.capwright.service.store.Store;
import org.capwright.service.webhooks.Announcements;
import org.capwright.service.webhooks.WebhookEvent;
import org.capwright.words.Language;
import org.springframework.stereotype.Component;

/** Receives batches that are to run as jobs, and says what became of them. */
@Component
final class BatchDesk {

    /** Lines that one hand works off in a row: few enough that all hands have some, and that little waits on a hand that died. */
    private static final int OF_A_PART = 25;

    private static final int RESULTS_AT_ONCE = 500;
    private static final Duration FIRST_LOOK = Duration.ofDays(1);

    private final Store store;
    private final Scheduling scheduling;
    private final Announcements announcements;

    BatchDesk(Store store, Scheduling scheduling, Announcements announcements) {
        this.store = store;
        this.scheduling = scheduling;
        this.announcements = announcements;
    }

    /**
     * Puts all lines down, then has them worked off. Whoever was answered may go away; nothing runs of what broke off.
     *
     * @param language what the answers to the lines are in, and the files of an order that names none
     * @param key what the sender names the attempt by, so that sending it again makes no second batch
     */
    BatchJob receive(Caller caller, BatchLines lines, Language language, Optional<String> key) throws IOException {
        String id = UUID.randomUUID().toString();
        store.transaction(database -> {
            new BatchBook(database, caller.tenant()).begin(id, new BatchBook.Sender(caller.name(), language));
            scheduling.schedule(
                    BatchEnd.NAME,
                    List.of(caller.tenant() + "/" + id),
                    Instant.now().plus(FIRST_LOOK));
            return true;
        });
        boolean told = false;
        try {
            BatchJob job = run(caller, id, put(caller.tenant(), id, lines), key);
            told = job.id().equals(id);
            return job;
        } finally {
            if (!told) {
                store.transaction(database -> {
                    new BatchBook(database, caller.tenant()).drop(id);
                    return true;
                });
            }
        }
    }

    /** What was put down. */
    private record Received(int lines, int parts, String sha256) {}

    private Received put(String tenant, String id, BatchLines lines) throws IOException {
        MessageDigest digest = Fingerprint.digest();
        List<BatchLines.Line> part = new ArrayList<>();
        int count = 0;
        int parts = 0;
        for (Optional<BatchLines.Line> line = lines.next(); line.isPresent(); line = lines.next()) {
            if (!line.get().blank()) {
                digest.update((line.get().number() + " ").getBytes(StandardCharsets.US_ASCII));
                digest.update(line.get().bytes());
                part.add(line.get());
                count++;
            }
            if (part.size() == OF_A_PART) {
                put(tenant, id, parts++, part);
            }
        }
        if (!part.isEmpty()) {
            put(tenant, id, parts++, part);
        }
        if (count == 0) {
            throw new ProblemException(
                    Problem.of(ProblemKind.MALFORMED_BODY, "The body is empty; it must have one order or more."));
        }
        return new Received(count, parts, HexFormat.of().formatHex(digest.digest()));
    }

    private void put(String tenant, String id, int part, List<BatchLines.Line> lines) {
        store.transaction(database -> {
            new BatchBook(database, tenant).add(id, part, lines);
            return true;
        });
        lines.clear();
    }

    private BatchJob run(Caller caller, String id, Received received, Optional<String> key) {
        return store.transaction(database -> {
            BatchBook book = new BatchBook(database, caller.tenant());
            Optional<BatchBook.Sent> before = key.flatMap(book::sent);
            if (before.isPresent()) {
                if (!before.get().sha256().equals(received.sha256())) {
                    throw new ProblemException(Problem.of(
                            ProblemKind.INVALID_REQUEST,
                            "Another batch was sent with this Idempotency-Key; every batch needs a key of its own."));
                }
                return book.get(before.get().id());
            }
            book.run(id, received.lines(), key, received.sha256());
            scheduling.schedule(
                    BatchParts.NAME,
                    IntStream.range(0, received.parts())
                            .mapToObj(part -> BatchParts.subject(caller.tenant(), id, part))
                            .toList(),
                    Instant.now());
            AuditTrail.write(database, caller, "batch.sent", id);
            return book.get(id);
        });
    }

    BatchJob look(Caller caller, String id) {
        return store.transaction(database -> new BatchBook(database, caller.tenant()).get(id));
    }

    List<BatchJob> list(Caller caller, Optional<OrderSearch.Place> after, int most) {
        return store.transaction(database -> new BatchBook(database, caller.tenant()).list(after, most));
    }

    /** Takes no more of its orders. Said twice it is done once. */
    BatchJob cancel(Caller caller, String id) {
        return store.transaction(database -> {
            BatchBook book = new BatchBook(database, caller.tenant());
            BatchJob job = book.get(id);
            if (book.cancel(id)) {
                AuditTrail.write(database, caller, WebhookEvent.BATCH_CANCELLED.word(), id);
                announcements.tell(
                        database, caller.tenant(), WebhookEvent.BATCH_CANCELLED, BatchJobAnswer.of(book.get(id)));
            } else if (job.state() == BatchState.DONE) {
                throw new ProblemException(Problem.of(
                        ProblemKind.CONFLICT,
                        "The batch is done; each of its orders can be cancelled at /v1/orders/{id}/states."));
            }
            return book.get(id);
        });
    }

    /** Writes what is answered so far, in the order of the lines. No more of it is held at once than a page. */
    void results(Caller caller, String id, OutputStream out) throws IOException {
        int after = 0;
        List<BatchBook.Result> page = page(caller, id, after);
        while (!page.isEmpty()) {
            for (BatchBook.Result result : page) {
                out.write(result.answer().getBytes(StandardCharsets.UTF_8));
                out.write('\n');
                after = result.line();
            }
            page = page(caller, id, after);
        }
        out.flush();
    }

    private List<BatchBook.Result> page(Caller caller, String id, int after) {
        return store.transaction(
                database -> new BatchBook(database, caller.tenant()).results(id, after, RESULTS_AT_ONCE));
    }
}
