package org.capwright.quantity;

import java.util.Arrays;

/**
 * A prefix code as RFC 1951, section 3.2.2, has it: it follows from the lengths of its words.
 *
 * @param lengths bits of the word of each symbol, 0 for one that does not occur
 * @param words the words, with their first bit lowest
 */
record HuffmanCode(byte[] lengths, int[] words) {

    private static final int LONGEST = 15;

    /** Bits for a symbol beside its count. */
    private static final int SYMBOL = 9;

    /** The code of given lengths. */
    static HuffmanCode of(byte[] lengths) {
        int[] next = new int[LONGEST + 1];
        for (byte length : lengths) {
            next[length]++;
        }
        next[0] = 0;
        int word = 0;
        for (int length = 1, shorter = 0; length <= LONGEST; length++) {
            word = word + shorter << 1;
            shorter = next[length];
            next[length] = word;
        }
        int[] words = new int[lengths.length];
        for (int symbol = 0; symbol < words.length; symbol++) {
            if (lengths[symbol] > 0) {
                words[symbol] = Integer.reverse(next[lengths[symbol]]++) >>> 32 - lengths[symbol];
            }
        }
        return new HuffmanCode(lengths, words);
    }

    /** A code in which symbols that occur more often have shorter words, none longer than the limit. */
    static HuffmanCode of(int[] counts, int limit) {
        long[] rising = new long[counts.length];
        int used = 0;
        for (int symbol = 0; symbol < counts.length; symbol++) {
            if (counts[symbol] > 0) {
                rising[used++] = (long) counts[symbol] << SYMBOL | symbol;
            }
        }
        Arrays.sort(rising, 0, used);
        int[] words = words(rising, used, limit);
        byte[] lengths = new byte[counts.length];
        int rarest = 0;
        for (int length = limit; length > 0; length--) {
            for (int i = 0; i < words[length]; i++) {
                lengths[(int) rising[rarest++] & (1 << SYMBOL) - 1] = (byte) length;
            }
        }
        return of(lengths);
    }

    /**
     * How many words there are of each length. Depths of Huffman's tree after Moffat and Katajainen, In-place calculation of minimum-redundancy codes, WADS 1995; those beyond the limit are then brought
     * back to it, for which words nearest to it grow by a bit.
     */
    private static int[] words(long[] rising, int used, int limit) {
        int[] words = new int[limit + 1];
        if (used < 2) {
            words[1] = used;
            return words;
        }
        int[] tree = new int[used];
        for (int i = 0; i < used; i++) {
            tree[i] = (int) (rising[i] >>> SYMBOL);
        }
        parents(tree);
        tree[used - 2] = 0; // from here on depths
        for (int i = used - 3; i >= 0; i--) {
            tree[i] = tree[tree[i]] + 1;
        }
        int inner = used - 2;
        int nodes = 1;
        for (int depth = 0; nodes > 0; depth++) {
            int parents = 0;
            for (; inner >= 0 && tree[inner] == depth; inner--) {
                parents++;
            }
            words[Math.min(depth, limit)] += nodes - parents;
            nodes = 2 * parents;
        }
        limit(words, limit);
        return words;
    }

    /** Puts in place of each weight but the last the place of its parent, as inner nodes are made of the two lightest. */
    private static void parents(int[] tree) {
        int inner = 0;
        int leaf = 0;
        for (int next = 0; next < tree.length - 1; next++) {
            int weight = 0;
            for (int child = 0; child < 2; child++) {
                if (leaf >= tree.length || inner < next && tree[inner] < tree[leaf]) {
                    weight += tree[inner];
                    tree[inner++] = next;
                } else {
                    weight += tree[leaf++];
                }
            }
            tree[next] = weight;
        }
    }

    /** Until the words are as many as there is room for (Kraft's inequality). */
    private static void limit(int[] words, int limit) {
        int room = 1 << limit;
        for (int length = 1; length <= limit; length++) {
            room -= words[length] << limit - length;
        }
        for (; room < 0; room++) {
            int length = limit - 1;
            while (words[length] == 0) {
                length--;
            }
            words[length]--;
            words[length + 1] += 2;
            words[limit]--;
        }
    }
}
