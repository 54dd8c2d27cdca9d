package org.capwright.service.sizerun;

import java.util.Collection;
import java.util.List;
import java.util.Optional;
import org.springframework.http.InvalidMediaTypeException;
import org.springframework.http.MediaType;

/** Picks the media type of an answer by the Accept header (RFC 9110, section 12.5.1). */
final class Negotiation {

    private Negotiation() {}

    /**
     * The offered media type that the caller likes best. For each the most specific range that matches it counts; of equal quality the more specifically named
     * one is taken, then the one offered first.
     *
     * @param accept the header; empty if there is none
     * @param offered media types in the order of the service's own preference
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
            int detail = -1;
            double quality = 0;
            for (MediaType range : ranges) {
                if (range.includes(type) && detail(range) > detail) {
                    detail = detail(range);
                    quality = range.getQualityValue();
                }
            }
            if (quality > bestQuality || quality > 0 && quality == bestQuality && detail > bestDetail) {
                best = Optional.of(type);
                bestQuality = quality;
                bestDetail = detail;
            }
        }
        return best;
    }

    private static int detail(MediaType range) {
        if (range.isWildcardType()) {
            return 0;
        }
        return range.isWildcardSubtype() ? 1 : 2;
    }
}
