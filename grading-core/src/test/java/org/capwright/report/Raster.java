package org.capwright.report;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;

/** A page as poppler draws it, grey, 10 pixels to the millimetre. */
record Raster(int width, int height, byte[] grey) {

    private static final int DARK = 128;

    static Raster of(Path file, int page) throws Exception {
        Tool.Result result = Tool.PDFTOPPM.run(
                file.getParent(), "-r", "254", "-gray", "-f", "" + page, "-l", "" + page, file.toString());
        assertEquals(0, result.code(), result.errors());
        assertEquals("", result.errors());
        return parsed(result.out());
    }

    /** Portable graymap, binary: "P5 width height 255" and the bytes. */
    private static Raster parsed(byte[] file) {
        int at = 0;
        int[] header = new int[4];
        for (int field = 0; field < 4; field++) {
            int value = 0;
            for (; file[at] != '\n' && file[at] != ' '; at++) {
                value = value * 10 + (file[at] - '0');
            }
            header[field] = value;
            at++;
        }
        int size = header[1] * header[2];
        byte[] grey = new byte[size];
        System.arraycopy(file, at, grey, 0, size);
        return new Raster(header[1], header[2], grey);
    }

    /** Whether the pattern has ink here; what only helps to put sheets together is paler. */
    boolean dark(int x, int y) {
        return x >= 0 && y >= 0 && x < width && y < height && (grey[y * width + x] & 0xFF) < DARK;
    }

    boolean darkWithin(int x, int y, int distance) {
        for (int dy = -distance; dy <= distance; dy++) {
            for (int dx = -distance; dx <= distance; dx++) {
                if (dark(x + dx, y + dy)) {
                    return true;
                }
            }
        }
        return false;
    }

    /** Ink in a row of pixels, weighed by its darkness: the middle of a line that begins at or after a pixel. */
    double lineAcross(int from, int y) {
        return line(from, x -> grey[y * width + x] & 0xFF, width);
    }

    double lineDown(int x, int from) {
        return line(from, y -> grey[y * width + x] & 0xFF, height);
    }

    private static double line(int from, java.util.function.IntUnaryOperator grey, int end) {
        int i = from;
        while (i < end && grey.applyAsInt(i) > 220) {
            i++;
        }
        double weight = 0;
        double sum = 0;
        for (; i < end && grey.applyAsInt(i) <= 250; i++) {
            double ink = 255 - grey.applyAsInt(i);
            weight += ink;
            sum += ink * (i + 0.5);
        }
        return sum / weight;
    }
}
