package org.capwright.gradeimport;

import java.util.EnumSet;
import java.util.Set;
import org.capwright.quantity.Unit;

/**
 * How a point of measure stands in a table.
 *
 * @param line line of the file
 * @param name its name as it is written
 * @param certain whether the name itself says that all or half of it is measured
 * @param units units in which its figures were read; filled while they are
 */
record WrittenRow(int line, String name, boolean certain, Set<Unit> units) {

    static WrittenRow of(int line, String name, PointNames.Match match) {
        return new WrittenRow(line, name, match.certain(), EnumSet.noneOf(Unit.class));
    }
}
