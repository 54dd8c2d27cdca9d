package org.capwright.exchange;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.Charset;
import java.util.Optional;
import org.capwright.words.Text;

/** A file as it was sent. Guaranteed not to change. */
public final class ForeignFile {

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
