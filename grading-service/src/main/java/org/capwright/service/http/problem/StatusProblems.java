package org.capwright.service.http.problem;

import java.util.Map;

/** Problems of which no more is known than the HTTP status. */
final class StatusProblems {

    private StatusProblems() {}

    static Problem of(int status, String method, Map<String, String> headers) {
        return switch (status) {
            case 404 ->
                Problem.of(
                        ProblemKind.NOT_FOUND,
                        "There is nothing at this address. /v3/api-docs and /swagger-ui.html describe what there is.");
            case 405 ->
                Problem.of(
                        ProblemKind.METHOD_NOT_ALLOWED,
                        "This address does not answer to " + method + ", only to "
                                + headers.getOrDefault("Allow", "other methods") + ".");
            case 406 ->
                Problem.of(ProblemKind.NOT_ACCEPTABLE, "None of the media types asked for by Accept can be made here.");
            case 413 -> Problem.of(ProblemKind.BODY_TOO_LARGE, "The body is too large.");
            case 415 ->
                Problem.of(
                        ProblemKind.UNSUPPORTED_MEDIA_TYPE, "The body must be sent as Content-Type: application/json.");
            case 500 ->
                Problem.of(
                        ProblemKind.INTERNAL_ERROR,
                        "The service failed. Nothing in the request need be wrong; report it.");
            default ->
                status >= 400 && status < 500
                        ? Problem.of(ProblemKind.BAD_REQUEST, "The request cannot be read.")
                        : Problem.of(ProblemKind.INTERNAL_ERROR, "The service failed.");
        };
    }
}
