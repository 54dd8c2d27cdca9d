package org.capwright.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.zip.GZIPInputStream;
import org.capwright.quantity.Unit;
import org.capwright.quantity.Violation;
import org.capwright.tables.BodyDimension;
import org.capwright.tables.survey.Survey;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Held against the people themselves: ANSUR 1988, women, NATICK/TR-89/044, one row a person. */
class SurveyOpinionTest {

    private static final List<Map<BodyDimension, Double>> PEOPLE = new ArrayList<>();

    @BeforeAll
    static void read() throws Exception {
        try (BufferedReader lines = new BufferedReader(new InputStreamReader(
                new GZIPInputStream(Survey.class.getResourceAsStream("ansur-1988-women.csv.gz")),
                StandardCharsets.US_ASCII))) {
            String[] names = lines.readLine().split(",");
            for (String line = lines.readLine(); line != null; line = lines.readLine()) {
                String[] cells = line.split(",");
                Map<BodyDimension, Double> person = new EnumMap<>(BodyDimension.class);
                for (int i = 0; i < names.length; i++) {
                    person.put(BodyDimension.find(names[i]).orElseThrow(), Double.valueOf(cells[i]));
                }
                PEOPLE.add(person);
            }
        }
        assertEquals(2208, PEOPLE.size(), "women measured, by the report");
    }

    private static Map<BodyDimension, Double> only(Map<BodyDimension, Double> person, BodyDimension... dimensions) {
        Map<BodyDimension, Double> some = new EnumMap<>(BodyDimension.class);
        for (BodyDimension dimension : dimensions) {
            some.put(dimension, person.get(dimension));
        }
        return some;
    }

    /** An interval of 95 % holds 95 of 100 people, within three standard errors of a share of 2208: 3 sqrt(0.95 * 0.05 / 2208). */
    @ParameterizedTest
    @EnumSource(
            value = BodyDimension.class,
            names = {"UPPER_ARM_GIRTH", "ARM_LENGTH", "WRIST_GIRTH", "ELBOW_GIRTH", "ARMSCYE_GIRTH"})
    void estimateHoldsTheShareThatItStates(BodyDimension missing) {
        int held = 0;
        int asked = 0;
        for (int i = 0; i < PEOPLE.size(); i++) {
            Map<BodyDimension, Double> person = PEOPLE.get(i);
            Estimate estimate = new SurveyOpinion(
                            Survey.ANSUR_1988_WOMEN, only(person, BodyDimension.BUST_GIRTH, BodyDimension.STATURE))
                    .estimate(missing)
                    .orElseThrow();
            asked++;
            if (estimate.prediction().interval().contains(person.get(missing))) {
                held++;
            }
        }
        assertEquals(0.95, (double) held / asked, 3 * Math.sqrt(0.95 * 0.05 / asked));
    }

    /** Bonferroni keeps whole wearers, not measurements, at one in a hundred; tails heavier than normal ones may double it. */
    @Test
    void fewTrueWearersAreQuestioned() {
        int questioned = 0;
        int asked = 0;
        for (int i = 0; i < PEOPLE.size(); i += 2) {
            List<Violation> questions =
                    new SurveyOpinion(Survey.ANSUR_1988_WOMEN, PEOPLE.get(i)).questions(Set.of(), Unit.CENTIMETRE);
            asked++;
            questioned += questions.isEmpty() ? 0 : 1;
        }
        double share = (double) questioned / asked;
        assertTrue(share > 0, "somebody is unusual among a thousand");
        assertTrue(share < 0.035, "questioned: " + share);
    }

    /** A slip of the pen: the arm in inches among centimetres, or two digits swapped. */
    @Test
    void slipsAreQuestioned() {
        int found = 0;
        int asked = 0;
        for (int i = 0; i < PEOPLE.size(); i += 20) {
            Map<BodyDimension, Double> person = new EnumMap<>(only(
                    PEOPLE.get(i), BodyDimension.BUST_GIRTH, BodyDimension.STATURE, BodyDimension.UPPER_ARM_GIRTH));
            person.compute(BodyDimension.UPPER_ARM_GIRTH, (dimension, value) -> value / 2.54);
            asked++;
            found += new SurveyOpinion(Survey.ANSUR_1988_WOMEN, person)
                    .questions(Set.of(), Unit.CENTIMETRE)
                    .size();
        }
        assertEquals(asked, found);
    }
}
