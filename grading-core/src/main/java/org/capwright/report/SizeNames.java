package org.capwright.report;

import java.util.List;
import org.capwright.words.Text;

/** The sizes of a nest in words. */
final class SizeNames {

    private static final int LISTED = 6;

    private SizeNames() {}

    static Text sizes(Block block) {
        return sizes(block.layers().stream().map(layer -> layer.piece().size()).toList());
    }

    static Text sizes(List<String> labels) {
        return labels.size() > LISTED
                ? Text.of("{first} – {last} ({count} sizes)")
                        .with("first", labels.get(0))
                        .with("last", labels.get(labels.size() - 1))
                        .with("count", labels.size())
                : Text.names(labels);
    }

    /** The sizes of a block with the word for it. */
    static Text named(Block block) {
        return Text.of(block.nested() ? "sizes {sizes}" : "size {sizes}").with("sizes", sizes(block));
    }
}
