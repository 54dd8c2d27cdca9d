package org.capwright.service.page;

import io.swagger.v3.oas.annotations.Hidden;
import java.util.Map;
import java.util.TreeMap;
import org.capwright.json.madetomeasure.MeasureSchema;
import org.capwright.json.schema.FieldType;
import org.capwright.json.schema.RequestSchema;
import org.capwright.json.schema.SchemaField;
import org.capwright.json.style.SizeRunSchema;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RestController;

/**
 * The ranges of the fields that the page shows, from the schemas by which requests are read. It is part of the page, not of the interface for other programs,
 * whose description states the same ranges in words.
 */
@RestController
@Hidden
final class RangesController {

    /** Stands for each entry of a list, or each name of a size. */
    private static final String EACH = "/*";

    private final Map<String, Range> ranges = new TreeMap<>();

    RangesController() {
        add("", MeasureSchema.REQUEST, ranges);
        add("", SizeRunSchema.REQUEST, ranges);
    }

    /** Least and greatest of a field: of a length in millimetres. */
    record Range(double least, double greatest) {}

    /** All ranges by the places of their fields (JSON Pointer, RFC 6901, with a star for what repeats). */
    @GetMapping("/page/ranges.json")
    Map<String, Range> all() {
        return ranges;
    }

    private static void add(String place, RequestSchema schema, Map<String, Range> found) {
        for (SchemaField field : schema.fields().values()) {
            add(place + "/" + field.name(), field.kind(), found);
        }
    }

    private static void add(String place, FieldType kind, Map<String, Range> found) {
        if (kind instanceof FieldType.Length length) {
            found.put(place, new Range(length.least(), length.greatest()));
        } else if (kind instanceof FieldType.Ratio ratio) {
            found.put(place, new Range(ratio.least(), ratio.greatest()));
        } else if (kind instanceof FieldType.Whole whole) {
            found.put(place, new Range(whole.least(), whole.greatest()));
        } else if (kind instanceof FieldType.Ease ease) {
            add(place, ease.length(), found);
        } else if (kind instanceof FieldType.Growth growth) {
            found.put(place, new Range(-growth.greatest(), growth.greatest()));
        } else if (kind instanceof FieldType.PerSize perSize) {
            add(place + EACH, perSize.count(), found);
        } else if (kind instanceof FieldType.Nested nested) {
            add(place, nested.schema(), found);
        } else if (kind instanceof FieldType.TextOrNested either) {
            add(place, either.schema(), found);
        } else if (kind instanceof FieldType.LengthOrNested either) {
            add(place, either.schema(), found);
        } else if (kind instanceof FieldType.Objects objects) {
            add(place + EACH, objects.schema(), found);
        }
    }
}
