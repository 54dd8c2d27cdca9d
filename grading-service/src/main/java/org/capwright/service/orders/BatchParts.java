package org.capwright.service.orders;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.BooleanSupplier;
import org.capwright.service.http.access.Caller;
import org.capwright.service.http.access.Scope;
import org.capwright.service.http.problem.ProblemException;
import org.capwright.service.jobs.Work;
import org.capwright.service.store.Store;
import org.capwright.service.webhooks.Announcements;
import org.capwright.service.webhooks.WebhookEvent;
import org.capwright.words.Language;
import org.springframework.stereotype.Component;
import tools.jackson.databind.json.JsonMapper;

/**
 * Works off the lines of a batch that runs as a job, part by part. The answer to a line is kept in the transaction that takes its order, so a line whose hand dies is taken again from its beginning, and one that
 * was taken never is.
 */
@Component
final class BatchParts implements Work {

    static final String NAME = "order-batch-part";

    /** After so many failures in a row the fault is in the line, not in the times. */
    private static final int TRIES = 6;

    private static final long SOON = 1;

    private final Store store;
    private final OrderOnLine order;
    private final Announcements announcements;
    private final JsonMapper mapper;

    BatchParts(Store store, OrderOnLine order, Announcements announcements, JsonMapper mapper) {
        this.store = store;
        this.announcements = announcements;
        this.order = order;
        this.mapper = mapper;
    }

    /** What a hand is given. */
    static String subject(String tenant, String batch, int part) {
        return String.join("/", List.of(tenant, batch, Integer.toString(part)));
    }

    @Override
    public String name() {
        return NAME;
    }

    @Override
    public int urgency() {
        return 0;
    }

    /** Thrown where another hand was there before, or the batch was cancelled; the order is not taken. */
    private static final class NotToBeAnsweredException extends RuntimeException {
        private static final long serialVersionUID = 1L;
    }

    @Override
    public Optional<Instant> run(String subject, int failures, BooleanSupplier ending) {
        String[] words = subject.split("/");
        String tenant = words[0];
        String batch = words[1];
        int part = Integer.parseInt(words[2]);
        int failed = failures;
        while (!ending.getAsBoolean()) {
            Optional<Due> due = store.transaction(database -> {
                BatchBook book = new BatchBook(database, tenant);
                return book.runsFor(batch)
                        .flatMap(by -> book.next(batch, part)
                                .map(line -> new Due(
                                        new Caller(tenant, by.name(), Set.of(Scope.ORDER)), by.language(), line)));
            });
            if (due.isEmpty()) {
                store.transaction(database -> {
                    BatchBook book = new BatchBook(database, tenant);
                    boolean done = book.endIfDone(batch);
                    if (done) {
                        announcements.tell(
                                database, tenant, WebhookEvent.BATCH_DONE, BatchJobAnswer.of(book.get(batch)));
                    }
                    return done;
                });
                return Optional.empty();
            }
            try {
                answer(due.get(), batch, part, failed);
                failed = 0;
            } catch (NotToBeAnsweredException e) {
                // The next look finds what is left.
            } catch (ProblemException e) {
                if (OrderDesk.isBusy(e)) {
                    return Optional.of(Instant.now().plusSeconds(SOON));
                }
                throw e;
            }
        }
        return Optional.of(Instant.now());
    }

    private record Due(Caller caller, Language language, BatchLines.Line line) {}

    private void answer(Due due, String batch, int part, int failures) {
        if (failures >= TRIES) {
            answer(due, batch, part, BatchAnswer.failed(due.line().number()));
            return;
        }
        BatchAnswer answer = order.take(due.caller(), due.line(), due.language(), (database, taken) -> {
            if (!new BatchBook(database, due.caller().tenant()).answer(batch, part, taken, json(taken))) {
                throw new NotToBeAnsweredException();
            }
        });
        if (answer.problem().isPresent()) {
            answer(due, batch, part, answer);
        }
    }

    private void answer(Due due, String batch, int part, BatchAnswer answer) {
        store.transaction(
                database -> new BatchBook(database, due.caller().tenant()).answer(batch, part, answer, json(answer)));
    }

    private String json(BatchAnswer answer) {
        return mapper.writeValueAsString(answer);
    }
}
