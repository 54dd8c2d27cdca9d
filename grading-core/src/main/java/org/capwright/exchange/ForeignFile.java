package org.capwright.exchange;

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
        ForeignFile file = new ForeignFile(name, stream.readNBytes(most + 1));
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
                    name, 0, "the file has more than " + most / 1_000_000 + " million bytes; send a smaller one");
        }
    }
}
