package org.capwright.service.jobs;

import java.time.Instant;
import java.util.Optional;
import java.util.function.BooleanSupplier;

/** A kind of work. It is done at least once, so it must notice what it did before. */
public interface Work {

    /**
     * Its name among all kinds.
     *
     * @return the same in every release
     */
    String name();

    /**
     * What goes first where more is due than there are hands.
     *
     * @return the greater, the sooner
     */
    int urgency();

    /**
     * Does it.
     *
     * @param subject what it is to be done with
     * @param failures how often it failed in a row just before, by an exception
     * @param ending says whether the service is being stopped: then it must leave off soon
     * @return when to go on; nothing if it is finished
     */
    Optional<Instant> run(String subject, int failures, BooleanSupplier ending);
}
