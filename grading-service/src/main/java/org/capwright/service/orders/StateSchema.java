package org.capwright.service.orders;

import java.util.List;
import java.util.stream.Stream;
import org.capwright.json.schema.FieldType;
import org.capwright.json.schema.RequestSchema;
import org.capwright.json.schema.SchemaField;

/** What may become of orders and batches. */
final class StateSchema {

    static final RequestSchema CHANGE = RequestSchema.of(
            "OrderChange",
            "The next state of an order.",
            List.of(SchemaField.required(
                            "state",
                            new FieldType.Choice(Stream.of(OrderState.CONFIRMED, OrderState.CUT, OrderState.CANCELLED)
                                    .map(OrderState::word)
                                    .toList()),
                            "confirmed: looked at again and right; cut: the cloth is cut; cancelled: given up.")
                    .example("confirmed")));

    static final RequestSchema BATCH_CHANGE = RequestSchema.of(
            "OrderBatchChange",
            "What becomes of a batch that runs as a job.",
            List.of(SchemaField.required(
                            "state",
                            FieldType.Choice.of(BatchState.CANCELLED.word()),
                            "cancelled: no more of its orders are taken; those that were taken stay.")
                    .example("cancelled")));

    private StateSchema() {}
}
