package org.capwright.service.http.problem;

import java.util.Map;

/** Thrown to answer a request with a problem document. */
public final class ProblemException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    private final transient Problem problem;
    private final transient Map<String, String> headers;

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
        super(problem.title(), null, false, false);
        this.problem = problem;
        this.headers = Map.copyOf(headers);
    }

    /**
     * The document.
     *
     * @return without an instance
     */
    public Problem problem() {
        return problem;
    }

    /**
     * Header fields of the answer.
     *
     * @return by name, often none
     */
    public Map<String, String> headers() {
        return headers;
    }
}
