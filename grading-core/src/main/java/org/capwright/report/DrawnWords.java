package org.capwright.report;

import java.util.EnumMap;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import org.capwright.pattern.NotchKind;
import org.capwright.words.Language;
import org.capwright.words.Text;

/** What is said beside the lines of pieces, worked out once for all pieces and sizes of a file. Not for use by several threads. */
final class DrawnWords {

    private final Language language;
    private final Map<String, String> marks = new HashMap<>();
    private final Map<NotchKind, Map<String, String>> notches = new EnumMap<>(NotchKind.class);

    DrawnWords(Language language) {
        this.language = language;
    }

    Language language() {
        return language;
    }

    String say(String text) {
        return language.say(text);
    }

    /** The name of a mark, which may have a number in it. */
    String mark(String name) {
        return marks.computeIfAbsent(name, key -> Text.numbered(key).in(language));
    }

    /** What a notch is and on which edge. */
    String notch(NotchKind kind, String edge) {
        return notches.computeIfAbsent(kind, key -> new HashMap<>())
                .computeIfAbsent(
                        edge,
                        key -> say(kind.name().toLowerCase(Locale.ROOT).replace('_', ' ') + " notch") + ", "
                                + say(key));
    }
}
