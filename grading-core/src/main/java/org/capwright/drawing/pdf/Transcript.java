package org.capwright.drawing.pdf;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.IdentityHashMap;
import java.util.Map;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSBoolean;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSFloat;
import org.apache.pdfbox.cos.COSInteger;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.cos.COSString;
import org.apache.pdfbox.pdfwriter.COSWriter;

/** Copies what PDFBox makes, subsets of fonts and pictures, among the objects of a file. */
final class Transcript {

    private final PdfObjects objects;
    private final Map<COSDictionary, Integer> numbers = new IdentityHashMap<>();

    Transcript(PdfObjects objects) {
        this.objects = objects;
    }

    /** Copies an object with all it tells of. */
    int of(COSDictionary dictionary) throws IOException {
        Integer known = numbers.get(dictionary);
        if (known != null) {
            return known;
        }
        int number = objects.number();
        numbers.put(dictionary, number);
        ByteArrayOutputStream entries = new ByteArrayOutputStream();
        for (Map.Entry<COSName, COSBase> entry : dictionary.entrySet()) {
            if (!entry.getKey().equals(COSName.LENGTH)) {
                write(entry.getKey(), entries);
                entries.write(' ');
                write(entry.getValue(), entries);
            }
        }
        String told = entries.toString(StandardCharsets.ISO_8859_1);
        if (dictionary instanceof COSStream stream) {
            try (InputStream content = stream.createRawInputStream()) {
                return objects.add(number, told, content.readAllBytes());
            }
        }
        return objects.add(number, "<<" + told + ">>");
    }

    private void write(COSBase value, OutputStream out) throws IOException {
        if (value instanceof COSDictionary dictionary) {
            out.write(PdfObjects.reference(of(dictionary)).getBytes(StandardCharsets.ISO_8859_1));
        } else if (value instanceof COSArray array) {
            out.write('[');
            for (COSBase each : array) {
                write(each, out);
                out.write(' ');
            }
            out.write(']');
        } else if (value instanceof COSString string) {
            COSWriter.writeString(string, out);
        } else if (value instanceof COSName name) {
            name.writePDF(out);
        } else if (value instanceof COSInteger number) {
            number.writePDF(out);
        } else if (value instanceof COSFloat number) {
            number.writePDF(out);
        } else if (value instanceof COSBoolean truth) {
            truth.writePDF(out);
        } else {
            throw new IllegalArgumentException("nothing that a font or a picture is made of: " + value);
        }
    }
}
