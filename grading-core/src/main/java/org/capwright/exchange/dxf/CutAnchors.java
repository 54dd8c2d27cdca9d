package org.capwright.exchange.dxf;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.capwright.geometry.Point;
import org.capwright.pattern.Notch;
import org.capwright.pattern.Piece;
import org.capwright.pattern.PieceEdge;

/**
 * Places of the cut lines that correspond in all sizes: the corners where every size has as many, else the places nearest to the ends of the seam lines; and
 * the snips of the notches where they come in the same order in all sizes.
 *
 * @param paths the cut lines, opened at the place that corresponds to the first corner of the base size
 * @param anchors per size: arc lengths that correspond, ascending, from 0 to the length
 */
record CutAnchors(List<Path> paths, List<double[]> anchors) {

    /** Places nearer than this are one, mm. */
    private static final double SAME = 1e-6;

    /** Corresponding places keep this far from one another, mm. */
    private static final double APART = 0.002;

    private record Place(String name, double at) {}

    static CutAnchors of(List<Piece> sizes, int base) {
        Piece model = sizes.get(base);
        boolean sameCorners = !model.cutCorners().isEmpty()
                && sizes.stream()
                        .allMatch(
                                p -> p.cutCorners().size() == model.cutCorners().size());
        List<Path> paths = new ArrayList<>(sizes.size());
        List<List<Place>> fixed = new ArrayList<>(sizes.size());
        List<List<Place>> snips = new ArrayList<>(sizes.size());
        for (Piece piece : sizes) {
            int turn = sameCorners ? turn(model, piece) : 0;
            Path path = Path.around(
                    piece.cutLine(),
                    sameCorners
                            ? piece.cutCorners().get(turn)
                            : nearest(
                                    piece.cutLine(),
                                    piece.edges().get(0).curve().start()));
            List<Place> places = sameCorners ? corners(piece, turn, path) : seamEnds(piece, path);
            paths.add(path);
            fixed.add(places);
            snips.add(withSnips(piece, path, places));
        }
        List<List<Place>> chosen = sameOrder(snips) ? snips : sameOrder(fixed) ? fixed : ends(paths);
        return new CutAnchors(
                paths,
                apart(chosen.stream()
                        .map(places -> places.stream().mapToDouble(Place::at).toArray())
                        .toList()));
    }

    /** Leaves out places that in some size are one with the place before or with the end: points between them would all lie at one place there. */
    private static List<double[]> apart(List<double[]> sizes) {
        int last = sizes.get(0).length - 1;
        List<Integer> kept = new ArrayList<>(List.of(0));
        for (int i = 1; i < last; i++) {
            int place = i;
            int before = kept.get(kept.size() - 1);
            if (sizes.stream().allMatch(at -> at[place] - at[before] > APART && at[last] - at[place] > APART)) {
                kept.add(i);
            }
        }
        kept.add(last);
        return sizes.stream()
                .map(at -> kept.stream().mapToDouble(i -> at[i]).toArray())
                .toList();
    }

    /** By how many corners the list must be turned to lie nearest to the corners of the base size. */
    private static int turn(Piece model, Piece piece) {
        int count = model.cutCorners().size();
        int best = 0;
        double least = Double.POSITIVE_INFINITY;
        for (int turn = 0; turn < count; turn++) {
            double sum = 0;
            for (int i = 0; i < count; i++) {
                Point offset = corner(model, i).minus(corner(piece, (i + turn) % count));
                sum += offset.dot(offset);
            }
            if (sum < least) {
                least = sum;
                best = turn;
            }
        }
        return best;
    }

    private static Point corner(Piece piece, int number) {
        return piece.cutLine().get(piece.cutCorners().get(number));
    }

    private static int nearest(List<Point> points, Point to) {
        int best = 0;
        for (int i = 1; i < points.size(); i++) {
            if (points.get(i).distanceTo(to) < points.get(best).distanceTo(to)) {
                best = i;
            }
        }
        return best;
    }

    private static List<Place> corners(Piece piece, int turn, Path path) {
        int count = piece.cutCorners().size();
        int points = piece.cutLine().size();
        int first = piece.cutCorners().get(turn);
        List<Place> places = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            int vertex = piece.cutCorners().get((i + turn) % count) - first;
            places.add(new Place("corner " + i, path.at(vertex < 0 ? vertex + points : vertex)));
        }
        places.add(new Place("end", path.length()));
        return places;
    }

    private static List<Place> seamEnds(Piece piece, Path path) {
        List<Place> places = new ArrayList<>();
        places.add(new Place("start", 0));
        for (PieceEdge edge : piece.edges().subList(1, piece.edges().size())) {
            double at = path.locate(edge.curve().start());
            if (at > SAME && at < path.length() - SAME) {
                places.add(new Place(edge.name(), at));
            }
        }
        places.sort(Comparator.comparingDouble(Place::at));
        places.add(new Place("end", path.length()));
        return places;
    }

    private static List<List<Place>> ends(List<Path> paths) {
        return paths.stream()
                .map(path -> List.of(new Place("start", 0), new Place("end", path.length())))
                .toList();
    }

    private static List<Place> withSnips(Piece piece, Path path, List<Place> fixed) {
        List<Place> places = new ArrayList<>(fixed);
        for (int i = 0; i < piece.notches().size(); i++) {
            Notch notch = piece.notches().get(i);
            List<Double> snips = Snips.of(notch, path);
            for (int k = 0; k < snips.size(); k++) {
                double at = snips.get(k);
                if (fixed.stream().noneMatch(place -> Math.abs(place.at - at) < SAME)) {
                    places.add(new Place("notch " + i + "/" + k, at));
                }
            }
        }
        places.sort(Comparator.comparingDouble(Place::at));
        return places;
    }

    private static boolean sameOrder(List<List<Place>> sizes) {
        String[] names = names(sizes.get(0));
        return sizes.stream().allMatch(places -> Arrays.equals(names, names(places)));
    }

    private static String[] names(List<Place> places) {
        return places.stream().map(Place::name).toArray(String[]::new);
    }
}
