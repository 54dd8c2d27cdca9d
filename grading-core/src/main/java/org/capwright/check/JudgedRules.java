package org.capwright.check;

import java.util.List;
import org.capwright.draft.SleeveStyle;
import org.capwright.grade.GradeRule;
import org.capwright.grade.derive.DerivationRequest;
import org.capwright.grade.derive.DerivedRules;
import org.capwright.quantity.InvalidMeasuresException;

/**
 * Derived rules, made even under the checks that judge them. A table's class means go up and down by chance, and a grid does the same to what is rounded size by size; a room wants one increment, that
 * changes only where the bodies demand it. So each rule is the one with the fewest breaks, all increments on the grid, that its checks pass, nearest to the growth of the bodies; cap height and armhole are
 * chosen together for the cap ease, the rise for the depth of the pleats.
 *
 * @param rules one rule for each dimension that was derived
 * @param left cautions and stops that the rules bring about all the same: no increments on the grid pass all checks, and each finding says which does not
 */
public record JudgedRules(List<GradeRule> rules, List<Finding> left) {

    /**
     * Copies the lists.
     *
     * @param rules one rule for each dimension that was derived
     * @param left cautions and stops that the rules bring about all the same
     */
    public JudgedRules {
        rules = List.copyOf(rules);
        left = List.copyOf(left);
    }

    /**
     * Makes derived rules even.
     *
     * @param derived the rules as they follow from the bodies
     * @param request what they were derived from
     * @param style what is the same in every size
     * @param ofRun the rules that the run has so far; those of dimensions that are derived give way
     * @param body the bodies that the run is compared with
     * @param thresholds limits of the label
     * @return the rules; those that were derived, with nothing said of them, where no sleeve can be drafted with them, which whoever drafts it is told
     */
    public static JudgedRules of(
            DerivedRules derived,
            DerivationRequest request,
            SleeveStyle style,
            List<GradeRule> ofRun,
            BodyReference body,
            Thresholds thresholds) {
        try {
            return new RuleJudging(derived, request, style, ofRun, body, thresholds).judged();
        } catch (InvalidMeasuresException e) {
            return asDerived(derived);
        }
    }

    /**
     * Rules as they were derived, size by size, compared with no check.
     *
     * @param derived the rules as they follow from the bodies
     * @return the same rules
     */
    public static JudgedRules asDerived(DerivedRules derived) {
        return new JudgedRules(derived.rules(), List.of());
    }
}
