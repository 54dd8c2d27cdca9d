package org.capwright.service.http.description;

import io.swagger.v3.oas.models.Operation;
import io.swagger.v3.oas.models.media.Content;
import io.swagger.v3.oas.models.media.MediaType;
import io.swagger.v3.oas.models.media.Schema;
import io.swagger.v3.oas.models.media.StringSchema;
import io.swagger.v3.oas.models.responses.ApiResponse;
import io.swagger.v3.oas.models.responses.ApiResponses;

/** Describes answers. */
public final class Answers {

    private Answers() {}

    /**
     * An answer in JSON.
     *
     * @param meaning what it is, in words
     * @param schema what it holds
     * @return its description
     */
    public static ApiResponse json(String meaning, Schema<?> schema) {
        return json(meaning, new MediaType().schema(schema));
    }

    /**
     * An answer in JSON with an example.
     *
     * @param meaning what it is, in words
     * @param schema what it holds
     * @param example an answer as it was given
     * @return its description
     */
    public static ApiResponse json(String meaning, Schema<?> schema, Object example) {
        return json(meaning, new MediaType().schema(schema).example(example));
    }

    private static ApiResponse json(String meaning, MediaType content) {
        return new ApiResponse().description(meaning).content(new Content().addMediaType("application/json", content));
    }

    /**
     * A stream of server-sent events.
     *
     * @param meaning what the events tell, in words
     * @return its description
     */
    public static ApiResponse events(String meaning) {
        return new ApiResponse()
                .description("A stream of events.")
                .content(new Content()
                        .addMediaType(
                                "text/event-stream", new MediaType().schema(new StringSchema().description(meaning))));
    }

    /**
     * Says what a call answers when all is well, in place of what its method shows.
     *
     * @param operation the call
     * @param status HTTP status code
     * @param answer what it answers
     */
    public static void only(Operation operation, String status, ApiResponse answer) {
        operation.setResponses(new ApiResponses().addApiResponse(status, answer));
    }
}
