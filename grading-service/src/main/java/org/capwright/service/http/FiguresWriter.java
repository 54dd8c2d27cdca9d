package org.capwright.service.http;

import java.nio.charset.StandardCharsets;
import org.capwright.quantity.Decimals;
import tools.jackson.core.JsonGenerator;
import tools.jackson.core.io.NumberOutput;
import tools.jackson.core.json.JsonGeneratorBase;
import tools.jackson.databind.SerializationContext;
import tools.jackson.databind.ser.std.StdSerializer;

/**
 * Writes lists of figures, points and segments, which are most of an answer, straight as text: the same as the mapper would write number by number.
 *
 * @param <T> an array of doubles, or of such arrays
 */
final class FiguresWriter<T> extends StdSerializer<T> {

    private static final int CHUNK = 8192;

    /** A figure with its comma stays below this. */
    private static final int FIGURE = 40;

    /** As long as most are. */
    private static final int USUAL = 16;

    FiguresWriter(Class<T> type) {
        super(type);
    }

    @Override
    public void serialize(T figures, JsonGenerator json, SerializationContext context) {
        if (!(json instanceof JsonGeneratorBase)) {
            written(figures, json); // a tree, which takes no text
            return;
        }
        json.writeRawValue("");
        Chunk chunk = new Chunk(json, (int) Math.min(CHUNK, FIGURE + USUAL * count(figures)));
        chunk.add(figures);
        chunk.flush();
    }

    /** How many figures, and lists of figures, there are. */
    private static long count(Object figures) {
        if (figures instanceof double[] values) {
            return values.length + 1;
        }
        long count = 1;
        for (Object part : (Object[]) figures) {
            count += count(part);
        }
        return count;
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

    /** What is not yet handed on. */
    private static final class Chunk {

        private final JsonGenerator json;
        private final byte[] bytes;
        private int length;

        Chunk(JsonGenerator json, int size) {
            this.json = json;
            bytes = new byte[size];
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
            separate(0);
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
            json.writeRaw(new String(bytes, 0, length, StandardCharsets.ISO_8859_1));
            length = 0;
        }
    }
}
