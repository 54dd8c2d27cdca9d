package org.capwright.check;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.capwright.quantity.Subject;

/** A grade of which one figure can be changed at a time, as its maker would: an increment, a whole rule, or the figure of a size. */
interface Changeable {

    /**
     * What can be changed.
     *
     * @param place the dimension of a rule, or the measure of a sheet
     * @param first position of the smaller size
     * @param last position of the larger size; that of the smaller one where the figure of a size is meant, so that the jumps on both sides of it change
     */
    record Cell(Subject place, int first, int last) {

        /** Whether the figure of one size is meant, and not a jump. */
        boolean isSize() {
            return first == last;
        }
    }

    /** The grade as the checks see it. */
    CheckedGrade grade();

    /** The cells that could be behind these findings. */
    List<Cell> suspects(List<Finding> findings);

    /** What stands in a cell, mm. */
    double value(Cell cell);

    /** How many figures its maker has to change. */
    int figures(Cell cell);

    /** Values that are likely meant, mm, by the other figures of the row and by the bodies. */
    double[] likely(Cell cell, Thresholds thresholds);

    /** The distance of the figures that its maker can write into a cell, mm: the grid of a sheet that is rounded; empty where any figure can be drafted. */
    OptionalDouble grid(Cell cell);

    /** Whether the figures are somebody's own, so that what was meant is looked for and not the least change. */
    boolean isWritten();

    /** How uneven the row of a cell is: the sum of the changes from jump to jump, mm. */
    double unevenness(Cell cell);

    /** The same grade by its figures alone, without what takes long to draw, to try many values on; empty where a cell is of what is left out. */
    Optional<Changeable> light(Cell cell);

    /** The grade with another figure in a cell; empty where no sleeve can be drafted so. */
    Optional<Changeable> with(Cell cell, double value);
}
