package org.capwright.drawing.pdf;

import java.util.BitSet;
import java.util.EnumMap;
import java.util.Map;
import org.capwright.drawing.Typeface;

/** Remembers which characters a document uses, so that each font is cut down and embedded once. */
final class Lettering {

    private final Map<Typeface, BitSet> used = new EnumMap<>(Typeface.class);

    void use(Typeface face, int[] codePoints) {
        BitSet characters = used.computeIfAbsent(face, key -> new BitSet());
        for (int codePoint : codePoints) {
            characters.set(codePoint);
        }
    }

    /** Name of a font among the resources of a page. */
    static String name(Typeface face) {
        return face == Typeface.BOLD ? "FB" : "FR";
    }

    /** The fonts with the characters used, at least. */
    Fonts fonts() {
        return Fonts.with(used);
    }
}
