package org.capwright.check;

import java.util.List;
import org.capwright.tables.BodyDimension;
import org.capwright.tables.survey.PredictionInterval;

/**
 * A measurement that was not taken.
 *
 * @param dimension what was not measured
 * @param from what it is estimated from
 * @param beyond what of it lies beyond the people surveyed, so that the estimate is extrapolated; most often empty
 * @param prediction value and interval, mm
 */
public record Estimate(
        BodyDimension dimension, List<BodyDimension> from, List<BodyDimension> beyond, PredictionInterval prediction) {

    /**
     * Copies the lists.
     *
     * @param dimension what was not measured
     * @param from what it is estimated from
     * @param beyond what of it lies beyond the people surveyed, so that the estimate is extrapolated; most often empty
     * @param prediction value and interval, mm
     */
    public Estimate {
        from = List.copyOf(from);
        beyond = List.copyOf(beyond);
    }
}
