package org.capwright.exchange.hpgl;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.capwright.geometry.Box;
import org.capwright.geometry.Point;
import org.capwright.geometry.Points;
import org.capwright.geometry.PointsBuilder;
import org.capwright.measure.SleeveSubject.Option;
import org.capwright.pattern.MarkKind;
import org.capwright.pattern.MarkLine;
import org.capwright.pattern.Notch;
import org.capwright.pattern.NotchKind;
import org.capwright.pattern.PatternSet;
import org.capwright.pattern.Piece;
import org.capwright.pattern.PieceLabel;
import org.capwright.pattern.PleatArrow;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Violation;
import org.capwright.words.Text;

/**
 * Writes a pattern as HP-GL for pen plotters: 40 plotter units per millimetre, whole numbers from (0, 0) up, x along the roll, y across it. Only the instructions IN, SP, PU and PD
 * are used, text is drawn as strokes. Pen 1 draws the cut lines but for what lies on the fold of the cloth, pen 2 all else. The same pattern gives the same bytes.
 */
public final class HpglExport {

    /** The widest roll that is taken, mm: that of the widest page of a PDF, which is printed on the same rolls. */
    private static final double GREATEST_WIDTH = 5080;

    /** Distance between pieces, mm. */
    static final double GAP = 10;

    /** Points this near to x = 0 lie on the fold, mm. */
    private static final double ON_FOLD = 1e-3;

    /** Lettering of the words front and back, mm. */
    private static final double HALF_WORD = 5;

    /** Lettering of the heading, mm. */
    private static final double HEADING = 6;

    private static final double SNIP = 5;

    /** Length of the head of an arrow, mm. */
    private static final double HEAD = 4;

    /** The two snips of a double notch lie this far apart, mm; common practice, no source. */
    private static final double APART = 6;

    /** Capital letters are this much of the distance between lines. */
    private static final double CAPITALS = 0.6;

    /** Room for the heading before the pieces, mm. */
    private static final double HEADING_ROOM = 20;

    private HpglExport() {}

    /**
     * Plots every piece in every size, side by side across the roll, turned by a quarter where that saves length.
     *
     * @param set the pieces of all sizes
     * @param rollWidth width that the plotter can draw, mm
     * @return a whole plotter file, ASCII
     * @throws InvalidMeasuresException if a piece is wider than the roll in both positions, with the width that would do
     */
    public static byte[] plot(PatternSet set, double rollWidth) {
        List<Piece> pieces = new ArrayList<>();
        set.sizes().forEach(pieces::addAll);
        List<Box> boxes = pieces.stream().map(piece -> Box.of(piece.cutLine())).toList();
        checkWidth(set, rollWidth);
        List<Shelves.Place> places = Shelves.place(
                boxes.stream().map(b -> new Shelves.Box(b.width(), b.height())).toList(), rollWidth, GAP);
        HpglWriter writer = new HpglWriter();
        List<Placed> placed = new ArrayList<>(pieces.size());
        for (int i = 0; i < pieces.size(); i++) {
            placed.add(new Placed(pieces.get(i), boxes.get(i), places.get(i)));
        }
        writer.pen(1);
        placed.forEach(p -> cutLine(writer, p));
        writer.pen(2);
        heading(writer, set, rollWidth);
        placed.forEach(p -> marks(writer, p));
        return writer.finish();
    }

    /**
     * The narrowest roll that takes every piece, upright or turned by a quarter.
     *
     * @param set the pieces of all sizes
     * @return width that the plotter must be able to draw, mm
     */
    public static double leastWidth(PatternSet set) {
        double needed = 0;
        for (List<Piece> pieces : set.sizes()) {
            for (Piece piece : pieces) {
                Box box = Box.of(piece.cutLine());
                needed = Math.max(needed, Math.min(box.width(), box.height()));
            }
        }
        return needed;
    }

    /**
     * Refuses a roll that is too narrow, or wider than any.
     *
     * @param set the pieces of all sizes
     * @param rollWidth width that the plotter can draw, mm
     * @throws InvalidMeasuresException if a piece is wider than the roll in both positions, or the roll wider than 5080 mm, with the widths that would do
     */
    public static void checkWidth(PatternSet set, double rollWidth) {
        double needed = leastWidth(set);
        if (!(rollWidth >= needed && rollWidth <= GREATEST_WIDTH)) {
            throw new InvalidMeasuresException(Violation.lengthOutside(
                    Option.PLOTTER_WIDTH,
                    "the roll must take the widest piece, upright or turned",
                    rollWidth,
                    needed,
                    GREATEST_WIDTH));
        }
    }

    /** A piece on the roll. */
    private record Placed(Piece piece, Box box, Shelves.Place place) {

        Point moved(double pieceX, double pieceY) {
            double x = pieceX - box.left();
            double y = pieceY - box.bottom();
            return place.turned() == Shelves.Turn.NONE
                    ? new Point(HEADING_ROOM + place.along() + x, place.across() + y)
                    : new Point(HEADING_ROOM + place.along() + box.height() - y, place.across() + x);
        }
    }

    /** Runs across the roll at its beginning. */
    private static void heading(HpglWriter writer, PatternSet set, double rollWidth) {
        String words = Text.of("{style} - revision {revision} - base size {size} - true scale, 40 units = 1 mm")
                .with("style", set.title().style())
                .with("revision", set.title().revision())
                .with("size", set.run().baseSize().label())
                .in(set.title().language());
        for (Points stroke : StrokeFont.strokes(words, Point.ORIGIN, HEADING, rollWidth)) {
            // Turned a quarter counter-clockwise: read from the side.
            writer.openLine(stroke, (x, y) -> new Point(HEADING - y, x));
        }
    }

    /** What lies on the fold of the cloth is not cut. */
    private static void cutLine(HpglWriter writer, Placed placed) {
        Points points = placed.piece.cutLine();
        if (!placed.piece.onFold()) {
            writer.closedLine(points, placed::moved);
            return;
        }
        int count = points.size();
        int start = 0;
        while (start < count && !(onFold(points, start + count - 1) && !onFold(points, start))) {
            start++;
        }
        PointsBuilder run = new PointsBuilder(count);
        for (int i = start; i < start + count; i++) {
            if (onFold(points, i)) {
                cut(writer, placed, run.points());
            } else {
                if (run.size() == 0) {
                    run.add(points.x(i % count), points.y(i % count));
                }
                int next = (i + 1) % count;
                run.add(points.x(next), points.y(next));
            }
        }
        cut(writer, placed, run.points());
    }

    private static void cut(HpglWriter writer, Placed placed, Points run) {
        if (!run.isEmpty()) {
            writer.openLine(run, placed::moved);
        }
    }

    /** Whether the line from a point to the next lies on the fold, which is x = 0. */
    private static boolean onFold(Points points, int position) {
        return Math.abs(points.x(position % points.size())) < ON_FOLD
                && Math.abs(points.x((position + 1) % points.size())) < ON_FOLD;
    }

    /** From each fold line to the line on which it is placed. */
    private static void pleatArrows(HpglWriter writer, Placed placed) {
        for (PleatArrow arrow : PleatArrow.of(placed.piece)) {
            if (arrow.length() > HEAD) {
                writer.openLine(Points.of(arrow.from(), arrow.to()), placed::moved);
                head(writer, placed, arrow.from(), arrow.to());
            }
        }
    }

    /** The head of an arrow at the end of a line. */
    private static void head(HpglWriter writer, Placed placed, Point from, Point to) {
        Point back = from.minus(to).unit().times(HEAD);
        Point aside = back.left().times(0.4);
        writer.openLine(Points.of(to.plus(back).plus(aside), to, to.plus(back).minus(aside)), placed::moved);
    }

    private static void marks(HpglWriter writer, Placed placed) {
        Piece piece = placed.piece;
        writer.closedLine(piece.netLine(), placed::moved);
        for (MarkLine mark : piece.marks()) {
            writer.openLine(mark.line().flattened(Piece.FLATTENING), placed::moved);
            Point middle = mark.line().pointAtLength(mark.line().length() / 2);
            if (mark.kind() == MarkKind.DRILL_HOLE) {
                Point up = new Point(0, mark.line().length() / 2);
                writer.openLine(Points.of(middle.minus(up), middle.plus(up)), placed::moved);
            }
            if (mark.kind() == MarkKind.GRAIN || mark.kind() == MarkKind.HALF) {
                head(writer, placed, mark.line().start(), mark.line().end());
            }
            if (mark.kind() == MarkKind.GRAIN) {
                head(writer, placed, mark.line().end(), mark.line().start());
            }
            if (mark.kind() == MarkKind.HALF) {
                Point at = mark.line().start().x() < mark.line().end().x()
                        ? mark.line().start()
                        : mark.line().end();
                for (Points stroke : StrokeFont.strokes(
                        mark.name().toUpperCase(Locale.ROOT),
                        at.plus(new Point(0, 1.5)),
                        HALF_WORD,
                        mark.line().length())) {
                    writer.openLine(stroke, placed::moved);
                }
            }
        }
        pleatArrows(writer, placed);
        for (Notch notch : piece.notches()) {
            for (Point snip : snips(notch)) {
                writer.openLine(Points.of(snip, snip.plus(notch.inward().times(SNIP))), placed::moved);
            }
        }
        PieceLabel label = piece.label();
        for (int i = 0; i < label.lines().size(); i++) {
            double height = CAPITALS * label.lineHeight();
            Point at = label.topLeft().minus(new Point(0, height + i * label.lineHeight()));
            for (Points stroke : StrokeFont.strokes(label.lines().get(i), at, height, label.width())) {
                writer.openLine(stroke, placed::moved);
            }
        }
    }

    private static List<Point> snips(Notch notch) {
        Point aside = notch.inward().left().times(APART / 2);
        return notch.kind() == NotchKind.DOUBLE
                ? List.of(notch.onCut().minus(aside), notch.onCut().plus(aside))
                : List.of(notch.onCut());
    }
}
