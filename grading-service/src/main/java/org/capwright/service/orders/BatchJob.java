package org.capwright.service.orders;

import java.time.Instant;
import java.util.Optional;

/**
 * A batch that runs as a job.
 *
 * @param id its id
 * @param state how far it is
 * @param lines how many orders it has
 * @param answered how many are answered
 * @param refused how many of those were answered with a problem
 * @param madeAt when it was sent
 * @param madeBy name of the key that sent it
 * @param endedAt when it was done or cancelled
 */
record BatchJob(
        String id,
        BatchState state,
        int lines,
        int answered,
        int refused,
        Instant madeAt,
        String madeBy,
        Optional<Instant> endedAt) {}
