package org.capwright.service.http.access;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.util.Map;
import java.util.Optional;
import org.capwright.service.http.problem.Problem;
import org.capwright.service.http.problem.ProblemException;
import org.capwright.service.http.problem.ProblemKind;
import org.capwright.words.Text;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpMethod;
import org.springframework.stereotype.Component;
import org.springframework.web.method.HandlerMethod;
import org.springframework.web.servlet.HandlerInterceptor;
import org.springframework.web.servlet.config.annotation.InterceptorRegistry;
import org.springframework.web.servlet.config.annotation.WebMvcConfigurer;

/** Lets callers in by their keys (RFC 6750) where keys are on, and remembers who they are. */
@Component
final class Gate implements HandlerInterceptor, WebMvcConfigurer {

    private static final String SCHEME = "Bearer ";

    private final Doorkeeper doorkeeper;

    private final Allowance allowance;

    Gate(Doorkeeper doorkeeper, Allowance allowance) {
        this.doorkeeper = doorkeeper;
        this.allowance = allowance;
    }

    @Override
    public void addInterceptors(InterceptorRegistry registry) {
        registry.addInterceptor(this).addPathPatterns("/v1/**");
    }

    @Override
    public boolean preHandle(HttpServletRequest request, HttpServletResponse response, Object handler) {
        if (!doorkeeper.closed()) {
            allowance.count(Caller.LOCAL.tenant(), response);
            Caller.LOCAL.remember(request);
            return true;
        }
        if (HttpMethod.OPTIONS.matches(request.getMethod())) {
            return true;
        }
        Caller caller = key(request).flatMap(doorkeeper::caller).orElseThrow(() -> unknown(request));
        allowance.count(
                key(request).orElse("") + (caller.isPublishable() ? " " + request.getRemoteAddr() : ""), response);
        if (caller.isPublishable() && !caller.origins().contains(Origins.of(request))) {
            throw foreign();
        }
        if (handler instanceof HandlerMethod method && !caller.may(Access.of(method))) {
            throw forbidden(Access.of(method), caller);
        }
        caller.remember(request);
        return true;
    }

    private static Optional<String> key(HttpServletRequest request) {
        return Optional.ofNullable(request.getHeader(HttpHeaders.AUTHORIZATION))
                .filter(value -> value.regionMatches(true, 0, SCHEME, 0, SCHEME.length()))
                .map(value -> value.substring(SCHEME.length()).strip());
    }

    private static ProblemException unknown(HttpServletRequest request) {
        String error = key(request).isPresent() ? ", error=\"invalid_token\"" : "";
        return new ProblemException(
                Problem.of(
                        ProblemKind.UNAUTHORIZED,
                        key(request).isPresent()
                                ? "The key is not known, was ended, or has expired."
                                : "This call needs a key: Authorization: Bearer and the key."),
                Map.of(HttpHeaders.WWW_AUTHENTICATE, "Bearer realm=\"capwright\"" + error));
    }

    private static ProblemException foreign() {
        return new ProblemException(Problem.of(
                ProblemKind.FORBIDDEN,
                "The key is good for the pages of its own origins alone; Origin must name one of them."));
    }

    private static ProblemException forbidden(Access needed, Caller caller) {
        if (caller.isPublishable() && !needed.publishable()) {
            return new ProblemException(
                    Problem.of(ProblemKind.FORBIDDEN, "The key is publishable, and good for taking orders alone."));
        }
        Scope scope = needed.scope();
        return new ProblemException(
                Problem.of(
                        ProblemKind.FORBIDDEN,
                        Text.of("The key is not good for this call, which needs one with the scope {scope}.")
                                .with("scope", scope.word())),
                Map.of(
                        HttpHeaders.WWW_AUTHENTICATE,
                        "Bearer realm=\"capwright\", error=\"insufficient_scope\", scope=\"" + scope.word() + "\""));
    }
}
