package org.capwright.service.http.problem;

import java.util.Map;
import org.springframework.http.HttpStatusCode;
import org.springframework.web.ErrorResponseException;

/** Thrown to answer a request with a problem document. */
public final class ProblemException extends ErrorResponseException {

    private static final long serialVersionUID = 1L;

    private final transient Problem problem;

    /**
     * An exception for a problem.
     *
     * @param problem the document
     */
    public ProblemException(Problem problem) {
        this(problem, Map.of());
    }

    /**
     * An exception for a problem whose answer needs headers of its own.
     *
     * @param problem the document
     * @param headers header fields by name
     */
    public ProblemException(Problem problem, Map<String, String> headers) {
        super(HttpStatusCode.valueOf(problem.status()), problem.document(), null);
        this.problem = problem;
        headers.forEach(getHeaders()::set);
    }

    /**
     * The document.
     *
     * @return without an instance
     */
    public Problem problem() {
        return problem;
    }

    /** The kind alone: the values in the document may be the measurements of a person and must not reach a log. */
    @Override
    public String getMessage() {
        return problem.title();
    }

    /** A mistake of a caller is nothing to be traced. */
    @Override
    public Throwable fillInStackTrace() {
        return this;
    }
}
