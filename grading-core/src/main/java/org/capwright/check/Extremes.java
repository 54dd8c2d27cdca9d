package org.capwright.check;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The sizes in which a measure is least and greatest.
 *
 * @param smallest position of the size with the least value
 * @param least the value
 * @param largest position of the size with the greatest value
 * @param greatest the value
 */
record Extremes(int smallest, double least, int largest, double greatest) {

    static Optional<Extremes> of(CheckedGrade grade, CheckedMeasure measure) {
        int smallest = -1;
        int largest = -1;
        double least = Double.POSITIVE_INFINITY;
        double greatest = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < grade.sizes().size(); i++) {
            OptionalDouble value = grade.value(i, measure);
            if (value.isPresent() && value.getAsDouble() < least) {
                least = value.getAsDouble();
                smallest = i;
            }
            if (value.isPresent() && value.getAsDouble() > greatest) {
                greatest = value.getAsDouble();
                largest = i;
            }
        }
        return smallest < 0 ? Optional.empty() : Optional.of(new Extremes(smallest, least, largest, greatest));
    }

    double spread() {
        return greatest - least;
    }

    /** How much of the spread rounding may have made. */
    double leeway(CheckedGrade grade, CheckedMeasure measure) {
        return grade.leeway(smallest, measure) + grade.leeway(largest, measure);
    }

    /** The two sizes in the order of the run. */
    List<String> sizes(CheckedGrade grade) {
        return List.of(grade.label(Math.min(smallest, largest)), grade.label(Math.max(smallest, largest)));
    }
}
