package org.capwright.service.orders;

import io.swagger.v3.oas.annotations.media.ArraySchema;
import io.swagger.v3.oas.annotations.media.Schema;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * A batch that runs as a job.
 *
 * @param id its id
 * @param state how far it is
 * @param lines its orders
 * @param answered how many are answered
 * @param refused how many were refused
 * @param madeAt when it was sent
 * @param madeBy who sent it
 * @param endedAt when it ended
 */
@Schema(name = "BatchJob", description = "A batch of orders that is taken while nobody waits for it.")
record BatchJobAnswer(
        @Schema(description = "Its id.", example = "9a3c6f70-41f5-4f4e-8d57-6f2b4f1f6a0e")
        String id,

        @Schema(
                description = "How far it is. What was taken before it was cancelled stays.",
                allowableValues = {"running", "done", "cancelled"},
                example = "running")
        String state,

        @Schema(description = "How many orders it has.", example = "1200")
        int lines,

        @Schema(description = "How many of them are answered.", example = "480")
        int answered,

        @Schema(description = "How many of those were answered with a problem.", example = "3")
        int refused,

        @Schema(description = "When it was sent.") Instant madeAt,

        @Schema(description = "Name of the key that sent it.", example = "front desk")
        String madeBy,

        @Schema(description = "When it was done or cancelled.")
        Optional<Instant> endedAt) {

    static BatchJobAnswer of(BatchJob job) {
        return new BatchJobAnswer(
                job.id(),
                job.state().word(),
                job.lines(),
                job.answered(),
                job.refused(),
                job.madeAt(),
                job.madeBy(),
                job.endedAt());
    }

    /** Jobs. */
    @Schema(name = "BatchJobList", description = "Batches that run as jobs, the latest first.")
    record Listing(
            @ArraySchema(arraySchema = @Schema(description = "The jobs of this page; may be empty."))
            List<BatchJobAnswer> jobs,

            @Schema(description = "Cursor of the next page, where there is one.")
            Optional<String> next) {}
}
