package org.capwright.pattern;

import java.util.List;
import org.capwright.geometry.Point;

/**
 * The words on a piece.
 *
 * @param lines what is written, first line first: piece name, style and size, cut instruction, material
 * @param topLeft where the block of lines begins, in the coordinates of the piece, mm
 * @param lineHeight distance between lines, mm; capital letters are 0.6 of it
 * @param width greatest width the lines may take so that they stay inside the piece and off its marks, mm
 */
public record PieceLabel(List<String> lines, Point topLeft, double lineHeight, double width) {}
