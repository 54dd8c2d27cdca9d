package org.capwright.service.store;

import java.time.Clock;
import java.time.Duration;
import java.time.OffsetDateTime;

/** Points in time as the databases keep them: to the millisecond, so that all answer what was written. */
public final class Times {

    private static final Clock CLOCK = Clock.tick(Clock.systemUTC(), Duration.ofMillis(1));

    private Times() {}

    /**
     * The time.
     *
     * @return now, in UTC
     */
    public static OffsetDateTime now() {
        return OffsetDateTime.now(CLOCK);
    }
}
