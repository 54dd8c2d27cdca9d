package org.capwright.service.http.description;

import io.swagger.v3.oas.models.Operation;
import io.swagger.v3.oas.models.media.Content;
import io.swagger.v3.oas.models.media.MediaType;
import io.swagger.v3.oas.models.responses.ApiResponse;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.capwright.json.problem.FieldViolation;
import org.capwright.json.problem.RefusedRequestException;
import org.capwright.service.http.problem.Problem;
import org.capwright.service.http.problem.ProblemKind;
import org.capwright.words.Text;

/** Answers that are problem documents. */
public final class ErrorAnswers {

    private static final String PROBLEM_JSON = "application/problem+json";

    private ErrorAnswers() {}

    /**
     * Every error of a call that reads a body.
     *
     * @param operation gets the answers
     */
    public static void ofBody(Operation operation) {
        of(
                operation,
                ProblemKind.MALFORMED_BODY,
                ProblemKind.NOT_ACCEPTABLE,
                ProblemKind.BODY_TOO_LARGE,
                ProblemKind.UNSUPPORTED_MEDIA_TYPE,
                ProblemKind.INVALID_REQUEST,
                ProblemKind.UNAVAILABLE);
    }

    /**
     * Some errors, and the one that is always possible.
     *
     * @param operation gets the answers
     * @param kinds which
     */
    public static void of(Operation operation, ProblemKind... kinds) {
        for (ProblemKind kind : kinds) {
            operation.getResponses().addApiResponse(Integer.toString(kind.status()), one(kind));
        }
        operation.getResponses().addApiResponse("500", one(ProblemKind.INTERNAL_ERROR));
    }

    /**
     * One error.
     *
     * @param kind which
     * @return its answer, with the usual description
     */
    public static ApiResponse one(ProblemKind kind) {
        String meaning = switch (kind) {
            case MALFORMED_BODY -> "The body is not a JSON document; line and column say where.";
            case BAD_REQUEST -> "A parameter is wrong.";
            case UNAUTHORIZED -> "Keys are on, and the call has none that is known and has not expired.";
            case FORBIDDEN -> "The key is not good for this call.";
            case CONFLICT -> "What is asked for does not go with what is kept; detail says why.";
            case PRECONDITION_FAILED -> "Somebody else changed it meanwhile, or it is there already.";
            case PRECONDITION_REQUIRED -> "It is there already: If-Match must say which revision is changed.";
            case UNAVAILABLE ->
                "The service has more to do than it can take on now, and Retry-After says when to try again; or it has"
                        + " no store, or cannot reach it.";
            case NOT_FOUND -> "There is nothing of this name.";
            case METHOD_NOT_ALLOWED -> "The address does not answer to this method.";
            case NOT_ACCEPTABLE -> "None of the media types asked for can be made.";
            case BODY_TOO_LARGE -> "The body is larger than 256 kB.";
            case UNSUPPORTED_MEDIA_TYPE -> "The body is not sent as application/json in UTF-8.";
            case INVALID_REQUEST ->
                "Fields are wrong, or no sleeve can be drafted from them; violations names every one with what would"
                        + " work.";
            case TOO_MANY_REQUESTS ->
                "The key has made all the calls that it may make for now; Retry-After says when to try again.";
            case INTERNAL_ERROR -> "The service is at fault.";
        };
        return new ApiResponse()
                .description(meaning)
                .content(new Content()
                        .addMediaType(
                                PROBLEM_JSON,
                                new MediaType()
                                        .schema(OpenApiSchemas.reference(AnswerSchemas.name(Problem.class)))
                                        .example(example(kind))));
    }

    /** As the service answers a bicep of 3 cm in the choir gown; and any other problem where no field is to blame. */
    private static Map<String, Object> example(ProblemKind kind) {
        FieldViolation narrow = FieldViolation.of(
                "/sleeve/bicep", Text.name("out of range: 3 cm; 17.724 to 58.026 cm would work"), Optional.of(3));
        boolean fields = kind == ProblemKind.INVALID_REQUEST;
        Problem problem = fields ? Problem.of(new RefusedRequestException(List.of(narrow))) : kind.usual();
        Map<String, Object> example = new LinkedHashMap<>();
        example.put("type", problem.type());
        example.put("title", problem.title());
        example.put("status", problem.status());
        example.put("detail", problem.detail().toString());
        example.put("instance", "/v1/size-runs");
        example.put(
                "violations",
                problem.violations().stream()
                        .map(violation -> Map.of(
                                "field",
                                violation.field(),
                                "reason",
                                violation.reason().toString(),
                                "value",
                                3,
                                "unit",
                                "cm",
                                "minimum",
                                6,
                                "maximum",
                                150))
                        .toList());
        return example;
    }
}
