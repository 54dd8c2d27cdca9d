package org.capwright.draft.pleat;

/**
 * The pleats on one side of the apex.
 *
 * @param edge arc length of this half of the flat edge, mm
 * @param span finished seam of this half, mm
 * @param takeUp edge less span, mm, 0 or more
 * @param pleats number of pleats; a pleat on the apex counts one half on each side
 * @param depth depth that follows: take-up divided among the folds, mm; 0 without pleats
 */
public record HalfPleats(double edge, double span, double takeUp, double pleats, double depth) {}
