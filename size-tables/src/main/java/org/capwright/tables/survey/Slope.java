package org.capwright.tables.survey;

import org.capwright.tables.BodyDimension;

/**
 * Growth of the response per unit of one predictor, the other predictor held.
 *
 * @param predictor the predictor
 * @param value growth in millimetres per millimetre
 * @param standardError standard error of the growth, in millimetres per millimetre
 */
public record Slope(BodyDimension predictor, double value, double standardError) {}
