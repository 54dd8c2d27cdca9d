package org.capwright.pattern;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.capwright.geometry.Box;
import org.capwright.geometry.Point;
import org.capwright.geometry.Points;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineSegment;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;

/** What is asked of a closed line by its stretches, compared with the JTS Topology Suite, which knows of none. */
class RingTest {

    private static final int RINGS = 40;
    private static final int QUESTIONS = 60;

    /** A star-shaped line of so many points about the origin: simple whatever the radii. */
    private static Points star(Random random, int count) {
        List<Point> points = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            double angle = 2 * Math.PI * (i + 0.8 * random.nextDouble()) / count;
            double radius = 60 + 60 * random.nextDouble();
            points.add(new Point(radius * Math.cos(angle), radius * Math.sin(angle)));
        }
        return Points.of(points);
    }

    private static Point anywhere(Random random) {
        return new Point(260 * random.nextDouble() - 130, 260 * random.nextDouble() - 130);
    }

    private static Geometry dot(Point point) {
        return Outline.PLANE.createPoint(Outline.coordinate(point));
    }

    @Test
    void placesDistancesAndBoxesAreThoseOfTheLibrary() {
        for (int seed = 0; seed < RINGS; seed++) {
            Random random = new Random(seed);
            Points points = star(random, 3 + random.nextInt(90));
            Ring ring = new Ring(points);
            Polygon polygon = Outline.polygon(points);
            LineString line = polygon.getExteriorRing();
            Envelope about = polygon.getEnvelopeInternal();
            assertEquals(new Box(about.getMinX(), about.getMinY(), about.getMaxX(), about.getMaxY()), ring.box());
            for (int i = 0; i < QUESTIONS; i++) {
                Point point = anywhere(random);
                double within = 20 * random.nextDouble();
                assertEquals(polygon.contains(dot(point)), ring.contains(point), "seed " + seed + " " + point);
                assertEquals(line.distance(dot(point)) <= within, ring.passes(point, within), "seed " + seed);
                Box box = new Box(point.x(), point.y(), point.x() + within, point.y() + 2 * within);
                Geometry rectangle =
                        Outline.PLANE.toGeometry(new Envelope(box.left(), box.right(), box.bottom(), box.top()));
                assertEquals(line.intersects(rectangle), ring.meets(box), "seed " + seed + " " + box);
            }
        }
    }

    @Test
    void stretchesThatAreSkippedAreCrossedByNoLine() {
        int skipped = 0;
        for (int seed = 0; seed < RINGS; seed++) {
            Random random = new Random(seed);
            Points points = star(random, 20 + random.nextInt(90));
            Ring ring = new Ring(points);
            for (int i = 0; i < QUESTIONS; i++) {
                Point on = anywhere(random);
                double angle = 7 * random.nextDouble();
                Point way = new Point(Math.cos(angle), Math.sin(angle));
                Geometry across = Outline.PLANE.createLineString(new Coordinate[] {
                    Outline.coordinate(on.plus(way.times(-1000))), Outline.coordinate(on.plus(way.times(1000)))
                });
                Geometry vertical = Outline.PLANE.createLineString(
                        new Coordinate[] {new Coordinate(on.x(), -1000), new Coordinate(on.x(), 1000)});
                for (int stretch = 0; stretch < ring.stretches(); stretch++) {
                    Geometry part = part(ring, stretch);
                    boolean beside = ring.isBeside(stretch, on, way);
                    skipped += beside ? 1 : 0;
                    assertTrue(!beside || !part.intersects(across), "seed " + seed);
                    assertTrue(ring.isBetween(stretch, on.x(), on.x()) || !part.intersects(vertical), "seed " + seed);
                }
            }
        }
        assertTrue(skipped > RINGS * QUESTIONS, skipped + " stretches are skipped");
    }

    @Test
    void aStraightLineMeetsAllChordsThatItCrosses() {
        int met = 0;
        for (int seed = 0; seed < RINGS; seed++) {
            Random random = new Random(seed);
            Ring ring = new Ring(star(random, 20 + random.nextInt(90)));
            Point on = anywhere(random);
            Point way = new Point(random.nextGaussian(), random.nextGaussian());
            LineSegment line = new LineSegment(
                    Outline.coordinate(on.plus(way.times(-1e4))), Outline.coordinate(on.plus(way.times(1e4))));
            int next = ring.nextOn(0, on, way);
            for (int i = 0; i < ring.chords(); i++) {
                LineSegment chord = new LineSegment(ring.startX(i), ring.startY(i), ring.endX(i), ring.endY(i));
                assertEquals(line.intersection(chord) != null, i == next, "seed " + seed + ", chord " + i);
                if (i == next) {
                    met++;
                    next = ring.nextOn(i + 1, on, way);
                }
            }
        }
        assertTrue(met > RINGS, met + " chords are met");
    }

    private static Geometry part(Ring ring, int stretch) {
        List<Coordinate> along = new ArrayList<>();
        along.add(new Coordinate(ring.startX(ring.from(stretch)), ring.startY(ring.from(stretch))));
        for (int i = ring.from(stretch); i < ring.to(stretch); i++) {
            along.add(new Coordinate(ring.endX(i), ring.endY(i)));
        }
        return Outline.PLANE.createLineString(along.toArray(Coordinate[]::new));
    }
}
