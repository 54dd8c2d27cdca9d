package org.capwright.tables.survey;

import org.capwright.tables.Interval;

/**
 * The bodies that one size of a run fits.
 *
 * @param size name of the size
 * @param armGirth girths of the upper arm it fits, in millimetres
 * @param armLength arm lengths it fits, in millimetres
 */
public record SizeInterval(String size, Interval armGirth, Interval armLength) {}
