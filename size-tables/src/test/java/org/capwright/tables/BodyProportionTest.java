package org.capwright.tables;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class BodyProportionTest {

    /** Nobody measured comes within a tenth of a limit: ANSUR 1988 (NATICK/TR-89/044) and ANSUR II 2012 (NATICK/TR-15/007), 4194 women. */
    @ParameterizedTest
    @ValueSource(strings = {"ansur-1988-women", "ansur-2012-women"})
    void nobodyMeasuredComesNearALimit(String survey) {
        List<Map<String, String>> people = TestCsv.read("survey/" + survey + ".csv.gz");
        int compared = 0;
        for (BodyProportion proportion : BodyProportion.ALL) {
            if (!people.get(0)
                    .keySet()
                    .containsAll(
                            List.of(proportion.part().id(), proportion.whole().id()))) {
                continue;
            }
            double most = people.stream()
                    .mapToDouble(person -> Double.parseDouble(
                                    person.get(proportion.part().id()))
                            / Double.parseDouble(person.get(proportion.whole().id())))
                    .max()
                    .orElseThrow();
            assertTrue(most <= 0.92 * proportion.greatest(), proportion + ": " + most);
            compared++;
        }
        assertTrue(compared > 8, "only " + compared);
    }

    /** No published table of bodies breaks one, nor do the children of the standards: every served row is compared with every other. */
    @Test
    void everyServedTableKeepsThem() {
        int compared = 0;
        for (SizeTable table : SizeTables.all()) {
            for (String size : table.sizes()) {
                Map<BodyDimension, Double> body = new EnumMap<>(BodyDimension.class);
                for (BodyDimension dimension : BodyDimension.values()) {
                    table.value(size, dimension).ifPresent(value -> body.put(dimension, value.millimetres()));
                }
                for (BodyProportion proportion : BodyProportion.ALL) {
                    assertTrue(proportion.holds(body), table.id() + " " + size + " " + proportion);
                    compared += body.keySet().containsAll(List.of(proportion.part(), proportion.whole())) ? 1 : 0;
                }
            }
        }
        assertTrue(compared > 500, "only " + compared);
    }

    @Test
    void saysNothingOfWhatIsMissing() {
        BodyProportion wrist = BodyProportion.ALL.get(0);
        assertEquals(BodyDimension.WRIST_GIRTH, wrist.part());
        assertTrue(wrist.holds(Map.of(BodyDimension.WRIST_GIRTH, 400.0)));
        assertFalse(wrist.holds(Map.of(BodyDimension.WRIST_GIRTH, 330.0, BodyDimension.UPPER_ARM_GIRTH, 300.0)));
        assertTrue(wrist.holds(Map.of(BodyDimension.WRIST_GIRTH, 160.0, BodyDimension.UPPER_ARM_GIRTH, 300.0)));
    }
}
