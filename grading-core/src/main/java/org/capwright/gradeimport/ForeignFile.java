package org.capwright.gradeimport;

import java.io.IOException;
import java.io.InputStream;

/** A file as it was sent. Guaranteed not to change. */
public final class ForeignFile {

    private final String name;
    private final byte[] content;

    private ForeignFile(String name, byte[] content) {
        this.name = name;
        this.content = content;
    }

    /**
     * A file that is in memory.
     *
     * @param name its name, for messages and, where nothing else tells, for the size
     * @param content its bytes, copied
     * @return the file
     */
    public static ForeignFile of(String name, byte[] content) {
        return new ForeignFile(name, content.clone());
    }

    /**
     * Takes a spec table from a stream.
     *
     * @param name its name
     * @param stream read no further than one byte beyond {@link SpecTableReader#MOST_BYTES}, not closed
     * @return the file
     * @throws IOException if the stream fails
     * @throws ForeignInputException if there is more
     */
    public static ForeignFile table(String name, InputStream stream) throws IOException, ForeignInputException {
        return read(name, stream, SpecTableReader.MOST_BYTES);
    }

    /**
     * Takes a drawing from a stream.
     *
     * @param name its name
     * @param stream read no further than one byte beyond {@link OutlineReader#MOST_BYTES}, not closed
     * @return the file
     * @throws IOException if the stream fails
     * @throws ForeignInputException if there is more
     */
    public static ForeignFile drawing(String name, InputStream stream) throws IOException, ForeignInputException {
        return read(name, stream, OutlineReader.MOST_BYTES);
    }

    private static ForeignFile read(String name, InputStream stream, int most)
            throws IOException, ForeignInputException {
        byte[] content = stream.readNBytes(most + 1);
        ForeignFile file = new ForeignFile(name, content);
        file.atMost(most);
        return file;
    }

    /**
     * Its name.
     *
     * @return the name as given
     */
    public String name() {
        return name;
    }

    /** The bytes themselves; not to be written to. */
    byte[] bytes() {
        return content;
    }

    void atMost(int most) throws ForeignInputException {
        if (content.length > most) {
            throw new ForeignInputException(
                    name, 0, "the file has more than " + most / 1_000_000 + " million bytes; send a smaller one");
        }
    }
}
