package org.capwright.service.http;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import org.capwright.quantity.Decimals;
import tools.jackson.core.JsonGenerator;
import tools.jackson.core.io.NumberOutput;
import tools.jackson.core.io.SerializedString;
import tools.jackson.core.json.UTF8JsonGenerator;
import tools.jackson.databind.SerializationContext;
import tools.jackson.databind.ser.std.StdSerializer;

/**
 * Writes lists of figures, points and segments, which are most of an answer, straight as text: the same as the mapper would write number by number.
 *
 * @param <T> an array of doubles, or of such arrays
 */
final class FiguresWriter<T> extends StdSerializer<T> {

    private static final int CHUNK = 2048;

    /** A figure with its comma and the brackets about it stays below this. */
    private static final int FIGURE = 40;

    FiguresWriter(Class<T> type) {
        super(type);
    }

    @Override
    public void serialize(T figures, JsonGenerator json, SerializationContext context) {
        if (!(json instanceof UTF8JsonGenerator)) {
            written(figures, json); // a tree or letters, which take no bytes
            return;
        }
        Chunk chunk = (Chunk) context.getAttribute(Chunk.class);
        if (chunk == null || chunk.json != json) {
            chunk = new Chunk(json);
            context.setAttribute(Chunk.class, chunk); // for all figures of an answer
        }
        json.writeRawValue("");
        chunk.add(figures);
        chunk.flush();
    }

    private static void written(Object figures, JsonGenerator json) {
        if (figures instanceof double[] values) {
            json.writeArray(values, 0, values.length);
            return;
        }
        json.writeStartArray();
        for (Object part : (Object[]) figures) {
            written(part, json);
        }
        json.writeEndArray();
    }

    /** What is not yet handed on. The generator copies its bytes as they are, which is all that it asks for. */
    private static final class Chunk extends SerializedString {

        private final transient JsonGenerator json;
        private final transient byte[] bytes = new byte[CHUNK];
        private transient int length;

        Chunk(JsonGenerator json) {
            super("");
            this.json = json;
        }

        void add(Object figures) {
            bytes[length++] = '[';
            if (figures instanceof double[] values) {
                for (int i = 0; i < values.length; i++) {
                    separate(i);
                    add(values[i]);
                }
            } else {
                Object[] parts = (Object[]) figures;
                for (int i = 0; i < parts.length; i++) {
                    separate(i);
                    add(parts[i]);
                }
            }
            bytes[length++] = ']';
        }

        private void separate(int before) {
            if (length > bytes.length - FIGURE) {
                flush();
            }
            if (before > 0) {
                bytes[length++] = ',';
            }
        }

        private void add(double value) {
            int end = Decimals.putShortest(value, bytes, length);
            if (end > length) {
                length = end;
                return;
            }
            if (!Double.isFinite(value)) {
                throw new IllegalArgumentException("no figure of an answer: " + value);
            }
            byte[] shown = NumberOutput.toString(value, true).getBytes(StandardCharsets.ISO_8859_1);
            System.arraycopy(shown, 0, bytes, length, shown.length);
            length += shown.length;
        }

        void flush() {
            json.writeRaw(this);
            length = 0;
        }

        @Override
        public int appendUnquotedUTF8(byte[] to, int at) {
            if (length > to.length - at) {
                _unquotedUTF8Ref = Arrays.copyOf(bytes, length); // asked for next
                return -1;
            }
            System.arraycopy(bytes, 0, to, at, length);
            return length;
        }
    }
}
