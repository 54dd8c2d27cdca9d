package org.capwright.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.capwright.tables.Interval;

/**
 * All checks of a grade. First come those that find figures which cannot be meant so: gaps, units, order, mirrored pieces. What they doubt is left out of the others, which would only
 * tell of the consequences.
 */
public final class GradeChecks {

    private static final List<PlausibilityCheck> SIEVES = List.of(
            new MissingSizeCheck(),
            new UnitMistakeCheck(),
            new MovedPointCheck(),
            new SizesSwappedCheck(),
            new MirroredPieceCheck());

    private static final List<GradeCheck> JUDGEMENTS = List.of(
            new BodyJumpCheck(),
            new SurveyJumpCheck(),
            BodyEaseCheck.BICEP,
            BodyEaseCheck.ELBOW,
            BodyEaseCheck.WRIST,
            BodyEaseCheck.ARMHOLE,
            new SleeveLengthCheck(),
            new UnevenJumpCheck(),
            new CapEaseDriftCheck(),
            new CapEaseRangeCheck(),
            new ProportionCheck(),
            new BalanceCheck(),
            new CurvatureCheck(),
            new CrossingLinesCheck(),
            new PleatDepthDriftCheck(),
            new PleatLayersCheck());

    private static final List<GradeCheck> WITHOUT_OPINION = JUDGEMENTS.stream()
            .filter(check -> !(check instanceof SurveyJumpCheck))
            .toList();

    private GradeChecks() {}

    /**
     * The checks that are made.
     *
     * @return all checks, in the order of their findings
     */
    public static List<GradeCheck> all() {
        return Stream.concat(SIEVES.stream(), JUDGEMENTS.stream()).toList();
    }

    /**
     * Makes all checks.
     *
     * @param grade the grade
     * @param thresholds limits of the label
     * @return what was found, check by check; empty when all is well
     */
    public static List<Finding> run(CheckedGrade grade, Thresholds thresholds) {
        return run(grade, thresholds, JUDGEMENTS);
    }

    /** All checks but the opinion of the survey, which never judges. */
    static List<Finding> judged(CheckedGrade grade, Thresholds thresholds) {
        return run(grade, thresholds, WITHOUT_OPINION);
    }

    private static List<Finding> run(CheckedGrade grade, Thresholds thresholds, List<GradeCheck> judgements) {
        List<Finding> found = new ArrayList<>();
        CheckedGrade rest = grade;
        for (PlausibilityCheck sieve : SIEVES) {
            PlausibilityCheck.Sifted sifted = sieve.sift(rest, thresholds);
            found.addAll(sifted.found());
            rest = sifted.rest();
        }
        for (GradeCheck check : judgements) {
            found.addAll(check.check(rest, thresholds));
        }
        return List.copyOf(found);
    }

    /**
     * Between what a jump must lie so that the body's jump is neither eaten from the ease nor overdone.
     *
     * @param grade the grade, with the bodies it is compared with
     * @param measure what jumps
     * @param interval which jump, 0 for the one between the two smallest sizes
     * @param thresholds limits of the label
     * @return the jumps that pass, mm; empty where no body stands behind the measure or the table does not have both sizes
     */
    public static Optional<Interval> passing(
            CheckedGrade grade, CheckedMeasure measure, int interval, Thresholds thresholds) {
        return JumpBounds.LIMITS.stream()
                .filter(limits -> limits.measure() == measure && grade.body().isPresent())
                .findFirst()
                .flatMap(limits -> JumpBounds.of(
                        grade.body().orElseThrow(),
                        limits,
                        grade.label(interval),
                        grade.label(interval + 1),
                        thresholds))
                .map(bounds -> bounds.widened(grade.leeway(interval, measure) + grade.leeway(interval + 1, measure)))
                .map(bounds -> new Interval(bounds.least(), bounds.greatest()));
    }
}
