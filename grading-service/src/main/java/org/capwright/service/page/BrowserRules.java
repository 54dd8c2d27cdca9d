package org.capwright.service.page;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletRequestWrapper;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpHeaders;
import org.springframework.stereotype.Component;
import org.springframework.web.cors.CorsUtils;
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
        chain.doFilter(CorsUtils.isPreFlightRequest(request) ? plain(request) : request, response);
    }

    /** No other origin is let in, so that a preflight is answered as any OPTIONS is: with the methods that there are. */
    private static HttpServletRequest plain(HttpServletRequest request) {
        return new HttpServletRequestWrapper(request) {
            @Override
            public @Nullable String getHeader(String name) {
                return name.equalsIgnoreCase(HttpHeaders.ACCESS_CONTROL_REQUEST_METHOD) ? null : super.getHeader(name);
            }
        };
    }
}
