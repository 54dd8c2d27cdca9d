package org.capwright.quantity;

import java.util.Arrays;
import java.util.zip.Deflater;

/** Compresses files (RFC 1951) by what Java brings. Not for use by several threads; one compresses any number of files, and is to be closed. */
public final class Deflate implements AutoCloseable {

    /** Of the nine degrees: takes a third as long as the usual one, for archives a quarter and PDFs a twelfth larger. The first is an eighth quicker, for 4 % more. */
    private static final int LEVEL = 2;

    /** Whether something stands about what is compressed. */
    public enum Frame {
        /** Nothing, as in an archive. */
        NONE,
        /** A head and a check sum, as in a PDF (RFC 1950). */
        ZLIB
    }

    private final Deflater deflater;

    /**
     * A compressor.
     *
     * @param frame what stands about each file
     */
    public Deflate(Frame frame) {
        this.deflater = new Deflater(LEVEL, frame == Frame.NONE);
    }

    /**
     * Compresses a file.
     *
     * @param file the bytes
     * @return them compressed
     */
    public byte[] of(byte[] file) {
        deflater.reset();
        deflater.setInput(file);
        deflater.finish();
        byte[] packed = new byte[file.length / 3 + 64];
        int length = 0;
        while (!deflater.finished()) {
            if (length == packed.length) {
                packed = Arrays.copyOf(packed, 2 * length);
            }
            length += deflater.deflate(packed, length, packed.length - length);
        }
        return Arrays.copyOf(packed, length);
    }

    @Override
    public void close() {
        deflater.end();
    }
}
