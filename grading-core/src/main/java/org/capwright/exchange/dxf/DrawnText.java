package org.capwright.exchange.dxf;

import org.capwright.geometry.Point;

/**
 * A text of a drawing.
 *
 * @param layer its layer
 * @param instance the insertion that it is part of
 * @param line line of the file, the first is 1
 * @param at its place, mm
 * @param text without the codes that set its form
 */
public record DrawnText(String layer, Insertion instance, int line, Point at, String text) {}
