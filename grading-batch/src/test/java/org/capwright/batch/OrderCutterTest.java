package org.capwright.batch;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.TreeMap;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** One order at a time. That its files are those of the service is held by the contract tests. */
class OrderCutterTest {

    private static OrderCutter cutter;

    @BeforeAll
    static void known() throws IOException {
        cutter = new OrderCutter(Orders.styles(), List.of("pdf", "csv"));
    }

    private static Outcome.Cut cut(String line) {
        return assertInstanceOf(Outcome.Cut.class, cutter.cut(Orders.bytes(line)));
    }

    private static Outcome.NotCut notCut(String line) {
        return assertInstanceOf(Outcome.NotCut.class, cutter.cut(Orders.bytes(line)));
    }

    @Test
    void anOrderIsCutInEveryFormat() {
        Outcome.Cut order = cut(Orders.wearer(7));
        assertEquals("order 7", order.reference());
        assertEquals(
                List.of("pdf", "csv"),
                order.files().stream().map(CutFile::format).toList());
        // ISO 32000-1, 7.5.2
        assertEquals("%PDF-", new String(order.files().get(0).content(), 0, 5, StandardCharsets.US_ASCII));
        assertEquals(64, order.files().get(0).sha256().length());
    }

    @Test
    void theSameOrderGivesTheSameBytes() {
        assertArrayEquals(
                cut(Orders.wearer(7)).files().get(0).content(),
                cut(Orders.wearer(7)).files().get(0).content());
        assertArrayEquals(
                cut(Orders.size(1, "40")).files().get(0).content(),
                cut(Orders.size(2, "40")).files().get(0).content());
        assertFalse(cut(Orders.wearer(7))
                .files()
                .get(0)
                .sha256()
                .equals(cut(Orders.wearer(8)).files().get(0).sha256()));
    }

    @Test
    void aRevisionStandsOnTheFilesOfAStyleThatNamesNone() throws IOException {
        TreeMap<String, byte[]> styles = new TreeMap<>();
        String style = new String(Orders.styles().get("choir-gown"), StandardCharsets.UTF_8);
        styles.put("choir-gown", Orders.bytes(style.replace("\"revision\": \"1\",", "")));
        OrderCutter other = new OrderCutter(styles, List.of("csv"));
        String second = Orders.size(1, "40").replace("}", ",\"revision\":2}");
        String csv = new String(
                ((Outcome.Cut) other.cut(Orders.bytes(second))).files().get(0).content(), StandardCharsets.UTF_8);
        assertTrue(csv.contains(",2,"), csv);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "{\"style\":                                                      |                | is not JSON",
                "17                                                              |                | must be",
                "{\"reference\":\"order 9\"}                                        | order 9        | a size, or a wearer",
                "{\"reference\":\"order 9\",\"size\":\"52\"}                            | order 9        | must be one of the sizes",
                "{\"reference\":\"order 9\",\"size\":\"40\",\"style\":\"cape\"}           | order 9        | is none of",
                "{\"reference\":\"order 9\",\"size\":\"40\",\"units\":\"mm\"}             | order 9        | the unit of the style",
                "{\"reference\":\"order 9\",\"size\":\"40\",\"remakeOf\":\"x\"}           | order 9        | no use in a batch",
                "{\"reference\":\"order 9\",\"size\":\"40\",\"colour\":\"red\"}           | order 9        | not a known field",
                "{\"reference\":\"order 9\",\"wearer\":{\"bustGirth\":31.4159}}        | order 9        | out of range",
                "{\"reference\":\"order 9\",\"wearer\":{\"31.4159\":1,\"bustGirth\":96}} | order 9        | not a known field"
            })
    void whatIsWrongIsNamedWithoutAFigure(String line, String reference, String reason) {
        Outcome.NotCut order = notCut(line);
        assertEquals("refused", order.state());
        assertEquals(reference == null ? "" : reference, order.reference());
        assertTrue(order.refusals().toString().contains(reason), order::toString);
        assertFalse(order.refusals().toString().contains(Orders.SECRET), order::toString);
    }

    @Test
    void improbableMeasurementsHoldAnOrderUntilTheyAreConfirmed() {
        Outcome.NotCut order = notCut(Orders.questioned(3));
        assertEquals("questioned", order.state());
        assertTrue(order.refusals().toString().contains("/wearer/"), order::toString);
        assertFalse(order.refusals().toString().matches("(?s).*\\d.*"), order::toString);
        cut(Orders.questioned(3)
                .replace("\"ease\":", "\"confirmed\":[\"wristGirth\",\"elbowGirth\",\"upperArmGirth\"],\"ease\":"));
    }

    @Test
    void bytesThatAreNoTextAreRefused() {
        assertInstanceOf(Outcome.NotCut.class, cutter.cut(new byte[] {'{', (byte) 0xff, '}'}));
        assertInstanceOf(Outcome.NotCut.class, cutter.cut(new byte[300_000]));
    }

    @Test
    void wrongStylesAndFormatsAreRefusedBeforeAnyOrder() throws IOException {
        TreeMap<String, byte[]> wrong = new TreeMap<>();
        wrong.put("cape", Orders.bytes("{\"units\":\"cm\"}"));
        assertTrue(assertThrows(IllegalArgumentException.class, () -> new OrderCutter(wrong, List.of("pdf")))
                .getMessage()
                .contains("cape"));
        TreeMap<String, byte[]> right = Orders.styles();
        assertTrue(assertThrows(IllegalArgumentException.class, () -> new OrderCutter(right, List.of("doc")))
                .getMessage()
                .contains("csv"));
    }
}
