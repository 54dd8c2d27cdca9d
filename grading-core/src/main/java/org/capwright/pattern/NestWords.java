package org.capwright.pattern;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

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
        Pattern alone = Pattern.compile("(?<![\\p{L}\\p{N}])" + Pattern.quote(lead.size()) + "(?![\\p{L}\\p{N}])");
        List<String> lines = new ArrayList<>(lead.label().lines().size());
        for (int i = 0; i < lead.label().lines().size(); i++) {
            String line = lead.label().lines().get(i);
            lines.add(sameInAll(nest, i, line) ? line : lastReplaced(alone.matcher(line), line, sizes(nest)));
        }
        return lines;
    }

    private static boolean sameInAll(List<Piece> nest, int line, String text) {
        return nest.stream()
                .allMatch(piece -> line < piece.label().lines().size()
                        && piece.label().lines().get(line).equals(text));
    }

    private static String lastReplaced(Matcher matcher, String line, String by) {
        int start = -1;
        int end = -1;
        while (matcher.find()) {
            start = matcher.start();
            end = matcher.end();
        }
        return start < 0 ? line : line.substring(0, start) + by + line.substring(end);
    }

    private static String sizes(List<Piece> nest) {
        List<String> labels = nest.stream().map(Piece::size).toList();
        return labels.size() > LISTED ? labels.get(0) + "–" + labels.get(labels.size() - 1) : String.join(", ", labels);
    }
}
