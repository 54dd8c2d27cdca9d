package org.capwright.json.style;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.capwright.grade.GradeRule;
import org.capwright.quantity.Unit;

/** Writes grade rules as the field {@code grade} of a request takes them. */
public final class GradeWriter {

    private GradeWriter() {}

    /**
     * The rules as they can be put into a request.
     *
     * @param rules grade rules, each dimension at most once
     * @param unit unit of the request
     * @return by name of the dimension one increment, or a list of one per interval where they differ; a rule without intervals is left out
     */
    public static Map<String, Object> written(List<GradeRule> rules, Unit unit) {
        Map<String, Object> grade = new LinkedHashMap<>();
        for (GradeRule rule : rules) {
            List<Double> increments =
                    rule.increments().stream().map(unit::figure).toList();
            if (!increments.isEmpty()) {
                grade.put(
                        rule.dimension().gradeName(),
                        increments.stream().distinct().count() == 1 ? increments.get(0) : increments);
            }
        }
        return grade;
    }
}
