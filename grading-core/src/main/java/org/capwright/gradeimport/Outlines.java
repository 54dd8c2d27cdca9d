package org.capwright.gradeimport;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.capwright.exchange.ForeignInputException;
import org.capwright.exchange.dxf.DrawnLine;
import org.capwright.exchange.dxf.Insertion;
import org.capwright.geometry.Box;
import org.capwright.geometry.Point;
import org.capwright.quantity.Unit;
import org.capwright.words.Text;

/** Finds the closed lines of a drawing. */
final class Outlines {

    static final int MOST = 3000;

    private static final int MOST_FOLDS = 300;

    /** Smaller closed lines are marks, square mm. */
    private static final double LEAST_AREA = 800;

    /** Still smaller ones are not even a piece in another unit, square mm. */
    private static final double LEAST_MARK = 20;

    /** How far the form of a small piece may differ from that of the others. */
    private static final double ALIKE = 0.15;

    /** A line drawn in a piece may reach this far beyond it, mm. */
    private static final double WITHIN = 5;

    /** Shorter lines that hang on an outline are marks, mm. */
    private static final double LOOSE = 60;

    /** A line that may belong to an outline which is not closed. */
    private record Left(String layer, int line, Box box, double area, Text words) {

        static Left of(String layer, int line, List<Point> points, Text words) {
            return new Left(
                    layer,
                    line,
                    Box.of(points),
                    Math.abs(SleeveShape.area(points)),
                    words.with("layer", ForeignInputException.shown(layer)));
        }
    }

    /** Areas that differ by less than this share are the same. */
    private static final double SAME = 1e-6;

    private record Place(Insertion instance, String layer, LineRole role) {}

    private Outlines() {}

    static List<Outline> of(List<DrawnLine> lines, ImportNotes traces) throws ForeignInputException {
        List<Outline> found = new ArrayList<>();
        Map<Place, List<DrawnLine>> open = new LinkedHashMap<>();
        boolean numbered = lines.stream().anyMatch(line -> line.layer().equals("1"));
        for (DrawnLine line : lines) {
            boolean meets = line.points().size() > 3 && line.start().distanceTo(line.end()) <= Chaining.MEET;
            if (line.closed() && line.points().size() > 2 || meets) {
                add(
                        traces.file(),
                        found,
                        Outline.of(line.layer(), line.colour(), line.instance(), line.line(), line.points()));
            } else {
                LineRole role = numbered ? LineRole.of(line.layer()) : LineRole.ofUnnumbered(line.layer());
                open.computeIfAbsent(new Place(line.instance(), line.layer(), role), p -> new ArrayList<>())
                        .add(line);
            }
        }
        List<DrawnLine> folds = lines.stream()
                .filter(line -> LineRole.of(line.layer()) == LineRole.FOLD)
                .limit(MOST_FOLDS)
                .toList();
        List<Left> left = new ArrayList<>();
        for (Map.Entry<Place, List<DrawnLine>> entry : open.entrySet()) {
            Map<Integer, List<DrawnLine>> colours = new LinkedHashMap<>();
            for (DrawnLine line : entry.getValue()) {
                colours.computeIfAbsent(line.colour(), c -> new ArrayList<>()).add(line);
            }
            List<Chaining> byColour =
                    colours.values().stream().map(Chaining::of).toList();
            boolean apart = byColour.stream()
                            .filter(chaining -> chaining.closed().stream()
                                    .anyMatch(closed -> Math.abs(SleeveShape.area(closed.points())) >= LEAST_AREA))
                            .count()
                    >= Math.min(2, byColour.size());
            int k = 0;
            for (int colour : apart ? List.copyOf(colours.keySet()) : List.of(0)) {
                Chaining chaining = apart ? byColour.get(k++) : Chaining.of(entry.getValue());
                chain(entry.getKey(), colour, chaining, folds, found, left, traces);
            }
        }
        tell(left, found, traces);
        return ofPieces(found);
    }

    /** A line that looks like an outline and is open. One that lies in a closed outline is a line drawn in a piece. */
    private static void tell(List<Left> left, List<Outline> found, ImportNotes traces) {
        List<Outline> pieces = found.stream()
                .filter(outline -> !Rectangle.is(outline.points()))
                .toList();
        for (Left open : left) {
            boolean sized = SizeScale.isLabel(LineRole.rest(open.layer));
            boolean inside = pieces.stream()
                    .filter(outline -> open.area < outline.area() / 2)
                    .filter(outline -> !sized || outline.layer().equals(open.layer))
                    .anyMatch(outline ->
                            outline.box().grown(WITHIN).shared(open.box).equals(open.box));
            if (inside) {
                traces.leftOut(open.line, ImportNote.FILE, open.words);
            } else {
                traces.notRead(open.line, ImportNote.FILE, open.words);
            }
        }
    }

    /**
     * Without marks, which are small. What is small but alone in its place, or one of two, cut line and sew line, and of the form of a piece is a piece in another unit; a size must not vanish because it was drawn too small.
     */
    private static List<Outline> ofPieces(List<Outline> found) {
        List<Outline> pieces =
                found.stream().filter(outline -> outline.area() >= LEAST_AREA).toList();
        List<Outline> all = new ArrayList<>();
        for (Outline piece : pieces) {
            if (all.stream().noneMatch(other -> isSame(piece, other))) {
                all.add(piece);
            }
        }
        for (Outline small : found) {
            boolean alone = found.stream()
                            .filter(other -> other.layer().equals(small.layer())
                                    && other.instance().equals(small.instance()))
                            .count()
                    <= 2;
            boolean alike = pieces.isEmpty()
                    ? small.points().size() > 6
                    : pieces.stream().anyMatch(piece -> Math.abs(form(piece) / form(small) - 1) < ALIKE);
            if (small.area() < LEAST_AREA && alone && alike) {
                all.add(small);
            }
        }
        return all;
    }

    /** Whether an outline was drawn twice. */
    private static boolean isSame(Outline one, Outline other) {
        return one.layer().equals(other.layer())
                && one.colour() == other.colour()
                && one.instance().equals(other.instance())
                && Math.abs(one.area() - other.area()) < SAME * one.area()
                && one.box().grown(Chaining.MEET).shared(other.box()).equals(other.box())
                && other.box().grown(Chaining.MEET).shared(one.box()).equals(one.box());
    }

    /** Area over the square of the way round: the same for the same form in any size. */
    private static double form(Outline outline) {
        double round = SleeveShape.length(outline.points())
                + outline.points()
                        .get(0)
                        .distanceTo(outline.points().get(outline.points().size() - 1));
        return outline.area() / (round * round);
    }

    private static void chain(
            Place place,
            int colour,
            Chaining chaining,
            List<DrawnLine> folds,
            List<Outline> found,
            List<Left> left,
            ImportNotes traces)
            throws ForeignInputException {
        for (Chaining.Closed closed : chaining.closed()) {
            Outline outline = Outline.of(place.layer, colour, place.instance, closed.line(), met(closed.points()));
            if (closed.gap() > Chaining.MEET && outline.area() >= LEAST_AREA) {
                traces.assumed(
                        closed.line(),
                        ImportNote.FILE,
                        Text.of("an outline whose ends do not quite meet, on layer {layer}, is taken as closed")
                                .with("layer", ForeignInputException.shown(place.layer)));
            }
            add(traces.file(), found, outline);
        }
        LineRole role = place.role;
        boolean canBe = role == LineRole.SEW || role == LineRole.CUT || role == LineRole.UNKNOWN;
        for (DrawnLine line : chaining.loose()) {
            if (canBe && SleeveShape.length(line.points()) >= LOOSE && left.size() < MOST) {
                left.add(Left.of(
                        place.layer,
                        line.line(),
                        line.points(),
                        Text.of("a line on layer {layer} hangs on an outline by one end: the outline is not"
                                + " closed there")));
            }
        }
        for (Chaining.Open chain : chaining.open()) {
            if (canBe && chain.points().size() > 3) {
                byFold(place, colour, chain, folds, found, left, traces);
            }
        }
    }

    /** Ends that lie so near together that they are meant for one point are one. */
    private static List<Point> met(List<Point> points) {
        int last = points.size() - 1;
        double gap = points.get(0).distanceTo(points.get(last));
        if (last <= 3 || gap == 0 || gap > Chaining.GAP) {
            return points;
        }
        List<Point> ring = new ArrayList<>(points.subList(0, last));
        if (gap > Chaining.MEET) {
            ring.set(0, Chaining.corner(points.get(last - 1), points.get(last), points.get(0), points.get(1)));
        }
        return ring;
    }

    /** An open chain whose two ends lie on the ends of a fold line is closed by the fold. */
    private static void byFold(
            Place place,
            int colour,
            Chaining.Open chain,
            List<DrawnLine> folds,
            List<Outline> found,
            List<Left> left,
            ImportNotes traces)
            throws ForeignInputException {
        Point start = chain.points().get(0);
        Point end = chain.points().get(chain.points().size() - 1);
        Outline outline = Outline.of(place.layer, colour, place.instance, chain.line(), chain.points());
        if (outline.area() < LEAST_AREA) {
            return;
        }
        for (DrawnLine line : folds) {
            if (start.distanceTo(line.start(), line.end()) <= Chaining.GAP
                    && end.distanceTo(line.start(), line.end()) <= Chaining.GAP) {
                traces.found(
                        chain.line(),
                        ImportNote.FILE,
                        Text.of("an open outline on layer {layer} is closed by the fold line")
                                .with("layer", ForeignInputException.shown(place.layer)));
                add(traces.file(), found, outline);
                return;
            }
        }
        if (outline.area() >= 10 * LEAST_AREA && left.size() < MOST) {
            left.add(Left.of(
                    place.layer,
                    chain.line(),
                    chain.points(),
                    Text.of("a line on layer {layer} looks like an outline but is not closed: its ends are"
                                    + " {gap} mm apart")
                            .with(
                                    "gap",
                                    Text.figures(Unit.MILLIMETRE.format(Math.rint(10 * start.distanceTo(end)) / 10)))));
        }
    }

    private static void add(String file, List<Outline> found, Outline outline) throws ForeignInputException {
        if (!(outline.area() >= LEAST_MARK) || !Double.isFinite(outline.area())) {
            return;
        }
        if (found.size() == MOST) {
            throw new ForeignInputException(
                    file,
                    outline.line(),
                    Text.of("more than {most} outlines are not read").with("most", MOST));
        }
        found.add(outline);
    }
}
