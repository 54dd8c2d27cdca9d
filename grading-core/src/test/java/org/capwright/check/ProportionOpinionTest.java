package org.capwright.check;

import static org.capwright.tables.BodyDimension.ARMSCYE_GIRTH;
import static org.capwright.tables.BodyDimension.ARM_LENGTH;
import static org.capwright.tables.BodyDimension.BUST_GIRTH;
import static org.capwright.tables.BodyDimension.ELBOW_GIRTH;
import static org.capwright.tables.BodyDimension.STATURE;
import static org.capwright.tables.BodyDimension.UPPER_ARM_GIRTH;
import static org.capwright.tables.BodyDimension.WRIST_GIRTH;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Set;
import org.capwright.quantity.Subject;
import org.capwright.quantity.Violation;
import org.capwright.tables.BodyDimension;
import org.junit.jupiter.api.Test;

class ProportionOpinionTest {

    private static List<Subject> questioned(Map<BodyDimension, Double> given, BodyDimension... confirmed) {
        return ProportionOpinion.questions(given, Set.of(confirmed), Set.of()).stream()
                .map(Violation::subject)
                .toList();
    }

    /** Anatomy: a wrist is thinner than the arm, an arm shorter than its owner. Where two contradict only each other, either may be wrong. */
    @Test
    void namesWhatContradictsTheOthers() {
        assertEquals(
                List.of(UPPER_ARM_GIRTH, WRIST_GIRTH), questioned(Map.of(UPPER_ARM_GIRTH, 300.0, WRIST_GIRTH, 310.0)));
        assertEquals(
                List.of(WRIST_GIRTH),
                questioned(Map.of(UPPER_ARM_GIRTH, 300.0, WRIST_GIRTH, 310.0, ELBOW_GIRTH, 260.0, BUST_GIRTH, 960.0)));
        assertEquals(
                List.of(STATURE),
                questioned(Map.of(STATURE, 860.0, BUST_GIRTH, 960.0, ARM_LENGTH, 590.0, UPPER_ARM_GIRTH, 315.0)));
        assertEquals(
                List.of(UPPER_ARM_GIRTH, ARMSCYE_GIRTH),
                questioned(Map.of(UPPER_ARM_GIRTH, 400.0, ARMSCYE_GIRTH, 370.0)));
        assertEquals(List.of(), questioned(Map.of(UPPER_ARM_GIRTH, 300.0, WRIST_GIRTH, 160.0)));
    }

    @Test
    void leavesTheRangeThatTheOthersAllow() {
        Violation wrist = ProportionOpinion.questions(
                        Map.of(UPPER_ARM_GIRTH, 300.0, WRIST_GIRTH, 310.0), Set.of(), Set.of())
                .get(1);
        assertEquals(270, wrist.greatest().orElseThrow(), 1e-9);
        assertEquals(310, wrist.value().orElseThrow());
        assertTrue(
                wrist.reason().toString().contains("upperArmGirth")
                        && wrist.reason().toString().contains("measure again"),
                wrist.reason().toString());
    }

    @Test
    void asksNoMoreOfWhatWasConfirmedOrIsQuestionedAlready() {
        Map<BodyDimension, Double> odd = Map.of(UPPER_ARM_GIRTH, 300.0, WRIST_GIRTH, 310.0);
        assertEquals(List.of(UPPER_ARM_GIRTH), questioned(odd, WRIST_GIRTH));
        assertEquals(List.of(), questioned(odd, WRIST_GIRTH, UPPER_ARM_GIRTH));
        Map<BodyDimension, Double> odder = Map.of(UPPER_ARM_GIRTH, 300.0, WRIST_GIRTH, 310.0, ELBOW_GIRTH, 260.0);
        assertEquals(List.of(), questioned(odder, WRIST_GIRTH), "set aside, it makes no others doubtful");
        assertEquals(List.of(), ProportionOpinion.questions(odd, Set.of(), Set.of(WRIST_GIRTH)));
    }

    /** Children of the standards' own figures: GOST for knitted undershirts has boys of 72 cm of chest; a toddler of 86 cm with an arm of 15 cm round passes too. */
    @Test
    void childrenPass() {
        assertEquals(
                List.of(),
                questioned(Map.of(
                        STATURE,
                        860.0,
                        BUST_GIRTH,
                        520.0,
                        ARM_LENGTH,
                        280.0,
                        UPPER_ARM_GIRTH,
                        155.0,
                        WRIST_GIRTH,
                        110.0)));
    }
}
