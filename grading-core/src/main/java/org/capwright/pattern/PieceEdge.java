package org.capwright.pattern;

import org.capwright.geometry.Curve;

/**
 * One edge of a piece: its seam line.
 *
 * @param name unique in the piece, for example {@code front side seam}
 * @param kind what it becomes
 * @param curve the seam line in the sense of the outline (counter-clockwise)
 * @param allowance seam or hem allowance outside the seam line, mm, 0 or more
 */
public record PieceEdge(String name, EdgeKind kind, Curve curve, double allowance) {}
