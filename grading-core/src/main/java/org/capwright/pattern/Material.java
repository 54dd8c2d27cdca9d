package org.capwright.pattern;

import java.util.Locale;

/** What a piece is cut from. */
public enum Material {
    /** The main cloth. */
    MAIN,
    /** The lining. */
    LINING,
    /** The interfacing. */
    INTERFACING;

    /**
     * The material in words, as it stands on a piece.
     *
     * @return one word in English, which a catalogue has in other languages
     */
    public String words() {
        return name().toLowerCase(Locale.ROOT);
    }
}
