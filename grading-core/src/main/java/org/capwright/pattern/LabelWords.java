package org.capwright.pattern;

import java.util.List;
import org.capwright.words.Language;
import org.capwright.words.Text;

/** What is written on a piece. */
final class LabelWords {

    private LabelWords() {}

    /** Piece name; style; size and revision; cut instruction and material. */
    static List<String> of(PatternSet.Title title, PieceDraft draft) {
        Language language = title.language();
        return List.of(
                language.say(draft.kind().words()),
                title.style(),
                Text.of("Size {size}, revision {revision}")
                        .with("size", draft.size())
                        .with("revision", title.revision())
                        .in(language),
                draft.cut().words().in(language) + ", "
                        + language.say(draft.kind().material().words()));
    }
}
