package org.capwright.pattern;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;
import org.capwright.draft.ElbowDart;
import org.capwright.draft.Overlay;
import org.capwright.draft.SeamEasing;
import org.capwright.draft.SleeveDraft;
import org.capwright.draft.UnderSleeve;
import org.capwright.geometry.Cubic;
import org.capwright.geometry.Curve;
import org.capwright.measure.Dimension;

/** Walks the seams of a set: which edges are sewn together, and how long they are. */
public final class Seams {

    /** Integrates smooth functions along a segment, from 0 to 1: polynomials up to the degree 39 exactly. */
    private static final GaussIntegrator ALONG = new GaussIntegratorFactory().legendre(20, 0, 1);

    private Seams() {}

    /**
     * Every pair of seam lines that are sewn together, in every size.
     *
     * @param set the pieces
     * @return the pairs, size by size; those that do not {@linkplain SeamPair#matches match} are findings
     */
    public static List<SeamPair> walk(PatternSet set) {
        List<SeamPair> pairs = new ArrayList<>();
        for (int i = 0; i < set.sizes().size(); i++) {
            SleeveDraft draft = set.run().sizes().get(i).draft();
            List<Piece> pieces = set.sizes().get(i);
            Optional<Piece> main = find(pieces, PieceKind.OVERLAY_MAIN);
            Optional<Piece> lining = find(pieces, PieceKind.OVERLAY_LINING);
            if (main.isPresent() && lining.isPresent()) {
                addOverlay(pairs, draft.overlay().orElseThrow(), main.get(), lining.get());
                find(pieces, PieceKind.OVERLAY_STAY)
                        .ifPresent(stay -> pairs.add(new SeamPair(
                                stay.size(),
                                "stay to overlay",
                                stay.kind().id() + "/" + StripPieces.SEAM_EDGE,
                                length(stay, StripPieces.SEAM_EDGE),
                                main.get().kind().id() + "/" + OverlayPieces.TOP_EDGE,
                                closed(main.get()),
                                draft.overlay().orElseThrow().pleats().isPresent()
                                        ? 0
                                        : -draft.overlay().orElseThrow().takeUp())));
            }
            find(pieces, PieceKind.UNDER_SLEEVE).ifPresent(sleeve -> {
                addUnderarm(pairs, draft.underSleeve().orElseThrow(), sleeve);
                addCap(pairs, draft, sleeve);
            });
            find(pieces, PieceKind.ARMHOLE_STRIP)
                    .ifPresent(strip -> pairs.add(new SeamPair(
                            strip.size(),
                            "strip to armhole",
                            strip.kind().id() + "/" + StripPieces.SEAM_EDGE,
                            length(strip, StripPieces.SEAM_EDGE),
                            "armhole/whole",
                            draft.dimensions().get(Dimension.ARMHOLE),
                            0)));
            find(pieces, PieceKind.BASE_SLEEVE).ifPresent(sleeve -> addCap(pairs, draft, sleeve));
        }
        return List.copyOf(pairs);
    }

    private static Optional<Piece> find(List<Piece> pieces, PieceKind kind) {
        return pieces.stream().filter(piece -> piece.kind() == kind).findFirst();
    }

    private static void addOverlay(List<SeamPair> pairs, Overlay overlay, Piece main, Piece lining) {
        double top = length(main, OverlayPieces.TOP_EDGE);
        pairs.add(pair(
                lining,
                "lining to overlay, top edge",
                OverlayPieces.TOP_EDGE,
                length(lining, OverlayPieces.TOP_EDGE),
                main,
                top,
                -within(main, lining)));
        for (PieceEdge edge : main.edges()) {
            if (edge.kind() == EdgeKind.HEM) {
                String name = edge.name();
                pairs.add(pair(
                        lining,
                        "lining to overlay, " + name,
                        name,
                        length(lining, name),
                        main,
                        length(main, name),
                        sides(main, name)
                                * turned(edge.curve(), lining.edge(name).curve())));
            }
        }
        boolean pleated = overlay.pleats().isPresent();
        pairs.add(new SeamPair(
                main.size(),
                "overlay to armhole",
                main.kind().id() + "/" + OverlayPieces.TOP_EDGE + (pleated ? ", pleats closed" : ", gathered"),
                closed(main),
                "armhole/between the ends of the overlay",
                overlay.attachSpan(),
                pleated ? 0 : overlay.takeUp()));
    }

    /** What the turn of cloth takes from the top edge of the lining: of the main cloth's, the parts beyond its ends. */
    private static double within(Piece main, Piece lining) {
        Curve edge = main.edge(OverlayPieces.TOP_EDGE).curve();
        Curve lined = lining.edge(OverlayPieces.TOP_EDGE).curve();
        double back = edge.closestLength(lined.start());
        double front = main.onFold() ? back : edge.length() - edge.closestLength(lined.end());
        return back + front;
    }

    /** The edge as it is sewn: of every pleat the part between placement line and fold line goes under. Walked on the piece, not taken from the plan. */
    private static double closed(Piece main) {
        Curve edge = main.edge(OverlayPieces.TOP_EDGE).curve();
        double under = 0;
        for (MarkLine mark : main.marks()) {
            if (mark.kind() == MarkKind.PLEAT_FOLD) {
                String placement = mark.name().replace(PleatedEdge.FOLD_LINE, PleatedEdge.PLACEMENT_LINE);
                for (MarkLine other : main.marks()) {
                    if (other.name().equals(placement)) {
                        under += Math.abs(edge.closestLength(mark.line().start())
                                - edge.closestLength(other.line().start()));
                    }
                }
            }
        }
        return sides(main, OverlayPieces.TOP_EDGE) * (edge.length() - under);
    }

    /**
     * What a small displacement D of a line takes from its length, to first order: the integral of D' · T over the line (first variation of arc length; M. P. do Carmo, Differential
     * Geometry of Curves and Surfaces, section 5.4, from memory). The turn of cloth is a displacement, so this is the ease that it makes.
     */
    private static double turned(Curve main, Curve lining) {
        double sum = 0;
        for (int i = 0; i < main.segments().size(); i++) {
            Cubic seam = main.segments().get(i);
            Cubic lined = lining.segments().get(i);
            sum += ALONG.integrate(
                    t -> lined.derivativeAt(t).minus(seam.derivativeAt(t)).dot(seam.tangentAt(t)));
        }
        return sum;
    }

    /** The back seam without the edge between the legs of a dart, which closes; eased where the style says so. */
    private static void addUnderarm(List<SeamPair> pairs, UnderSleeve under, Piece sleeve) {
        String front = sleeve.onFold() ? UnderSleeveSeam.SIDE : UnderSleeveSeam.FRONT;
        double frontLength = sleeve.edge(front).curve().length();
        Optional<ElbowDart> dart = under.dart();
        if (dart.isEmpty()) {
            String back = sleeve.onFold() ? UnderSleeveSeam.SIDE : UnderSleeveSeam.BACK;
            double ease = under.easing().map(SeamEasing::ease).orElse(0.0);
            double backLength = sleeve.edge(back).curve().length();
            pairs.add(pair(sleeve, "underarm seam", back, backLength, sleeve, front, frontLength, ease));
            return;
        }
        double backLength = sleeve.edge(UnderSleeveSeam.BACK_BELOW).curve().length()
                + sleeve.edge(UnderSleeveSeam.BACK_ABOVE).curve().length();
        pairs.add(pair(
                sleeve, "underarm seam", "back side seam, dart closed", backLength, sleeve, front, frontLength, 0));
        List<MarkLine> legs = sleeve.marks().stream()
                .filter(mark -> mark.kind() == MarkKind.DART_LEG)
                .toList();
        pairs.add(pair(
                sleeve,
                "elbow dart",
                legs.get(0).name(),
                legs.get(0).line().length(),
                sleeve,
                legs.get(1).name(),
                legs.get(1).line().length(),
                0));
    }

    private static void addCap(List<SeamPair> pairs, SleeveDraft draft, Piece sleeve) {
        OptionalDouble armhole = draft.dimensions().find(Dimension.ARMHOLE);
        if (armhole.isPresent()) {
            pairs.add(new SeamPair(
                    sleeve.size(),
                    "cap to armhole",
                    sleeve.kind().id() + "/" + SleevePieces.CAP,
                    length(sleeve, SleevePieces.CAP),
                    "armhole/whole",
                    armhole.getAsDouble(),
                    draft.capEase().orElse(0)));
        }
    }

    private static SeamPair pair(
            Piece first, String name, String edge, double firstLength, Piece second, double secondLength, double ease) {
        return pair(first, name, edge, firstLength, second, edge, secondLength, ease);
    }

    private static SeamPair pair(
            Piece first,
            String name,
            String edge,
            double firstLength,
            Piece second,
            String other,
            double secondLength,
            double ease) {
        return new SeamPair(
                first.size(),
                name,
                first.kind().id() + "/" + edge,
                firstLength,
                second.kind().id() + "/" + other,
                secondLength,
                ease);
    }

    /** Length of an edge on the unfolded piece. */
    private static double length(Piece piece, String edge) {
        return sides(piece, edge) * piece.edge(edge).curve().length();
    }

    /** An edge of a half that ends on the fold, or has a twin beyond it, counts twice. */
    private static int sides(Piece piece, String edge) {
        return piece.onFold() && piece.edge(edge).kind() != EdgeKind.FOLD ? 2 : 1;
    }
}
