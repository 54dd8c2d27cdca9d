package org.capwright.grade;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.capwright.measure.SleeveSubject.Option;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Violation;
import org.capwright.words.Text;

/**
 * The sizes of a run. Immutable.
 *
 * @param labels names of the sizes, smallest first, one or more, all different
 * @param base position of the base size among them
 */
public record Sizes(List<String> labels, int base) {

    /**
     * Checks the labels.
     *
     * @param labels names of the sizes, smallest first, one or more, all different
     * @param base position of the base size among them, from 0
     * @throws InvalidMeasuresException if there is no size, a label is blank or repeated, or there is no base size at that position
     */
    public Sizes {
        labels = List.copyOf(labels);
        List<Violation> found = new ArrayList<>();
        if (labels.isEmpty()) {
            found.add(Violation.of(Option.SIZES, "there must be one size or more"));
        }
        Set<String> seen = new HashSet<>();
        for (String label : labels) {
            if (label.isBlank()) {
                found.add(Violation.of(Option.SIZES, "a size needs a name"));
            } else if (!seen.add(label)) {
                found.add(Violation.of(
                        Option.SIZES,
                        Text.of("names size {size} more than once").with("size", label)));
            }
        }
        if (!labels.isEmpty() && (base < 0 || base >= labels.size())) {
            found.add(Violation.of(
                    Option.BASE_SIZE,
                    Text.of("has position {position}; the run has positions 0 to {last}")
                            .with("position", base)
                            .with("last", labels.size() - 1)));
        }
        if (!found.isEmpty()) {
            throw new InvalidMeasuresException(found);
        }
    }

    /**
     * Sizes around a base size.
     *
     * @param base name of the base size
     * @param labels names of all sizes, the base size among them, smallest first
     * @return the sizes
     * @throws InvalidMeasuresException if the base size is not among them, or a label is blank or repeated
     */
    public static Sizes withBase(String base, String... labels) {
        int position = List.of(labels).indexOf(base);
        if (position < 0 && labels.length > 0) {
            throw new InvalidMeasuresException(Violation.of(
                    Option.BASE_SIZE,
                    Text.of("is {size}; it must be one of the sizes {sizes}")
                            .with("size", base)
                            .with("sizes", Text.names(List.of(labels)))));
        }
        return new Sizes(List.of(labels), position);
    }

    /**
     * How many jumps there are from a size to the next.
     *
     * @return one less than there are sizes
     */
    public int intervals() {
        return labels.size() - 1;
    }
}
