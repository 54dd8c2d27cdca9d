package org.capwright.pattern;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.capwright.draft.Overlay;
import org.capwright.draft.pleat.FoldLines;
import org.capwright.draft.pleat.PleatFold;
import org.capwright.draft.pleat.PleatLayout;
import org.capwright.draft.pleat.PleatLine;
import org.capwright.draft.pleat.TruedEdge;
import org.capwright.geometry.Cubic;
import org.capwright.geometry.Curve;
import org.capwright.geometry.Point;

/**
 * The top edge of an overlay as it is cut, counter-clockwise, with the lines of its pleats.
 *
 * @param edge from the back underarm point over the apex to the front one; on a half to the apex
 * @param lines fold and placement lines, each starting on the edge
 * @param apex arc length along {@code edge} to the place that meets the shoulder point, mm
 */
record PleatedEdge(Curve edge, List<MarkLine> lines, double apex) {

    /** Marks nearer to the fold than this lie on it, and of distances nearer to one another none is the shorter, mm. */
    private static final double ON_FOLD = 1e-6;

    /** A crossing this near is the start of the line itself, which lies on a chord of the flattened edge or within its tolerance beside it, mm. */
    private static final double AT_START = 5 * Piece.FLATTENING;

    /** Snips nearer to another than this along the edge would be one, mm. */
    private static final double APART = 1;

    static final String FOLD_LINE = " fold line";
    static final String PLACEMENT_LINE = " placement line";

    /** The edge of a whole piece, or of the half behind the fold. */
    static PleatedEdge of(Overlay overlay, boolean half) {
        if (overlay.trued().isEmpty()) {
            Curve back = overlay.back().topEdge();
            return new PleatedEdge(half ? back.reversed() : overlay.topEdge().reversed(), List.of(), back.length());
        }
        PleatLayout layout = overlay.pleats().orElseThrow();
        TruedEdge trued = overlay.trued().get();
        List<MarkLine> lines = new ArrayList<>(2 * trued.lines().size());
        int first = half ? trued.lines().size() / 2 : 0;
        for (int i = first; i < trued.lines().size(); i++) {
            FoldLines fold = trued.lines().get(i);
            String name = "pleat " + (i - first + 1);
            lines.add(mark(MarkKind.PLEAT_FOLD, name + FOLD_LINE, fold.fold(), half));
            lines.add(mark(MarkKind.PLEAT_PLACEMENT, name + PLACEMENT_LINE, fold.placement(), half));
        }
        if (half) {
            Curve edge = trued.half()
                    .filter(front -> front.end().x() == 0)
                    .map(Curve::mirrored)
                    .orElseGet(() -> startingOnFold(behindFold(trued.curve())).reversed());
            return new PleatedEdge(edge, List.copyOf(lines), edge.length());
        }
        Curve cut = trued.curve();
        double whole = cut.length();
        double apex = cut.closestLength(overlay.topEdge().pointAtLength(atShoulder(layout)));
        return new PleatedEdge(cut.reversed(), List.copyOf(lines), whole - apex);
    }

    /** The same edge with its ends cut off; the apex end of a half is none. */
    PleatedEdge shorter(double back, double front) {
        return new PleatedEdge(edge.part(back, edge.length() - front), lines, apex - back);
    }

    /** How far the first pleat lies from the front end of the edge, mm; the whole half where there are none. */
    static double endFront(Overlay overlay) {
        return overlay.trued().isEmpty()
                ? overlay.front().topEdge().length()
                : overlay.pleats().orElseThrow().folds().get(0).firstMark();
    }

    /** How far the last pleat lies from the back end of the edge, mm; the whole half where there are none. */
    static double endBack(Overlay overlay) {
        if (overlay.trued().isEmpty()) {
            return overlay.back().topEdge().length();
        }
        List<PleatFold> folds = overlay.pleats().orElseThrow().folds();
        return overlay.edgeLength() - folds.get(folds.size() - 1).lastMark();
    }

    /** What is seen between folds is wide enough for a notch from here on, mm. */
    private static final double WIDE = 4;

    /** The place along the edge of a whole piece of a notch that lies at a finished distance from its end, on cloth that is seen when the pleats are closed. */
    static double visible(Overlay overlay, PleatedEdge edge, double fromEnd, NotchKind kind) {
        boolean front = kind == NotchKind.SINGLE;
        Curve seam = overlay.topEdge();
        double span = overlay.attachSpan();
        if (overlay.trued().isEmpty()) {
            double half = front
                    ? overlay.front().topEdge().length() / overlay.attached().front()
                    : overlay.back().topEdge().length() / overlay.attached().back();
            return front ? edge.edge.length() - fromEnd * half : fromEnd * half;
        }
        double wanted = front ? fromEnd : span - fromEnd;
        double best = Double.NaN;
        double nearest = Double.POSITIVE_INFINITY;
        double from = 0;
        double closed = 0;
        List<PleatFold> folds = overlay.pleats().orElseThrow().folds();
        for (int i = 0; i <= folds.size(); i++) {
            double to = i < folds.size() ? folds.get(i).firstMark() : seam.length();
            double seen = to - from;
            double inside = Math.min(Math.max(wanted - closed, WIDE / 2), seen - WIDE / 2);
            double away = Math.abs(closed + inside - wanted);
            if (seen >= WIDE && away < nearest - ON_FOLD) {
                nearest = away;
                best = from + inside;
            }
            closed += seen;
            from = i < folds.size() ? folds.get(i).lastMark() : to;
        }
        double flat = Double.isNaN(best) ? (front ? WIDE / 2 : seam.length() - WIDE / 2) : best;
        return edge.edge.length() - overlay.trued().get().curve().closestLength(seam.pointAtLength(flat));
    }

    /** A line that starts on the fold of a half runs down the fold: it serves both halves. */
    private static MarkLine mark(MarkKind kind, String name, PleatLine line, boolean half) {
        if (half && Math.abs(line.from().x()) < ON_FOLD) {
            Point from = new Point(0, line.from().y());
            return new MarkLine(
                    kind,
                    name,
                    Curve.line(from, from.plus(new Point(0, -line.from().distanceTo(line.to())))));
        }
        return new MarkLine(kind, name, Curve.line(line.from(), line.to()));
    }

    /** The segments behind the middle of an edge whose halves are alike. Where that is a joint, nothing needs to be measured. */
    private static List<Cubic> behindFold(Curve edge) {
        List<Cubic> segments = edge.segments();
        int middle = segments.size() / 2;
        if (segments.size() == 2 * middle
                && Math.abs(segments.get(middle).start().x()) < ON_FOLD) {
            return segments.subList(middle, 2 * middle);
        }
        return edge.part(edge.length() / 2, edge.length()).segments();
    }

    /** Puts the start exactly on the fold, and leaves out what rounding may have left of a segment before it. */
    private static Curve startingOnFold(List<Cubic> half) {
        List<Cubic> segments = new ArrayList<>(half);
        while (segments.get(0).start().distanceTo(segments.get(0).end()) < ON_FOLD) {
            segments.remove(0);
        }
        Cubic first = segments.get(0);
        segments.set(0, new Cubic(new Point(0, first.start().y()), first.control1(), first.control2(), first.end()));
        return Curve.of(segments);
    }

    /** The place of the flat edge that the closed pleats bring to the shoulder point; of a fold that meets it there, the fold line. */
    private static double atShoulder(PleatLayout layout) {
        double shoulder = layout.front().span();
        double from = 0;
        double closed = 0;
        for (PleatFold fold : layout.folds()) {
            double visible = fold.firstMark() - from;
            if (closed + visible > shoulder + ON_FOLD) {
                break;
            }
            if (Math.abs(closed + visible - shoulder) <= ON_FOLD) {
                return fold.foldMark();
            }
            closed += visible;
            from = fold.lastMark();
        }
        return from + shoulder - closed;
    }

    /** Whether the folds of the front half mirror those of the back half. */
    static boolean symmetrical(PleatLayout layout) {
        List<PleatFold> folds = layout.folds();
        for (int i = 0; i < folds.size(); i++) {
            PleatFold other = folds.get(folds.size() - 1 - i);
            if (Math.abs(folds.get(i).foldMark() + other.foldMark() - layout.edge()) > ON_FOLD
                    || Math.abs(folds.get(i).placementMark() + other.placementMark() - layout.edge()) > ON_FOLD) {
                return false;
            }
        }
        return true;
    }

    /** A snip at every pleat line that does not lie on a fold of the cloth or meet the apex notch, which says as much; one where two lines start at one place. */
    List<NotchPlace> notches(String name) {
        List<NotchPlace> places = new ArrayList<>(lines.size());
        for (MarkLine mark : lines) {
            Point start = mark.line().start();
            double at = edge.closestLength(start);
            if (isAlone(at, places)
                    && Math.abs(at - apex) > APART
                    && at > APART - ON_FOLD
                    && at < edge.length() - APART + ON_FOLD) {
                Point outward = start.minus(mark.line().end()).unit();
                places.add(new NotchPlace(NotchKind.PLEAT, name, at, Optional.of(outward)));
            }
        }
        return places;
    }

    private static boolean isAlone(double at, List<NotchPlace> places) {
        for (NotchPlace place : places) {
            if (Math.abs(place.distance() - at) < Piece.FLATTENING) {
                return false;
            }
        }
        return true;
    }

    /** Draws the pleat lines of a piece no further than it reaches: at most four fifths of the way to the next edge, and both lines of a fold equally far. */
    static List<MarkLine> shortened(List<MarkLine> marks, Ring net) {
        List<MarkLine> shortened = new ArrayList<>(marks.size() + 3);
        shortened.addAll(marks);
        for (int i = 0; i < marks.size(); i++) {
            if (marks.get(i).kind() == MarkKind.PLEAT_FOLD) {
                double share = Math.min(share(marks.get(i), net), share(marks.get(i + 1), net));
                if (share < 1) {
                    shortened.set(i, shortened(marks.get(i), share));
                    shortened.set(i + 1, shortened(marks.get(i + 1), share));
                }
            }
        }
        return shortened;
    }

    private static MarkLine shortened(MarkLine mark, double share) {
        Point from = mark.line().start();
        return new MarkLine(
                mark.kind(),
                mark.name(),
                Curve.line(from, from.towards(mark.line().end(), share)));
    }

    private static double share(MarkLine mark, Ring net) {
        Point from = mark.line().start();
        Point way = mark.line().end().minus(from);
        if (from.x() == 0 && way.x() == 0) {
            return 1; // down the fold, or the centre line of a whole piece
        }
        return isFree(from, way, net) ? 1 : 0.8 * Math.min(1.25, reach(from, way, net));
    }

    /** Whether a pleat line, and a quarter of its length beyond, crosses the rest of the net line nowhere. */
    private static boolean isFree(Point from, Point way, Ring net) {
        double within = 1.25 * way.norm();
        for (int i = net.nextOn(0, from, way, within); i < net.chords(); i = net.nextOn(i + 1, from, way, within)) {
            double along = along(i, from, way, net);
            if (along > 0 && along < 1.25) {
                return false;
            }
        }
        return true;
    }

    /** How far a ray from a point of the net line runs inside, in lengths of its vector; infinite if it starts outward. Inward rays cross the rest of the line an odd number of times. */
    private static double reach(Point from, Point way, Ring net) {
        double nearest = Double.POSITIVE_INFINITY;
        int crossings = 0;
        for (int i = net.nextOn(0, from, way); i < net.chords(); i = net.nextOn(i + 1, from, way)) {
            double along = along(i, from, way, net);
            if (along > 0) {
                crossings++;
                nearest = Math.min(nearest, along);
            }
        }
        return crossings % 2 == 1 ? nearest : Double.POSITIVE_INFINITY;
    }

    /** How far along its way a ray crosses a chord of the net line, in lengths of its vector; 0 if it does not, or only where it starts. */
    private static double along(int chord, Point from, Point way, Ring net) {
        double start = net.startBeside(chord, from, way);
        double end = net.endBeside(chord, from, way);
        if ((start <= 0) == (end <= 0)) {
            return 0;
        }
        double along = from.ahead(way, net.at(chord, start / (start - end))) / way.dot(way);
        return along * way.norm() > AT_START ? along : 0;
    }
}
