package org.capwright.drawing.pdf;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.zip.CRC32;
import org.capwright.quantity.Deflate;
import org.capwright.quantity.FileBytes;

/** The objects of a PDF one after another, as they come, and where each begins (PDF Reference 1.6, section 3.4). Not for use by several threads; to be closed. */
final class PdfObjects implements AutoCloseable {

    /** With bytes beyond ASCII, so that nobody takes the file for text. */
    private static final String HEAD = "%PDF-1.6\n%\u00e4\u00f6\u00fc\u00df\n";

    private static final HexFormat HEXADECIMAL = HexFormat.of().withUpperCase();

    private final Deflate deflate = new Deflate(Deflate.Frame.ZLIB);
    private final FileBytes file = new FileBytes();
    private int[] begins;
    private int count;

    private PdfObjects(byte[] beginning, int[] begins, int count) {
        file.put(beginning);
        this.begins = begins;
        this.count = count;
    }

    /** The beginning of a file. */
    static PdfObjects begin() {
        return new PdfObjects(HEAD.getBytes(StandardCharsets.ISO_8859_1), new int[16], 1);
    }

    /** A file that begins as this one does so far. */
    PdfObjects copy() {
        return new PdfObjects(file.all(), Arrays.copyOf(begins, count + 64), count);
    }

    /** The number of an object to come. */
    int number() {
        if (count == begins.length) {
            begins = Arrays.copyOf(begins, 2 * count);
        }
        return count++;
    }

    /** How an object is told of in others. */
    static String reference(int number) {
        return number + " 0 R";
    }

    /** A text for people: as it is where it is ASCII, else in UTF-16 (section 3.8.1). */
    static String text(String words) {
        if (words.chars().allMatch(c -> c >= 0x20 && c < 0x7f)) {
            return "(" + words.replace("\\", "\\\\").replace("(", "\\(").replace(")", "\\)") + ")";
        }
        StringBuilder hexadecimal = new StringBuilder("<FEFF");
        words.chars().forEach(c -> hexadecimal.append(HEXADECIMAL.toHexDigits((char) c)));
        return hexadecimal.append('>').toString();
    }

    /** Writes an object that has no other number yet. */
    int add(String value) {
        return add(number(), value);
    }

    /** Writes an object. */
    int add(int number, String value) {
        begin(number, value);
        file.put("\nendobj\n");
        return number;
    }

    /** Writes a stream as it is. */
    int add(int number, String dictionary, byte[] content) {
        begin(number, "<<" + dictionary + "/Length " + content.length + ">>\nstream\n");
        file.put(content);
        file.put("\nendstream\nendobj\n");
        return number;
    }

    /** Writes a stream, deflated. */
    int deflate(String dictionary, byte[] content) {
        return add(number(), dictionary + "/Filter/FlateDecode", deflate.of(content));
    }

    @Override
    public void close() {
        deflate.close();
    }

    private void begin(int number, String value) {
        begins[number] = file.length();
        file.put(number + " 0 obj\n" + value);
    }

    /** Ends the file, with an identifier made of its content, and writes it. */
    void write(int root, int information, OutputStream out) throws IOException {
        CRC32 sum = new CRC32();
        file.parts().forEach(sum::update);
        int table = file.length();
        String identifier = "<" + HEXADECIMAL.toHexDigits(table) + HEXADECIMAL.toHexDigits(count)
                + HEXADECIMAL.toHexDigits(sum.getValue()) + ">";
        file.put("xref\n0 " + count + "\n0000000000 65535 f \n");
        for (int i = 1; i < count; i++) {
            String place = Integer.toString(begins[i]);
            file.put("0".repeat(10 - place.length()) + place + " 00000 n \n");
        }
        file.put("trailer\n<</Size " + count + "/Root " + reference(root) + "/Info " + reference(information) + "/ID["
                + identifier + identifier + "]>>\nstartxref\n" + table + "\n%%EOF\n");
        out.write(file.all());
    }
}
