package org.capwright.json.schema;

import java.util.Collection;
import java.util.Locale;
import java.util.Optional;

/** Finds the word that was probably meant, by the number of letters changed, added or left out (Levenshtein distance). */
public final class NearestWord {

    private static final int LONGEST = 80;

    /** Shorter words turn up within others by chance. */
    private static final int CONTAINED = 4;

    private NearestWord() {}

    /**
     * The word that was probably meant.
     *
     * @param written what was written
     * @param words the words there are
     * @return the nearest word; none where less than half of it is right and it does not contain a word either
     */
    public static Optional<String> to(String written, Collection<String> words) {
        if (written.length() > LONGEST) {
            return Optional.empty();
        }
        String plain = plain(written);
        String best = "";
        int least = Integer.MAX_VALUE;
        for (String word : words) {
            int distance = distance(plain, plain(word));
            boolean contained = word.length() >= CONTAINED && plain.contains(plain(word));
            if (distance < least && (contained || 2 * distance <= word.length())) {
                least = distance;
                best = word;
            }
        }
        return best.isEmpty() ? Optional.empty() : Optional.of(best);
    }

    private static String plain(String word) {
        return word.toLowerCase(Locale.ROOT).replace("_", "").replace("-", "").replace(" ", "");
    }

    private static int distance(String a, String b) {
        int[] above = new int[b.length() + 1];
        for (int j = 0; j <= b.length(); j++) {
            above[j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            int[] row = new int[b.length() + 1];
            row[0] = i;
            for (int j = 1; j <= b.length(); j++) {
                int change = above[j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                row[j] = Math.min(change, 1 + Math.min(row[j - 1], above[j]));
            }
            above = row;
        }
        return above[b.length()];
    }
}
