package org.capwright.tables;

import java.util.List;
import org.capwright.quantity.InvalidMeasuresException;

/**
 * A table that a user proposes, as it came in. {@link #build()} checks it and makes a {@link SizeTable} of it.
 *
 * @param id short name in kebab-case, up to 64 characters, none of the published tables'
 * @param title title for people, not blank
 * @param source where the figures come from, not blank
 * @param licence under what terms the figures may be used, not blank
 * @param figureType whom the sizes are made for, not blank
 * @param population who was measured or is meant, not blank
 * @param unit {@code mm}, {@code cm} or {@code in}
 * @param kind body or garment
 * @param key the dimension that orders the sizes, such as {@code bustGirth}; must be one of the rows, without gaps
 * @param sizes names of the sizes, smallest first, 1 to 100, each once
 * @param rows the rows, 1 to 40, each dimension once, one value per size
 */
public record TableDraft(
        String id,
        String title,
        String source,
        String licence,
        String figureType,
        String population,
        String unit,
        TableKind kind,
        String key,
        List<String> sizes,
        List<RowDraft> rows) {

    /**
     * Copies the lists.
     *
     * @param id short name in kebab-case, up to 64 characters, none of the published tables'
     * @param title title for people, not blank
     * @param source where the figures come from, not blank
     * @param licence under what terms the figures may be used, not blank
     * @param figureType whom the sizes are made for, not blank
     * @param population who was measured or is meant, not blank
     * @param unit {
     * @param kind body or garment
     * @param key the dimension that orders the sizes, such as {
     * @param sizes names of the sizes, smallest first, 1 to 100, each once
     * @param rows the rows, 1 to 40, each dimension once, one value per size
     */
    public TableDraft {
        sizes = List.copyOf(sizes);
        rows = List.copyOf(rows);
    }

    /**
     * Checks the draft: units, plausible ranges, the order of the sizes, growth that must be monotone, and dimensions
     * that must stay larger than one another.
     *
     * @return the table, every value marked {@link Provenance#USER_SUPPLIED}
     * @throws InvalidMeasuresException with everything that is wrong, not only the first
     */
    public SizeTable build() {
        return new DraftCheck(this).build();
    }
}
