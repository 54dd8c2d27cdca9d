package org.capwright.lay;

import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.locationtech.jts.operation.buffer.BufferParameters;

/**
 * Few-cornered polygons that contain a given one. A reflex corner is left out, or an edge between two convex corners is replaced by the point where its
 * neighbours meet: both only ever add area. The distance by which the outline moves is kept per corner and never exceeds the tolerance.
 */
final class OuterOutline {

    private static final GeometryFactory FACTORY = new GeometryFactory();

    /**
     * JTS joins the sides at corners of less than 0.05 rad by a short cut, which comes nearer by the factor cos 0.05 (seen in version 1.20; a property test
     * keeps watch): so much more is asked for.
     */
    private static final double BEVEL = 1.0013;

    private OuterOutline() {}

    /** A polygon around a ring and everything within a distance of it, with few corners. Ring counter-clockwise, as x0, y0, x1, y1, ... */
    static double[] around(double[] ring, double distance, double tolerance, int mostCorners) {
        double[] few = simplified(ring, tolerance, mostCorners);
        if (distance == 0) {
            return few;
        }
        // Mitred corners contain the round ones.
        BufferParameters mitred = new BufferParameters(1, BufferParameters.CAP_FLAT, BufferParameters.JOIN_MITRE, 4);
        mitred.setSimplifyFactor(0);
        Geometry grown = BufferOp.bufferOp(polygon(few), distance * BEVEL, mitred);
        Polygon outer = grown instanceof Polygon only ? only : (Polygon) grown.getGeometryN(0);
        return simplified(ring(outer), tolerance / 4, mostCorners);
    }

    static Polygon polygon(double[] ring) {
        int n = ring.length / 2;
        Coordinate[] coordinates = new Coordinate[n + 1];
        for (int i = 0; i <= n; i++) {
            int k = i % n;
            coordinates[i] = new Coordinate(ring[2 * k], ring[2 * k + 1]);
        }
        return FACTORY.createPolygon(coordinates);
    }

    private static double[] ring(Polygon polygon) {
        Coordinate[] coordinates = polygon.getExteriorRing().getCoordinates();
        double[] ring = new double[2 * (coordinates.length - 1)];
        for (int i = 0; i < coordinates.length - 1; i++) {
            ring[2 * i] = coordinates[i].x;
            ring[2 * i + 1] = coordinates[i].y;
        }
        return counterClockwise(ring);
    }

    static double[] counterClockwise(double[] ring) {
        if (area(ring) >= 0) {
            return ring;
        }
        int n = ring.length / 2;
        double[] turned = new double[ring.length];
        for (int i = 0; i < n; i++) {
            turned[2 * i] = ring[2 * (n - 1 - i)];
            turned[2 * i + 1] = ring[2 * (n - 1 - i) + 1];
        }
        return turned;
    }

    /** Signed area by the shoelace formula, about the first corner so that far-off rings lose no digits. */
    static double area(double[] ring) {
        double twice = 0;
        double x0 = ring[0];
        double y0 = ring[1];
        int n = ring.length / 2;
        for (int i = 1; i + 1 < n; i++) {
            twice += (ring[2 * i] - x0) * (ring[2 * i + 3] - y0) - (ring[2 * i + 2] - x0) * (ring[2 * i + 1] - y0);
        }
        return twice / 2;
    }

    private static double[] simplified(double[] ring, double tolerance, int mostCorners) {
        double allowed = tolerance;
        double[] best = reduced(ring, allowed);
        while (best.length / 2 > mostCorners && allowed < 16 * tolerance) {
            allowed *= 1.5;
            double[] coarser = reduced(ring, allowed);
            if (!polygon(coarser).isValid()) {
                break;
            }
            best = coarser;
        }
        return polygon(best).isValid() ? best : ring;
    }

    private static double[] reduced(double[] ring, double tolerance) {
        return new Reduction(ring).run(tolerance);
    }

    /** A ring of corners as a linked list. */
    private static final class Reduction {
        private final double[] x;
        private final double[] y;
        private final double[] moved;
        private final int[] next;
        private final int[] previous;
        private int any;
        private int count;

        Reduction(double[] ring) {
            int n = ring.length / 2;
            x = new double[n];
            y = new double[n];
            moved = new double[n];
            next = new int[n];
            previous = new int[n];
            for (int i = 0; i < n; i++) {
                x[i] = ring[2 * i];
                y[i] = ring[2 * i + 1];
                next[i] = (i + 1) % n;
                previous[i] = (i + n - 1) % n;
            }
            count = n;
        }

        double[] run(double tolerance) {
            // Cheap corners first: the limit doubles from pass to pass.
            for (int halvings = 7; halvings >= 0; halvings--) {
                double limit = tolerance / (1 << halvings);
                boolean changed = true;
                while (changed && count > 4) {
                    changed = pass(limit, tolerance);
                }
            }
            double[] ring = new double[2 * count];
            int at = any;
            for (int i = 0; i < count; i++) {
                ring[2 * i] = x[at];
                ring[2 * i + 1] = y[at];
                at = next[at];
            }
            return ring;
        }

        private boolean pass(double limit, double tolerance) {
            boolean changed = false;
            int at = any;
            for (int left = count; left > 0 && count > 4; left--) {
                if (dropReflex(at, limit, tolerance) || replaceEdge(at, limit, tolerance)) {
                    changed = true;
                    any = next[at];
                    at = next[next[at]];
                    left--;
                } else {
                    at = next[at];
                }
            }
            return changed;
        }

        private double turn(int a, int b, int c) {
            return (x[b] - x[a]) * (y[c] - y[b]) - (y[b] - y[a]) * (x[c] - x[b]);
        }

        private boolean dropReflex(int at, double limit, double tolerance) {
            int a = previous[at];
            int c = next[at];
            double turn = turn(a, at, c);
            if (turn > 0) {
                return false;
            }
            double chord = Math.hypot(x[c] - x[a], y[c] - y[a]);
            if (chord == 0) {
                return false;
            }
            double distance = -turn / chord;
            double total = distance + Math.max(moved[at], Math.max(moved[a], moved[c]));
            if (distance > limit || total > tolerance) {
                return false;
            }
            moved[a] = total;
            moved[c] = total;
            next[a] = c;
            previous[c] = a;
            count--;
            return true;
        }

        /** Replaces corner b and the one after it, c, by the point where the line a-b meets the line d-c. */
        private boolean replaceEdge(int b, double limit, double tolerance) {
            int a = previous[b];
            int c = next[b];
            int d = next[c];
            if (turn(a, b, c) <= 0 || turn(b, c, d) <= 0) {
                return false;
            }
            double ux = x[b] - x[a];
            double uy = y[b] - y[a];
            double vx = x[c] - x[d];
            double vy = y[c] - y[d];
            double cross = ux * vy - uy * vx;
            if (cross >= 0) {
                return false; // the neighbours turn by half a turn or more: they never meet outside
            }
            double along = ((x[d] - x[b]) * vy - (y[d] - y[b]) * vx) / cross;
            if (!(along > 0)) {
                return false;
            }
            double px = x[b] + along * ux;
            double py = y[b] + along * uy;
            double edge = Math.hypot(x[c] - x[b], y[c] - y[b]);
            if (edge == 0) {
                return false;
            }
            double distance = Math.abs((x[c] - x[b]) * (py - y[b]) - (y[c] - y[b]) * (px - x[b])) / edge;
            double total = distance + Math.max(moved[b], moved[c]);
            if (distance > limit || total > tolerance) {
                return false;
            }
            x[b] = px;
            y[b] = py;
            moved[b] = total;
            next[b] = d;
            previous[d] = b;
            count--;
            return true;
        }
    }
}
