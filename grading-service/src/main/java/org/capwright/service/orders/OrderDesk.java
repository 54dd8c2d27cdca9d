package org.capwright.service.orders;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.BiConsumer;
import org.capwright.json.order.OrderRequest;
import org.capwright.json.problem.FieldViolation;
import org.capwright.json.problem.FoundViolations;
import org.capwright.json.problem.RefusedRequestException;
import org.capwright.quantity.Unit;
import org.capwright.service.http.access.Caller;
import org.capwright.service.http.meters.TradeMeters;
import org.capwright.service.http.problem.Problem;
import org.capwright.service.http.problem.ProblemException;
import org.capwright.service.http.problem.ProblemKind;
import org.capwright.service.sizerun.SizeRunService;
import org.capwright.service.store.AuditTrail;
import org.capwright.service.store.Store;
import org.capwright.service.store.Times;
import org.capwright.service.styles.StyleRevision;
import org.capwright.service.styles.StyleShelf;
import org.capwright.service.webhooks.Announcements;
import org.capwright.service.webhooks.WebhookEvent;
import org.capwright.words.Text;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.boot.info.BuildProperties;
import org.springframework.http.HttpHeaders;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.JsonNodeFactory;

/** Takes orders and carries them on. An order is kept whole, with its files and its place in the audit trail, or not at all. */
@Component
final class OrderDesk {

    private static final String UNKNOWN_VERSION = "development";

    private final Store store;
    private final Announcements announcements;
    private final OrderDraft draft;
    private final JsonMapper mapper;
    private final String engine;

    /** Keys that this copy of the service is busy with. */
    private final Set<String> inFlight = ConcurrentHashMap.newKeySet();

    OrderDesk(
            Store store,
            Announcements announcements,
            SizeRunService drafting,
            JsonMapper mapper,
            ObjectProvider<BuildProperties> build) {
        this.store = store;
        this.announcements = announcements;
        this.draft = new OrderDraft(drafting.forms(), mapper);
        this.mapper = mapper;
        BuildProperties known = build.getIfAvailable();
        String version = known == null ? UNKNOWN_VERSION : known.getVersion();
        this.engine = version == null ? UNKNOWN_VERSION : version;
    }

    /**
     * What was answered to an order.
     *
     * @param id id of the order
     * @param body the answer, JSON
     */
    record Taken(String id, String body) {}

    /** Takes an order, or answers what was answered before to the same key. */
    Taken take(Caller caller, String style, JsonNode tree, Optional<IdempotencyKey> key) {
        return take(caller, style, tree, key, (database, taken) -> {});
    }

    /** As {@link #take}; what is done with it in the same transaction is kept with the order, or neither is. */
    Taken take(
            Caller caller,
            String style,
            JsonNode tree,
            Optional<IdempotencyKey> key,
            BiConsumer<JdbcClient, Taken> with) {
        String name = key.map(known -> caller.tenant() + "\n" + known.text()).orElse("");
        if (key.isPresent() && !inFlight.add(name)) {
            throw busy();
        }
        try {
            return store.transaction(database -> {
                if (key.isPresent() && !store.claim(database, name)) {
                    throw busy();
                }
                OrderBook book = new OrderBook(database, caller.tenant());
                Optional<OrderBook.Answered> before = key.flatMap(known -> book.answered(known.text()));
                Taken taken = before.map(known -> again(known, key.orElseThrow(), book))
                        .orElseGet(() -> taken(database, caller, style, tree, key));
                with.accept(database, taken);
                return taken;
            });
        } finally {
            inFlight.remove(name);
        }
    }

    private static ProblemException busy() {
        return new ProblemException(
                Problem.of(
                        ProblemKind.CONFLICT,
                        "An order with this Idempotency-Key is being taken; ask again in a moment for its answer."),
                Map.of(HttpHeaders.RETRY_AFTER, "1"));
    }

    /** Whether an order was refused only because the same one is being taken at this moment. */
    static boolean isBusy(ProblemException refused) {
        return refused.problem().status() == ProblemKind.CONFLICT.status()
                && refused.getHeaders().containsHeader(HttpHeaders.RETRY_AFTER);
    }

    private Taken again(OrderBook.Answered before, IdempotencyKey key, OrderBook book) {
        if (!before.requestSha256().equals(key.request())) {
            throw new ProblemException(Problem.of(
                    ProblemKind.INVALID_REQUEST,
                    "Another order was taken with this Idempotency-Key; every order needs a key of its own."));
        }
        return new Taken(before.order(), before.answer().orElseGet(() -> json(answer(book, book.get(before.order())))));
    }

    private Taken taken(JdbcClient database, Caller caller, String style, JsonNode tree, Optional<IdempotencyKey> key) {
        OrderBook book = new OrderBook(database, caller.tenant());
        StyleShelf shelf = new StyleShelf(database, caller);
        StyleRevision latest = shelf.get(style, Optional.empty());
        OrderRequest request = OrderRequest.read(tree);
        if (caller.isPublishable() && request.remakeOf().isPresent()) {
            throw wrong("/remakeOf", "cannot be used with a publishable key: the measurements belong to another order");
        }
        Optional<SleeveOrder> first = request.remakeOf().map(id -> first(book, id, style));
        StyleRevision pinned = request.revision()
                .or(() -> first.map(SleeveOrder::revision))
                .filter(number -> number != latest.revision())
                .map(number -> shelf.get(style, Optional.of(number)))
                .orElse(latest);
        taking(pinned);
        request.checkUnits(mapper.readTree(pinned.body()).path("units").asString(""));
        JsonNode made = request.over(first.flatMap(order -> book.request(order.id()))
                .map(mapper::readTree)
                .orElse(JsonNodeFactory.instance.objectNode()));
        if (!made.hasNonNull("size") && !made.hasNonNull("wearer")) {
            throw wrong("/remakeOf", "is an order whose measurements were erased; give a size, or all measurements");
        }
        OrderDraft.Drawn drawn = draft.draw(caller.tenant(), pinned, made);
        Instant now = Times.now().toInstant();
        SleeveOrder order = new SleeveOrder(
                UUID.randomUUID().toString(),
                style,
                pinned.revision(),
                engine,
                made.path("reference").asStringOpt(),
                drawn.size(),
                request.remakeOf(),
                drawn.questions().isEmpty() ? OrderState.TAKEN : OrderState.QUESTIONED,
                now,
                now,
                drawn.questions().isEmpty() ? Optional.empty() : Optional.of(json(drawn.questions())),
                Optional.empty());
        book.enter(order, made.toString(), caller.name());
        List<OrderFile> files = book.keep(order.id(), drawn.files());
        noted(database, caller, order, order.state().event());
        String answer =
                json(answer(order, List.of(new OrderAnswer.Step(order.state().word(), now, caller.name())), files));
        key.ifPresent(known ->
                book.remember(known.text(), new OrderBook.Answered(known.request(), order.id(), Optional.of(answer))));
        return new Taken(order.id(), answer);
    }

    /** Refuses an archived style. */
    static StyleRevision taking(StyleRevision style) {
        if (style.archived()) {
            throw new ProblemException(
                    Problem.of(ProblemKind.CONFLICT, "The style is archived and takes no orders; put it again first."));
        }
        return style;
    }

    /** In the audit trail, and by webhooks. */
    private void noted(JdbcClient database, Caller caller, SleeveOrder order, WebhookEvent event) {
        AuditTrail.write(database, caller, event.word(), order.id());
        TradeMeters.order(event.word());
        announcements.tell(database, caller.tenant(), event, OrderAnswer.Entry.of(order));
    }

    private static SleeveOrder first(OrderBook book, String id, String style) {
        return book.find(id)
                .filter(order -> order.style().equals(style))
                .orElseThrow(() -> wrong("/remakeOf", "must be the id of an order on this style"));
    }

    private static RefusedRequestException wrong(String field, String reason) {
        FoundViolations found = new FoundViolations(Unit.MILLIMETRE);
        found.add(field, reason);
        return new RefusedRequestException(found.list());
    }

    /** The order with its history and its files. */
    OrderAnswer look(Caller caller, String id) {
        return store.transaction(database -> {
            OrderBook book = new OrderBook(database, caller.tenant());
            return answer(book, book.get(id));
        });
    }

    private OrderAnswer answer(OrderBook book, SleeveOrder order) {
        return answer(order, book.history(order.id()), book.files(order.id()));
    }

    private OrderAnswer answer(SleeveOrder order, List<OrderAnswer.Step> history, List<OrderFile> files) {
        return new OrderAnswer(
                OrderAnswer.Entry.of(order),
                order.engine(),
                order.questions()
                        .map(text -> List.of(mapper.readValue(text, FieldViolation[].class)))
                        .orElse(List.of()),
                history,
                files.stream()
                        .map(file -> new OrderAnswer.File(file.format(), file.sha256(), file.size()))
                        .sorted(java.util.Comparator.comparing(OrderAnswer.File::format))
                        .toList());
    }

    private String json(Object answer) {
        return mapper.writeValueAsString(answer);
    }

    /** Brings an order to its next state. Said twice it is done once. */
    OrderAnswer change(Caller caller, String id, OrderState state) {
        return store.transaction(database -> {
            OrderBook book = new OrderBook(database, caller.tenant());
            SleeveOrder order = book.getLocked(id);
            if (order.state() != state) {
                if (!order.state().next().contains(state)) {
                    throw new ProblemException(Problem.of(
                            ProblemKind.CONFLICT,
                            Text.of(
                                            order.state().next().isEmpty()
                                                    ? "The order is {state}, and nothing comes after that; order a"
                                                            + " remake."
                                                    : "The order is {state}, and can only become {next}.")
                                    .with("state", Text.of(order.state().word()))
                                    .with(
                                            "next",
                                            order.state().next().stream()
                                                    .map(OrderState::word)
                                                    .sorted()
                                                    .map(Text::of)
                                                    .reduce((first, second) -> Text.of("{first} or {second}")
                                                            .with("first", first)
                                                            .with("second", second))
                                                    .orElse(Text.name("")))));
                }
                if (order.erasedAt().isPresent()) {
                    throw erased(order);
                }
                book.change(id, state, Times.now().toInstant(), caller.name());
                noted(database, caller, book.get(id), state.event());
            }
            return answer(book, book.get(id));
        });
    }

    private static ProblemException erased(SleeveOrder order) {
        return new ProblemException(Problem.of(
                ProblemKind.NOT_FOUND,
                order.erasedAt()
                        .map(at -> Text.of("Measurements and files of this order were erased at {time}.")
                                .with("time", String.valueOf(at)))
                        .orElse(Text.of("Measurements and files of this order were erased."))));
    }

    /** The body that the order was taken by. */
    String measurements(Caller caller, String id) {
        return store.transaction(database -> {
            OrderBook book = new OrderBook(database, caller.tenant());
            SleeveOrder order = book.get(id);
            AuditTrail.write(database, caller, "order.measurements-read", id);
            return book.request(id).orElseThrow(() -> erased(order));
        });
    }

    /** Erases measurements and files. What was not cut yet cannot be any more, and is cancelled. */
    OrderAnswer erase(Caller caller, String id) {
        return store.alone(database -> {
            OrderBook book = new OrderBook(database, caller.tenant());
            SleeveOrder order = book.getLocked(id);
            if (order.erasedAt().isEmpty()) {
                Instant now = Times.now().toInstant();
                if (order.state().next().contains(OrderState.CANCELLED)) {
                    book.change(id, OrderState.CANCELLED, now, caller.name());
                    announcements.tell(
                            database,
                            caller.tenant(),
                            WebhookEvent.ORDER_CANCELLED,
                            OrderAnswer.Entry.of(book.get(id)));
                }
                book.erase(id, now);
                noted(database, caller, book.get(id), WebhookEvent.ORDER_ERASED);
            }
            return answer(book, book.get(id));
        });
    }

    /** A file as it was drawn, or all of them. */
    List<DrawnFile> files(Caller caller, String id, Optional<String> format) {
        return store.transaction(database -> {
            OrderBook book = new OrderBook(database, caller.tenant());
            SleeveOrder order = book.get(id);
            if (order.erasedAt().isPresent()) {
                throw erased(order);
            }
            if (!order.state().drawn()) {
                throw new ProblemException(Problem.of(
                        ProblemKind.CONFLICT,
                        Text.of(
                                        order.state() == OrderState.QUESTIONED
                                                ? "The order is {state} and must not be cut; its questions say what to"
                                                        + " measure again, then confirm it."
                                                : "The order is {state} and must not be cut; take a new one.")
                                .with("state", Text.of(order.state().word()))));
            }
            List<DrawnFile> files = book.files(id).stream()
                    .filter(file -> format.isEmpty() || format.get().equals(file.format()))
                    .map(file -> new DrawnFile(file.format(), book.bytes(file)))
                    .toList();
            if (files.isEmpty()) {
                throw new ProblemException(Problem.of(
                        ProblemKind.NOT_FOUND,
                        Text.of("The order has no such file, only {formats}, and zip for all of them.")
                                .with(
                                        "formats",
                                        Text.names(book.files(id).stream()
                                                .map(OrderFile::format)
                                                .toList()))));
            }
            return files;
        });
    }

    List<SleeveOrder> list(Caller caller, OrderSearch search, Optional<OrderSearch.Place> after, int most) {
        return store.transaction(database -> new OrderBook(database, caller.tenant()).list(search, after, most));
    }
}
