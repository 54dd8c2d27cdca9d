package org.capwright.pattern;

import java.util.List;
import java.util.Locale;

/** What is written on a piece. */
final class LabelWords {

    private LabelWords() {}

    /** Piece name; style; size and revision; cut instruction and material. */
    static List<String> of(PatternSet.Title title, PieceDraft draft) {
        return List.of(
                draft.kind().words(),
                title.style(),
                "Size " + draft.size() + ", revision " + title.revision(),
                draft.cut().words() + ", " + draft.kind().material().name().toLowerCase(Locale.ROOT));
    }
}
