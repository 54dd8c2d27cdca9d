package org.capwright.pattern;

import java.util.ArrayList;
import java.util.List;
import org.capwright.geometry.Box;
import org.capwright.geometry.Curve;
import org.capwright.geometry.Point;
import org.capwright.geometry.Points;
import org.jspecify.annotations.Nullable;

/**
 * What lies within the seam lines of a piece, whatever its allowances: pieces with the same seam lines and marks, as an overlay and its interfacing, share it.
 * Not safe for threads.
 */
final class PieceInside {

    /** The marks of notches reach so far into a piece, mm. */
    private static final double NOTCH = 10;

    private final PieceDraft draft;
    private final Ring net;
    private final List<MarkLine> marks;
    private final Box box;
    private @Nullable List<Curve> lines;
    private @Nullable FreeCells free;

    private PieceInside(PieceDraft draft, Ring net, List<MarkLine> marks) {
        this.draft = draft;
        this.net = net;
        this.marks = marks;
        this.box = net.box();
    }

    /** Takes the one among some with the same marking that serves a piece, or makes it and adds it. */
    static PieceInside of(PieceDraft draft, PieceMarking marking, List<PieceInside> known) {
        for (PieceInside inside : known) {
            if (inside.serves(draft)) {
                return inside;
            }
        }
        Points points = PieceFinish.netLine(draft);
        PieceFinish.checkSimple(draft, points);
        Ring net = new Ring(points);
        List<MarkLine> marks = new ArrayList<>(PleatedEdge.shortened(draft.marks(), net));
        marks.replaceAll(mark -> mark.kind() == MarkKind.BICEP_LINE ? PieceFinish.inside(mark, net) : mark);
        if (!draft.kind().isStrip()) {
            marks.addAll(HalfWords.on(net, draft));
        }
        if (marking.drillHoles() == DrillHoles.PLEATS_AND_DARTS) {
            marks.addAll(DrilledMarks.of(marks));
        }
        if (!draft.kind().isStrip()) {
            marks.add(GrainLine.in(net, draft, marks));
        }
        PieceInside made = new PieceInside(draft, net, List.copyOf(marks));
        known.add(made);
        return made;
    }

    /** The net line. */
    Ring net() {
        return net;
    }

    /** The finished marks, with the grain line. */
    List<MarkLine> marks() {
        return marks;
    }

    /** The box about the net line. */
    Box box() {
        return box;
    }

    /** What words keep clear of: the marks, and on a strip, which is hardly wider than its notches are long, these. */
    List<Curve> lines() {
        List<Curve> known = lines;
        if (known == null) {
            known = drawn();
            lines = known;
        }
        return known;
    }

    private List<Curve> drawn() {
        List<Curve> drawn = new ArrayList<>(marks.size() + 2);
        for (MarkLine mark : marks) {
            drawn.add(mark.line());
            if (mark.kind() == MarkKind.HALF) {
                drawn.add(mark.line().translated(new Point(0, HalfWords.WORD)));
            }
        }
        if (draft.kind().isStrip()) {
            for (NotchPlace place : draft.notches()) {
                Notch notch = place.on(draft.edge(place.edge()));
                drawn.add(Curve.line(notch.at(), notch.at().plus(notch.inward().times(NOTCH))));
            }
        }
        return drawn;
    }

    /** Where words have room; looked for when first asked. */
    FreeCells free() {
        FreeCells known = free;
        if (known == null) {
            known = LabelPlacement.free(net, lines());
            free = known;
        }
        return known;
    }

    private boolean serves(PieceDraft other) {
        if (other.onFold() != draft.onFold()
                || other.edges().size() != draft.edges().size()) {
            return false;
        }
        for (int i = 0; i < draft.edges().size(); i++) {
            if (!other.edges().get(i).curve().equals(draft.edges().get(i).curve())) {
                return false;
            }
        }
        return other.marks().equals(draft.marks());
    }
}
