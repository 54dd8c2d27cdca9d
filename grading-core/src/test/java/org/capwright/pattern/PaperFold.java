package org.capwright.pattern;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.capwright.geometry.Curve;
import org.capwright.geometry.Point;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.util.AffineTransformation;

/**
 * The top edge of a drawn piece folded as one folds paper: at the drawn fold lines, and beneath them where the drawn fold line meets the drawn placement line. Takes points of the
 * drawn net line and the drawn marks only, and JTS's reflections; knows nothing of layouts, seams or isometries.
 *
 * @param seam the visible edge, folded
 * @param under the edge of each under-layer, folded: two for each fold
 * @param depths how far the under-layers of each fold reach from their fold line
 * @param depthOfStated the same order as {@code depths}: half the distance of the marks
 */
record PaperFold(List<Point> seam, List<List<Point>> under, List<Double> depths, List<Double> depthOfStated) {

    private static final double ON_THE_CREASE = 1e-6;

    private record Ray(Point from, Point way) {

        static Ray of(Curve line) {
            return new Ray(line.start(), line.end().minus(line.start()).unit());
        }

        Ray mirrored() {
            return new Ray(from.mirrored(), way.mirrored());
        }

        AffineTransformation reflection() {
            return AffineTransformation.reflectionInstance(from.x(), from.y(), from.x() + way.x(), from.y() + way.y());
        }

        double side(Point point) {
            return way.cross(point.minus(from));
        }
    }

    private record Pleat(Ray fold, Ray placement, int first, int last, boolean foldFirst) {

        Ray middle() {
            return new Ray(
                    fold.from.towards(placement.from, 0.5),
                    fold.way.plus(placement.way).unit());
        }
    }

    /** Folds the top edge of a piece, from its front end to its back end. */
    static PaperFold of(Piece piece) {
        List<Point> edge =
                new ArrayList<>(piece.edge("top edge").curve().reversed().flattened(0.001));
        List<Ray[]> rays = rays(piece.marks());
        if (piece.onFold()) {
            List<Point> whole = new ArrayList<>();
            for (int i = edge.size() - 1; i > 0; i--) {
                whole.add(edge.get(i).mirrored());
            }
            whole.addAll(edge);
            edge = whole;
            for (Ray[] pair : List.copyOf(rays)) {
                rays.add(new Ray[] {pair[0].mirrored(), pair[1].mirrored()});
            }
        }
        List<Pleat> pleats = new ArrayList<>();
        for (Ray[] pair : rays) {
            int fold = vertex(edge, pair[0].from);
            int placement = vertex(edge, pair[1].from);
            pleats.add(new Pleat(
                    pair[0], pair[1], Math.min(fold, placement), Math.max(fold, placement), fold < placement));
        }
        pleats.sort(Comparator.comparingInt(Pleat::first).thenComparingInt(Pleat::last));
        return folded(edge, pleats);
    }

    private static List<Ray[]> rays(List<MarkLine> marks) {
        List<Ray[]> rays = new ArrayList<>();
        for (MarkLine mark : marks) {
            if (mark.kind() == MarkKind.PLEAT_FOLD) {
                String pleat = mark.name().substring(0, mark.name().indexOf(" fold"));
                MarkLine placement = marks.stream()
                        .filter(m ->
                                m.kind() == MarkKind.PLEAT_PLACEMENT && m.name().startsWith(pleat + " "))
                        .findFirst()
                        .orElseThrow();
                rays.add(new Ray[] {Ray.of(mark.line()), Ray.of(placement.line())});
            }
        }
        return rays;
    }

    private static int vertex(List<Point> edge, Point mark) {
        int best = 0;
        for (int i = 1; i < edge.size(); i++) {
            if (edge.get(i).distanceTo(mark) < edge.get(best).distanceTo(mark)) {
                best = i;
            }
        }
        if (edge.get(best).distanceTo(mark) > 1e-5) {
            throw new AssertionError("no point of the edge lies at the mark " + mark);
        }
        return best;
    }

    private static PaperFold folded(List<Point> edge, List<Pleat> pleats) {
        PaperFold paper = new PaperFold(new ArrayList<>(), new ArrayList<>(), new ArrayList<>(), new ArrayList<>());
        AffineTransformation place = new AffineTransformation();
        int from = 0;
        for (Pleat pleat : pleats) {
            for (int i = from; i <= pleat.first; i++) {
                paper.seam.add(moved(edge.get(i), place));
            }
            Ray middle = pleat.middle();
            AffineTransformation one = pleat.foldFirst ? beyond(pleat.fold, place) : place;
            AffineTransformation two = beyond(middle, one);
            List<Point> first = new ArrayList<>();
            List<Point> second = new ArrayList<>();
            double side = middle.side(edge.get(pleat.first));
            double deepest = 0;
            for (int i = pleat.first; i <= pleat.last; i++) {
                Point point = edge.get(i);
                boolean near = middle.side(point) * side >= 0;
                (near ? first : second).add(moved(point, near ? one : two));
            }
            paper.under.add(first);
            paper.under.add(second);
            // The layer next to the fold line keeps its distances from it, as far as the inner crease.
            for (int i = pleat.first; i <= pleat.last; i++) {
                double beside = middle.side(edge.get(i));
                if (beside * side >= 0 == pleat.foldFirst || Math.abs(beside) <= ON_THE_CREASE) {
                    deepest = Math.max(deepest, Math.abs(pleat.fold.side(edge.get(i))));
                }
            }
            paper.depths.add(deepest);
            paper.depthOfStated.add(pleat.fold.from.distanceTo(pleat.placement.from) / 2);
            place = pleat.foldFirst ? two : beyond(pleat.fold, two);
            from = pleat.last;
        }
        for (int i = from; i < edge.size(); i++) {
            paper.seam.add(moved(edge.get(i), place));
        }
        return paper;
    }

    /** Beyond a crease the flat cloth is first reflected about it, then moved as the cloth before it. */
    private static AffineTransformation beyond(Ray crease, AffineTransformation place) {
        return crease.reflection().compose(place);
    }

    private static Point moved(Point point, AffineTransformation place) {
        Coordinate image = place.transform(new Coordinate(point.x(), point.y()), new Coordinate());
        return new Point(image.x, image.y);
    }

    /** The greatest distance of an under-layer's edge from the seam, mm. */
    double worst() {
        Geometry line = Check.line(seam);
        double worst = 0;
        org.locationtech.jts.operation.distance.IndexedFacetDistance distance =
                new org.locationtech.jts.operation.distance.IndexedFacetDistance(line);
        for (List<Point> layer : under) {
            for (Point point : layer) {
                worst = Math.max(worst, distance.distance(Check.point(point)));
            }
        }
        return worst;
    }

    double seamLength() {
        return Check.line(seam).getLength();
    }
}
