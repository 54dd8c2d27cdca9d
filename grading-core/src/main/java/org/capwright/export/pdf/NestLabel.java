package org.capwright.export.pdf;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The words on a nest: those of one size, with all sizes named where that one was. */
final class NestLabel {

    private NestLabel() {}

    static List<String> lines(Block block) {
        List<String> lead = block.leading().piece().label().lines();
        String size = block.leading().piece().size();
        Pattern alone = Pattern.compile("(?<![\\p{L}\\p{N}])" + Pattern.quote(size) + "(?![\\p{L}\\p{N}])");
        List<String> lines = new ArrayList<>(lead.size());
        for (int i = 0; i < lead.size(); i++) {
            lines.add(
                    sameInAll(block, i)
                            ? lead.get(i)
                            : lastReplaced(alone.matcher(lead.get(i)), lead.get(i), sizes(block)));
        }
        return lines;
    }

    private static boolean sameInAll(Block block, int line) {
        String text = block.leading().piece().label().lines().get(line);
        for (Block.Layer layer : block.layers()) {
            List<String> lines = layer.piece().label().lines();
            if (line >= lines.size() || !lines.get(line).equals(text)) {
                return false;
            }
        }
        return true;
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

    static String sizes(Block block) {
        return sizes(block.layers().stream().map(layer -> layer.piece().size()).toList());
    }

    static String sizes(List<String> labels) {
        return labels.size() > 6
                ? labels.get(0) + " – " + labels.get(labels.size() - 1) + " (" + labels.size() + " sizes)"
                : String.join(", ", labels);
    }
}
