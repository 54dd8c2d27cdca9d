package org.capwright.service.sizerun;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.http.MediaType;

class NegotiationTest {

    private static final List<MediaType> OFFERED = MediaType.parseMediaTypes(
            "application/json, image/svg+xml, image/vnd.dxf, text/csv;charset=UTF-8;header=present, application/pdf");

    /** The example of RFC 9110, section 12.5.1. Its last line, text/html;level=3, is left out: only text/* matches it there. */
    @ParameterizedTest
    @CsvSource({
        "text/plain;format=flowed, 1",
        "text/plain, 0.7",
        "text/html, 0.3",
        "image/jpeg, 0.5",
        "text/plain;format=fixed, 0.4"
    })
    void qualityIsThatOfTheMostSpecificRange(String type, double quality) {
        List<MediaType> ranges = MediaType.parseMediaTypes(
                "text/*;q=0.3, text/plain;q=0.7, text/plain;format=flowed, text/plain;format=fixed;q=0.4, */*;q=0.5");
        assertEquals(
                quality,
                Negotiation.governing(MediaType.parseMediaType(type), ranges)
                        .orElseThrow()
                        .getQualityValue());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "''                                      | application/json",
                "*/*                                     | application/json",
                "image/*                                 | image/svg+xml",
                "image/vnd.dxf                           | image/vnd.dxf",
                "text/csv                                | text/csv",
                "text/csv;header=present                 | text/csv",
                "text/csv;header=absent                  | none",
                "application/json;charset=utf-8          | application/json",
                "application/json;q=0.1, text/*;q=0.9    | text/csv",
                "application/json;q=0.5, text/csv;q=0.5  | application/json",
                "image/vnd.dxf, */*                      | image/vnd.dxf",
                "*/*, application/json;q=0               | image/svg+xml",
                "text/html, */*;q=0.1                    | application/json",
                "text/html                               | none",
                "application/json;q=0                    | none",
                "nonsense                                | none",
                "image/vnd.dxf;q=2                       | none",
                "TEXT/CSV                                | text/csv"
            })
    void picksWhatIsLikedBest(String accept, String type) {
        assertEquals(
                type,
                Negotiation.pick(accept, OFFERED)
                        .map(found -> found.getType() + "/" + found.getSubtype())
                        .orElse("none"));
    }
}
