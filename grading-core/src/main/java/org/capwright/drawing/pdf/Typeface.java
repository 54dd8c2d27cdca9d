package org.capwright.drawing.pdf;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;

/** A font of the documents, read once and shared: DejaVu Sans Condensed, open licence, see DejaVu-LICENCE.txt beside the files. */
enum Typeface {
    REGULAR("DejaVuSansCondensed.ttf"),
    BOLD("DejaVuSansCondensed-Bold.ttf");

    /** Shown for a character that the font has not: U+FFFD, a question mark on a dark ground. */
    static final int REPLACEMENT = 0xFFFD;

    /** Height of capital letters over the font size. */
    static final double CAPITAL = 1493.0 / 2048;

    private final TrueTypeFont font;
    private final CmapLookup glyphs;
    private final double unitsPerEm;

    Typeface(String file) {
        try (InputStream in = Typeface.class.getResourceAsStream(file)) {
            if (in == null) {
                throw new IllegalStateException("the font " + file + " is not on the class path");
            }
            font = new TTFParser().parse(new RandomAccessReadBuffer(in.readAllBytes()));
            glyphs = font.getUnicodeCmapLookup();
            unitsPerEm = font.getUnitsPerEm();
        } catch (IOException e) {
            throw new UncheckedIOException("the font " + file + " cannot be read", e);
        }
    }

    TrueTypeFont font() {
        return font;
    }

    boolean has(int codePoint) {
        return glyphs.getGlyphId(codePoint) != 0;
    }

    int glyph(int codePoint) {
        return glyphs.getGlyphId(codePoint);
    }

    private double advance(int codePoint) {
        try {
            return font.getAdvanceWidth(glyph(codePoint)) / unitsPerEm;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Width of written text, in the unit of the font size. */
    double width(Script text, double size) {
        double sum = 0;
        for (int codePoint : text.shown()) {
            sum += advance(codePoint);
        }
        return sum * size;
    }

    double width(String text, double size) {
        return width(Script.of(text, this), size);
    }

    /** The greatest size, at most the one wished for, at which a text is no wider than a measure. */
    double sizeWithin(String text, double wished, double width) {
        double natural = width(text, wished);
        return natural <= width ? wished : wished * width / natural;
    }
}
