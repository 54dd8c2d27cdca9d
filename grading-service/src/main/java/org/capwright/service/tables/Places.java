package org.capwright.service.tables;

import java.util.List;
import java.util.Optional;
import org.capwright.quantity.Unit;
import org.capwright.tables.BodyDimension;
import org.capwright.tables.Interval;
import org.capwright.tables.SizeTable;

/** Places along the dimension that orders a table. */
final class Places {

    private Places() {}

    /** From the smallest to the largest size, mm. */
    static Interval range(SizeTable table, BodyDimension key) {
        List<Interval> ranges = table.curve(key).ranges();
        return new Interval(ranges.get(0).lower(), ranges.get(ranges.size() - 1).upper());
    }

    /** Millimetres, if the text is a length. */
    static Optional<Double> read(String text, Unit unit) {
        try {
            return text.length() <= 40 ? Optional.of(unit.parse(text)) : Optional.empty();
        } catch (NumberFormatException e) {
            return Optional.empty();
        }
    }
}
