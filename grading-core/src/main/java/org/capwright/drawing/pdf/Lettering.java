package org.capwright.drawing.pdf;

import java.io.IOException;
import java.util.BitSet;
import java.util.EnumMap;
import java.util.Map;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.capwright.drawing.Typeface;

/** Remembers which characters a document uses, so that each font is cut down and embedded once. */
final class Lettering {

    private final Map<Typeface, BitSet> used = new EnumMap<>(Typeface.class);

    void use(Typeface face, int codePoint) {
        used.computeIfAbsent(face, key -> new BitSet()).set(codePoint);
    }

    /** Name of a font among the resources of a page. */
    static String name(Typeface face) {
        return face == Typeface.BOLD ? "FB" : "FR";
    }

    void embed(PDDocument document, PDResources... resources) throws IOException {
        for (Map.Entry<Typeface, BitSet> entry : used.entrySet()) {
            PDType0Font font = PDType0Font.load(document, entry.getKey().font(), true);
            entry.getValue().stream().forEach(font::addToSubset);
            font.subset();
            for (PDResources each : resources) {
                each.put(COSName.getPDFName(name(entry.getKey())), font);
            }
        }
    }
}
