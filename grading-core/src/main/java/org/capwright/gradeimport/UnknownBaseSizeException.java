package org.capwright.gradeimport;

import java.util.List;
import org.capwright.exchange.ForeignInputException;
import org.capwright.words.Text;

/** Thrown when the sender names a base size that the files do not have: the files are right, what is said of them is wrong. */
public final class UnknownBaseSizeException extends ForeignInputException {

    private static final long serialVersionUID = 1L;

    /** Label of the base size, short enough to be shown. */
    private final String given;

    /** Labels of the sizes, short enough to be shown. */
    private final transient List<String> sizes;

    UnknownBaseSizeException(String file, String given, List<String> sizes) {
        super(
                file,
                0,
                Text.of("base size {size} is not among the sizes {sizes}")
                        .with("size", shown(given))
                        .with("sizes", shown(String.join(", ", sizes))));
        this.given = shown(given);
        this.sizes = sizes.stream().map(ForeignInputException::shown).toList();
    }

    /**
     * What was named.
     *
     * @return the label, short, without control characters
     */
    public String given() {
        return given;
    }

    /**
     * What could have been named.
     *
     * @return the labels of all sizes, smallest first, short, without control characters
     */
    public List<String> sizes() {
        return sizes;
    }
}
