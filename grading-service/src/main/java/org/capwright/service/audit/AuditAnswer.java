package org.capwright.service.audit;

import io.swagger.v3.oas.annotations.media.ArraySchema;
import io.swagger.v3.oas.annotations.media.Schema;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.capwright.service.store.AuditTrail;

/**
 * Entries of the audit trail.
 *
 * @param entries the entries
 * @param next cursor of the next page
 */
@Schema(
        name = "AuditTrail",
        description = "What was done with styles, orders and keys, the latest first. No measurement is in it.")
record AuditAnswer(
        @ArraySchema(arraySchema = @Schema(description = "The entries of this page; may be empty."))
        List<Entry> entries,

        @Schema(description = "Cursor of the next page, where there is one.")
        Optional<String> next) {

    /** An entry. */
    @Schema(name = "AuditEntry", description = "One thing that was done.")
    record Entry(
            @Schema(description = "When.") Instant at,

            @Schema(description = "Name of the key that did it.", example = "front desk")
            String who,

            @Schema(description = "What was done.", example = "order.taken")
            String what,

            @Schema(description = "To which style, order or key.", example = "5b1f0a52-6a0e-4e39-9a55-0f3b1e3a7c11")
            String subject) {

        static Entry of(AuditTrail.Entry entry) {
            return new Entry(entry.at(), entry.who(), entry.what(), entry.subject());
        }
    }
}
