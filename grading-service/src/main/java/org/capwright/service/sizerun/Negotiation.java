package org.capwright.service.sizerun;

import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.springframework.http.InvalidMediaTypeException;
import org.springframework.http.MediaType;

/** Picks the media type of an answer by the Accept header (RFC 9110, section 12.5.1). */
final class Negotiation {

    private Negotiation() {}

    /** Parameters say more than the type alone; the character set does not: everything here is UTF-8. */
    private static final Set<String> WITHOUT_MEANING = Set.of("q", "charset");

    /**
     * The offered content type that the caller likes best. For each the most specific range that matches it counts; of equal quality the more specifically named
     * one is taken, then the one offered first.
     *
     * @param accept the header; empty if there is none
     * @param offered content types in the order of the service's own preference
     * @return nothing if none is acceptable or the header cannot be read
     */
    static Optional<MediaType> pick(String accept, Collection<MediaType> offered) {
        List<MediaType> ranges;
        try {
            ranges = MediaType.parseMediaTypes(accept.isBlank() ? "*/*" : accept);
        } catch (InvalidMediaTypeException e) {
            return Optional.empty();
        }
        Optional<MediaType> best = Optional.empty();
        double bestQuality = 0;
        int bestDetail = -1;
        for (MediaType type : offered) {
            Optional<MediaType> range = governing(type, ranges);
            double quality = range.map(MediaType::getQualityValue).orElse(0.0);
            int detail = range.map(Negotiation::detail).orElse(-1);
            if (quality > bestQuality || quality > 0 && quality == bestQuality && detail > bestDetail) {
                best = Optional.of(type);
                bestQuality = quality;
                bestDetail = detail;
            }
        }
        return best;
    }

    /** The most specific range that matches. */
    static Optional<MediaType> governing(MediaType type, List<MediaType> ranges) {
        Optional<MediaType> governing = Optional.empty();
        for (MediaType range : ranges) {
            if (matches(range, type) && (governing.isEmpty() || detail(range) > detail(governing.get()))) {
                governing = Optional.of(range);
            }
        }
        return governing;
    }

    private static boolean matches(MediaType range, MediaType type) {
        return range.includes(type)
                && range.getParameters().entrySet().stream()
                        .filter(parameter -> !WITHOUT_MEANING.contains(parameter.getKey()))
                        .allMatch(parameter ->
                                parameter.getValue().equalsIgnoreCase(type.getParameter(parameter.getKey())));
    }

    private static int detail(MediaType range) {
        if (range.isWildcardType()) {
            return 0;
        }
        if (range.isWildcardSubtype()) {
            return 1;
        }
        return 2
                + (int) range.getParameters().keySet().stream()
                        .filter(name -> !WITHOUT_MEANING.contains(name))
                        .count();
    }
}
