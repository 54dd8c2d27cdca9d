package org.capwright.check;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.IntFunction;
import java.util.function.UnaryOperator;

/** Small grades for the tests of single checks. */
final class CheckCases {

    private CheckCases() {}

    /** The choir gown with one size changed. */
    static CheckedGrade gownWith(int size, UnaryOperator<CheckedSize> change) {
        CheckedGrade gown = ChoirGown.grade();
        List<CheckedSize> sizes = new ArrayList<>(gown.sizes());
        sizes.set(size, change.apply(sizes.get(size)));
        return gown.with(sizes);
    }

    /** The choir gown with the figures of one row. */
    static CheckedGrade gownWith(CheckedMeasure measure, double... values) {
        CheckedGrade gown = ChoirGown.grade();
        List<CheckedSize> sizes = new ArrayList<>();
        for (int i = 0; i < values.length; i++) {
            sizes.add(gown.sizes().get(i).with(measure, values[i]));
        }
        return gown.with(sizes);
    }

    /** A spec table of one row, sizes A, B, C ... */
    static CheckedGrade row(CheckedMeasure measure, double... values) {
        List<CheckedSize> sizes = new ArrayList<>();
        for (int i = 0; i < values.length; i++) {
            Map<CheckedMeasure, Double> figures = new EnumMap<>(CheckedMeasure.class);
            figures.put(measure, values[i]);
            sizes.add(new CheckedSize("size " + (char) ('A' + i), figures));
        }
        return new CheckedGrade(sizes, values.length / 2, Optional.empty());
    }

    static CheckedGrade sizes(int count, IntFunction<CheckedSize> size) {
        List<CheckedSize> sizes = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            sizes.add(size.apply(i));
        }
        return new CheckedGrade(sizes, count / 2, Optional.empty());
    }

    static List<Finding> of(GradeCheck check, CheckedGrade grade) {
        return check.check(grade, Thresholds.usual());
    }

    /** Findings that are more than a word of information. */
    static List<Finding> alarms(GradeCheck check, CheckedGrade grade) {
        return of(check, grade).stream()
                .filter(f -> f.severity() != Severity.INFO)
                .toList();
    }
}
