package org.capwright.service.http.access;

import io.github.bucket4j.Bucket;
import io.github.bucket4j.ConsumptionProbe;
import jakarta.servlet.http.HttpServletResponse;
import java.time.Duration;
import java.time.format.DateTimeParseException;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.capwright.service.http.problem.Problem;
import org.capwright.service.http.problem.ProblemException;
import org.capwright.service.http.problem.ProblemKind;
import org.capwright.service.http.settings.WrongSettingException;
import org.capwright.words.Text;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.http.HttpHeaders;
import org.springframework.stereotype.Component;

/**
 * How many calls a caller may make. The headers are those of the IETF's draft "RateLimit header fields for HTTP" (draft-ietf-httpapi-ratelimit-headers-10): {@code RateLimit-Policy} with quota and window,
 * {@code RateLimit} with what is left and when all of it is there again.
 */
@Component
public final class Allowance {

    private static final String POLICY = "\"calls\"";

    /** Callers that are remembered; whoever has not called for the longest time is forgotten, with a full allowance again. */
    private static final int REMEMBERED = 10_000;

    /**
     * A limit.
     *
     * @param calls how many
     * @param window in how long
     */
    private record Limit(int calls, Duration window) {

        static Limit of(String setting) {
            String[] parts = setting.split("/");
            try {
                Limit limit = new Limit(Integer.parseInt(parts[0].strip()), Duration.parse(parts[1].strip()));
                if (limit.calls > 0 && limit.window.getSeconds() > 0) {
                    return limit;
                }
            } catch (NumberFormatException | DateTimeParseException | ArrayIndexOutOfBoundsException e) {
                // said below
            }
            throw new WrongSettingException(
                    "capwright.rate-limit must be calls and a time of a second or more, such as 600/PT1M; it is "
                            + setting);
        }
    }

    private final Optional<Limit> limit;

    private final Map<String, Bucket> buckets = Collections.synchronizedMap(new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Bucket> eldest) {
            return size() > REMEMBERED;
        }
    });

    Allowance(@Value("${capwright.rate-limit}") String setting) {
        this.limit = setting.isBlank() ? Optional.empty() : Optional.of(Limit.of(setting.strip()));
    }

    /**
     * Whether there is a limit.
     *
     * @return false if everybody may call as often as they like
     */
    public boolean isLimited() {
        return limit.isPresent();
    }

    /** Counts a call. */
    void count(String caller, HttpServletResponse response) {
        limit.ifPresent(known -> count(known, caller, response));
    }

    private void count(Limit known, String caller, HttpServletResponse response) {
        ConsumptionProbe probe =
                buckets.computeIfAbsent(caller, name -> bucket(known)).tryConsumeAndReturnRemaining(1);
        response.setHeader(
                "RateLimit-Policy",
                POLICY + ";q=" + known.calls() + ";w=" + known.window().getSeconds());
        response.setHeader(
                "RateLimit",
                POLICY + ";r=" + probe.getRemainingTokens() + ";t=" + seconds(probe.getNanosToWaitForReset()));
        if (!probe.isConsumed()) {
            throw new ProblemException(
                    Problem.of(
                            ProblemKind.TOO_MANY_REQUESTS,
                            Text.of("The key may make {calls} calls in {seconds} seconds. Retry-After says when to try"
                                            + " again.")
                                    .with("calls", known.calls())
                                    .with("seconds", known.window().getSeconds())),
                    Map.of(HttpHeaders.RETRY_AFTER, Long.toString(seconds(probe.getNanosToWaitForRefill()))));
        }
    }

    private static Bucket bucket(Limit known) {
        return Bucket.builder()
                .addLimit(bandwidth -> bandwidth.capacity(known.calls()).refillGreedy(known.calls(), known.window()))
                .build();
    }

    private static long seconds(long nanos) {
        return Math.max(1, (nanos + 999_999_999) / 1_000_000_000);
    }
}
