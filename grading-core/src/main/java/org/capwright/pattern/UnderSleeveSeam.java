package org.capwright.pattern;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.capwright.draft.ElbowDart;
import org.capwright.draft.SeamEasing;
import org.capwright.draft.UnderSleeve;
import org.capwright.draft.WristOpening;
import org.capwright.geometry.Point;

/**
 * The underarm seam of an under-sleeve as edges of its piece, and the notches on it: at the ends of the dart and on the front seam where they come to lie, at the ends of the
 * stretch that is eased, and at the upper end of the opening for the hand.
 */
final class UnderSleeveSeam {

    /** Both seam edges of a piece on the fold. */
    static final String SIDE = "side seam";

    /** The front seam, run through from the underarm point down. */
    static final String FRONT = "front side seam";

    /** The back seam of a piece without a dart, run through from the wrist up. */
    static final String BACK = "back side seam";

    /** The back seam of a piece with a dart, from the wrist up to the dart. */
    static final String BACK_BELOW = "back side seam below the dart";

    /** The trued edge between the legs of the dart, from the lower leg up. */
    static final String DART = "elbow dart";

    /** The back seam of a piece with a dart, from the dart up to the underarm point. */
    static final String BACK_ABOVE = "back side seam above the dart";

    private UnderSleeveSeam() {}

    /** The edges from the wrist up to the back underarm point. */
    static void addBack(OverlayPieces.Edges edges, UnderSleeve under, boolean fold) {
        Optional<ElbowDart> dart = under.dart();
        if (dart.isEmpty()) {
            edges.add(fold ? SIDE : BACK, EdgeKind.SIDE_SEAM, under.backSide().reversed());
            return;
        }
        edges.add(BACK_BELOW, EdgeKind.SIDE_SEAM, under.backBelowElbow().reversed());
        edges.add(DART, EdgeKind.SIDE_SEAM, dart.get().edge().reversed());
        edges.add(BACK_ABOVE, EdgeKind.SIDE_SEAM, under.backAboveElbow().reversed());
    }

    static List<NotchPlace> notches(UnderSleeve under, boolean fold) {
        List<NotchPlace> places = new ArrayList<>();
        double back = under.backSide().length();
        under.opening()
                .filter(opening -> opening.basis() == WristOpening.Basis.GIVEN)
                .ifPresent(opening -> {
                    String edge = under.dart().isPresent() ? BACK_BELOW : fold ? SIDE : BACK;
                    places.add(new NotchPlace(NotchKind.BALANCE, edge, opening.length()));
                    if (!fold) {
                        places.add(new NotchPlace(NotchKind.BALANCE, FRONT, under.frontSeam() - opening.length()));
                    }
                });
        under.dart().ifPresent(dart -> {
            places.add(atLeg(BACK_BELOW, under.backBelowElbow().length(), dart.lowerEnd(), dart));
            places.add(atLeg(BACK_ABOVE, 0, dart.upperEnd(), dart));
            places.add(new NotchPlace(
                    NotchKind.BALANCE, FRONT, under.backAboveElbow().length()));
        });
        under.easing().ifPresent(easing -> addEasing(places, easing, back));
        return places;
    }

    private static void addEasing(List<NotchPlace> places, SeamEasing easing, double back) {
        places.add(new NotchPlace(NotchKind.BALANCE, BACK, back - easing.backTo()));
        places.add(new NotchPlace(NotchKind.BALANCE, BACK, back - easing.from()));
        places.add(new NotchPlace(NotchKind.BALANCE, FRONT, easing.from()));
        places.add(new NotchPlace(NotchKind.BALANCE, FRONT, easing.frontTo()));
    }

    /** Snipped along the leg, so that the snips of both legs meet once the dart is closed. */
    private static NotchPlace atLeg(String edge, double distance, Point end, ElbowDart dart) {
        return new NotchPlace(
                NotchKind.BALANCE,
                edge,
                distance,
                Optional.of(end.minus(dart.point()).unit()));
    }
}
