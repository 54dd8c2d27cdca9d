package org.capwright.tables.survey;

import org.capwright.tables.Interval;

/**
 * Where a mean, or the growth of a mean, lies. It narrows with the number of people measured and says nothing of the
 * spread between them.
 *
 * @param estimate the estimate in millimetres
 * @param interval the range in millimetres that holds the true mean with the stated confidence
 * @param confidence the confidence, between 0 and 1
 * @param standardError standard error of the estimate, in millimetres
 * @param degreesOfFreedom degrees of freedom of the t distribution used
 */
public record ConfidenceInterval(
        double estimate, Interval interval, double confidence, double standardError, int degreesOfFreedom) {}
