package org.capwright.service.orders;

import io.swagger.v3.oas.annotations.media.ArraySchema;
import io.swagger.v3.oas.annotations.media.Schema;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.capwright.json.problem.FieldViolation;

/**
 * An order.
 *
 * @param entry what it is
 * @param engine version of the engine that drew the files
 * @param questions what is improbable
 * @param history its states
 * @param files its files
 */
@Schema(name = "OrderDetails", description = "An order with its history and its files; measurements are apart from it.")
record OrderAnswer(
        Entry order,

        @Schema(description = "Version of the engine that drew the files.", example = "0.1.0")
        String engine,

        @ArraySchema(
                arraySchema =
                        @Schema(
                                description = "Measurements that hardly anybody has; the order is held until somebody"
                                        + " confirms it. Empty once they are erased."))
        List<FieldViolation> questions,

        @ArraySchema(arraySchema = @Schema(description = "Every state since it was taken, with who and when."))
        List<Step> history,

        @ArraySchema(
                arraySchema =
                        @Schema(
                                description =
                                        "The files that were drawn when it was taken; empty once they are erased."))
        List<File> files) {

    /** An order in a list. */
    @Schema(name = "OrderEntry", description = "An order as it is listed.")
    record Entry(
            @Schema(description = "Its id.", example = "5b1f0a52-6a0e-4e39-9a55-0f3b1e3a7c11")
            String id,

            @Schema(description = "Id of the style.", example = "choir-gown")
            String style,

            @Schema(description = "Number of the revision that it pins.", example = "3")
            int revision,

            @Schema(description = "The shop's own name for it.", example = "order 1207")
            Optional<String> reference,

            @Schema(description = "The size, unless it was taken by measurements.", example = "40")
            Optional<String> size,

            @Schema(description = "Id of the order that this one makes again.")
            Optional<String> remakeOf,

            @Schema(
                    description = "How far it is.",
                    allowableValues = {"taken", "questioned", "confirmed", "cut", "cancelled"},
                    example = "taken")
            String state,

            @Schema(description = "When it was taken.") Instant takenAt,

            @Schema(description = "When its state last changed.")
            Instant changedAt,

            @Schema(description = "When its measurements and files were erased.")
            Optional<Instant> erasedAt) {

        static Entry of(SleeveOrder order) {
            return new Entry(
                    order.id(),
                    order.style(),
                    order.revision(),
                    order.reference(),
                    order.size(),
                    order.remakeOf(),
                    order.state().word(),
                    order.takenAt(),
                    order.changedAt(),
                    order.erasedAt());
        }
    }

    /** A state. */
    @Schema(name = "OrderStep", description = "A state that an order came to.")
    record Step(
            @Schema(
                    description = "The state.",
                    allowableValues = {"taken", "questioned", "confirmed", "cut", "cancelled"},
                    example = "taken")
            String state,

            @Schema(description = "When.") Instant at,

            @Schema(description = "Name of the key that brought it there.", example = "cutting room")
            String by) {}

    /** A file. */
    @Schema(name = "OrderFile", description = "A file of an order. Its bytes never change.")
    record File(
            @Schema(description = "What GET /v1/orders/{id}/files/{format} takes.", example = "pdf")
            String format,

            @Schema(description = "SHA-256 of its bytes.") String sha256,

            @Schema(description = "Number of its bytes.", example = "48211")
            int bytes) {}

    /** Orders. */
    @Schema(name = "OrderList", description = "Orders, the latest first.")
    record Listing(
            @ArraySchema(arraySchema = @Schema(description = "The orders of this page; may be empty."))
            List<Entry> orders,

            @Schema(description = "Cursor of the next page, where there is one.")
            Optional<String> next) {}
}
