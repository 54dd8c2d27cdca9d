package org.capwright.report;

import java.util.List;

/** The sizes of a nest in words. */
final class SizeNames {

    private static final int LISTED = 6;

    private SizeNames() {}

    static String sizes(Block block) {
        return sizes(block.layers().stream().map(layer -> layer.piece().size()).toList());
    }

    static String sizes(List<String> labels) {
        return labels.size() > LISTED
                ? labels.get(0) + " – " + labels.get(labels.size() - 1) + " (" + labels.size() + " sizes)"
                : String.join(", ", labels);
    }
}
