package org.capwright.service.page;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import org.springframework.stereotype.Component;
import org.springframework.web.filter.OncePerRequestFilter;

/**
 * Tells the browser what an answer may do (Content Security Policy Level 3, W3C): nothing but what this server itself holds, no script or style written into
 * a document. The page of the API description brings its styles along in its script, so that those alone are let through there.
 */
@Component
final class BrowserRules extends OncePerRequestFilter {

    static final String PAGE = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' blob:;"
            + " connect-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

    static final String DESCRIPTION = "default-src 'none'; script-src 'self'; style-src 'self' 'unsafe-inline';"
            + " img-src 'self' data:; connect-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        boolean description = request.getRequestURI().startsWith(request.getContextPath() + "/swagger-ui");
        response.setHeader("Content-Security-Policy", description ? DESCRIPTION : PAGE);
        response.setHeader("X-Content-Type-Options", "nosniff");
        response.setHeader("Referrer-Policy", "no-referrer");
        response.setHeader("Cross-Origin-Opener-Policy", "same-origin");
        chain.doFilter(request, response);
    }
}
