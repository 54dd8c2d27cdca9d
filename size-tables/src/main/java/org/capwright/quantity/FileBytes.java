package org.capwright.quantity;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** The bytes of a file as they are written, one after another: letters and decimals. What was written is not copied to make room. Not for use by several threads. */
public final class FileBytes {

    private static final int FIRST = 1 << 12;

    private static final int MOST = 1 << 16;

    /** The longest number stays below this. */
    private static final int NUMBER = 32;

    private final List<ByteBuffer> full = new ArrayList<>();
    private byte[] bytes = new byte[FIRST];
    private int length;

    /** No bytes yet. */
    public FileBytes() {}

    private void reserve(int more) {
        if (length + more > bytes.length) {
            full.add(ByteBuffer.wrap(bytes, 0, length));
            bytes = new byte[Math.max(more, Math.min(2 * bytes.length, MOST))];
            length = 0;
        }
    }

    /**
     * Writes a byte.
     *
     * @param b the byte
     */
    public void put(int b) {
        reserve(1);
        bytes[length++] = (byte) b;
    }

    /**
     * Writes bytes.
     *
     * @param more the bytes
     */
    public void put(byte[] more) {
        reserve(more.length);
        System.arraycopy(more, 0, bytes, length, more.length);
        length += more.length;
    }

    /**
     * Writes letters of ASCII.
     *
     * @param ascii the letters
     */
    @SuppressWarnings("deprecation") // The quickest way for letters of one byte each.
    public void put(String ascii) {
        int count = ascii.length();
        reserve(count);
        ascii.getBytes(0, count, bytes, length);
        length += count;
    }

    /**
     * Writes letters of any kind as UTF-8.
     *
     * @param text the letters
     */
    public void text(String text) {
        put(text.getBytes(StandardCharsets.UTF_8));
    }

    /**
     * Writes a number without trailing zeros.
     *
     * @param value at most 1e9 in size
     * @param least the least decimals, 0 or 1
     * @param most the most decimals, 1 to 9
     */
    public void put(double value, int least, int most) {
        reserve(NUMBER);
        length = Decimals.put(value, least, most, bytes, length);
    }

    /**
     * Writes the coordinates of a point without trailing zeros, a space between them.
     *
     * @param letter what stands before them, ASCII
     * @param x at most 1e9 in size
     * @param y at most 1e9 in size
     * @param most the most decimals, 1 to 9
     */
    public void point(int letter, double x, double y, int most) {
        reserve(2 * NUMBER);
        byte[] to = bytes;
        to[length] = (byte) letter;
        int between = Decimals.put(x, 0, most, to, length + 1);
        to[between] = ' ';
        length = Decimals.put(y, 0, most, to, between + 1);
    }

    /**
     * Writes a whole number.
     *
     * @param value the number
     */
    public void whole(int value) {
        reserve(NUMBER);
        length = Decimals.put(value, bytes, length);
    }

    /**
     * How long the file is so far.
     *
     * @return bytes
     */
    public int length() {
        int size = length;
        for (ByteBuffer part : full) {
            size += part.limit();
        }
        return size;
    }

    /**
     * What was written so far.
     *
     * @return parts in their order; to be read only, and before anything more is written
     */
    public List<ByteBuffer> parts() {
        List<ByteBuffer> parts = new ArrayList<>(full);
        parts.add(ByteBuffer.wrap(bytes, 0, length));
        return parts;
    }

    /**
     * What was written so far, after what stands in front of it.
     *
     * @param front bytes that go before
     * @return all of it, copied
     */
    public byte[] after(byte[] front) {
        byte[] all = Arrays.copyOf(front, front.length + length());
        int at = front.length;
        for (ByteBuffer part : full) {
            System.arraycopy(part.array(), 0, all, at, part.limit());
            at += part.limit();
        }
        System.arraycopy(bytes, 0, all, at, length);
        return all;
    }

    /**
     * What was written so far.
     *
     * @return all of it, copied
     */
    public byte[] all() {
        return after(new byte[0]);
    }
}
