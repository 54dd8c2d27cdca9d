package org.capwright.service.http.problem;

import java.util.stream.Stream;

/** The kinds of problem the service answers with. */
public enum ProblemKind {
    /** The body is not a JSON document. */
    MALFORMED_BODY("malformed-body", "Malformed body", 400, "The body cannot be read."),
    /** The request line, a header or a parameter cannot be read. */
    BAD_REQUEST("bad-request", "Bad request", 400, "The request cannot be read."),
    /** The call needs a key. */
    UNAUTHORIZED(
            "unauthorized",
            "Unauthorized",
            401,
            "This call needs a key that is known and has not expired, as Authorization: Bearer."),
    /** The key is not good for the call. */
    FORBIDDEN("forbidden", "Forbidden", 403, "The key is not good for this call."),
    /** There is nothing at the address. */
    NOT_FOUND(
            "not-found",
            "Not found",
            404,
            "There is nothing at this address. /v3/api-docs and /swagger-ui.html describe what there is."),
    /** The address does not answer to the method. */
    METHOD_NOT_ALLOWED("method-not-allowed", "Method not allowed", 405, "This address does not answer to this method."),
    /** None of the media types asked for can be made. */
    NOT_ACCEPTABLE(
            "not-acceptable", "Not acceptable", 406, "None of the media types asked for by Accept can be made here."),
    /** The request conflicts with what is stored. */
    CONFLICT("conflict", "Conflict", 409, "The request conflicts with what is stored."),
    /** Somebody else changed it meanwhile. */
    PRECONDITION_FAILED(
            "precondition-failed",
            "Precondition failed",
            412,
            "What is stored does not meet the condition of the request."),
    /** The body is too large. */
    BODY_TOO_LARGE("body-too-large", "Body too large", 413, "The body is too large."),
    /** The body is of a media type that is not read. */
    UNSUPPORTED_MEDIA_TYPE(
            "unsupported-media-type",
            "Unsupported media type",
            415,
            "The body must be sent as Content-Type: application/json."),
    /** The body is JSON, but its fields are wrong, or no sleeve can be drafted from them. */
    INVALID_REQUEST("invalid-request", "Invalid request", 422, "A field of the request is wrong."),
    /** The change must say what it changes. */
    PRECONDITION_REQUIRED(
            "precondition-required",
            "Precondition required",
            428,
            "A change must name the version it was made from, as If-Match."),
    /** The key has made all the calls that it may make for now. */
    TOO_MANY_REQUESTS(
            "too-many-requests",
            "Too many requests",
            429,
            "The key has made all the calls that it may make for now; Retry-After says when to try again."),
    /** The service is at fault. */
    INTERNAL_ERROR(
            "internal-error",
            "Internal error",
            500,
            "The service failed. The request may well be right; please report it."),
    /** The service cannot do it now. */
    UNAVAILABLE("unavailable", "Unavailable", 503, "The service cannot do this now.");

    private final String word;
    private final String title;
    private final int status;
    private final String usually;

    ProblemKind(String word, String title, int status, String usually) {
        this.word = word;
        this.title = title;
        this.status = status;
        this.usually = usually;
    }

    /**
     * The last part of the type URI.
     *
     * @return for example {@code not-found}
     */
    public String word() {
        return word;
    }

    /**
     * The kind in words.
     *
     * @return for example {@code Not found}
     */
    public String title() {
        return title;
    }

    /**
     * The HTTP status code.
     *
     * @return 400 or more
     */
    public int status() {
        return status;
    }

    /**
     * What a status says where nothing else is known.
     *
     * @param status HTTP status code, 400 or more
     * @return the kind of this status, else whether the caller or the service is at fault
     */
    public static ProblemKind of(int status) {
        return Stream.of(values())
                .filter(kind -> kind.status == status && kind != MALFORMED_BODY)
                .findFirst()
                .orElse(status < 500 ? BAD_REQUEST : INTERNAL_ERROR);
    }

    /**
     * The problem where no more is known than its kind.
     *
     * @return the document, without an instance
     */
    public Problem usual() {
        return Problem.of(this, usually);
    }
}
