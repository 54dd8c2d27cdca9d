package org.capwright.service.http.departures;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.time.Instant;
import java.time.Period;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.stream.Stream;
import org.springframework.core.MethodParameter;
import org.springframework.core.annotation.AnnotatedElementUtils;
import org.springframework.http.HttpHeaders;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.method.HandlerMethod;
import org.springframework.web.util.UriComponentsBuilder;

/**
 * What is said of something that is to go.
 *
 * @param since from when on it should not be used
 * @param ends when it ends
 * @param instead where it is said what takes its place
 */
record Departure(Instant since, Instant ends, String instead) {

    private static final String DEPRECATION = "Deprecation";
    private static final String SUNSET = "Sunset";
    private static final Period NOTICE = Period.ofYears(1);

    Departure {
        if (ends.isBefore(since.atOffset(ZoneOffset.UTC).plus(NOTICE).toInstant())) {
            throw new IllegalArgumentException(
                    "what departs is announced a year before it ends, not " + since + " for " + ends);
        }
    }

    static Departure of(Departs departs) {
        return new Departure(Instant.parse(departs.since()), Instant.parse(departs.ends()), departs.instead());
    }

    /** That of a whole call. */
    static Optional<Departure> ofCall(HandlerMethod handler) {
        return Optional.ofNullable(AnnotatedElementUtils.findMergedAnnotation(handler.getMethod(), Departs.class))
                .map(Departure::of);
    }

    /**
     * A parameter that is to go.
     *
     * @param name its name
     * @param header whether it is a header
     * @param departure what is said of it
     */
    record OfParameter(String name, boolean header, Departure departure) {

        boolean isUsed(HttpServletRequest request) {
            return header
                    ? request.getHeader(name) != null
                    : UriComponentsBuilder.newInstance()
                            .query(request.getQueryString())
                            .build()
                            .getQueryParams()
                            .containsKey(name);
        }
    }

    static Stream<OfParameter> ofParameters(HandlerMethod handler) {
        return Stream.of(handler.getMethodParameters()).flatMap(parameter -> ofParameter(parameter).stream());
    }

    private static Optional<OfParameter> ofParameter(MethodParameter parameter) {
        Departs departs = parameter.getParameterAnnotation(Departs.class);
        if (departs == null) {
            return Optional.empty();
        }
        RequestHeader header = parameter.getParameterAnnotation(RequestHeader.class);
        if (header != null) {
            return Optional.of(new OfParameter(header.name(), true, of(departs)));
        }
        RequestParam query = parameter.getParameterAnnotation(RequestParam.class);
        if (query != null) {
            return Optional.of(new OfParameter(query.name(), false, of(departs)));
        }
        throw new IllegalStateException("only a query parameter or a header can depart by itself: " + parameter);
    }

    /** RFC 9745, section 2.1: a date is the seconds since 1970 behind an at sign (RFC 9651, section 3.3.7). RFC 8594, section 3: an HTTP date. */
    void tell(HttpServletResponse response) {
        response.addHeader(DEPRECATION, "@" + since.getEpochSecond());
        HttpHeaders date = new HttpHeaders();
        date.setInstant(SUNSET, ends);
        response.addHeader(SUNSET, String.valueOf(date.getFirst(SUNSET)));
        response.addHeader(HttpHeaders.LINK, "<" + instead + ">; rel=\"deprecation\"; type=\"text/html\"");
    }
}
