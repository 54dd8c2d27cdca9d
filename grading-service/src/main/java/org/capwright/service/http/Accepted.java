package org.capwright.service.http;

import jakarta.servlet.http.HttpServletRequest;
import java.util.Collection;
import java.util.Collections;
import java.util.Enumeration;
import java.util.Objects;
import java.util.Optional;
import org.capwright.service.http.problem.Problem;
import org.capwright.service.http.problem.ProblemException;
import org.capwright.service.http.problem.ProblemKind;
import org.capwright.words.Text;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.web.servlet.mvc.condition.ProducesRequestCondition;

/** Picks the media type of an answer by the Accept header, as Spring picks among methods by what they produce. */
public final class Accepted {

    private Accepted() {}

    /**
     * The content type that the caller likes best; of equal ones that which is offered first.
     *
     * @param request a request with or without an Accept header
     * @param offered content types that can be made, the usual one first
     * @return one of them
     * @throws ProblemException if none of them is accepted
     */
    public static MediaType best(HttpServletRequest request, Collection<MediaType> offered) {
        Optional<MediaType> named = named(request, offered);
        if (named.isPresent()) {
            return named.get();
        }
        return offered.stream()
                .map(type -> new ProducesRequestCondition(type.toString()).getMatchingCondition(request))
                .filter(Objects::nonNull)
                .filter(matching -> !refused(
                        request, matching.getProducibleMediaTypes().iterator().next()))
                .min((one, other) -> one.compareTo(other, request))
                .map(matching -> matching.getProducibleMediaTypes().iterator().next())
                .orElseThrow(() -> new ProblemException(Problem.of(
                        ProblemKind.NOT_ACCEPTABLE,
                        Text.of("None of the media types asked for by Accept can be made; there are {types}.")
                                .with(
                                        "types",
                                        Text.names(offered.stream()
                                                .map(type -> type.getType() + "/" + type.getSubtype())
                                                .toList())))));
    }

    /** What a program asks for that names one type and nothing else. */
    private static Optional<MediaType> named(HttpServletRequest request, Collection<MediaType> offered) {
        Enumeration<String> asked = request.getHeaders(HttpHeaders.ACCEPT);
        String only = asked.hasMoreElements() ? asked.nextElement() : "";
        if (asked.hasMoreElements()) {
            return Optional.empty();
        }
        return offered.stream()
                .filter(type -> only.equalsIgnoreCase(type.getType() + "/" + type.getSubtype()))
                .findFirst();
    }

    /** A quality of 0 says "not acceptable" (RFC 9110, section 12.4.2), which Spring takes for "last". */
    private static boolean refused(HttpServletRequest request, MediaType type) {
        return MediaType.parseMediaTypes(Collections.list(request.getHeaders(HttpHeaders.ACCEPT))).stream()
                .anyMatch(range -> range.getQualityValue() == 0 && range.equalsTypeAndSubtype(type));
    }
}
