package org.capwright.service.http.description;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.swagger.v3.oas.models.media.Schema;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.capwright.json.style.SizeRunSchema;
import org.junit.jupiter.api.Test;

/** Whoever sends an end of a range as the description has it, in any unit, must find it taken. An inch is 25.4 mm (international yard and pound agreement, 1959). */
class DescribedRangesTest {

    private static final String NUMBER = "(-?[0-9.]+)";
    private static final Pattern RANGE = Pattern.compile("rom " + NUMBER + " to " + NUMBER + " mm, " + NUMBER + " to "
            + NUMBER + " cm, " + NUMBER + " to " + NUMBER + " in");

    @Test
    void everyEndIsWithinTheRangeInMillimetres() {
        int ranges = 0;
        for (Schema<?> schema : OpenApiSchemas.of(SizeRunSchema.REQUEST).values()) {
            Map<String, ?> fields = schema.getProperties() == null ? Map.of() : schema.getProperties();
            for (Map.Entry<String, ?> field : fields.entrySet()) {
                String description = String.valueOf(((Schema<?>) field.getValue()).getDescription());
                Matcher range = RANGE.matcher(description);
                if (range.find()) {
                    ranges++;
                    for (int unit = 1; unit < 3; unit++) {
                        double inMillimetres = unit == 1 ? 10 : 25.4;
                        assertTrue(number(range, 2 * unit + 1) * inMillimetres >= number(range, 1) - 1e-9, description);
                        assertTrue(number(range, 2 * unit + 2) * inMillimetres <= number(range, 2) + 1e-9, description);
                    }
                }
            }
        }
        assertTrue(ranges > 40, "ranges read: " + ranges);
    }

    /** A layer of cloth of no thickness is refused. */
    @Test
    void aRangeThatBeginsAboveNothingSaysSo() {
        Matcher range = RANGE.matcher(((Schema<?>) OpenApiSchemas.of(SizeRunSchema.REQUEST)
                        .get("Thickness")
                        .getProperties()
                        .get("main"))
                .getDescription());
        assertTrue(range.find());
        assertEquals(0.01, number(range, 1));
        assertEquals(0.0004, number(range, 5));
    }

    private static double number(Matcher range, int group) {
        return Double.parseDouble(range.group(group));
    }
}
