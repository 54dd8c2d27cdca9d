package org.capwright.gradeimport;

import java.util.Optional;
import org.capwright.quantity.Unit;

/**
 * What the sender says about files that do not say it themselves.
 *
 * @param unit the unit of lengths; in a spec table it counts where the table states none, in a drawing it goes before what the drawing states
 * @param baseSize label of the base size, before what the file states
 */
public record ForeignOptions(Optional<Unit> unit, Optional<String> baseSize) {

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
}
