package org.capwright.json.schema;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.capwright.json.problem.FoundViolations;
import org.capwright.json.problem.RequestField;
import org.capwright.quantity.Quantity;
import org.capwright.quantity.Violation;
import org.capwright.words.Text;
import tools.jackson.databind.JsonNode;

/** Reads the names of the sizes: texts or whole numbers, all different, ascending where all are numbers. */
public final class SizeLabels {

    private SizeLabels() {}

    /**
     * Reads the names of the sizes.
     *
     * @param list the value of the field
     * @param where where it stands
     * @param kind how many and how long they may be
     * @param found gathers what is wrong
     * @return the names; none if anything is wrong with them
     */
    public static Optional<List<String>> read(
            JsonNode list, String where, FieldType.Labels kind, FoundViolations found) {
        if (!list.isArray()) {
            found.add(where, "must be a list of the names of the sizes, smallest first, such as [\"36\", \"38\"]");
            return Optional.empty();
        }
        if (list.isEmpty() || list.size() > kind.most()) {
            found.add(Violation.outside(
                    new RequestField(where), "number of sizes", Quantity.COUNT, list.size(), 1, kind.most()));
            return Optional.empty();
        }
        List<String> labels = new ArrayList<>(list.size());
        Map<String, Integer> first = new HashMap<>();
        boolean right = true;
        for (int i = 0; i < list.size(); i++) {
            Optional<String> label = one(list.get(i), where + "/" + i, kind.longest(), found);
            right &= label.isPresent();
            if (label.isPresent()) {
                Integer before = first.putIfAbsent(label.get(), i);
                if (before != null) {
                    found.add(
                            where + "/" + i,
                            Text.of("repeats the size at {place}").with("place", where + "/" + before),
                            label.get());
                    right = false;
                }
                labels.add(label.get());
            }
        }
        return right && ascending(labels, where, found) ? Optional.of(labels) : Optional.empty();
    }

    /**
     * Reads the name of one size.
     *
     * @param value the value of the field
     * @param where where it stands
     * @param longest greatest number of characters
     * @param found gathers what is wrong
     * @return the name; none if it is wrong
     */
    public static Optional<String> one(JsonNode value, String where, int longest, FoundViolations found) {
        return value.isIntegralNumber() && value.canConvertToInt()
                ? Optional.of(Integer.toString(value.intValue()))
                : Texts.checked(value, where, longest, found);
    }

    private static boolean ascending(List<String> labels, String where, FoundViolations found) {
        for (String label : labels) {
            if (!Lengths.DECIMAL.matcher(label).matches()) {
                return true;
            }
        }
        boolean right = true;
        for (int i = 1; i < labels.size(); i++) {
            if (new BigDecimal(labels.get(i)).compareTo(new BigDecimal(labels.get(i - 1))) <= 0) {
                found.add(
                        where + "/" + i,
                        Text.of("sizes that are all numbers must ascend; this one does not exceed {before} before it")
                                .with("before", labels.get(i - 1)),
                        labels.get(i));
                right = false;
            }
        }
        return right;
    }
}
