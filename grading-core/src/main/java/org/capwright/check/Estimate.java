package org.capwright.check;

import java.util.List;
import org.capwright.tables.BodyDimension;
import org.capwright.tables.survey.PredictionInterval;

/**
 * A measurement that was not taken.
 *
 * @param dimension what was not measured
 * @param from what it is estimated from
 * @param prediction value and interval, mm
 */
public record Estimate(BodyDimension dimension, List<BodyDimension> from, PredictionInterval prediction) {

    /**
     * Copies the list.
     *
     * @param dimension what was not measured
     * @param from what it is estimated from
     * @param prediction value and interval, mm
     */
    public Estimate {
        from = List.copyOf(from);
    }
}
