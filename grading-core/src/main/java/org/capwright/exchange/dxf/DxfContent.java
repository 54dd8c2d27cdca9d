package org.capwright.exchange.dxf;

import java.util.List;
import java.util.Set;

/**
 * What a drawing shows, with its blocks put in place.
 *
 * @param lines its lines, in the order of the drawing
 * @param words its texts
 * @param instances the drawing itself and all insertions in it, at the places of their numbers
 * @param leftOut types of entities that were not read
 */
public record DxfContent(List<DrawnLine> lines, List<DrawnText> words, List<Insertion> instances, Set<String> leftOut) {

    /** Greatest distance of a chord from its curve, mm. */
    public static final double TOLERANCE = 0.01;
}
