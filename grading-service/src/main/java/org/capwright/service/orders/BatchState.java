package org.capwright.service.orders;

import java.util.Locale;
import java.util.stream.Stream;

/** How far a batch is that runs as a job. */
enum BatchState {
    /** Its lines are being read; nobody has been told of it. */
    RECEIVING,
    /** Its orders are being taken. */
    RUNNING,
    /** Every line is answered. */
    DONE,
    /** No more orders are taken. */
    CANCELLED;

    String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    static BatchState of(String word) {
        return Stream.of(values())
                .filter(state -> state.word().equals(word))
                .findFirst()
                .orElseThrow();
    }
}
