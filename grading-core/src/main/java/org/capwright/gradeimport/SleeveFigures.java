package org.capwright.gradeimport;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.capwright.check.CheckedMeasure;
import org.capwright.check.NestLine;
import org.capwright.exchange.dxf.DrawnLine;
import org.capwright.geometry.Point;
import org.capwright.words.Text;

/** Measures the shape of a sleeve, or of the overlay over one. */
final class SleeveFigures {

    /** A hem whose middle lies farther to the side than this is that of a sleeve turned at the elbow, mm. */
    private static final double ASIDE = 1;

    /** The elbow line of a turned sleeve may drop towards the back by this share of its width. */
    private static final double SLANT = 0.15;

    private SleeveFigures() {}

    static Map<CheckedMeasure, Double> sleeve(SleeveShape shape, List<DrawnLine> marks, List<Text> how) {
        Map<CheckedMeasure, Double> values = new EnumMap<>(CheckedMeasure.class);
        double bicep = shape.bicep();
        double front = 0.0 - shape.cap().get(0).x();
        values.put(CheckedMeasure.BICEP, bicep);
        values.put(CheckedMeasure.CAP_HEIGHT, shape.capHeight());
        values.put(CheckedMeasure.FRONT_CAP_LINE, shape.frontCapLine());
        values.put(CheckedMeasure.BACK_CAP_LINE, shape.backCapLine());
        values.put(CheckedMeasure.CAP_LINE, shape.frontCapLine() + shape.backCapLine());
        values.put(CheckedMeasure.FRONT_WIDTH, front);
        values.put(CheckedMeasure.BACK_WIDTH, bicep - front);
        how.add(Text.of("bicep line from corner to corner below the cap"));
        how.add(
                switch (shape.half()) {
                    case NONE -> Text.of("drawn whole; its left half, as drawn, is taken for the front");
                    case LEFT ->
                        Text.of("drawn as its left half: a straight edge runs down from its highest point, the fold");
                    case RIGHT ->
                        Text.of("drawn as its right half: a straight edge runs down from its highest point, the fold");
                });
        Optional<List<Point>> hem = shape.hem();
        if (hem.isEmpty()) {
            how.add(Text.of("it ends at the bicep line, so it has no length and no wrist"));
            return values;
        }
        values.put(
                CheckedMeasure.WRIST,
                hem.get().get(0).distanceTo(hem.get().get(hem.get().size() - 1)));
        values.put(CheckedMeasure.LENGTH, length(shape, hem.get(), marks, front - bicep / 2, how));
        return values;
    }

    static Map<CheckedMeasure, Double> overlay(SleeveShape shape, List<Text> how) {
        Map<CheckedMeasure, Double> values = new EnumMap<>(CheckedMeasure.class);
        if (shape.jagged()) {
            how.add(Text.of("an overlay whose top edge is cut for pleats: edge, length and rise of the flat draft do"
                    + " not show"));
            return values;
        }
        values.put(CheckedMeasure.OVERLAY_EDGE, shape.frontCapLine() + shape.backCapLine());
        how.add(Text.of("measured as an overlay"));
        Optional<Double> hem = shape.hem().flatMap(line -> crossing(line));
        hem.ifPresent(y -> values.put(CheckedMeasure.OVERLAY_TOTAL_LENGTH, shape.capHeight() - y));
        return values;
    }

    /** What the overlay rises above the cap of the sleeve beneath it. */
    static Optional<Double> rise(SleeveShape overlay, SleeveShape sleeve) {
        return overlay.jagged() ? Optional.empty() : Optional.of(overlay.capHeight() - sleeve.capHeight());
    }

    static List<NestLine> overlayLines(SleeveShape shape) {
        List<NestLine> lines = new ArrayList<>();
        if (!shape.jagged()) {
            lines.add(new NestLine(NestLine.Kind.OVERLAY_EDGE, shape.cap()));
        }
        shape.hem().ifPresent(hem -> lines.add(new NestLine(NestLine.Kind.OVERLAY_HEM, hem)));
        return lines;
    }

    /** Height at which a line crosses x = 0, the lowest place of several. */
    private static Optional<Double> crossing(List<Point> line) {
        Optional<Double> lowest = Optional.empty();
        for (int i = 1; i < line.size(); i++) {
            Point a = line.get(i - 1);
            Point b = line.get(i);
            if (Math.min(a.x(), b.x()) <= 0 && Math.max(a.x(), b.x()) >= 0) {
                double y = a.x() == b.x()
                        ? Math.min(a.y(), b.y())
                        : a.towards(b, (0.0 - a.x()) / (b.x() - a.x())).y();
                lowest = Optional.of(lowest.isPresent() ? Math.min(lowest.get(), y) : y);
            }
        }
        return lowest;
    }

    /**
     * Length down the centre line. The centre divides the hem as it divides the bicep line. Where it does not lie below the apex, the sleeve is turned at the elbow: its lower part
     * is swung about the front end F of the elbow line by an angle a, with its centre line square to the turned elbow line, so (M - F) · (cos a, -sin a) = |F to centre|.
     */
    private static double length(
            SleeveShape shape, List<Point> hem, List<DrawnLine> marks, double skew, List<Text> how) {
        Point apex = shape.cap().get(shape.apex());
        Point front = hem.get(0);
        Point back = hem.get(hem.size() - 1);
        Point middle = front.plus(back.minus(front).unit().times(front.distanceTo(back) / 2 + skew));
        Optional<Double> below = crossing(hem);
        if (Math.abs(middle.x()) <= ASIDE && below.isPresent()) {
            how.add(Text.of("length from the apex straight down to the hem"));
            return apex.y() - below.get();
        }
        boolean toRight = middle.x() > 0;
        Optional<Point> elbow = elbow(shape, marks, Math.max(front.y(), back.y()), toRight ? -1 : 1);
        if (elbow.isPresent()) {
            Point hinge = elbow.get();
            double half = 0.0 - hinge.x();
            Point hemCentre = toRight ? middle.mirrored() : middle;
            Point to = hemCentre.minus(hinge);
            double reach = to.norm();
            double heading = 0.0 - Math.atan2(to.y(), to.x());
            double angle = heading - Math.acos(Math.max(-1, Math.min(1, half / reach)));
            Point centre = hinge.plus(new Point(Math.cos(angle), 0.0 - Math.sin(angle)).times(half));
            Point joint = new Point(0, hinge.y());
            how.add(Text.of("turned at the elbow: length down to the elbow line and on along the turned centre line"));
            return apex.distanceTo(joint) + joint.distanceTo(centre) + centre.distanceTo(hemCentre);
        }
        if (below.isPresent() && Math.abs(middle.x()) <= 0.1 * shape.bicep()) {
            how.add(Text.of("length from the apex straight down to the hem, which does not lie evenly below it"));
            return apex.y() - below.get();
        }
        how.add(Text.of("the hem lies to one side: length straight from the apex to the middle of the hem"));
        return apex.distanceTo(middle);
    }

    /**
     * The end of the elbow line on the side that the sleeve is turned to: of a nearly level line between bicep line and hem that begins on that seam.
     *
     * @param sign 1 for the left side, -1 for the right one, then mirrored to the left
     */
    private static Optional<Point> elbow(SleeveShape shape, List<DrawnLine> marks, double hem, double sign) {
        for (DrawnLine mark : marks) {
            Point a = shape.placing().at(mark.start().x(), mark.start().y());
            Point b = shape.placing().at(mark.end().x(), mark.end().y());
            boolean first = sign * a.x() < sign * b.x();
            Point near = first ? a : b;
            Point far = first ? b : a;
            double across = Math.abs(far.x() - near.x());
            boolean level = across > 20 && Math.abs(a.y() - b.y()) <= SLANT * across;
            if (level
                    && sign * near.x() < 0
                    && near.y() < -20
                    && near.y() > hem + 20
                    && distance(near, shape.lower()) <= 1) {
                return Optional.of(new Point(sign * near.x(), near.y()));
            }
        }
        return Optional.empty();
    }

    private static double distance(Point point, List<Point> line) {
        double least = Double.POSITIVE_INFINITY;
        for (int i = 1; i < line.size(); i++) {
            least = Math.min(least, point.distanceTo(line.get(i - 1), line.get(i)));
        }
        return least;
    }
}
