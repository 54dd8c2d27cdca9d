package org.capwright.drawing.pdf;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.BitSet;
import java.util.EnumMap;
import java.util.Map;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.capwright.drawing.Typeface;

/**
 * Fonts cut down to some characters, as the beginning of a file. Cutting them down takes longer than drawing a pattern, so they are kept ready with the characters of most documents: English and French, figures and signs.
 *
 * @param beginning the file so far, closed, to be copied
 * @param resources the fonts by their names, as an entry of a dictionary of resources
 */
record Fonts(PdfObjects beginning, String resources) {

    /** Made for the first document. */
    private static final class Ready {

        private static final String BEYOND_ASCII = "àâçèéêëîïôùûœÀÂÇÈÉÊÎÔŒ«»–—−‘’“”…·×÷±°²→≤≥½¼¾\u00a0";

        static final BitSet CHARACTERS = new BitSet();
        static final Fonts FONTS;

        static {
            CHARACTERS.set(' ', '~' + 1);
            BEYOND_ASCII.codePoints().forEach(CHARACTERS::set);
            Map<Typeface, BitSet> both = new EnumMap<>(Typeface.class);
            both.put(Typeface.REGULAR, CHARACTERS);
            both.put(Typeface.BOLD, CHARACTERS);
            FONTS = made(both);
        }

        static boolean hold(BitSet characters) {
            BitSet others = (BitSet) characters.clone();
            others.andNot(CHARACTERS);
            return others.isEmpty();
        }
    }

    /** Fonts with at least these characters. */
    static Fonts with(Map<Typeface, BitSet> used) {
        return used.values().stream().allMatch(Ready::hold) ? Ready.FONTS : made(used);
    }

    private static Fonts made(Map<Typeface, BitSet> used) {
        StringBuilder resources = new StringBuilder("/Font<<");
        try (PDDocument scratch = new PDDocument();
                PdfObjects objects = PdfObjects.begin()) {
            for (Map.Entry<Typeface, BitSet> entry : used.entrySet()) {
                PDType0Font font = PDType0Font.load(scratch, entry.getKey().font(), true);
                entry.getValue().stream().forEach(font::addToSubset);
                font.subset();
                int number = new Transcript(objects).of(font.getCOSObject());
                resources
                        .append('/')
                        .append(Lettering.name(entry.getKey()))
                        .append(' ')
                        .append(PdfObjects.reference(number));
            }
            return new Fonts(objects, resources.append(">>").toString());
        } catch (IOException e) {
            throw new UncheckedIOException("a font cannot be cut down", e);
        }
    }
}
