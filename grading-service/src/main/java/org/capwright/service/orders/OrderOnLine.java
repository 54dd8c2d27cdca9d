package org.capwright.service.orders;

import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.function.BiConsumer;
import org.capwright.json.order.OrderRequest;
import org.capwright.json.problem.FoundViolations;
import org.capwright.json.problem.RefusedRequestException;
import org.capwright.quantity.Unit;
import org.capwright.service.http.RequestBodies;
import org.capwright.service.http.access.Caller;
import org.capwright.service.http.meters.TradeMeters;
import org.capwright.service.http.problem.Problem;
import org.capwright.service.http.problem.ProblemException;
import org.capwright.service.http.problem.ProblemKind;
import org.capwright.words.Language;
import org.capwright.words.Text;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/** Takes the order that stands on one line of a batch. */
@Component
final class OrderOnLine {

    static final int LONGEST = 64 * 1024;

    private static final String STYLE = "style";
    private static final String KEY = "idempotencyKey";

    private final OrderDesk desk;
    private final RequestBodies bodies;
    private final JsonMapper mapper;

    OrderOnLine(OrderDesk desk, RequestBodies bodies, JsonMapper mapper) {
        this.desk = desk;
        this.bodies = bodies;
        this.mapper = mapper;
    }

    /**
     * Takes it, or says what is wrong with it.
     *
     * @param caller who sent it
     * @param line the line
     * @param language that of the sender, for an order that names none
     * @param with what is done with the answer in the transaction in which the order is taken; not where it is refused
     * @return the answer
     */
    BatchAnswer take(Caller caller, BatchLines.Line line, Language language, BiConsumer<JdbcClient, BatchAnswer> with) {
        try {
            return taken(caller, line, language, with);
        } catch (RefusedRequestException e) {
            TradeMeters.refused(ProblemKind.INVALID_REQUEST.word());
            return BatchAnswer.of(line.number(), Problem.of(e).in(language));
        } catch (ProblemException e) {
            if (e.problem().status() >= ProblemKind.INTERNAL_ERROR.status() || OrderDesk.isBusy(e)) {
                throw e;
            }
            TradeMeters.refused(ProblemKind.of(e.problem().status()).word());
            return BatchAnswer.of(line.number(), e.problem().in(language));
        }
    }

    private BatchAnswer taken(
            Caller caller, BatchLines.Line line, Language language, BiConsumer<JdbcClient, BatchAnswer> with) {
        if (!line.whole()) {
            throw new ProblemException(Problem.of(
                    ProblemKind.BODY_TOO_LARGE,
                    Text.of("The line is longer than {most} kB, the most that is read of one.")
                            .with("most", LONGEST / 1024)));
        }
        JsonNode tree = bodies.parse(line.bytes());
        FoundViolations found = new FoundViolations(Unit.MILLIMETRE);
        if (!tree.isObject()) {
            found.add("", "must be an object: an order, with the id of its style as style");
        }
        String style = tree.path(STYLE).asStringOpt().orElse("");
        if (tree.isObject() && style.isEmpty()) {
            found.add("/" + STYLE, "is missing; the id of a kept style");
        }
        if (tree.hasNonNull(KEY) && !tree.get(KEY).isString()) {
            found.add("/" + KEY, "must be a text");
        }
        found.refuse();
        ObjectNode order = (ObjectNode) tree;
        order.remove(STYLE);
        Optional<String> key = Optional.ofNullable(order.remove(KEY)).flatMap(JsonNode::asStringOpt);
        OrderDesk.Taken taken = desk.take(
                caller,
                style,
                OrderRequest.in(language, order),
                IdempotencyKey.of(key, style, order.toString().getBytes(StandardCharsets.UTF_8)),
                (database, one) -> with.accept(database, answer(line, one)));
        return answer(line, taken);
    }

    private BatchAnswer answer(BatchLines.Line line, OrderDesk.Taken taken) {
        JsonNode entry = mapper.readTree(taken.body()).path("order");
        return new BatchAnswer(
                line.number(), 201, Optional.of(taken.id()), entry.path("state").asStringOpt(), Optional.empty());
    }
}
