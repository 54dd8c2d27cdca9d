package org.capwright.service.http.departures;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.swagger.v3.oas.models.Operation;
import io.swagger.v3.oas.models.parameters.Parameter;
import java.lang.reflect.Method;
import java.time.Instant;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.request.MockMvcRequestBuilders;
import org.springframework.test.web.servlet.setup.MockMvcBuilders;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.method.HandlerMethod;

/** Headers by the grammar of RFC 9745 and RFC 8594, on calls that are there for this test alone. */
class DeparturesTest {

    /** The date of RFC 9745's own example, section 2.1: Friday, June 30, 2023 at 23:59:59 UTC. */
    private static final String SINCE = "2023-06-30T23:59:59Z";

    private static final String ENDS = "2024-06-30T23:59:59Z";
    private static final String LATER = "2025-06-30T23:59:59Z";

    @RestController
    static final class Old {

        @Departs(since = SINCE, ends = LATER, instead = "/swagger-ui.html#Hems")
        @GetMapping("/old")
        String whole(
                @Departs(since = SINCE, ends = ENDS, instead = "/swagger-ui.html#Wide")
                        @RequestParam(name = "wide", defaultValue = "")
                        String wide) {
            return "hem" + wide;
        }

        @GetMapping("/kept")
        String kept(
                @Departs(since = SINCE, ends = ENDS, instead = "/swagger-ui.html#Hems")
                        @RequestParam(name = "depth", defaultValue = "3")
                        int depth,
                @Departs(since = SINCE, ends = ENDS, instead = "/swagger-ui.html#Hems")
                        @RequestHeader(name = "Hem-Depth", defaultValue = "3")
                        int other) {
            return "hem" + depth + other;
        }
    }

    private final MockMvc calls = MockMvcBuilders.standaloneSetup(new Old())
            .addInterceptors(new Departures())
            .build();

    private MockHttpServletResponse get(String address, String... header) throws Exception {
        var request = MockMvcRequestBuilders.get(address);
        if (header.length == 2) {
            request.header(header[0], header[1]);
        }
        return calls.perform(request).andReturn().getResponse();
    }

    private static void assertTold(MockHttpServletResponse answer, String ends, String instead) {
        assertEquals("@1688169599", answer.getHeader("Deprecation"), "RFC 9745, section 2.1");
        assertEquals(ends, answer.getHeader("Sunset"), "RFC 8594, section 3");
        assertEquals("<" + instead + ">; rel=\"deprecation\"; type=\"text/html\"", answer.getHeader("Link"));
    }

    private static void assertNothingTold(MockHttpServletResponse answer) {
        assertEquals(200, answer.getStatus());
        Stream.of("Deprecation", "Sunset", "Link").forEach(name -> assertNull(answer.getHeader(name), name));
    }

    @Test
    void aCallTellsThatItGoes() throws Exception {
        assertTold(get("/old"), "Mon, 30 Jun 2025 23:59:59 GMT", "/swagger-ui.html#Hems");
    }

    @Test
    void ofTwoThatGoTheOneThatEndsFirstIsTold() throws Exception {
        assertTold(get("/old?wide=1"), "Sun, 30 Jun 2024 23:59:59 GMT", "/swagger-ui.html#Wide");
    }

    @Test
    void aParameterTellsItWhereItIsUsed() throws Exception {
        assertNothingTold(get("/kept"));
        assertNothingTold(get("/kept?depths=4"));
        assertTold(get("/kept?depth=4"), "Sun, 30 Jun 2024 23:59:59 GMT", "/swagger-ui.html#Hems");
        assertTold(get("/kept", "Hem-Depth", "4"), "Sun, 30 Jun 2024 23:59:59 GMT", "/swagger-ui.html#Hems");
    }

    @Test
    void whoeverIsRefusedIsToldAsWell() throws Exception {
        MockHttpServletResponse refused = get("/kept?depth=deep");
        assertEquals(400, refused.getStatus());
        assertTold(refused, "Sun, 30 Jun 2024 23:59:59 GMT", "/swagger-ui.html#Hems");
    }

    @Test
    void theDescriptionMarksIt() throws Exception {
        Operation whole = described("whole", "wide");
        assertEquals(true, whole.getDeprecated());
        assertTrue(whole.getDescription().contains("2025-06-30"), whole.getDescription());
        Operation kept = described("kept", "depth", "Hem-Depth", "limit");
        assertNull(kept.getDeprecated());
        assertEquals(true, kept.getParameters().get(0).getDeprecated());
        assertEquals(true, kept.getParameters().get(1).getDeprecated());
        assertNull(kept.getParameters().get(2).getDeprecated());
    }

    private static Operation described(String name, String... parameters) {
        Operation operation = new Operation();
        Stream.of(parameters).forEach(one -> operation.addParametersItem(new Parameter().name(one)));
        Method method = Stream.of(Old.class.getDeclaredMethods())
                .filter(one -> one.getName().equals(name))
                .findFirst()
                .orElseThrow();
        return new Departures().customize(operation, new HandlerMethod(new Old(), method));
    }

    @Test
    void nothingEndsBeforeAYearIsOver() {
        Instant since = Instant.parse(SINCE);
        assertThrows(
                IllegalArgumentException.class, () -> new Departure(since, since.plusSeconds(364 * 86_400L), "/there"));
    }
}
