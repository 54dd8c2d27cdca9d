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

    /** From here on characters combine with those before them (Unicode, block Combining Diacritical Marks) or run from right to left; there are some below, from 0x7F on, that are not shown. */
    private static final char COMBINING = 0x0300;

    /** Dashes, quotation marks and the like, the one block beyond that is used often: from the hyphen to the hyphenation point. */
    private static final char FIRST_PUNCTUATION = 0x2010;

    private static final char LAST_PUNCTUATION = 0x2027;

    private final TrueTypeFont font;
    private final CmapLookup glyphs;
    private final double unitsPerEm;

    /** The signs of characters that need nothing to be made ready, by their code; 0 for others. */
    private final int[] plain = new int[LAST_PUNCTUATION + 1];

    private final double[] advances = new double[plain.length];

    Typeface(String file) {
        try (InputStream in = Typeface.class.getResourceAsStream(file)) {
            if (in == null) {
                throw new IllegalStateException("the font " + file + " is not on the class path");
            }
            font = new TTFParser().parse(new RandomAccessReadBuffer(in.readAllBytes()));
            glyphs = font.getUnicodeCmapLookup();
            unitsPerEm = font.getUnitsPerEm();
            for (int c = ' '; c <= LAST_PUNCTUATION; c = c + 1 == COMBINING ? FIRST_PUNCTUATION : c + 1) {
                if (!Character.isISOControl(c)) {
                    plain[c] = glyphs.getGlyphId(c);
                    advances[c] = font.getAdvanceWidth(plain[c]) / unitsPerEm;
                }
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
        return isPlain(codePoint) ? plain[codePoint] : glyphs.getGlyphId(codePoint);
    }

    private boolean isPlain(int codePoint) {
        return codePoint < plain.length && plain[codePoint] != 0;
    }

    /** Whether a text has only characters that the font has and that are shown one after another as they are. */
    boolean isPlain(String text) {
        for (int i = 0; i < text.length(); i++) {
            if (!isPlain(text.charAt(i))) {
                return false;
            }
        }
        return true;
    }

    private double advance(int codePoint) {
        if (isPlain(codePoint)) {
            return advances[codePoint];
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
            sum += advances[c];
        }
        return sum * size;
    }
}
