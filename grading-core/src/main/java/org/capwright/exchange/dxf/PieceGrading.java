package org.capwright.exchange.dxf;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.capwright.geometry.Curve;
import org.capwright.geometry.Point;
import org.capwright.pattern.MarkKind;
import org.capwright.pattern.MarkLine;
import org.capwright.pattern.Piece;

/**
 * Finds the grade points of one piece. Rooms match rules to points by their place in the base size alone, so no two lines may have a point at one place that move
 * apart: corners, notches and ends of marks take their places first, and a point that falls on one with another rule gives way along its line; so does a corner of a seam line through which, in
 * the base size alone, the cut line passes.
 */
final class PieceGrading {

    /** Curves are flattened to this before points are chosen on them, mm. */
    private static final double FINE = 0.002;

    /** A point gives way by this much along its line, in the base size alone, mm: no more, for a corner that gives way is cut off by as much. */
    private static final double STEP = 0.004;

    private static final int TRIES = 4;

    private final List<Piece> sizes;
    private final int base;
    private final RuleBook book;
    private final Map<Point, Integer> taken = new HashMap<>();

    private PieceGrading(List<Piece> sizes, int base, RuleBook book) {
        this.sizes = sizes;
        this.base = base;
        this.book = book;
    }

    /**
     * Grades a piece.
     *
     * @param sizes the piece in every size
     * @param base position of the base size
     * @param book where the rules are numbered
     */
    static GradedPiece of(List<Piece> sizes, int base, RuleBook book) {
        return new PieceGrading(sizes, base, book).graded();
    }

    /** A line of which the points are to be chosen. */
    private record Line(AstmLayer layer, Correspondence across, List<Correspondence.Place> places) {

        static Line of(AstmLayer layer, Correspondence across) {
            return new Line(layer, across, across.sampled());
        }
    }

    private GradedPiece graded() {
        CutAnchors cut = CutAnchors.of(sizes, base);
        Line boundary = Line.of(AstmLayer.BOUNDARY, new Correspondence(cut.paths(), cut.anchors()));
        List<Line> sewLines = new ArrayList<>();
        for (int edge = 0; edge < sizes.get(base).edges().size(); edge++) {
            int number = edge;
            sewLines.add(along(
                    AstmLayer.SEW,
                    sizes.stream().map(p -> p.edges().get(number).curve()).toList()));
        }
        List<Line> marks = marks();
        // A piece without allowances is cut along its seam lines: one line, one set of points.
        boolean cutOnSeam = sizes.get(base).edges().stream().allMatch(edge -> edge.allowance() == 0);
        // What cannot give way takes its places first.
        if (!cutOnSeam) {
            take(boundary);
        }
        sewLines.forEach(this::take);
        List<GradedPoint> notches = notches(cut.paths());
        List<GradedPiece.Line> lines = new ArrayList<>(folds());

        List<GradedPoint> outline = new ArrayList<>();
        if (!cutOnSeam) {
            List<GradedPoint> around = points(boundary);
            outline.addAll(around.subList(0, around.size() - 1));
        }
        List<GradedPoint> sewn = new ArrayList<>();
        for (Line line : sewLines) {
            List<GradedPoint> points = points(line);
            sewn.addAll(points.subList(0, points.size() - 1));
        }
        for (Line line : marks) {
            lines.add(new GradedPiece.Line(line.layer, markPoints(line)));
        }
        return new GradedPiece(
                sizes.get(base), turns(cutOnSeam ? sewn : outline), List.copyOf(sewn), notches, List.copyOf(lines));
    }

    private Line along(AstmLayer layer, List<Curve> curves) {
        List<Path> paths = curves.stream().map(curve -> Path.along(curve, FINE)).toList();
        List<List<Point>> pleats = sizes.stream()
                .map(piece -> layer == AstmLayer.SEW ? pleatStarts(piece) : List.<Point>of())
                .toList();
        return Line.of(layer, new Correspondence(paths, CurveAnchors.of(curves, paths, pleats)));
    }

    private static List<Point> pleatStarts(Piece piece) {
        return piece.marks().stream()
                .filter(mark -> mark.kind() == MarkKind.PLEAT_FOLD || mark.kind() == MarkKind.PLEAT_PLACEMENT)
                .map(mark -> mark.line().start())
                .toList();
    }

    private List<Line> marks() {
        List<Line> lines = new ArrayList<>();
        List<MarkLine> marks = sizes.get(base).marks();
        for (int i = 0; i < marks.size(); i++) {
            int mark = i;
            // A half piece has its fold line from its fold edge already.
            if (marks.get(i).kind() != MarkKind.FOLD_LINE) {
                lines.add(along(
                        AstmLayer.of(marks.get(i).kind()),
                        sizes.stream().map(p -> p.marks().get(mark).line()).toList()));
            }
        }
        return lines;
    }

    private void take(Line line) {
        for (Correspondence.Place place : line.places) {
            if (place.isAnchor()) {
                fixed(place.points());
            }
        }
    }

    private GradedPoint fixed(List<Point> places) {
        Point at = RuleBook.rounded(places.get(base));
        int rule = book.number(places);
        taken.putIfAbsent(at, rule);
        return new GradedPoint(at, rule, GradedPoint.Kind.CURVE);
    }

    private List<GradedPoint> points(Line line) {
        List<GradedPoint> points = new ArrayList<>(line.places.size());
        for (Correspondence.Place place : line.places) {
            points.add(givingWay(line.across, place, STEP));
        }
        return points;
    }

    /** The points of a mark. An end that lies in the base size, by chance, on a point that moves by another rule gives way as well: into the mark. */
    private List<GradedPoint> markPoints(Line line) {
        List<GradedPoint> points = new ArrayList<>(line.places.size());
        int last = line.places.size() - 1;
        for (int i = 0; i <= last; i++) {
            points.add(givingWay(line.across, line.places.get(i), i == last ? -STEP : STEP));
        }
        return points;
    }

    private GradedPoint givingWay(Correspondence across, Correspondence.Place wanted, double step) {
        List<Point> places = wanted.points();
        for (int i = 1; i <= TRIES && !isFree(places); i++) {
            places = across.givenWay(wanted, i * step, base);
        }
        return fixed(places);
    }

    private boolean isFree(List<Point> places) {
        Integer other = taken.get(RuleBook.rounded(places.get(base)));
        return other == null || book.moves(other, places);
    }

    /** The corners of the cut line are turn points. */
    private List<GradedPoint> turns(List<GradedPoint> boundary) {
        Piece model = sizes.get(base);
        List<Point> corners =
                model.cutCorners().stream().map(model.cutLine()::get).toList();
        return boundary.stream()
                .map(point -> corners.stream().anyMatch(c -> c.distanceTo(point.base()) < RuleTable.GRID)
                        ? new GradedPoint(point.base(), point.rule(), GradedPoint.Kind.TURN)
                        : point)
                .toList();
    }

    private List<GradedPoint> notches(List<Path> cuts) {
        List<GradedPoint> points = new ArrayList<>();
        for (int number = 0; number < sizes.get(base).notches().size(); number++) {
            List<List<Point>> snips = new ArrayList<>(sizes.size());
            for (int size = 0; size < sizes.size(); size++) {
                snips.add(Snips.points(sizes.get(size).notches().get(number), cuts.get(size)));
            }
            for (int snip = 0; snip < snips.get(base).size(); snip++) {
                int which = snip;
                Point aside =
                        sizes.get(base).notches().get(number).inward().left().times(STEP);
                points.add(fixed(beside(snips.stream().map(s -> s.get(which)).toList(), aside)));
            }
        }
        return List.copyOf(points);
    }

    /** A snip that lies in the base size, by chance, on a corner that moves by another rule gives way along the cut line, in the base size alone. */
    private List<Point> beside(List<Point> places, Point aside) {
        List<Point> moved = new ArrayList<>(places);
        for (int i = 0; i < TRIES && !isFree(moved); i++) {
            moved.set(base, moved.get(base).plus(aside));
        }
        return moved;
    }

    private List<GradedPiece.Line> folds() {
        List<GradedPiece.Line> lines = new ArrayList<>();
        List<List<List<Point>>> folds = sizes.stream().map(FoldLine::of).toList();
        for (int i = 0; i < folds.get(base).size(); i++) {
            int fold = i;
            List<GradedPoint> ends = new ArrayList<>();
            for (int end = 0; end < 2; end++) {
                int which = end;
                ends.add(fixed(folds.stream().map(f -> f.get(fold).get(which)).toList()));
            }
            lines.add(new GradedPiece.Line(AstmLayer.MIRROR, List.copyOf(ends)));
        }
        return lines;
    }
}
