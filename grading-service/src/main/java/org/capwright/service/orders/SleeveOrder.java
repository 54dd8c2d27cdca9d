package org.capwright.service.orders;

import java.time.Instant;
import java.util.Optional;

/**
 * An order as it is accounted for. Measurements are apart from it.
 *
 * @param id its id
 * @param style id of the style
 * @param revision number of the revision that it pins
 * @param engine version of the engine that drew its files
 * @param reference the shop's own name for it
 * @param size the size, unless it was taken by measurements
 * @param remakeOf id of the order that this one makes again
 * @param state how far it is
 * @param takenAt when it was taken
 * @param changedAt when its state last changed
 * @param questions what is improbable, JSON; none once it was erased
 * @param erasedAt when its measurements and files were erased
 */
record SleeveOrder(
        String id,
        String style,
        int revision,
        String engine,
        Optional<String> reference,
        Optional<String> size,
        Optional<String> remakeOf,
        OrderState state,
        Instant takenAt,
        Instant changedAt,
        Optional<String> questions,
        Optional<Instant> erasedAt) {}
