package org.capwright.service.http.departures;

import io.swagger.v3.oas.models.Operation;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.lang.reflect.Method;
import java.time.ZoneOffset;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springdoc.core.customizers.OperationCustomizer;
import org.springframework.stereotype.Component;
import org.springframework.web.method.HandlerMethod;
import org.springframework.web.servlet.HandlerInterceptor;
import org.springframework.web.servlet.config.annotation.InterceptorRegistry;
import org.springframework.web.servlet.config.annotation.WebMvcConfigurer;

/** Tells of what is to go: by headers whoever uses it, refused or not, and everybody in the description. */
@Component
final class Departures implements HandlerInterceptor, WebMvcConfigurer, OperationCustomizer {

    /** Looked for once: one entry for each call that there is. */
    private final Map<Method, Departing> known = new ConcurrentHashMap<>();

    @Override
    public void addInterceptors(InterceptorRegistry registry) {
        registry.addInterceptor(this);
    }

    @Override
    public boolean preHandle(HttpServletRequest request, HttpServletResponse response, Object handler) {
        if (handler instanceof HandlerMethod method) {
            soonest(request, method).ifPresent(departure -> departure.tell(response));
        }
        return true;
    }

    /** Of several, the one that ends first: each of the fields is one value. */
    private Optional<Departure> soonest(HttpServletRequest request, HandlerMethod method) {
        Departing departing = known.computeIfAbsent(method.getMethod(), ignored -> Departing.of(method));
        return departing.isNothing()
                ? Optional.empty()
                : Stream.concat(
                                departing.call().stream(),
                                departing.parameters().stream()
                                        .filter(parameter -> parameter.isUsed(request))
                                        .map(Departure.OfParameter::departure))
                        .min(Comparator.comparing(Departure::ends));
    }

    /** What of a call is to go. */
    private record Departing(Optional<Departure> call, List<Departure.OfParameter> parameters) {

        static Departing of(HandlerMethod method) {
            return new Departing(
                    Departure.ofCall(method), Departure.ofParameters(method).toList());
        }

        boolean isNothing() {
            return call.isEmpty() && parameters.isEmpty();
        }
    }

    @Override
    public Operation customize(Operation operation, HandlerMethod handler) {
        Departure.ofCall(handler).ifPresent(departure -> {
            operation.setDeprecated(true);
            operation.setDescription(with(operation.getDescription(), departure));
        });
        Departure.ofParameters(handler)
                .forEach(departing -> operation.getParameters().stream()
                        .filter(parameter -> parameter.getName().equals(departing.name()))
                        .forEach(parameter -> {
                            parameter.setDeprecated(true);
                            parameter.setDescription(with(parameter.getDescription(), departing.departure()));
                        }));
        return operation;
    }

    private static String with(@Nullable String description, Departure departure) {
        return (description == null ? "" : description + " ") + "Deprecated; it ends on "
                + departure.ends().atOffset(ZoneOffset.UTC).toLocalDate() + ". Instead: " + departure.instead();
    }
}
