package org.capwright.service.keys;

import io.swagger.v3.oas.annotations.media.ArraySchema;
import io.swagger.v3.oas.annotations.media.Schema;
import java.time.Instant;
import java.util.List;
import org.capwright.service.http.access.Scope;

/**
 * A key as it is listed.
 *
 * @param id the half of it that is no secret
 * @param tenant whose it is
 * @param name who has it
 * @param scopes what it is good for
 * @param madeAt when it was made
 * @param expiresAt when it expires
 * @param origins where it may stand in the open
 */
@Schema(name = "Key", description = "A key as it is listed, without its secret.")
record KeyAnswer(
        @Schema(description = "The half of it that is no secret.", example = "3f9a0c7718b2d4e5")
        String id,

        @Schema(description = "Whose it is.", example = "choir")
        String tenant,

        @Schema(description = "Who has it.", example = "front desk")
        String name,

        @ArraySchema(arraySchema = @Schema(description = "What it is good for.", example = "[\"read\",\"order\"]"))
        List<String> scopes,

        @Schema(description = "When it was made.") Instant madeAt,

        @Schema(description = "When it expires.") Instant expiresAt,

        @ArraySchema(
                arraySchema =
                        @Schema(
                                description = "The origins that a publishable key is bound to; empty for a secret.",
                                example = "[\"https://shop.example\"]"))
        List<String> origins) {

    static KeyAnswer of(StoredKey key) {
        return new KeyAnswer(
                key.id(),
                key.tenant(),
                key.name(),
                key.scopes().stream().sorted().map(Scope::word).toList(),
                key.madeAt(),
                key.expiresAt(),
                key.origins().stream().sorted().toList());
    }

    /** Keys. */
    @Schema(name = "KeyList", description = "The keys of a tenant that have not expired, the oldest first.")
    record Listing(
            @ArraySchema(arraySchema = @Schema(description = "The keys; may be empty."))
            List<KeyAnswer> keys) {}

    /** A new key. */
    @Schema(name = "MadeKey", description = "A new key. Its secret is shown this once and not kept.")
    record Made(
            @Schema(
                    description = "The whole key, for Authorization: Bearer; cwp_ at its beginning says that it is"
                            + " publishable. It is shown this once.")
            String secret,

            KeyAnswer key) {}
}
