package org.capwright.service.http.access;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletRequestWrapper;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.net.URI;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.capwright.service.http.problem.ProblemException;
import org.capwright.service.http.settings.WrongSettingException;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.http.HttpHeaders;
import org.springframework.stereotype.Component;
import org.springframework.web.cors.CorsUtils;
import org.springframework.web.filter.OncePerRequestFilter;

/**
 * Lets pages of other origins call (Fetch Standard, section 3.2): those of the setting, and those that a publishable key is bound to. No cookie is ever sent, so a page can do no more than the key that it has.
 * A preflight is answered as any {@code OPTIONS} is, with the methods that there are.
 */
@Component
@Order(Ordered.LOWEST_PRECEDENCE - 20)
public final class Origins extends OncePerRequestFilter {

    private static final String CALLS = "/v1/";
    private static final String SENT =
            "Accept, Authorization, Content-Type, Idempotency-Key, If-Match, If-None-Match, Last-Event-ID, Prefer";
    private static final String READ = "Capwright-Findings, Content-Disposition, ETag, Location, Preference-Applied,"
            + " RateLimit, RateLimit-Policy, Repr-Digest, Retry-After";

    /** For how long a browser need not ask again, s. */
    private static final String REMEMBERED = "7200";

    private final Set<String> welcome;
    private final Doorkeeper doorkeeper;

    Origins(@Value("${capwright.origins}") String setting, Doorkeeper doorkeeper) {
        this.welcome = Stream.of(setting.split(","))
                .map(String::strip)
                .filter(origin -> !origin.isEmpty())
                .map(origin -> normal(origin)
                        .orElseThrow(() -> new WrongSettingException(
                                "capwright.origins must be a list of origins such as https://shop.example, with"
                                        + " commas between them; it has " + origin)))
                .collect(Collectors.toUnmodifiableSet());
        this.doorkeeper = doorkeeper;
    }

    /**
     * An origin as browsers send it (RFC 6454, section 6.2).
     *
     * @param text such as {@code https://Shop.example:443}
     * @return such as {@code https://shop.example}; nothing if it is no origin of a web page
     */
    public static Optional<String> normal(String text) {
        try {
            URI uri = new URI(text.strip().toLowerCase(Locale.ROOT));
            boolean plain = "http".equals(uri.getScheme());
            boolean origin = (plain || "https".equals(uri.getScheme()))
                    && uri.getHost() != null
                    && uri.getUserInfo() == null
                    && uri.getRawPath().isEmpty()
                    && uri.getRawQuery() == null
                    && uri.getRawFragment() == null;
            boolean usual = uri.getPort() == -1 || uri.getPort() == (plain ? 80 : 443);
            return origin
                    ? Optional.of(uri.getScheme() + "://" + uri.getHost() + (usual ? "" : ":" + uri.getPort()))
                    : Optional.empty();
        } catch (java.net.URISyntaxException e) {
            return Optional.empty();
        }
    }

    /** The origin of a request; empty where there is none. */
    static String of(HttpServletRequest request) {
        return Optional.ofNullable(request.getHeader(HttpHeaders.ORIGIN)).orElse("");
    }

    @Override
    protected boolean shouldNotFilter(HttpServletRequest request) {
        return !request.getRequestURI().startsWith(request.getContextPath() + CALLS);
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        response.addHeader(HttpHeaders.VARY, HttpHeaders.ORIGIN);
        String origin = of(request);
        boolean asked = CorsUtils.isPreFlightRequest(request);
        boolean let = !origin.isEmpty() && (welcome.contains(origin) || known(origin));
        if (let) {
            response.setHeader(HttpHeaders.ACCESS_CONTROL_ALLOW_ORIGIN, origin);
            response.setHeader(
                    asked ? HttpHeaders.ACCESS_CONTROL_ALLOW_HEADERS : HttpHeaders.ACCESS_CONTROL_EXPOSE_HEADERS,
                    asked ? SENT : READ);
        }
        chain.doFilter(asked ? plain(request) : request, response);
        String methods = response.getHeader(HttpHeaders.ALLOW);
        if (let && asked && methods != null) {
            response.setHeader(HttpHeaders.ACCESS_CONTROL_ALLOW_METHODS, methods);
            response.setHeader(HttpHeaders.ACCESS_CONTROL_MAX_AGE, REMEMBERED);
        }
    }

    private boolean known(String origin) {
        try {
            return doorkeeper.knows(origin);
        } catch (ProblemException e) {
            // Without a store no key is known either.
            return false;
        }
    }

    private static HttpServletRequest plain(HttpServletRequest request) {
        return new HttpServletRequestWrapper(request) {
            @Override
            public @Nullable String getHeader(String name) {
                return name.equalsIgnoreCase(HttpHeaders.ACCESS_CONTROL_REQUEST_METHOD) ? null : super.getHeader(name);
            }
        };
    }
}
