package org.capwright.exchange.dxf;

import org.capwright.geometry.Point;

/**
 * A point of the base size and the rule that takes it to the other sizes.
 *
 * @param base where it lies in the base size, draft coordinates
 * @param rule number of its grade rule
 * @param kind corner or not
 */
record GradedPoint(Point base, int rule, Kind kind) {

    enum Kind {
        TURN,
        CURVE
    }
}
