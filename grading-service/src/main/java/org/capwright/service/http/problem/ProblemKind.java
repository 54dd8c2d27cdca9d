package org.capwright.service.http.problem;

/** The kinds of problem the service answers with. */
public enum ProblemKind {
    /** The body is no JSON document. */
    MALFORMED_BODY("malformed-body", "Malformed body", 400),
    /** The request line, a header or a parameter cannot be read. */
    BAD_REQUEST("bad-request", "Bad request", 400),
    /** There is nothing at the address. */
    NOT_FOUND("not-found", "Not found", 404),
    /** The address does not answer to the method. */
    METHOD_NOT_ALLOWED("method-not-allowed", "Method not allowed", 405),
    /** None of the media types asked for can be made. */
    NOT_ACCEPTABLE("not-acceptable", "Not acceptable", 406),
    /** The body is too large. */
    BODY_TOO_LARGE("body-too-large", "Body too large", 413),
    /** The body is of a media type that is not read. */
    UNSUPPORTED_MEDIA_TYPE("unsupported-media-type", "Unsupported media type", 415),
    /** The body is JSON, but its fields are wrong, or no sleeve can be drafted from them. */
    INVALID_REQUEST("invalid-request", "Invalid request", 422),
    /** The service is at fault. */
    INTERNAL_ERROR("internal-error", "Internal error", 500);

    private final String word;
    private final String title;
    private final int status;

    ProblemKind(String word, String title, int status) {
        this.word = word;
        this.title = title;
        this.status = status;
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
}
