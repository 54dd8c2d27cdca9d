package org.capwright.service.webhooks;

import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.capwright.service.http.access.Caller;
import org.capwright.service.http.problem.Problem;
import org.capwright.service.http.problem.ProblemException;
import org.capwright.service.http.problem.ProblemKind;
import org.capwright.service.store.AuditTrail;
import org.capwright.service.store.Store;
import org.capwright.service.store.Times;
import org.capwright.words.Text;
import org.springframework.stereotype.Component;

/** Looks after webhooks. */
@Component
final class WebhookDesk {

    private static final int MOST = 20;

    private final Store store;
    private final Announcements announcements;

    WebhookDesk(Store store, Announcements announcements) {
        this.store = store;
        this.announcements = announcements;
    }

    Webhook make(Caller caller, String url, List<String> events) {
        Webhook made = new Webhook(
                UUID.randomUUID().toString(),
                url,
                events,
                List.of(WebhookSecret.made()),
                Times.now().toInstant());
        return store.transaction(database -> {
            WebhookBook book = new WebhookBook(database, caller.tenant());
            if (book.list().size() >= MOST) {
                throw new ProblemException(Problem.of(
                        ProblemKind.CONFLICT,
                        Text.of("There are {most} webhooks already, the most allowed; delete one first.")
                                .with("most", MOST)));
            }
            book.add(made);
            AuditTrail.write(database, caller, "webhook.made", made.id());
            return made;
        });
    }

    List<Webhook> list(Caller caller) {
        return store.transaction(database -> new WebhookBook(database, caller.tenant()).list());
    }

    Webhook renew(Caller caller, String id, Duration overlap) {
        return store.transaction(database -> {
            WebhookBook book = new WebhookBook(database, caller.tenant());
            book.get(id);
            book.renew(id, WebhookSecret.made(), Times.now().plus(overlap));
            AuditTrail.write(database, caller, "webhook.renewed", id);
            return book.get(id);
        });
    }

    boolean end(Caller caller, String id) {
        return store.transaction(database -> {
            WebhookBook book = new WebhookBook(database, caller.tenant());
            book.remove(book.get(id).id());
            AuditTrail.write(database, caller, "webhook.ended", id);
            return true;
        });
    }

    List<Delivery> log(Caller caller, String id, Optional<WebhookBook.Place> after, int most) {
        return store.transaction(database -> {
            WebhookBook book = new WebhookBook(database, caller.tenant());
            return book.deliveries(book.get(id).id(), after, most);
        });
    }

    /** Sends something for a receiver to be tried by. */
    Delivery trial(Caller caller, String id) {
        return store.transaction(database -> {
            WebhookBook book = new WebhookBook(database, caller.tenant());
            return announcements.tell(book, caller.tenant(), book.get(id), WebhookEvent.TRIAL, Map.of("webhook", id));
        });
    }

    /** Has a message delivered anew. */
    Delivery again(Caller caller, String id, String message) {
        return store.transaction(database -> {
            WebhookBook book = new WebhookBook(database, caller.tenant());
            Delivery delivery = book.delivery(message)
                    .filter(one -> one.webhook().equals(id))
                    .orElseThrow(() -> new ProblemException(Problem.of(
                            ProblemKind.NOT_FOUND,
                            "There is no delivery of this id; GET /v1/webhooks/{id}/deliveries lists them.")));
            if (delivery.state() == Delivery.State.WAITING) {
                throw new ProblemException(Problem.of(
                        ProblemKind.CONFLICT,
                        delivery.nextAt()
                                .map(at -> Text.of("The message is waiting to be sent at {time}.")
                                        .with("time", String.valueOf(at)))
                                .orElse(Text.of("The message is waiting to be sent."))));
            }
            book.again(delivery);
            Delivery now = book.delivery(message).orElseThrow();
            announcements.schedule(caller.tenant(), now);
            return now;
        });
    }
}
