package org.capwright.check;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.capwright.measure.Unit;
import org.junit.jupiter.api.Test;

class GradeChecksTest {

    /** The workshop's own grade is fit to cut as it stands. */
    @Test
    void choirGownHasNoStop() {
        List<Finding> found = GradeChecks.run(ChoirGown.grade(), Thresholds.usual());
        assertTrue(
                found.stream().noneMatch(f -> f.severity() == Severity.STOP),
                () -> found.stream().map(f -> f.text(Unit.MILLIMETRE)).toList().toString());
    }
}
