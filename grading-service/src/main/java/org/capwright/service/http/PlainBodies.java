package org.capwright.service.http;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.util.Map;
import org.capwright.service.http.problem.Problem;
import org.capwright.service.http.problem.ProblemException;
import org.capwright.service.http.problem.ProblemKind;
import org.springframework.http.HttpHeaders;
import org.springframework.stereotype.Component;
import org.springframework.web.servlet.HandlerInterceptor;
import org.springframework.web.servlet.config.annotation.InterceptorRegistry;
import org.springframework.web.servlet.config.annotation.WebMvcConfigurer;

/** Refuses compressed bodies: their bounds are known only after they are unpacked (RFC 9110, sections 8.4 and 12.5.3). */
@Component
final class PlainBodies implements HandlerInterceptor, WebMvcConfigurer {

    private static final String PLAIN = "identity";

    @Override
    public void addInterceptors(InterceptorRegistry registry) {
        registry.addInterceptor(this);
    }

    @Override
    public boolean preHandle(HttpServletRequest request, HttpServletResponse response, Object handler) {
        String coding = request.getHeader(HttpHeaders.CONTENT_ENCODING);
        if (coding == null || coding.strip().equalsIgnoreCase(PLAIN)) {
            return true;
        }
        throw new ProblemException(
                Problem.of(
                        ProblemKind.UNSUPPORTED_MEDIA_TYPE,
                        "The body must be sent uncompressed, without Content-Encoding."),
                Map.of(HttpHeaders.ACCEPT_ENCODING, PLAIN));
    }
}
