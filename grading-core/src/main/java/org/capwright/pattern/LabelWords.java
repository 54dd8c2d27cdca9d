package org.capwright.pattern;

import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.capwright.words.Language;
import org.capwright.words.Text;

/** What is written on the pieces of a run. What many of them say is put into words once. Not safe for threads. */
final class LabelWords {

    private final PatternSet.Title title;
    private final Map<PieceKind, List<String>> said = new EnumMap<>(PieceKind.class);
    private final Map<String, String> sizes = new HashMap<>();

    LabelWords(PatternSet.Title title) {
        this.title = title;
    }

    /** Piece name; style; size and revision; cut instruction and material. A strip has room for two lines. */
    List<String> of(PieceDraft draft) {
        List<String> words = said.computeIfAbsent(draft.kind(), kind -> nameAndCut(draft));
        String name = words.get(0);
        String cut = words.get(1);
        return draft.kind().isStrip()
                ? List.of(
                        Text.of("{piece}, size {size}")
                                .with("piece", name)
                                .with("size", draft.size())
                                .in(title.language()),
                        cut)
                : List.of(name, title.style(), sizes.computeIfAbsent(draft.size(), this::size), cut);
    }

    /** What says the same on a kind of piece in all sizes, which are cut alike. */
    private List<String> nameAndCut(PieceDraft draft) {
        Language language = title.language();
        String cut = draft.cut().words().in(language) + ", "
                + language.say(draft.kind().material().words());
        return List.of(
                language.say(draft.kind().words()),
                draft.kind().isStrip()
                        ? Text.of("{cut}; {style}, revision {revision}")
                                .with("cut", cut)
                                .with("style", title.style())
                                .with("revision", title.revision())
                                .in(language)
                        : cut);
    }

    private String size(String label) {
        return Text.of("Size {size}, revision {revision}")
                .with("size", label)
                .with("revision", title.revision())
                .in(title.language());
    }
}
