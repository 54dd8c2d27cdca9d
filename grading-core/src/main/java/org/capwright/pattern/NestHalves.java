package org.capwright.pattern;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.capwright.geometry.Point;
import org.locationtech.jts.algorithm.RectangleLineIntersector;
import org.locationtech.jts.geom.Envelope;

/** The words of a nest, which has them once: the name of the piece, front and back. They are where they stand in the smallest size, or as near to it as no line of any size runs through them. */
public final class NestHalves {

    /** Room of a word with its arrow: half of its width at least, below the arrow and above, mm. */
    private static final double HALF_WIDTH = 14;

    private static final double BELOW = 3;

    private static final double ABOVE = 9;

    /** Places are tried this far from one another and from where the words stand, mm. */
    private static final double STEP = 5;

    private static final int STEPS = 40;

    /** The least share of its width that a name makes do with. */
    private static final double NARROWER = 0.75;

    /** Marks that a nest shows of one size only. */
    private static final Set<MarkKind> OF_ONE_SIZE =
            EnumSet.of(MarkKind.GRAIN, MarkKind.HALF, MarkKind.FOLD_LINE, MarkKind.CENTRE_LINE);

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
        PieceLabel label = label(pieces, moves, net);
        boolean moved = !label.equals(smallest.label());
        for (int i = 0; i < marks.size(); i++) {
            if (marks.get(i).kind() == MarkKind.HALF) {
                if (lines.isEmpty()) {
                    lines = lines(pieces, moves, MarkKind.HALF::equals);
                    lines.addAll(rows(label));
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
                        label)
                : smallest;
    }

    /** The name where no line of a size that lies elsewhere runs through it, further up or down and perhaps narrower; where it is, if there is no such place. */
    private static PieceLabel label(List<Piece> pieces, List<Point> moves, Ring net) {
        PieceLabel label = pieces.get(0).label();
        if (moves.stream().allMatch(moves.get(0)::equals)) {
            return label;
        }
        List<List<Point>> lines = lines(pieces, moves, OF_ONE_SIZE::contains);
        pieces.get(0).marks().stream()
                .filter(mark -> mark.kind() == MarkKind.GRAIN)
                .forEach(grain -> lines.add(grain.line().flattened(STEP)));
        return DoubleStream.of(1, NARROWER)
                .boxed()
                .flatMap(share -> IntStream.rangeClosed(0, 2 * STEPS)
                        .mapToObj(step -> new PieceLabel(
                                label.lines(),
                                label.topLeft().plus(new Point(0, STEP * (step % 2 == 0 ? step / 2 : -(step + 1) / 2))),
                                label.lineHeight(),
                                share * label.width())))
                .filter(other -> net.contains(other.topLeft()) && isClear(room(other), lines))
                .findFirst()
                .orElse(label);
    }

    private static Envelope room(PieceLabel label) {
        double bottom = label.topLeft().y() - label.lines().size() * label.lineHeight();
        return new Envelope(
                label.topLeft().x(),
                label.topLeft().x() + label.width(),
                bottom,
                label.topLeft().y());
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
        return isClear(
                new Envelope(middle.x() - half, middle.x() + half, middle.y() - BELOW, middle.y() + ABOVE), lines);
    }

    private static boolean isClear(Envelope room, List<List<Point>> lines) {
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

    /** All lines of all sizes but some marks, seen from the smallest. */
    private static List<List<Point>> lines(List<Piece> pieces, List<Point> moves, Predicate<MarkKind> without) {
        List<List<Point>> lines = new ArrayList<>();
        for (int i = 0; i < pieces.size(); i++) {
            Piece piece = pieces.get(i);
            Point move = moves.get(i).minus(moves.get(0));
            lines.add(closed(piece.cutLine(), move));
            lines.add(closed(piece.netLine(), move));
            for (MarkLine mark : piece.marks()) {
                if (!without.test(mark.kind())) {
                    lines.add(mark.line().translated(move).flattened(STEP / 10));
                }
            }
        }
        return lines;
    }

    /** Above, between and below the lines of a name. */
    private static List<List<Point>> rows(PieceLabel label) {
        List<List<Point>> rows = new ArrayList<>();
        for (int row = 0; row <= label.lines().size(); row++) {
            Point from = label.topLeft().minus(new Point(0, row * label.lineHeight()));
            rows.add(List.of(from, from.plus(new Point(label.width(), 0))));
        }
        return rows;
    }

    private static List<Point> closed(List<Point> line, Point move) {
        List<Point> points = new ArrayList<>(line.size() + 1);
        line.forEach(point -> points.add(point.plus(move)));
        points.add(points.get(0));
        return points;
    }
}
