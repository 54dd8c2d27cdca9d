package org.capwright.pattern;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.capwright.geometry.Point;
import org.locationtech.jts.algorithm.RectangleLineIntersector;
import org.locationtech.jts.geom.Envelope;

/** The words front and back of a nest, which has them once: where they stand in the smallest size, or as near to it as no line of any size runs through them. */
public final class NestHalves {

    /** Room of a word with its arrow: half of its width at least, below the arrow and above, mm. */
    private static final double HALF_WIDTH = 14;

    private static final double BELOW = 3;

    private static final double ABOVE = 9;

    /** Places are tried this far from one another and from where the words stand, mm. */
    private static final double STEP = 5;

    private static final int STEPS = 40;

    private NestHalves() {}

    /**
     * A piece whose words keep clear of a nest.
     *
     * @param pieces the piece in the sizes of the nest, smallest first
     * @param moves how far each is moved in the nest, one for each piece, mm
     * @return the smallest; its words moved where they would be crossed and there is a place where they are not
     */
    public static Piece smallest(List<Piece> pieces, List<Point> moves) {
        Piece smallest = pieces.get(0);
        List<MarkLine> marks = new ArrayList<>(smallest.marks());
        List<List<Point>> lines = List.of();
        Ring net = new Ring(smallest.netLine());
        boolean moved = false;
        for (int i = 0; i < marks.size(); i++) {
            if (marks.get(i).kind() == MarkKind.HALF) {
                if (lines.isEmpty()) {
                    lines = lines(pieces, moves);
                }
                Optional<MarkLine> clear = clear(marks.get(i), net, lines);
                if (clear.isPresent()) {
                    marks.set(i, clear.get());
                    moved = true;
                }
            }
        }
        return moved
                ? new Piece(
                        smallest.kind(),
                        smallest.size(),
                        smallest.edges(),
                        smallest.cutLine(),
                        smallest.cutCorners(),
                        smallest.notches(),
                        List.copyOf(marks),
                        smallest.cut(),
                        smallest.label())
                : smallest;
    }

    /** The mark where no line runs through it; nothing where it stands so, or there is no such place. */
    private static Optional<MarkLine> clear(MarkLine mark, Ring net, List<List<Point>> lines) {
        if (isClear(mark, lines)) {
            return Optional.empty();
        }
        double side = mark.line().start().x();
        List<Point> steps = new ArrayList<>();
        for (int x = -STEPS; x <= STEPS; x++) {
            for (int y = -STEPS; y <= STEPS; y++) {
                steps.add(new Point(STEP * x, STEP * y));
            }
        }
        steps.sort(Comparator.comparingDouble(Point::norm));
        return steps.stream()
                .map(step -> new MarkLine(mark.kind(), mark.name(), mark.line().translated(step)))
                .filter(other -> other.line().start().x() * side > 0
                        && other.line().end().x() * side > 0
                        && net.contains(other.line().start())
                        && isClear(other, lines))
                .findFirst();
    }

    private static boolean isClear(MarkLine mark, List<List<Point>> lines) {
        Point middle = mark.line().start().towards(mark.line().end(), 0.5);
        double half = Math.max(HALF_WIDTH, mark.line().length() / 2 + BELOW);
        Envelope room = new Envelope(middle.x() - half, middle.x() + half, middle.y() - BELOW, middle.y() + ABOVE);
        RectangleLineIntersector across = new RectangleLineIntersector(room);
        for (List<Point> line : lines) {
            for (int i = 1; i < line.size(); i++) {
                Point from = line.get(i - 1);
                Point to = line.get(i);
                if (across.intersects(Outline.coordinate(from), Outline.coordinate(to))) {
                    return false;
                }
            }
        }
        return true;
    }

    /** All lines of all sizes, and the rows of the words on the smallest, seen from it. */
    private static List<List<Point>> lines(List<Piece> pieces, List<Point> moves) {
        List<List<Point>> lines = new ArrayList<>();
        for (int i = 0; i < pieces.size(); i++) {
            Piece piece = pieces.get(i);
            Point move = moves.get(i).minus(moves.get(0));
            lines.add(closed(piece.cutLine(), move));
            lines.add(closed(piece.netLine(), move));
            for (MarkLine mark : piece.marks()) {
                if (mark.kind() != MarkKind.HALF) {
                    lines.add(mark.line().translated(move).flattened(STEP / 10));
                }
            }
        }
        PieceLabel label = pieces.get(0).label();
        for (int row = 0; row <= label.lines().size(); row++) {
            Point from = label.topLeft().minus(new Point(0, row * label.lineHeight()));
            lines.add(List.of(from, from.plus(new Point(label.width(), 0))));
        }
        return lines;
    }

    private static List<Point> closed(List<Point> line, Point move) {
        List<Point> points = new ArrayList<>(line.size() + 1);
        line.forEach(point -> points.add(point.plus(move)));
        points.add(points.get(0));
        return points;
    }
}
