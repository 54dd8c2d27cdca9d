package org.capwright.lay;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.capwright.geometry.Curve;
import org.capwright.geometry.Point;
import org.capwright.geometry.Points;
import org.capwright.pattern.CutInstruction;
import org.capwright.pattern.CutInstruction.Laying;
import org.capwright.pattern.EdgeKind;
import org.capwright.pattern.MarkKind;
import org.capwright.pattern.MarkLine;
import org.capwright.pattern.Piece;
import org.capwright.pattern.PieceEdge;
import org.capwright.pattern.PieceKind;
import org.capwright.pattern.PieceLabel;

/** Pieces made by hand for laying. */
final class LayPieces {

    private LayPieces() {}

    /** A piece of a given outline, its grain upright. The edge on x = 0, if any, is the fold of a half. */
    static Piece piece(PieceKind kind, String size, int count, Laying laying, List<Point> outline) {
        List<PieceEdge> edges = new ArrayList<>();
        for (int i = 0; i < outline.size(); i++) {
            Point from = outline.get(i);
            Point to = outline.get((i + 1) % outline.size());
            boolean fold = laying == Laying.ON_FOLD && from.x() == 0 && to.x() == 0;
            edges.add(new PieceEdge("edge " + i, fold ? EdgeKind.FOLD : EdgeKind.SIDE_SEAM, Curve.line(from, to), 0));
        }
        return new Piece(
                kind,
                size,
                edges,
                Points.of(outline),
                List.of(),
                List.of(),
                List.of(new MarkLine(MarkKind.GRAIN, "grain", Curve.line(new Point(0, 10), new Point(0, 60)))),
                new CutInstruction(count, laying),
                new PieceLabel(List.of(), Point.ORIGIN, 10, 100));
    }

    static Piece polygon(String size, int count, Laying laying, double... xy) {
        List<Point> outline = new ArrayList<>();
        for (int i = 0; i < xy.length; i += 2) {
            outline.add(new Point(xy[i], xy[i + 1]));
        }
        return piece(PieceKind.UNDER_SLEEVE, size, count, laying, outline);
    }

    /** A rectangle, x across the cloth, y along it. */
    static Piece rectangle(String size, int count, double across, double along) {
        return polygon(size, count, Laying.FLAT, 0, 0, across, 0, across, along, 0, along);
    }

    /** A sleeve with an S-shaped cap: half width w, cap height h, length below the bicep line l, half wrist v; front scooped deeper. */
    static Piece sleeve(PieceKind kind, String size, Laying laying, double w, double h, double l, double v) {
        List<Point> outline = new ArrayList<>();
        int n = 150;
        if (laying == Laying.ON_FOLD) {
            outline.add(new Point(0, h));
            outline.add(new Point(0, -l));
            outline.add(new Point(v, -l));
            cap(outline, w, h, 0, n, 0.04);
            outline.remove(outline.size() - 1);
        } else {
            outline.add(new Point(-v, -l));
            outline.add(new Point(v, -l));
            cap(outline, w, h, 0, n, 0.04);
            List<Point> front = new ArrayList<>();
            cap(front, w, h, 0, n, laying == Laying.FLAT ? 0.04 : 0.09);
            for (int i = front.size() - 2; i >= 0; i--) {
                outline.add(front.get(i).mirrored());
            }
        }
        return piece(kind, size, 2, laying, outline);
    }

    /** The cap line from underarm to apex: a cosine with a scoop. */
    private static void cap(List<Point> into, double w, double h, int from, int n, double scoop) {
        for (int i = from; i <= n; i++) {
            double t = 1 - (double) i / n;
            double y = h * (0.5 + 0.5 * Math.cos(Math.PI * t))
                    - scoop * h * Math.sin(2 * Math.PI * t) * (t > 0.5 ? -1 : 0);
            into.add(new Point(w * t, y));
        }
    }

    /** A star-shaped polygon about the origin with 3 to 12 corners, most of them not convex. */
    static Piece star(SplittableRandom random, String size, Laying laying, double most) {
        int n = 3 + random.nextInt(10);
        List<Point> outline = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            double angle = 2 * Math.PI * (i + 0.8 * random.nextDouble()) / n;
            double radius = most / 2 * (0.3 + 0.7 * random.nextDouble());
            outline.add(new Point(radius * Math.cos(angle), radius * Math.sin(angle)));
        }
        return piece(PieceKind.UNDER_SLEEVE, size, 1 + random.nextInt(4), laying, outline);
    }
}
