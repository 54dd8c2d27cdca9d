package org.capwright.service.orders;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.stream.Stream;
import org.capwright.service.http.PageAsked;
import org.capwright.service.http.problem.WrongParameter;
import org.capwright.words.Text;

/**
 * Which orders are listed.
 *
 * @param state how far they are
 * @param style id of their style
 * @param reference the shop's own name
 * @param from taken then or later
 * @param to taken before
 */
record OrderSearch(
        Optional<OrderState> state,
        Optional<String> style,
        Optional<String> reference,
        Optional<Instant> from,
        Optional<Instant> to) {

    /**
     * A place in the list.
     *
     * @param takenAt when the order there was taken
     * @param id its id
     */
    record Place(Instant takenAt, String id) {

        static Place of(SleeveOrder order) {
            return new Place(order.takenAt(), order.id());
        }

        String text() {
            return takenAt + "/" + id;
        }

        static Place read(String text) {
            try {
                int slash = text.indexOf('/');
                return new Place(Instant.parse(text.substring(0, Math.max(0, slash))), text.substring(slash + 1));
            } catch (DateTimeException e) {
                throw PageAsked.wrongCursor(text);
            }
        }
    }

    static OrderSearch of(String state, String style, String reference, String from, String to) {
        Optional<OrderState> found = OrderState.find(state);
        if (!state.isEmpty() && found.isEmpty()) {
            throw WrongParameter.of(
                    "state",
                    Text.of("must be one of {words}")
                            .with(
                                    "words",
                                    Text.names(Stream.of(OrderState.values())
                                            .map(OrderState::word)
                                            .toList())),
                    state);
        }
        return new OrderSearch(
                found, text("style", style), text("reference", reference), time("from", from), time("to", to));
    }

    private static Optional<String> text(String parameter, String text) {
        if (text.chars().anyMatch(Character::isISOControl)) {
            throw WrongParameter.of(
                    parameter, "must be a text without control characters", text.replaceAll("\\p{Cc}", "?"));
        }
        return Optional.of(text).filter(given -> !given.isEmpty());
    }

    /** A day begins at midnight in UTC. */
    private static Optional<Instant> time(String parameter, String text) {
        if (text.isEmpty()) {
            return Optional.empty();
        }
        try {
            return Optional.of(
                    text.length() <= 10
                            ? LocalDate.parse(text).atStartOfDay().toInstant(ZoneOffset.UTC)
                            : OffsetDateTime.parse(text).toInstant());
        } catch (DateTimeException e) {
            throw WrongParameter.of(
                    parameter, "must be a day such as 2026-11-26, or a time such as 2026-11-26T08:00:00Z", text);
        }
    }
}
