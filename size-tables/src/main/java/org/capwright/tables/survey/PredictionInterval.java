package org.capwright.tables.survey;

import org.capwright.tables.Interval;

/**
 * Where a new person, or the difference between two new persons, lies. It holds the spread between people and stays wide
 * however many were measured.
 *
 * @param estimate the estimate in millimetres
 * @param interval the range in millimetres that holds the new value with the stated probability
 * @param probability the probability, between 0 and 1
 * @param standardError standard error of the new value about the estimate, in millimetres
 * @param degreesOfFreedom degrees of freedom of the t distribution used
 */
public record PredictionInterval(
        double estimate, Interval interval, double probability, double standardError, int degreesOfFreedom) {}
