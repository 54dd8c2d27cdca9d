package org.capwright.exchange.dxf;

import org.capwright.geometry.Point;

/**
 * A text of a drawing.
 *
 * @param layer its layer
 * @param colour its colour number, 1 to 255; 0 where it has none of its own
 * @param instance the insertion that it is part of
 * @param line line of the file, the first is 1
 * @param at its place, mm
 * @param text without the codes that set its form
 */
public record DrawnText(String layer, int colour, Insertion instance, int line, Point at, String text) {}
