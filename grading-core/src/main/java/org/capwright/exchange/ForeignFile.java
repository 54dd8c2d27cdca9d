package org.capwright.exchange;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.regex.Pattern;
import org.capwright.words.Text;

/** A file as it was sent. Guaranteed not to change. */
public final class ForeignFile {

    private static final int SNIFFED = 64;

    /** The letters by which an archive begins, and with it a workbook. */
    private static final String ARCHIVE = "PK\u0003\u0004";

    /** The version by which a drawing begins that is not exchanged as text. */
    private static final Pattern DRAWING = Pattern.compile("AC10\\d\\d\\x00");

    private final String name;
    private final byte[] content;
    private final Optional<Charset> declared;

    private ForeignFile(String name, byte[] content, Optional<Charset> declared) {
        this.name = name;
        this.content = content;
        this.declared = declared;
    }

    /**
     * A file that is in memory.
     *
     * @param name its name, for messages and, where nothing else tells, for the size
     * @param content its bytes, copied
     * @return the file
     */
    public static ForeignFile of(String name, byte[] content) {
        return new ForeignFile(name, content.clone(), Optional.empty());
    }

    /**
     * Takes a file from a stream.
     *
     * @param name its name
     * @param stream read no further than one byte beyond the limit, not closed
     * @param most the most bytes that are taken
     * @return the file
     * @throws IOException if the stream fails
     * @throws ForeignInputException if there is more
     */
    public static ForeignFile read(String name, InputStream stream, int most)
            throws IOException, ForeignInputException {
        ForeignFile file = new ForeignFile(name, stream.readNBytes(most + 1), Optional.empty());
        file.atMost(most);
        return file;
    }

    /**
     * The same file with what the sender says of its encoding.
     *
     * @param charset the encoding of its text
     * @return a file that is read in this encoding, unless it begins with the mark of another
     */
    public ForeignFile declared(Charset charset) {
        return new ForeignFile(name, content, Optional.of(charset));
    }

    /**
     * What the sender says of its encoding.
     *
     * @return the encoding, if one is said
     */
    public Optional<Charset> declared() {
        return declared;
    }

    /**
     * Its name.
     *
     * @return the name as given
     */
    public String name() {
        return name;
    }

    /**
     * Its bytes.
     *
     * @return the bytes themselves, not to be written to
     */
    public byte[] bytes() {
        return content;
    }

    /**
     * Whether it is an archive by its first letters, as workbooks are.
     *
     * @return false for text, with a mark of its byte order or not
     */
    public boolean isArchive() {
        return new String(content, 0, Math.min(content.length, ARCHIVE.length()), StandardCharsets.ISO_8859_1)
                .equals(ARCHIVE);
    }

    /**
     * Refuses a file of a format that is not read, with the one to save it as.
     *
     * @throws ForeignInputException if its first bytes are those of a workbook, a PDF, markup, or a drawing in another format
     */
    public void notOfAnotherFormat() throws ForeignInputException {
        String start = new String(content, 0, Math.min(content.length, SNIFFED), StandardCharsets.ISO_8859_1)
                .replaceFirst("^\\u00ef\\u00bb\\u00bf", "")
                .stripLeading();
        if (start.startsWith("\u00d0\u00cf\u0011\u00e0")) {
            throw new ForeignInputException(
                    name,
                    0,
                    Text.of("an old workbook, or one with a password, which is not read; save it as .xlsx without a"
                            + " password, or its table as CSV"));
        }
        if (start.startsWith(ARCHIVE)) {
            throw new ForeignInputException(
                    name, 0, Text.of("a workbook or an archive, which is not read; save its table as CSV"));
        }
        if (start.startsWith("%PDF-")) {
            throw new ForeignInputException(
                    name, 0, Text.of("a PDF, which is not read; save a table as CSV, outlines as DXF"));
        }
        if (start.startsWith("<")) {
            throw new ForeignInputException(
                    name, 0, Text.of("SVG, XML or HTML, which is not read; save a table as CSV, outlines as DXF"));
        }
        if (DRAWING.matcher(start).lookingAt()) {
            throw new ForeignInputException(
                    name, 0, Text.of("a drawing in another format, which is not read; save it as ASCII DXF"));
        }
    }

    /**
     * Refuses a file that is too large.
     *
     * @param most the most bytes
     * @throws ForeignInputException if it has more
     */
    public void atMost(int most) throws ForeignInputException {
        if (content.length > most) {
            throw new ForeignInputException(
                    name,
                    0,
                    Text.of("the file has more than {most} million bytes; send a smaller one")
                            .with("most", most / 1_000_000));
        }
    }
}
