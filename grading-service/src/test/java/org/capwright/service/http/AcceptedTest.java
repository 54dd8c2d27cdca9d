package org.capwright.service.http;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.capwright.service.http.problem.ProblemException;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.http.MediaType;
import org.springframework.mock.web.MockHttpServletRequest;

class AcceptedTest {

    private static final List<MediaType> OFFERED = MediaType.parseMediaTypes(
            "application/json, image/svg+xml, image/vnd.dxf, text/csv;charset=UTF-8;header=present, application/pdf");

    /** The example of RFC 9110, section 12.5.1, of four types that it likes in this order. */
    @ParameterizedTest
    @CsvSource({
        "'text/plain;format=flowed, text/plain, text/html, image/jpeg', text/plain;format=flowed",
        "'image/jpeg, text/html, text/plain', text/plain",
        "'text/html, image/jpeg', image/jpeg"
    })
    void takesTheBestOfTheExample(String offered, String best) {
        MockHttpServletRequest request = new MockHttpServletRequest();
        request.addHeader(
                "Accept",
                "text/*;q=0.3, text/plain;q=0.7, text/plain;format=flowed, text/plain;format=fixed;q=0.4, */*;q=0.5");
        assertEquals(MediaType.parseMediaType(best), Accepted.best(request, MediaType.parseMediaTypes(offered)));
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
                "image/*, image/svg+xml;q=0              | image/vnd.dxf",
                "text/html, */*;q=0.1                    | application/json",
                "text/html                               | none",
                "application/json;q=0                    | none",
                "nonsense                                | none",
                "image/vnd.dxf;q=2                       | none",
                "TEXT/CSV                                | text/csv"
            })
    void picksWhatIsLikedBest(String accept, String type) {
        MockHttpServletRequest request = new MockHttpServletRequest();
        if (!accept.isEmpty()) {
            request.addHeader("Accept", accept);
        }
        String picked;
        try {
            MediaType best = Accepted.best(request, OFFERED);
            picked = best.getType() + "/" + best.getSubtype();
        } catch (ProblemException e) {
            assertEquals(406, e.problem().status());
            picked = "none";
        }
        assertEquals(type, picked);
    }
}
