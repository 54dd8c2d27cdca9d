package org.capwright.service.orders;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.Arrays;
import java.util.Optional;

/** Lines of a stream, of which no more is held than one line and one buffer. */
final class BatchLines {

    private static final int BUFFER = 8192;

    private final byte[] buffer = new byte[BUFFER];
    private final InputStream in;
    private final int longest;
    private int from;
    private int to;
    private int number;

    BatchLines(InputStream in, int longest) {
        this.in = in;
        this.longest = longest;
    }

    /**
     * A line.
     *
     * @param number its number, from 1
     * @param bytes what stands on it, no more than the longest line
     * @param whole false where it was longer and the rest was left out
     */
    record Line(int number, byte[] bytes, boolean whole) {

        /** A line as it was put down: one that was too long has a byte more than the longest. */
        static Line kept(int number, byte[] bytes) {
            return new Line(number, bytes, bytes.length <= OrderOnLine.LONGEST);
        }

        byte[] toKeep() {
            return whole ? bytes : Arrays.copyOf(bytes, OrderOnLine.LONGEST + 1);
        }

        boolean blank() {
            if (!whole) {
                return false;
            }
            for (byte one : bytes) {
                if (one != ' ' && one != '\t' && one != '\r') {
                    return false;
                }
            }
            return true;
        }
    }

    /** Whether something can be read without waiting for the caller. */
    boolean ready() throws IOException {
        return from < to || in.available() > 0;
    }

    /** The next line, or nothing at the end. */
    Optional<Line> next() throws IOException {
        ByteArrayOutputStream line = new ByteArrayOutputStream();
        boolean whole = true;
        boolean begun = false;
        while (from < to || fill()) {
            begun = true;
            int end = from;
            while (end < to && buffer[end] != '\n') {
                end++;
            }
            int room = Math.min(end - from, longest - line.size());
            whole &= room == end - from;
            line.write(buffer, from, room);
            from = end;
            if (end < to) {
                from++;
                break;
            }
        }
        return begun ? Optional.of(new Line(++number, line.toByteArray(), whole)) : Optional.empty();
    }

    private boolean fill() throws IOException {
        from = 0;
        to = Math.max(0, in.read(buffer));
        return to > 0;
    }
}
