package org.capwright.quantity;

import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;
import java.util.Arrays;
import java.util.zip.Adler32;

/**
 * Compresses files (RFC 1951). Half of the time of a drawing on paper goes into that, and what Java brings takes twice as long for files a little larger; besides, its bytes hang on which zlib a machine has, and these do
 * not. Not for use by several threads; one compresses any number of files.
 */
public final class Deflate {

    private static final VarHandle FOUR = MethodHandles.byteArrayViewVarHandle(int[].class, ByteOrder.LITTLE_ENDIAN);
    private static final VarHandle EIGHT = MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.LITTLE_ENDIAN);

    /** Repeats of fewer bytes are not looked for. */
    private static final int SHORTEST = 4;

    private static final int LONGEST = 258;

    /** A repeat lies no farther back. */
    private static final int WINDOW = 1 << 15;

    /** So many places at the beginning of a repeat are remembered: more make files little smaller. */
    private static final int REMEMBERED = 4;

    /** Bits of what places are remembered by. */
    private static final int HASH = 15;

    /** What a block of one code holds at most, letters and repeats. */
    private static final int BLOCK = 1 << 14;

    private static final int END = 256;
    private static final int FIRST_LENGTH = 257;
    private static final int LETTERS = 286;
    private static final int DISTANCES = 30;

    /** Where in what a block holds the symbol of the distance begins, and where the letter. */
    private static final int DISTANCE_AT = 13;

    private static final int LETTER_AT = 18;

    /** Symbols beside the lengths of words themselves: the same again, and no word for a while (section 3.2.7). */
    private static final int AGAIN = 16;

    private static final int NONE = 17;
    private static final int LONG_NONE = 18;
    private static final int[] RUN_BITS = {2, 3, 7};
    private static final int[] ORDER = {16, 17, 18, 0, 8, 7, 9, 6, 10, 5, 11, 4, 12, 3, 13, 2, 14, 1, 15};

    /** The least length of each symbol, and the bits that say how much more it is (section 3.2.5). */
    private static final int[] LENGTH_BASE = new int[LETTERS - FIRST_LENGTH];

    private static final int[] LENGTH_BITS = new int[LENGTH_BASE.length];
    private static final byte[] LENGTH_SYMBOL = new byte[LONGEST + 1];

    /** The least distance of each symbol, and the bits that say how much more it is. */
    private static final int[] DISTANCE_BASE = new int[DISTANCES];

    private static final int[] DISTANCE_EXTRA = new int[DISTANCES];

    /** Symbols of distances less one: up to 255, then those of every 128th. */
    private static final byte[] DISTANCE_SYMBOL = new byte[512];

    /** For blocks too short for a code of their own (section 3.2.6). */
    private static final HuffmanCode FIXED_LETTERS;

    private static final HuffmanCode FIXED_DISTANCES;

    static {
        int length = 3;
        for (int symbol = 0; symbol < LENGTH_BASE.length - 1; symbol++) {
            LENGTH_BITS[symbol] = Math.max(0, symbol / 4 - 1);
            LENGTH_BASE[symbol] = length;
            Arrays.fill(LENGTH_SYMBOL, length, length + (1 << LENGTH_BITS[symbol]), (byte) symbol);
            length += 1 << LENGTH_BITS[symbol];
        }
        LENGTH_BASE[LENGTH_BASE.length - 1] = LONGEST;
        LENGTH_SYMBOL[LONGEST] = (byte) (LENGTH_BASE.length - 1);
        int distance = 0;
        for (int symbol = 0; symbol < DISTANCES; symbol++) {
            DISTANCE_EXTRA[symbol] = Math.max(0, symbol / 2 - 1);
            DISTANCE_BASE[symbol] = distance + 1;
            for (int end = distance + (1 << DISTANCE_EXTRA[symbol]); distance < end; distance++) {
                DISTANCE_SYMBOL[distance < 256 ? distance : 256 + (distance >> 7)] = (byte) symbol;
            }
        }
        byte[] letters = new byte[LETTERS + 2];
        Arrays.fill(letters, 0, 144, (byte) 8);
        Arrays.fill(letters, 144, END, (byte) 9);
        Arrays.fill(letters, END, 280, (byte) 7);
        Arrays.fill(letters, 280, letters.length, (byte) 8);
        FIXED_LETTERS = HuffmanCode.of(letters);
        byte[] distances = new byte[DISTANCES];
        Arrays.fill(distances, (byte) 5);
        FIXED_DISTANCES = HuffmanCode.of(distances);
    }

    /** Where four bytes were seen last, by a hash of them; counted through all files, so that it need not be cleared. */
    private final int[] seen = new int[1 << HASH];

    private int begin = 1;

    /** What the block holds: a letter, or {@link #END} and the length less {@link #SHORTEST}; the symbol of the distance, one too many for a letter; what the distance is more than its least. */
    private final int[] block = new int[BLOCK];

    private int held;
    private final int[] letters = new int[LETTERS];
    private final int[] distances = new int[DISTANCES];

    private byte[] out = new byte[1 << 12];
    private int length;
    private long bits;
    private int bitCount;

    /** Ready for files. */
    public Deflate() {}

    /**
     * Compresses a file.
     *
     * @param file the file
     * @return as RFC 1951 has it
     */
    public byte[] deflated(byte[] file) {
        length = 0;
        return written(file);
    }

    /**
     * Compresses a file, with head and checksum.
     *
     * @param file the file
     * @return as RFC 1950 has it, which is what a PDF holds
     */
    public byte[] zlib(byte[] file) {
        out[0] = 0x78;
        out[1] = 0x01;
        length = 2;
        byte[] packed = written(file);
        Adler32 sum = new Adler32();
        sum.update(file);
        byte[] all = Arrays.copyOf(packed, packed.length + 4);
        FOUR.set(all, packed.length, Integer.reverseBytes((int) sum.getValue()));
        return all;
    }

    private byte[] written(byte[] file) {
        if (begin > Integer.MAX_VALUE - file.length) {
            Arrays.fill(seen, 0);
            begin = 1;
        }
        int last = file.length - Long.BYTES;
        int at = 0;
        while (at < file.length) {
            int repeated = 0;
            if (at <= last) {
                int four = (int) FOUR.get(file, at);
                int hash = hash(four);
                int before = seen[hash] - begin;
                seen[hash] = begin + at;
                if (before >= 0 && at - before <= WINDOW && (int) FOUR.get(file, before) == four) {
                    repeated = repeated(file, before, at);
                    add(repeated, at - before);
                }
            }
            if (repeated == 0) {
                int letter = file[at++] & 0xff;
                letters[letter]++;
                block[held++] = letter << LETTER_AT | DISTANCES << DISTANCE_AT;
            } else {
                int end = Math.min(at + Math.min(repeated, REMEMBERED), last);
                for (int i = at + 1; i < end; i++) {
                    seen[hash((int) FOUR.get(file, i))] = begin + i;
                }
                at += repeated;
            }
            if (held == BLOCK && at < file.length) {
                write(0);
            }
        }
        write(1);
        begin += file.length;
        for (; bitCount > 0; bitCount -= 8) {
            out[length++] = (byte) bits;
            bits >>>= 8;
        }
        bits = 0;
        bitCount = 0;
        return Arrays.copyOf(out, length);
    }

    private static int hash(int four) {
        return four * 0x9E3779B1
                >>> 32 - HASH; // 2^32 over the golden ratio spreads best (Knuth, volume 3, section 6.4)
    }

    /** How many bytes are the same at two places whose first are. */
    private static int repeated(byte[] file, int before, int at) {
        int most = Math.min(file.length - at, LONGEST);
        int same = SHORTEST;
        for (; same + Long.BYTES <= most; same += Long.BYTES) {
            long other = (long) EIGHT.get(file, before + same) ^ (long) EIGHT.get(file, at + same);
            if (other != 0) {
                return same + Long.numberOfTrailingZeros(other) / Byte.SIZE;
            }
        }
        while (same < most && file[before + same] == file[at + same]) {
            same++;
        }
        return same;
    }

    private void add(int repeated, int distance) {
        int less = distance - 1;
        int symbol = DISTANCE_SYMBOL[less < 256 ? less : 256 + (less >> 7)];
        letters[FIRST_LENGTH + LENGTH_SYMBOL[repeated]]++;
        distances[symbol]++;
        block[held++] =
                END + repeated - SHORTEST << LETTER_AT | symbol << DISTANCE_AT | distance - DISTANCE_BASE[symbol];
    }

    private void put(int value, int count) {
        bits |= (long) value << bitCount;
        bitCount += count;
        EIGHT.set(out, length, bits);
        length += bitCount >>> 3;
        bits >>>= bitCount & ~7;
        bitCount &= 7;
    }

    private void write(int last) {
        letters[END] = 1;
        HuffmanCode own = HuffmanCode.of(letters, 15);
        HuffmanCode far = HuffmanCode.of(distances, 15);
        Lengths told = Lengths.of(own.lengths(), far.lengths());
        int fixed = bits(FIXED_LETTERS, FIXED_DISTANCES);
        int dynamic = bits(own, far) + told.bits();
        int room = length + Math.min(fixed, dynamic) / 8 + 64;
        if (room > out.length) {
            out = Arrays.copyOf(out, Math.max(room, 2 * out.length));
        }
        put(last, 1);
        if (fixed <= dynamic) {
            put(1, 2);
            write(FIXED_LETTERS, FIXED_DISTANCES);
        } else {
            put(2, 2);
            told.write(this);
            write(own, far);
        }
        Arrays.fill(letters, 0);
        Arrays.fill(distances, 0);
        held = 0;
    }

    /** What the block takes in a code. */
    private int bits(HuffmanCode own, HuffmanCode far) {
        int sum = 0;
        for (int i = 0; i < LETTERS; i++) {
            sum += letters[i] * (own.lengths()[i] + (i < FIRST_LENGTH ? 0 : LENGTH_BITS[i - FIRST_LENGTH]));
        }
        for (int i = 0; i < DISTANCES; i++) {
            sum += distances[i] * (far.lengths()[i] + DISTANCE_EXTRA[i]);
        }
        return sum;
    }

    /** Writes the block; each word stands in a table with its number of bits, and a letter has an empty word for its distance, so that nothing need be decided. */
    private void write(HuffmanCode own, HuffmanCode far) {
        int[] first = new int[2 * END];
        for (int i = 0; i < END; i++) {
            first[i] = own.words()[i] | own.lengths()[i] << 24;
        }
        for (int i = SHORTEST; i <= LONGEST; i++) {
            int symbol = LENGTH_SYMBOL[i];
            int word = own.lengths()[FIRST_LENGTH + symbol];
            first[END + i - SHORTEST] = own.words()[FIRST_LENGTH + symbol]
                    | i - LENGTH_BASE[symbol] << word
                    | word + LENGTH_BITS[symbol] << 24;
        }
        int[] second = new int[DISTANCES + 1];
        for (int i = 0; i < DISTANCES; i++) {
            int word = far.lengths()[i];
            second[i] = far.words()[i] | word << 16 | word + DISTANCE_EXTRA[i] << 24;
        }
        byte[] to = out;
        int at = length;
        long waiting = bits;
        int count = bitCount;
        for (int i = 0; i < held; i++) {
            int one = block[i];
            int letter = first[one >>> LETTER_AT];
            int distance = second[one >>> DISTANCE_AT & 31];
            waiting |= (long) (letter & 0xffffff) << count;
            count += letter >>> 24;
            int more = one & (1 << DISTANCE_AT) - 1;
            waiting |= (long) (distance & 0xffff | more << (distance >>> 16 & 15)) << count;
            count += distance >>> 24;
            EIGHT.set(to, at, waiting);
            at += count >>> 3;
            waiting >>>= count & ~7;
            count &= 7;
        }
        length = at;
        bits = waiting;
        bitCount = count;
        put(own.words()[END], own.lengths()[END]);
    }

    /**
     * The lengths of both codes as a block tells them (section 3.2.7).
     *
     * @param letters how many lengths are told of the first code
     * @param distances how many of the second
     * @param runs symbols, with what follows them above eight bits
     * @param code the code of the symbols
     * @param told how many lengths of that code are told
     * @param bits what all of it takes
     */
    private record Lengths(int letters, int distances, int[] runs, HuffmanCode code, int told, int bits) {

        static Lengths of(byte[] own, byte[] far) {
            int letters = used(own, FIRST_LENGTH);
            int distances = used(far, 1);
            byte[] all = Arrays.copyOf(own, letters + distances);
            System.arraycopy(far, 0, all, letters, distances);
            int[] runs = new int[all.length];
            int[] counts = new int[ORDER.length];
            int count = 0;
            int bits = 14;
            for (int at = 0, run; at < all.length; at += run) {
                int same = at + 1;
                while (same < all.length && all[same] == all[at]) {
                    same++;
                }
                run = same - at;
                int symbol = all[at];
                int more = 0;
                if (symbol == 0 && run >= 3) {
                    run = Math.min(run, 138);
                    symbol = run < 11 ? NONE : LONG_NONE;
                    more = run - (run < 11 ? 3 : 11);
                } else if (run >= 3 && at > 0 && all[at - 1] == symbol) {
                    run = Math.min(run, 6);
                    symbol = AGAIN;
                    more = run - 3;
                } else {
                    run = 1;
                }
                counts[symbol]++;
                runs[count++] = symbol | more << 8;
                bits += symbol < AGAIN ? 0 : RUN_BITS[symbol - AGAIN];
            }
            HuffmanCode code = HuffmanCode.of(counts, 7);
            int told = ORDER.length;
            while (told > 4 && code.lengths()[ORDER[told - 1]] == 0) {
                told--;
            }
            for (int i = 0; i < counts.length; i++) {
                bits += counts[i] * code.lengths()[i];
            }
            return new Lengths(letters, distances, Arrays.copyOf(runs, count), code, told, bits + 3 * told);
        }

        private static int used(byte[] lengths, int least) {
            int used = lengths.length;
            while (used > least && lengths[used - 1] == 0) {
                used--;
            }
            return used;
        }

        void write(Deflate to) {
            to.put(letters - FIRST_LENGTH, 5);
            to.put(distances - 1, 5);
            to.put(told - 4, 4);
            for (int i = 0; i < told; i++) {
                to.put(code.lengths()[ORDER[i]], 3);
            }
            for (int run : runs) {
                int symbol = run & 0xff;
                to.put(code.words()[symbol], code.lengths()[symbol]);
                if (symbol >= AGAIN) {
                    to.put(run >> 8, RUN_BITS[symbol - AGAIN]);
                }
            }
        }
    }
}
