package org.capwright.json;

import com.fasterxml.jackson.annotation.JsonInclude;
import tools.jackson.core.StreamReadConstraints;
import tools.jackson.core.StreamReadFeature;
import tools.jackson.core.StreamWriteFeature;
import tools.jackson.core.json.JsonFactory;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.cfg.DateTimeFeature;
import tools.jackson.databind.json.JsonMapper;

/** How JSON is read and written: strictly, within bounds. */
public final class StrictJson {

    /** No request nests deeper than three objects; this leaves room and stops bombs. */
    public static final int DEEPEST = 16;

    /** A picture in Base64; every other text has a shorter bound of its own. */
    private static final int LONGEST_TEXT = 200_000;

    private static final int LONGEST_NUMBER = 60;
    private static final int LONGEST_NAME = 1_000;

    private StrictJson() {}

    /**
     * A mapper that reads strictly and writes what is there.
     *
     * @return a builder, to add to
     */
    public static JsonMapper.Builder mapper() {
        JsonFactory factory = JsonFactory.builder()
                .streamReadConstraints(StreamReadConstraints.builder()
                        .maxNestingDepth(DEEPEST)
                        .maxStringLength(LONGEST_TEXT)
                        .maxNumberLength(LONGEST_NUMBER)
                        .maxNameLength(LONGEST_NAME)
                        .build())
                .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
                .enable(StreamWriteFeature.USE_FAST_DOUBLE_WRITER)
                .build();
        return JsonMapper.builder(factory)
                .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
                .disable(DateTimeFeature.WRITE_DATES_AS_TIMESTAMPS)
                .changeDefaultPropertyInclusion(inclusion -> inclusion
                        .withValueInclusion(JsonInclude.Include.NON_ABSENT)
                        .withContentInclusion(JsonInclude.Include.ALWAYS));
    }
}
