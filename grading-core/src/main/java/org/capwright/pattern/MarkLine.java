package org.capwright.pattern;

import org.capwright.geometry.Curve;

/**
 * A line drawn inside a piece: marked, not cut.
 *
 * @param kind what it means
 * @param name words for it, unique in the piece
 * @param line the line; a pleat line starts on the top edge
 */
public record MarkLine(MarkKind kind, String name, Curve line) {}
