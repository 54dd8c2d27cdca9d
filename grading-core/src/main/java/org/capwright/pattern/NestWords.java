package org.capwright.pattern;

import java.util.ArrayList;
import java.util.List;

/** The words on a nest: those of its leading piece, with all sizes named where that one size was. */
public final class NestWords {

    private static final int LISTED = 2;

    private NestWords() {}

    /**
     * The lines to write on a nest.
     *
     * @param nest the same piece in each size, smallest first
     * @param leading position of the piece whose label is used
     * @return as many lines as that label has
     */
    public static List<String> of(List<Piece> nest, int leading) {
        Piece lead = nest.get(leading);
        List<String> lines = new ArrayList<>(lead.label().lines().size());
        for (int i = 0; i < lead.label().lines().size(); i++) {
            String line = lead.label().lines().get(i);
            lines.add(sameInAll(nest, i, line) ? line : lastReplaced(line, lead.size(), sizes(nest)));
        }
        return lines;
    }

    private static boolean sameInAll(List<Piece> nest, int line, String text) {
        return nest.stream()
                .allMatch(piece -> line < piece.label().lines().size()
                        && piece.label().lines().get(line).equals(text));
    }

    /** The line with the last place where a size stands alone, no letter or figure beside it, filled otherwise. */
    private static String lastReplaced(String line, String size, String by) {
        for (int start = line.lastIndexOf(size); start >= 0; start = line.lastIndexOf(size, start - 1)) {
            int end = start + size.length();
            if ((start == 0 || !ofWord(line.codePointBefore(start)))
                    && (end == line.length() || !ofWord(line.codePointAt(end)))) {
                return line.substring(0, start) + by + line.substring(end);
            }
        }
        return line;
    }

    private static boolean ofWord(int c) {
        return Character.isLetterOrDigit(c)
                || Character.getType(c) == Character.LETTER_NUMBER
                || Character.getType(c) == Character.OTHER_NUMBER;
    }

    private static String sizes(List<Piece> nest) {
        List<String> labels = nest.stream().map(Piece::size).toList();
        return labels.size() > LISTED ? labels.get(0) + "–" + labels.get(labels.size() - 1) : String.join(", ", labels);
    }
}
