package org.capwright.grade;

import java.util.List;
import org.capwright.geometry.Point;

/**
 * A named point of a piece and how it moves from size to size, for rooms that grade by points.
 *
 * @param part which part of the sleeve it belongs to: {@code overlay} or {@code underSleeve}
 * @param name name of the point
 * @param base where it lies in the base size, mm, origin at fold line x bicep line
 * @param deltas per size, smallest first: how far it lies from its place in the base size, aligned on the alignment point; zero for the base size
 */
public record GradePoint(String part, String name, Point base, List<Point> deltas) {}
