package org.capwright.quantity;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Locale;
import java.util.Random;
import java.util.zip.DataFormatException;
import java.util.zip.Inflater;
import java.util.zip.InflaterInputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Compressed files as zlib reads them, which has its own reading of RFC 1951. */
class DeflateTest {

    private static final int FILES = 2_000;

    private final Deflate deflate = new Deflate();

    private static byte[] inflated(byte[] packed, int length) throws DataFormatException {
        Inflater inflater = new Inflater(true);
        inflater.setInput(packed);
        byte[] file = new byte[length + 1];
        int count = 0;
        while (!inflater.finished()) {
            int more = inflater.inflate(file, count, file.length - count);
            assertTrue(more > 0 || inflater.finished(), "it ends where the file does");
            count += more;
        }
        assertEquals(0, inflater.getRemaining(), "nothing stands behind its end");
        inflater.end();
        return Arrays.copyOf(file, count);
    }

    private void comesBack(byte[] file, String name) throws DataFormatException {
        assertArrayEquals(file, inflated(deflate.deflated(file), file.length), name);
    }

    /** Noise, few letters, letters of very unequal numbers, and repeats from near and from beyond the reach. */
    private static byte[] file(Random random) {
        byte[] file = new byte[random.nextInt(random.nextInt(40) == 0 ? 200_000 : 600)];
        int kind = random.nextInt(5);
        int letters = 1 + random.nextInt(256);
        int reach = 1 + random.nextInt(70_000);
        for (int i = 0; i < file.length; i++) {
            file[i] = (byte)
                    (kind == 0
                            ? random.nextInt(letters)
                            : kind == 1
                                    ? random.nextGaussian() * letters / 4
                                    : kind == 2 || i == 0 || random.nextInt(5) == 0
                                            ? Integer.numberOfTrailingZeros(random.nextInt() | 1 << 30)
                                            : file[i - 1 - random.nextInt(Math.min(i, reach))]);
        }
        if (kind == 4 && file.length > 0) {
            for (int to = file.length / 3; to < file.length; ) {
                int from = Math.max(0, to - 1 - random.nextInt(reach));
                int length = Math.min(file.length - to, 1 + random.nextInt(400));
                for (int i = 0; i < length; i++) {
                    file[to + i] = file[from + i];
                }
                to += length + random.nextInt(3);
            }
        }
        return file;
    }

    @Test
    void filesComeBack() throws DataFormatException {
        for (int seed = 0; seed < FILES; seed++) {
            comesBack(file(new Random(seed)), "seed " + seed);
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 3, 4, 7, 8, 9, 258, 259, 32_768, 32_772, 32_773, 65_536})
    void filesOfOneLetterComeBack(int length) throws DataFormatException {
        comesBack(new byte[length], length + " bytes");
    }

    @ParameterizedTest
    @ValueSource(ints = {32_767, 32_768, 32_769})
    void repeatsAsFarBackAsTheFormatReaches(int distance) throws DataFormatException {
        byte[] file = new byte[distance + 300];
        new Random(1).nextBytes(file);
        System.arraycopy(file, 0, file, distance, 300);
        comesBack(file, "repeat from " + distance);
        boolean found = deflate.deflated(file).length < deflate.deflated(Arrays.copyOf(file, distance)).length + 100;
        assertEquals(distance <= 32_768, found, "found at " + distance);
    }

    /** Fibonacci's numbers make the deepest tree: of these counts 19 deep, and words may have 15 bits. */
    @Test
    void wordsStayWithinTheirLimit() throws DataFormatException {
        byte[] file = new byte[10_945];
        int at = 0;
        int count = 1;
        int next = 1;
        for (int letter = 0; at < file.length; letter++) {
            int end = Math.min(file.length, at + count);
            Arrays.fill(file, at, end, (byte) letter);
            at = end;
            int sum = count + next;
            count = next;
            next = sum;
        }
        Random random = new Random(2);
        for (int i = file.length - 1; i > 0; i--) {
            int other = random.nextInt(i + 1);
            byte one = file[i];
            file[i] = file[other];
            file[other] = one;
        }
        comesBack(file, "Fibonacci");
        int[] counts = new int[19];
        counts[0] = 1;
        counts[1] = 1;
        for (int i = 2; i < counts.length; i++) {
            counts[i] = counts[i - 1] + counts[i - 2];
        }
        for (int limit : new int[] {5, 7, 15}) {
            double kraft = 0;
            for (byte length : HuffmanCode.of(counts, limit).lengths()) {
                assertTrue(length >= 1 && length <= limit, "limit " + limit);
                kraft += Math.pow(0.5, length);
            }
            assertEquals(1, kraft, 0, "every word is used, limit " + limit);
        }
    }

    /** The worked example of RFC 1951, section 3.2.2. */
    @Test
    void wordsFollowFromTheirLengths() {
        HuffmanCode code = HuffmanCode.of(new byte[] {3, 3, 3, 3, 3, 2, 4, 4});
        int[] shown = {0b010, 0b011, 0b100, 0b101, 0b110, 0b00, 0b1110, 0b1111};
        for (int i = 0; i < shown.length; i++) {
            assertEquals(shown[i], Integer.reverse(code.words()[i]) >>> 32 - code.lengths()[i], "symbol " + i);
        }
    }

    /** Counts of Huffman, A method for the construction of minimum-redundancy codes, Proc. IRE 40, 1952, table I: 20, 18, 10, ... per cent take 3.42 bits on average; from memory. */
    @Test
    void codesAreTheShortest() {
        int[] counts = {20, 18, 10, 10, 10, 6, 6, 4, 4, 4, 4, 3, 1};
        HuffmanCode code = HuffmanCode.of(counts, 15);
        int bits = 0;
        for (int i = 0; i < counts.length; i++) {
            bits += counts[i] * code.lengths()[i];
        }
        assertEquals(342, bits);
    }

    @Test
    void withHeadAndChecksum() throws Exception {
        StringBuilder lines = new StringBuilder();
        Random random = new Random(3);
        for (int i = 0; i < 3_000; i++) {
            lines.append(
                    String.format(Locale.ROOT, "%.3f %.3f l%n", random.nextDouble() * 300, 200 + random.nextDouble()));
        }
        byte[] file = lines.toString().getBytes(StandardCharsets.ISO_8859_1);
        byte[] packed = deflate.zlib(file);
        assertTrue(packed.length < file.length / 2, packed.length + " of " + file.length);
        assertArrayEquals(file, new InflaterInputStream(new ByteArrayInputStream(packed)).readAllBytes());
        assertArrayEquals(packed, new Deflate().zlib(file), "what was compressed before leaves no trace");
    }
}
