package org.capwright.pattern;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The labels of a run: each piece has its words where it has them in the size that was labelled first, so that the words of a nest lie over one another and room is looked for in one size alone. A size that has no room
 * there takes the place that was found for the last such size, before room is looked for in it. Not safe for threads.
 */
final class RunLabels {

    private final LabelWords words;
    private final Map<PieceKind, List<LabelPlace>> places = new EnumMap<>(PieceKind.class);

    RunLabels(PatternSet.Title title) {
        words = new LabelWords(title);
    }

    /** The label of a piece. */
    PieceLabel of(PieceDraft draft, PieceInside inside) {
        List<String> lines = words.of(draft);
        List<LabelPlace> known = places.computeIfAbsent(draft.kind(), kind -> new ArrayList<>(2));
        for (LabelPlace place : known) {
            Optional<PieceLabel> like = LabelPlacement.like(place, lines, inside);
            if (like.isPresent()) {
                return like.get();
            }
        }
        PieceLabel found = LabelPlacement.place(lines, inside.free());
        LabelPlace place = new LabelPlace(found, inside.box());
        if (known.size() < 2) {
            known.add(place);
        } else {
            known.set(1, place);
        }
        return found;
    }
}
