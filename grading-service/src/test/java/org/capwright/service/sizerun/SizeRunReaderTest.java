package org.capwright.service.sizerun;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.capwright.draft.CapEase;
import org.capwright.draft.CapFit;
import org.capwright.grade.Alignment;
import org.capwright.json.problem.FieldViolation;
import org.capwright.json.problem.RefusedRequestException;
import org.capwright.json.style.SizeRunReader;
import org.capwright.json.style.SizeRunRequest;
import org.capwright.measure.Dimension;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tools.jackson.databind.JsonNode;

class SizeRunReaderTest {

    private static List<FieldViolation> refused(JsonNode body) {
        RefusedRequestException e =
                assertThrows(RefusedRequestException.class, () -> SizeRunReader.read(body), body::toString);
        return e.violations();
    }

    @Test
    void theDemoIsReadAsItStands() {
        SizeRunRequest order = SizeRunReader.read(Requests.demo());
        assertEquals(List.of("36", "38", "40", "42", "44"), order.sizes());
        assertEquals(2, order.base());
        assertEquals(360, order.dimensions().get(Dimension.BICEP), 1e-9);
        assertEquals(340, order.dimensions().get(Dimension.OVERLAY_LENGTH), 1e-9);
        assertEquals(10, order.options().allowances().hem(), 1e-9);
        assertEquals(Alignment.UNDERARM, order.alignment());
        assertEquals(4, order.rules().size());
        assertEquals(List.of(16.0, 16.0, 18.0, 18.0), order.rules().get(3).increments());
    }

    /** Each line: a merge patch on the demo, the fields that must be named, and words that the first reason must hold. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
        {"units":"furlong"}                            | /units                    | mm, cm, in
        {"units":null}                                 | /units                    | missing
        {"units":7}                                    | /units                    | mm, cm, in
        {"unit":"cm"}                                  | /unit                     | did you mean units
        {"seamAllowence":1}                            | /seamAllowence            | did you mean seamAllowance
        {"zzzzzzzz":1}                                 | /zzzzzzzz                 | known here: name, revision
        {"sleeve":{"bicepWidth":3}}                    | /sleeve/bicepWidth        | did you mean bicep
        {"sleeve":{"a/b~c":3}}                         | /sleeve/a~1b~0c           | not a known field
        {"sleeve":"big"}                               | /sleeve                   | must be an object
        {"sleeve":null}                                | /sleeve                   | missing
        {"sleeve":{"bicep":-36}}                       | /sleeve/bicep             | out of range: -36 cm;
        {"sleeve":{"bicep":"NaN"}}                     | /sleeve/bicep             | must be a length in cm
        {"sleeve":{"bicep":"Infinity"}}                | /sleeve/bicep             | must be a length in cm
        {"sleeve":{"bicep":1e999}}                     | /sleeve/bicep             | must be a length in cm
        {"sleeve":{"bicep":"3 1/0"}}                   | /sleeve/bicep             | must be a length in cm
        {"sleeve":{"bicep":true}}                      | /sleeve/bicep             | must be a length in cm
        {"sleeve":{"bicep":[36]}}                      | /sleeve/bicep             | must be a length in cm
        {"sleeve":{"bicep":null}}                      | /sleeve/bicep             | missing
        {"sleeve":{"length":null}}                     | /sleeve/length            | the under-sleeve needs a length
        {"underSleeve":null}                           | /sleeve/length            | no use without an under-sleeve
        {"sleeve":{"armhole":null},"grade":null}       | /sleeve/armhole           | the overlay is sewn to
        {"sleeve":{"capEase":"4%"}}                    | /sleeve/capEase           | leave out one of the three
        {"sleeve":{"capEase":"4%","bicep":null,"capHeight":null},"grade":null} | /sleeve/capEase | both open
        {"sleeve":{"capEase":"400%","capHeight":null},"grade":null} | /sleeve/capEase | 22.5 cm would work
        {"sleeve":{"capEase":"x%","capHeight":null},"grade":null} | /sleeve/capEase | percentage such as 4%
        {"sleeve":{"capEase":"4%","capHeight":null}}   | /grade/capHeight          | follows from the cap ease
        {"sleeve":{"front":{"capEase":1},"capHeight":null},"grade":null} | /sleeve/back/capEase | needs one too
        {"sleeve":{"capEase":1,"front":{"capEase":1},"back":{"capEase":1},"capHeight":null},"grade":null} | /sleeve/capEase | contradicts
        {"sleeve":{"front":{"capEase":1},"back":{"capEase":1}},"grade":null} | /sleeve/capHeight | leave it out
        {"sleeve":{"front":{"capOutward":1},"back":{"capOutward":2}}} | /sleeve/capOutward | front and back each have their own
        {"sleeve":{"front":{"armhole":22},"back":{"armhole":22}}} | /sleeve/back/armhole | only 23 cm would work
        {"sleeve":{"back":{"armhole":43}}}             | /sleeve/back/armhole      | 41 cm or less would work
        {"sleeve":{"front":{"armhole":43}}}            | /sleeve/front/armhole     | leaves too little of the armhole for the back: 43 cm; 35.
        {"baseSize":"39"}                              | /baseSize                 | one of the sizes 36, 38, 40, 42, 44
        {"baseSize":null}                              | /baseSize                 | missing
        {"sizes":["38","36","40","42","44"]}           | /sizes/1                  | must ascend
        {"sizes":["36","36","40","42","44"]}           | /sizes/1                  | repeats the size at /sizes/0
        {"sizes":["36","36.0","40","42","44"]}         | /sizes/1                  | must ascend
        {"sizes":["S","S","40","M","L"]}               | /sizes/1                  | repeats the size at /sizes/0
        {"sizes":[]}                                   | /sizes                    | 1 to 40 would work
        {"sizes":"36-44"}                              | /sizes                    | must be a list
        {"sizes":["36","","40","42","44"]}             | /sizes/1                  | 1 to 20 characters
        {"sizes":["36",{},"40","42","44"]}             | /sizes/1                  | 1 to 20 characters
        {"sizes":["36","a\\u0000b","40","42","44"]}    | /sizes/1                  | control characters
        {"grade":{"armhole":[1.6,1.6,1.8]}}            | /grade/armhole            | 4 intervals
        {"grade":{"armhole":[1.6,"x",1.8,1.8]}}        | /grade/armhole/1          | must be a length in cm
        {"grade":{"bicep":99}}                         | /grade/bicep              | out of range: 99 cm; -9.
        {"grade":{"extraWidth":1}}                     | /grade/extraWidth         | give /overlay/extraWidth
        {"grade":{"pleatDepth":1}}                     | /grade/pleatDepth         | the style has no such dimension
        {"grade":{"cuff":1}}                           | /grade/cuff               | not a known field
        {"overlay":{"rise":null}}                      | /overlay/rise             | or the fullness
        {"overlay":{"fullness":2}}                     | /overlay/rise             | contradicts fullness
        {"overlay":{"fullness":2,"rise":null},"grade":{"rise":1}} | /grade/rise    | follows from the fullness
        {"overlay":{"frontGap":null}}                  | /overlay/frontGap         | missing
        {"overlay":{"hem":"veee"}}                     | /overlay/hem              | did you mean vee
        {"overlay":{"hem":"bowed"}}                    | /overlay/hemSagitta       | a bowed hem needs it
        {"overlay":{"hemSagitta":1}}                   | /overlay/hemSagitta       | unless the hem is bowed
        {"overlay":{"join":2}}                         | /overlay/join             | out of range: 2;
        {"overlay":{"join":"0.75"}}                    | /overlay/join             | must be a number
        {"overlay":{"pleats":{"count":2.5}}}           | /overlay/pleats/count     | must be a whole number
        {"overlay":{"pleats":{"count":0}}}             | /overlay/pleats/count     | out of range: 0;
        {"overlay":{"pleats":{"count":null}}}          | /overlay/pleats/count     | exactly one of count, depth, greatestDepth
        {"overlay":{"pleats":{"depth":2}}}             | /overlay/pleats/depth     | contradicts count
        {"overlay":{"pleats":{"kind":"box","direction":"apex"}}} | /overlay/pleats/direction | no use for box pleats
        {"overlay":{"pleats":{"flatZone":{"frnt":2}}}} | /overlay/pleats/flatZone/frnt | did you mean front
        {"overlay":{"pleats":{"flatZone":-1}}}         | /overlay/pleats/flatZone  | out of range: -1 cm;
        {"underSleeve":{"wrist":null}}                 | /underSleeve/wrist        | missing
        {"underSleeve":{"shaping":"darted"}}           | /underSleeve/shaping      | tapered
        {"underSleeve":{"elbowDart":2}}                | /underSleeve/elbowDart    | unless shaping is elbowDart
        {"underSleeve":{"shaping":"elbowDart","elbowEase":1}} | /underSleeve/elbowEase | unless shaping is easedSeam
        {"sizeTable":"gost-12-4-111-82-jacket-by-chest"} | /sizeTable              | is not a body table
        {"sizeTable":"women-en-13402-3-bst"}           | /sizeTable                | did you mean women-en-13402-3-bust
        {"sizeTable":5}                                | /sizeTable                | must be a text
        {"seamAllowance":11}                           | /seamAllowance            | 0 to 10 cm would work
        {"seamAllowance":{"hem":"wide"}}               | /seamAllowance/hem        | must be a length in cm
        {"seamAllowance":[1,1]}                        | /seamAllowance            | must be a length in cm
        {"corners":"round"}                            | /corners                  | mitred, bevelled, squared
        {"turnOfCloth":-0.1}                           | /turnOfCloth              | 0 to 2 cm would work
        {"interfacingOverlap":20}                      | /interfacingOverlap       | out of range: 20 cm;
        {"align":"shoulder"}                           | /align                    | underarm, apex, fold
        {"layout":"blok"}                              | /layout                   | did you mean blocks
        {"rounding":"1"}                               | /rounding                 | 1/8 in
        {"rounding":"0 mm"}                            | /rounding                 | would work
        {"rounding":0.5}                               | /rounding                 | 1/8 in
        {"paper":{"format":"a9"}}                      | /paper/format             | a4, a3, a0, letter, roll
        {"paper":{"format":"roll"}}                    | /paper/width              | a roll needs its width
        {"paper":{"width":90}}                         | /paper/width              | no use with sheets
        {"paper":{"sizes":["40","41"]}}                | /paper/sizes/1            | one of the sizes
        {"name":""}                                    | /name                     | 1 to 80 characters
        {"name":"a\\nb"}                               | /name                     | control characters
        {"name":"\\u202Egnp"}                          | /name                     | control characters
        {"revision":"123456789012345678901"}           | /revision                 | 1 to 20 characters
        """)
    void namesWhatIsWrong(String patch, String fields, String words) {
        List<FieldViolation> violations = refused(Requests.patched(patch));
        assertEquals(
                fields,
                violations.stream().map(FieldViolation::field).collect(Collectors.joining(",")),
                violations::toString);
        assertTrue(
                violations.get(0).reason().toString().contains(words),
                () -> violations.get(0).reason().toString());
    }

    /** The rise follows from the pleats whether they are right or wrong, so its growth is refused for that reason. */
    @Test
    void pleatsThatTheRiseFollowsFromAreComplainedOfOnce() {
        List<FieldViolation> violations = refused(Requests.patched("""
            {"overlay":{"rise":null,"pleats":{"count":999,"kind":"accordion","depth":2}},"grade":{"rise":0.2}}
            """));
        assertEquals(
                List.of("/overlay/pleats/count", "/overlay/pleats/kind", "/grade/rise"),
                violations.stream().map(FieldViolation::field).toList());
        assertTrue(
                violations.get(2).reason().toString().contains("follows from the fullness or the pleats"),
                violations::toString);
        assertEquals(
                List.of("/overlay/fullness", "/grade/rise"),
                refused(Requests.patched("""
                    {"overlay":{"rise":null,"fullness":99},"grade":{"rise":0.2}}
                    """)).stream()
                        .map(FieldViolation::field)
                        .toList());
    }

    @Test
    void namesEverythingAtOnce() {
        List<FieldViolation> violations = refused(Requests.patched("""
            {"baseSize":"39","sleeve":{"bicep":-1,"capHeigth":2},"overlay":{"hem":"round","frontGap":"six"},
             "grade":{"wrist":"x","armhole":[1]},"seamAllowance":{"hem":99},"align":"top","paper":{"colour":1}}
            """));
        assertEquals(
                Set.of(
                        "/baseSize",
                        "/sleeve/capHeigth",
                        "/sleeve/bicep",
                        "/overlay/hem",
                        "/overlay/frontGap",
                        "/grade/armhole",
                        "/grade/wrist",
                        "/seamAllowance/hem",
                        "/align",
                        "/paper/colour"),
                violations.stream().map(FieldViolation::field).collect(Collectors.toSet()));
        assertEquals(10, violations.size(), violations::toString);
    }

    @Test
    void anythingButAnObjectIsRefused() {
        for (String body : List.of("[]", "7", "\"x\"", "null", "true", "{}")) {
            assertTrue(!refused(Requests.MAPPER.readTree(body)).isEmpty(), body);
        }
    }

    @Test
    void moreThanFortySizesAreRefused() {
        String sizes = java.util.stream.IntStream.range(0, 41)
                .mapToObj(i -> "\"" + (30 + i) + "\"")
                .collect(Collectors.joining(","));
        assertEquals(
                "/sizes",
                refused(Requests.patched("{\"sizes\":[" + sizes + "],\"grade\":null}"))
                        .get(0)
                        .field());
    }

    @ParameterizedTest
    @CsvSource({"3 1/2, 88.9", "3-1/2, 88.9", "1/2, 12.7", "3.5, 88.9", "' 3 1/2 ', 88.9", "+3.5, 88.9"})
    void readsFractions(String text, double millimetres) {
        // 1 in = 25.4 mm exactly (international yard and pound agreement, 1959).
        JsonNode body = Requests.merged(Requests.demo(), Requests.MAPPER.readTree("""
            {"units":"in","sleeve":{"bicep":14,"length":24,"capHeight":"%s","capOutward":null,"capInward":null,"armhole":18},
             "overlay":null,"underSleeve":{"elbow":11,"wrist":8},"grade":null,"seamAllowance":"3/8"}
            """.formatted(text)));
        SizeRunRequest order = SizeRunReader.read(body);
        assertEquals(millimetres, order.dimensions().get(Dimension.CAP_HEIGHT), 1e-9);
        assertEquals(9.525, order.options().allowances().hem(), 1e-12);
    }

    @Test
    void readsTheFits() {
        assertEquals(
                new CapFit.CapHeightFor(new CapEase.Share(0.04)),
                SizeRunReader.read(Requests.patched(
                                "{\"sleeve\":{\"capHeight\":null,\"capEase\":\"4%\"},\"grade\":{\"capHeight\":null}}"))
                        .style()
                        .fit());
        assertEquals(
                new CapFit.BicepFor(new CapEase.Length(15)),
                SizeRunReader.read(Requests.patched(
                                "{\"sleeve\":{\"bicep\":null,\"capEase\":1.5},\"grade\":{\"bicep\":null}}"))
                        .style()
                        .fit());
        assertEquals(
                new CapFit.HalvesFor(new CapEase.Share(0.03), new CapEase.Length(10)),
                SizeRunReader.read(Requests.patched("{\"sleeve\":{\"capHeight\":null,\"front\":{\"capEase\":\"3"
                                + " %\"},\"back\":{\"capEase\":1}},\"grade\":{\"capHeight\":null}}"))
                        .style()
                        .fit());
    }

    @Test
    void readsTheArmholeFromItsHalves() {
        SizeRunRequest sum = SizeRunReader.read(Requests.patched(
                "{\"sleeve\":{\"armhole\":null,\"front\":{\"armhole\":22},\"back\":{\"armhole\":23.5}}}"));
        assertEquals(455, sum.dimensions().get(Dimension.ARMHOLE), 1e-9);
        assertEquals(220, sum.dimensions().get(Dimension.FRONT_ARMHOLE), 1e-9);
        SizeRunRequest rest = SizeRunReader.read(Requests.patched("{\"sleeve\":{\"back\":{\"armhole\":23.5}}}"));
        assertEquals(215, rest.dimensions().get(Dimension.FRONT_ARMHOLE), 1e-9);
    }

    @Test
    void wholeNumbersAreReadAsNamesOfSizes() {
        SizeRunRequest order = SizeRunReader.read(Requests.patched("{\"sizes\":[36,38,40,42,44],\"baseSize\":40}"));
        assertEquals(List.of("36", "38", "40", "42", "44"), order.sizes());
        assertEquals(2, order.base());
    }
}
