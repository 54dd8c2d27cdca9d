package org.capwright.service.http.problem;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.Map;
import org.springframework.stereotype.Component;
import tools.jackson.databind.json.JsonMapper;

/** Writes problem documents, whatever media type the request would have liked: an error has no other form here. */
@Component
final class ProblemWriter {

    static final String MEDIA_TYPE = "application/problem+json";

    private final JsonMapper mapper;

    ProblemWriter(JsonMapper mapper) {
        this.mapper = mapper;
    }

    void write(HttpServletRequest request, HttpServletResponse response, Problem problem, Map<String, String> headers)
            throws IOException {
        if (response.isCommitted()) {
            return;
        }
        response.reset();
        response.setStatus(problem.status());
        headers.forEach(response::setHeader);
        response.setHeader("Cache-Control", "no-store");
        response.setContentType(MEDIA_TYPE);
        Object forwarded = request.getAttribute("jakarta.servlet.error.request_uri");
        byte[] body =
                mapper.writeValueAsBytes(problem.on(forwarded instanceof String path ? path : request.getRequestURI()));
        response.setContentLength(body.length);
        response.getOutputStream().write(body);
    }
}
