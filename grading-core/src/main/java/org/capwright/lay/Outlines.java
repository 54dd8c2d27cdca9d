package org.capwright.lay;

import java.util.List;
import org.capwright.geometry.Point;
import org.locationtech.jts.geom.Polygon;

/** Outlines as polygons of the topology suite. */
final class Outlines {

    private Outlines() {}

    static Polygon polygon(List<Point> outline) {
        double[] ring = new double[2 * outline.size()];
        for (int i = 0; i < outline.size(); i++) {
            ring[2 * i] = outline.get(i).x();
            ring[2 * i + 1] = outline.get(i).y();
        }
        return OuterOutline.polygon(ring);
    }
}
