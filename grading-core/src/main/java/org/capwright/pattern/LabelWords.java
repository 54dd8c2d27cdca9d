package org.capwright.pattern;

import java.util.List;
import org.capwright.words.Language;
import org.capwright.words.Text;

/** What is written on a piece. */
final class LabelWords {

    private LabelWords() {}

    /** Piece name; style; size and revision; cut instruction and material. A strip has room for two lines. */
    static List<String> of(PatternSet.Title title, PieceDraft draft) {
        Language language = title.language();
        String cut = draft.cut().words().in(language) + ", "
                + language.say(draft.kind().material().words());
        if (draft.kind().isStrip()) {
            return List.of(
                    Text.of("{piece}, size {size}")
                            .with("piece", language.say(draft.kind().words()))
                            .with("size", draft.size())
                            .in(language),
                    Text.of("{cut}; {style}, revision {revision}")
                            .with("cut", cut)
                            .with("style", title.style())
                            .with("revision", title.revision())
                            .in(language));
        }
        return List.of(
                language.say(draft.kind().words()),
                title.style(),
                Text.of("Size {size}, revision {revision}")
                        .with("size", draft.size())
                        .with("revision", title.revision())
                        .in(language),
                cut);
    }
}
