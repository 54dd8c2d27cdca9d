package org.capwright.service.http;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.Collections;
import org.capwright.words.Language;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.http.HttpHeaders;
import org.springframework.stereotype.Component;
import org.springframework.web.filter.OncePerRequestFilter;

/** The language of a caller, from {@code Accept-Language}; answers of the API say which one they are in (RFC 9110, sections 8.5 and 12.5.4). */
@Component
@Order(Ordered.HIGHEST_PRECEDENCE + 10)
public final class Languages extends OncePerRequestFilter {

    /** A filter that says it of every answer. */
    public Languages() {}

    /**
     * The language that a caller likes best of those there are.
     *
     * @param request what was asked
     * @return English where none of the wanted ones is there
     */
    public static Language of(HttpServletRequest request) {
        return Language.accepted(String.join(",", Collections.list(request.getHeaders(HttpHeaders.ACCEPT_LANGUAGE))));
    }

    @Override
    protected boolean shouldNotFilter(HttpServletRequest request) {
        return !request.getRequestURI().startsWith(request.getContextPath() + "/v1/");
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        response.setHeader(HttpHeaders.CONTENT_LANGUAGE, of(request).tag());
        response.addHeader(HttpHeaders.VARY, HttpHeaders.ACCEPT_LANGUAGE);
        chain.doFilter(request, response);
    }
}
