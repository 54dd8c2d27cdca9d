package org.capwright.drawing;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;

/** A font of the documents, read once and shared: DejaVu Sans Condensed, open licence, see DejaVu-LICENCE.txt beside the files. */
public enum Typeface {
    /** Of usual weight. */
    REGULAR("DejaVuSansCondensed.ttf"),
    /** Bold. */
    BOLD("DejaVuSansCondensed-Bold.ttf");

    /** Shown for a character that the font has not: U+FFFD, a question mark on a dark ground. */
    public static final int REPLACEMENT = 0xFFFD;

    /** Height of capital letters over the font size. */
    public static final double CAPITAL = 1493.0 / 2048;

    private static final char FIRST_PLAIN = ' ';

    private static final char LAST_PLAIN = '~';

    private final TrueTypeFont font;
    private final CmapLookup glyphs;
    private final double unitsPerEm;

    /** Advances of the characters from the space to the tilde, which need nothing to be made ready. */
    private final double[] plain = new double[LAST_PLAIN - FIRST_PLAIN + 1];

    private final int[] plainGlyphs = new int[plain.length];

    Typeface(String file) {
        try (InputStream in = Typeface.class.getResourceAsStream(file)) {
            if (in == null) {
                throw new IllegalStateException("the font " + file + " is not on the class path");
            }
            font = new TTFParser().parse(new RandomAccessReadBuffer(in.readAllBytes()));
            glyphs = font.getUnicodeCmapLookup();
            unitsPerEm = font.getUnitsPerEm();
            for (int i = 0; i < plain.length; i++) {
                plainGlyphs[i] = glyphs.getGlyphId(FIRST_PLAIN + i);
                plain[i] = font.getAdvanceWidth(plainGlyphs[i]) / unitsPerEm;
            }
        } catch (IOException e) {
            throw new UncheckedIOException("the font " + file + " cannot be read", e);
        }
    }

    /**
     * The font itself.
     *
     * @return as it was read; not to be closed
     */
    public TrueTypeFont font() {
        return font;
    }

    /**
     * Whether the font has a sign for a character.
     *
     * @param codePoint the character
     * @return false if {@link #REPLACEMENT} stands for it
     */
    public boolean has(int codePoint) {
        return glyph(codePoint) != 0;
    }

    /**
     * The sign of a character.
     *
     * @param codePoint the character
     * @return its number in the font, 0 if there is none
     */
    public int glyph(int codePoint) {
        return isPlain(codePoint) ? plainGlyphs[codePoint - FIRST_PLAIN] : glyphs.getGlyphId(codePoint);
    }

    private static boolean isPlain(int codePoint) {
        return codePoint >= FIRST_PLAIN && codePoint <= LAST_PLAIN;
    }

    /** Whether a text has nothing but characters from the space to the tilde: these are shown one after another as they are. */
    static boolean isPlain(String text) {
        for (int i = 0; i < text.length(); i++) {
            if (!isPlain(text.charAt(i))) {
                return false;
            }
        }
        return true;
    }

    private double advance(int codePoint) {
        if (isPlain(codePoint)) {
            return plain[codePoint - FIRST_PLAIN];
        }
        try {
            return font.getAdvanceWidth(glyph(codePoint)) / unitsPerEm;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * Width of a text.
     *
     * @param text made ready to be shown
     * @param size font size
     * @return in the unit of the font size
     */
    public double width(Script text, double size) {
        double sum = 0;
        for (int codePoint : text.shown()) {
            sum += advance(codePoint);
        }
        return sum * size;
    }

    /**
     * Width of a text.
     *
     * @param text a line
     * @param size font size
     * @return in the unit of the font size
     */
    public double width(String text, double size) {
        double sum = 0;
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (!isPlain(c)) {
                return width(Script.of(text, this), size);
            }
            sum += plain[c - FIRST_PLAIN];
        }
        return sum * size;
    }
}
