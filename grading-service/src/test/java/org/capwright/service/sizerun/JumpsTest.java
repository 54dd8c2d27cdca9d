package org.capwright.service.sizerun;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.StringReader;
import java.math.BigDecimal;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.capwright.service.KeptService;
import org.capwright.service.store.Databases;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tools.jackson.databind.JsonNode;

/** Jumps of the spec table are what decimals give that are subtracted by hand ({@link BigDecimal}), to the last digit shown. */
class JumpsTest {

    private static final List<String> SIZES = List.of("36", "38", "40", "42", "44", "46", "48", "50");

    private static String gown(String unit, double one) {
        return "{\"units\":\"%s\",\"baseSize\":\"40\",\"sizes\":[\"%s\"],\"sleeve\":{\"bicep\":%s,\"length\":%s,\"capHeight\":%s,\"armhole\":%s},\"underSleeve\":{\"wrist\":%s},\"grade\":{\"bicep\":%s,\"capHeight\":%s}}"
                .formatted(
                        unit,
                        String.join("\",\"", SIZES),
                        360 * one,
                        600 * one,
                        135 * one,
                        450 * one,
                        220 * one,
                        13 * one,
                        3 * one);
    }

    @ParameterizedTest
    @CsvSource({"mm, 1", "cm, 0.1", "in, 0.04"})
    void areTheDifferencesOfTheFiguresShown(String unit, double one) throws IOException {
        KeptService service = KeptService.on(Databases.EMBEDDED);
        JsonNode rows = service.send("POST", "/v1/size-runs", gown(unit, one))
                .json()
                .get("specTable")
                .get("rows");
        for (JsonNode row : rows) {
            for (int i = 1; i < SIZES.size(); i++) {
                assertEquals(
                        0,
                        shown(row.get("values").get(i))
                                .subtract(shown(row.get("values").get(i - 1)))
                                .compareTo(shown(row.get("jumps").get(i - 1))),
                        row.toString());
            }
        }
        String table = service.send("POST", "/v1/size-runs", gown(unit, one), "Accept", "text/csv")
                .text();
        List<CSVRecord> lines = CSVFormat.RFC4180.parse(new StringReader(table)).getRecords();
        assertTrue(lines.size() > 8, table);
        for (CSVRecord line : lines.subList(1, lines.size())) {
            for (int i = 1; i < SIZES.size(); i++) {
                BigDecimal jump = new BigDecimal(line.get(5 + i)).subtract(new BigDecimal(line.get(4 + i)));
                assertEquals(0, jump.compareTo(new BigDecimal(line.get(4 + SIZES.size() + i))), line.toString());
            }
        }
    }

    private static BigDecimal shown(JsonNode figure) {
        return new BigDecimal(figure.toString());
    }
}
