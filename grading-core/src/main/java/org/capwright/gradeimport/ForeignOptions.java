package org.capwright.gradeimport;

import java.util.Map;
import java.util.Optional;
import org.capwright.quantity.Unit;

/**
 * What the sender says about files that do not say it themselves.
 *
 * @param unit the unit of lengths; in a spec table it counts where the table states none, or one in which its figures are those of no sleeve; in a drawing it goes before what the drawing states
 * @param baseSize label of the base size, before what the file states
 * @param mapping by the name of a row or column of a spec table what it is: a code such as {@code armhole}, a name of the trade such as {@code half bicep (in)}, or {@link #IGNORED}
 */
public record ForeignOptions(Optional<Unit> unit, Optional<String> baseSize, Map<String, String> mapping) {

    /** Said of a row that is no part of the sleeve. */
    public static final String IGNORED = "ignore";

    /**
     * Copies the mapping.
     *
     * @param unit the unit of lengths
     * @param baseSize label of the base size
     * @param mapping what rows or columns are, by their names
     */
    public ForeignOptions {
        mapping = Map.copyOf(mapping);
    }

    /**
     * Unit and base size.
     *
     * @param unit the unit of lengths
     * @param baseSize label of the base size
     */
    public ForeignOptions(Optional<Unit> unit, Optional<String> baseSize) {
        this(unit, baseSize, Map.of());
    }

    /**
     * Nothing said: the files must state their unit.
     *
     * @return neither unit nor base size
     */
    public static ForeignOptions none() {
        return new ForeignOptions(Optional.empty(), Optional.empty());
    }

    /**
     * The unit alone.
     *
     * @param unit unit of lengths
     * @return no base size
     */
    public static ForeignOptions in(Unit unit) {
        return new ForeignOptions(Optional.of(unit), Optional.empty());
    }

    /**
     * Whether a row can be said to be this.
     *
     * @param meaning a code, a name of the trade, or {@link #IGNORED}
     * @return true where it is understood
     */
    public static boolean isMeaning(String meaning) {
        return meaning.strip().equals(IGNORED) || PointNames.match(meaning).isPresent();
    }
}
