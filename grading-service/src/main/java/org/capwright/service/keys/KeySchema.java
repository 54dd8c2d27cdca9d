package org.capwright.service.keys;

import java.util.List;
import java.util.stream.Stream;
import org.capwright.json.schema.FieldType;
import org.capwright.json.schema.RequestSchema;
import org.capwright.json.schema.SchemaField;
import org.capwright.service.http.access.Scope;

/** The bodies of the calls about keys. */
final class KeySchema {

    static final int USUAL_DAYS = 365;
    static final int MOST_ORIGINS = 20;
    static final int USUAL_HOURS = 24;

    static final RequestSchema KEY = RequestSchema.of(
            "NewKey",
            "A key to be made.",
            List.of(
                    SchemaField.required(
                                    "name",
                                    new FieldType.Text(100),
                                    "Who has it: a desk, a shop, a program. It is named in histories.")
                            .example("front desk"),
                    SchemaField.optional(
                                    "scopes",
                                    new FieldType.Words(Stream.of(Scope.values())
                                            .map(Scope::word)
                                            .toList()),
                                    "What it is good for. read drafts, checks and looks; style changes styles; order"
                                            + " takes orders, carries them on and sees measurements; admin makes keys,"
                                            + " erases measurements and reads the audit trail. None includes another. Left"
                                            + " out beside origins.")
                            .example(List.of("read", "order")),
                    SchemaField.optional(
                                    "origins",
                                    new FieldType.TextList(MOST_ORIGINS, 200),
                                    "Makes the key publishable: it may stand in the open in the pages of these origins,"
                                            + " is good for taking orders alone, and is refused from anywhere else.")
                            .example(List.of("https://shop.example")),
                    SchemaField.optional(
                                    "days",
                                    new FieldType.Whole(1, 3650),
                                    "After how many days it expires. " + USUAL_DAYS + " if left out.")
                            .example(365),
                    SchemaField.optional(
                                    "tenant",
                                    new FieldType.Text(64),
                                    "For the operator: whose key it is. Small letters, digits and hyphens. Left out by"
                                            + " everybody else.")
                            .example("choir")));

    static final RequestSchema ROTATION = RequestSchema.of(
            "KeyRotation",
            "How a key is followed by another.",
            List.of(SchemaField.optional(
                            "overlapHours",
                            new FieldType.Whole(0, 720),
                            "How long the old key stays good beside the new one. " + USUAL_HOURS + " if left out.")
                    .example(24)));

    private KeySchema() {}
}
