package org.capwright.pattern;

import org.capwright.geometry.Point;

/**
 * A notch on a seam line.
 *
 * @param kind what it tells
 * @param edge name of the edge that carries it
 * @param distance arc length along that edge from its start, mm
 * @param at the place on the seam line
 * @param onCut the place on the cut line where the cloth is snipped
 * @param inward unit vector from the cut line into the piece
 */
public record Notch(NotchKind kind, String edge, double distance, Point at, Point onCut, Point inward) {}
