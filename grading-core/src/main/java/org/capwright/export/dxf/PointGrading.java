package org.capwright.export.dxf;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.capwright.geometry.Curve;
import org.capwright.geometry.Point;
import org.capwright.grade.GradedSize;
import org.capwright.measure.InvalidMeasuresException;
import org.capwright.measure.Violation;
import org.capwright.pattern.MarkKind;
import org.capwright.pattern.MarkLine;
import org.capwright.pattern.Notch;
import org.capwright.pattern.PatternSet;
import org.capwright.pattern.Piece;
import org.capwright.pattern.PieceKind;

/**
 * The base size of every piece and the rules that give the other sizes, for rooms that grade by points. Every line has as many points in every size, at the
 * same fractions of the arc length between corners; applied to the base size, the rules give each size's cut line, net line, notches and marks back within 0.01 mm.
 * Drawing and rule table go together. Guaranteed to be immutable.
 */
public final class PointGrading {

    /** Curves are flattened to this before points are chosen on them, mm. */
    private static final double FINE = 0.002;

    private static final String NAME = "GRADE-RULES";

    private final PatternSet set;
    private final List<GradedPiece> pieces;
    private final RuleTable rules;

    private PointGrading(PatternSet set, List<GradedPiece> pieces, RuleTable rules) {
        this.set = set;
        this.pieces = pieces;
        this.rules = rules;
    }

    /**
     * Matches the points of all sizes.
     *
     * @param set the pieces of all sizes
     * @return base size and rules
     * @throws InvalidMeasuresException if a piece has not the same edges, notches and marks in every size
     */
    public static PointGrading of(PatternSet set) {
        int base = set.run().base();
        RuleBook book = new RuleBook(base);
        List<GradedPiece> pieces = new ArrayList<>();
        List<Violation> found = new ArrayList<>();
        for (int kind = 0; kind < set.sizes().get(base).size(); kind++) {
            List<Piece> sizes = set.acrossSizes(kind);
            Optional<Violation> obstacle = obstacle(sizes, base);
            obstacle.ifPresent(found::add);
            if (obstacle.isEmpty()) {
                pieces.add(graded(sizes, base, book));
            }
        }
        if (!found.isEmpty()) {
            throw new InvalidMeasuresException(found);
        }
        List<String> labels = set.run().sizes().stream()
                .map(GradedSize::label)
                .map(PointGrading::word)
                .toList();
        return new PointGrading(set, List.copyOf(pieces), new RuleTable(NAME, labels, labels.get(base), book.rules()));
    }

    /**
     * The drawing of the base size: one block per piece, with {@code # n} at every grade point.
     *
     * @return a whole DXF file
     */
    public byte[] drawing() {
        return GradedDrawing.of(set, pieces, rules, Optional.empty());
    }

    /**
     * The drawing of the base size with its date of creation.
     *
     * @param created written into the file
     * @return a whole DXF file
     */
    public byte[] drawing(LocalDate created) {
        return GradedDrawing.of(set, pieces, rules, Optional.of(created));
    }

    /**
     * The rules.
     *
     * @return the rule table
     */
    public RuleTable rules() {
        return rules;
    }

    /** A size list is read by its white space. */
    static String word(String label) {
        return label.strip().replaceAll("\\s+", "_");
    }

    private static Optional<Violation> obstacle(List<Piece> sizes, int base) {
        Piece model = sizes.get(base);
        for (Piece piece : sizes) {
            if (!structure(piece).equals(structure(model))) {
                return Optional.of(Violation.of(
                                model.kind() == PieceKind.UNDER_SLEEVE ? "/underSleeve" : "/overlay/pleats",
                                "the " + model.kind().words()
                                        + " has other edges, notches or pleats than the base size, so that its points cannot be graded by rules; give a number of pleats, which is then the same in every size")
                        .inSize(piece.size()));
            }
        }
        return Optional.empty();
    }

    private static List<String> structure(Piece piece) {
        List<String> names = new ArrayList<>();
        piece.edges().forEach(edge -> names.add(edge.name()));
        piece.notches().forEach(notch -> names.add(notch.kind() + " " + notch.edge()));
        piece.marks().forEach(mark -> names.add(mark.kind() + " " + mark.name()));
        return names;
    }

    private static GradedPiece graded(List<Piece> sizes, int base, RuleBook book) {
        Piece model = sizes.get(base);
        CutAnchors cut = CutAnchors.of(sizes, base);
        List<GradedPoint> boundary = new ArrayList<>();
        List<List<Point>> around = new Correspondence(cut.paths()).sampled(cut.anchors());
        List<Point> corners =
                model.cutCorners().stream().map(model.cutLine()::get).toList();
        for (List<Point> places : around.subList(0, around.size() - 1)) {
            boolean turn = corners.stream().anyMatch(corner -> corner.distanceTo(places.get(base)) < RuleTable.GRID);
            boundary.add(point(places, base, book, turn ? GradedPoint.Kind.TURN : GradedPoint.Kind.CURVE));
        }
        return new GradedPiece(
                model,
                List.copyOf(boundary),
                sewLine(sizes, base, book),
                notches(sizes, cut.paths(), base, book),
                lines(sizes, base, book));
    }

    private static GradedPoint point(List<Point> places, int base, RuleBook book, GradedPoint.Kind kind) {
        return new GradedPoint(RuleBook.rounded(places.get(base)), book.number(places), kind);
    }

    private static List<GradedPoint> sewLine(List<Piece> sizes, int base, RuleBook book) {
        List<GradedPoint> points = new ArrayList<>();
        for (int edge = 0; edge < sizes.get(base).edges().size(); edge++) {
            int number = edge;
            List<GradedPoint> along =
                    along(sizes.stream().map(p -> p.edges().get(number).curve()).toList(), base, book);
            points.addAll(along.subList(0, along.size() - 1));
        }
        return List.copyOf(points);
    }

    private static List<GradedPoint> along(List<Curve> curves, int base, RuleBook book) {
        List<Path> paths = curves.stream().map(curve -> Path.along(curve, FINE)).toList();
        List<double[]> anchors =
                paths.stream().map(path -> new double[] {0, path.length()}).toList();
        List<GradedPoint> points = new ArrayList<>();
        List<List<Point>> sampled = new Correspondence(paths).sampled(anchors);
        for (int i = 0; i < sampled.size(); i++) {
            boolean end = i == 0 || i == sampled.size() - 1;
            points.add(point(sampled.get(i), base, book, end ? GradedPoint.Kind.TURN : GradedPoint.Kind.CURVE));
        }
        return points;
    }

    private static List<GradedPoint> notches(List<Piece> sizes, List<Path> cuts, int base, RuleBook book) {
        List<GradedPoint> points = new ArrayList<>();
        for (int number = 0; number < sizes.get(base).notches().size(); number++) {
            List<List<Point>> snips = new ArrayList<>(sizes.size());
            for (int size = 0; size < sizes.size(); size++) {
                Notch notch = sizes.get(size).notches().get(number);
                snips.add(Snips.points(notch, cuts.get(size)));
            }
            for (int snip = 0; snip < snips.get(base).size(); snip++) {
                int which = snip;
                points.add(point(snips.stream().map(s -> s.get(which)).toList(), base, book, GradedPoint.Kind.CURVE));
            }
        }
        return List.copyOf(points);
    }

    private static List<GradedPiece.Line> lines(List<Piece> sizes, int base, RuleBook book) {
        List<GradedPiece.Line> lines = new ArrayList<>();
        List<List<List<Point>>> folds = sizes.stream().map(FoldLine::of).toList();
        for (int i = 0; i < folds.get(base).size(); i++) {
            int fold = i;
            List<GradedPoint> ends = new ArrayList<>();
            for (int end = 0; end < 2; end++) {
                int which = end;
                ends.add(point(
                        folds.stream().map(f -> f.get(fold).get(which)).toList(), base, book, GradedPoint.Kind.TURN));
            }
            lines.add(new GradedPiece.Line(AstmLayer.MIRROR, List.copyOf(ends)));
        }
        List<MarkLine> marks = sizes.get(base).marks();
        for (int i = 0; i < marks.size(); i++) {
            int mark = i;
            if (marks.get(i).kind() != MarkKind.FOLD_LINE) {
                lines.add(new GradedPiece.Line(
                        AstmLayer.of(marks.get(i).kind()),
                        List.copyOf(along(
                                sizes.stream()
                                        .map(p -> p.marks().get(mark).line())
                                        .toList(),
                                base,
                                book))));
            }
        }
        return List.copyOf(lines);
    }
}
