package org.capwright.draft;

import java.util.ArrayList;
import java.util.List;
import org.capwright.measure.Dimension;
import org.capwright.measure.Dimensions;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Violation;

/**
 * The measures of an under-sleeve, checked and with what was not given filled in.
 *
 * @param elbowLevel depth of the elbow line below the bicep line
 * @param wristLevel depth of the wrist line below the bicep line along the centre line
 * @param elbow width at the elbow line
 * @param wrist width at the wrist line
 * @param skew how much wider the front half is than the middle of both, at every level
 * @param opening what the turn at the elbow opens on the back seam: width of the dart or ease; 0 where the sleeve only tapers
 * @param reach length of the dart's legs, or half the stretch of the easing; 0 where the sleeve only tapers
 */
record UnderSleeveMeasures(
        double elbowLevel, double wristLevel, double elbow, double wrist, double skew, double opening, double reach) {

    /** Width of an elbow dart where none is given, mm. Common practice, no source. */
    static final double USUAL_DART = 20;

    /** Ease of the back seam where none is given, mm. Common practice, no source. */
    static final double USUAL_EASE = 10;

    /** Half the stretch over which the back seam is eased, mm, if the sleeve is long enough. Common practice, no source. */
    static final double USUAL_REACH = 60;

    /** The same as a share of the shorter part of the sleeve, above or below the elbow. */
    private static final double GREATEST_REACH = 0.3;

    /** The most ease that a seam takes up, as a share of the stretch. Common practice, no source. */
    private static final double GREATEST_EASE = 0.2;

    /** The widest opening as a share of the elbow: a turn of 11.5 degrees. Common practice, no source. */
    private static final double GREATEST_TURN = 0.2;

    /** The widest opening as a share of the shorter part of the sleeve. */
    private static final double GREATEST_SHARE = 1.0 / 3;

    /** The elbow of a sleeve that is turned there lies no nearer to the bicep line or the wrist line than this share of the way. Common practice, no source. */
    private static final double NEAREST = 0.2;

    double frontElbow() {
        return elbow / 2 + skew;
    }

    double backElbow() {
        return elbow / 2 - skew;
    }

    static UnderSleeveMeasures of(BaseSleeve base, Dimensions dimensions, ElbowShaping shaping) {
        double wristLevel = dimensions.get(Dimension.LENGTH) - base.capHeight();
        double wrist = dimensions.get(Dimension.WRIST);
        if (wristLevel < 2 * Dimension.ELBOW_LEVEL.least()) {
            throw new InvalidMeasuresException(Violation.lengthBelow(
                    Dimension.LENGTH,
                    "the wrist must lie below the bicep line",
                    dimensions.get(Dimension.LENGTH),
                    base.capHeight() + 2 * Dimension.ELBOW_LEVEL.least()));
        }
        double elbowLevel = elbowLevel(dimensions, shaping, wristLevel);
        List<Violation> found = new ArrayList<>();
        double straight = base.bicep() + (wrist - base.bicep()) * elbowLevel / wristLevel;
        double elbow = dimensions.getOr(Dimension.ELBOW, straight);
        if (wrist > elbow) {
            found.add(Violation.lengthAbove(Dimension.WRIST, "the wrist cannot be wider than the elbow", wrist, elbow));
        }
        double narrow = Math.abs(base.front().width() - base.back().width());
        if (wrist <= narrow) {
            found.add(Violation.lengthBelow(
                    Dimension.WRIST, "one half would have no width at the wrist", wrist, narrow + 1));
        }
        addUnused(found, dimensions, shaping);
        if (!found.isEmpty()) {
            throw new InvalidMeasuresException(found);
        }
        double skew = (base.front().width() - base.back().width()) / 2;
        UnderSleeveMeasures tapered = new UnderSleeveMeasures(elbowLevel, wristLevel, elbow, wrist, skew, 0, 0);
        return switch (shaping) {
            case TAPERED -> tapered;
            case ELBOW_DART -> tapered.withDart(dimensions);
            case EASED_SEAM -> tapered.withEase(dimensions);
        };
    }

    private static double elbowLevel(Dimensions dimensions, ElbowShaping shaping, double wristLevel) {
        double level = dimensions.getOr(Dimension.ELBOW_LEVEL, wristLevel / 2);
        double lowest = wristLevel - Dimension.ELBOW_LEVEL.least();
        if (level > lowest) {
            throw new InvalidMeasuresException(Violation.lengthAbove(
                    Dimension.ELBOW_LEVEL, "the elbow line must lie above the wrist line", level, lowest));
        }
        if (shaping != ElbowShaping.TAPERED && (level < NEAREST * wristLevel || level > (1 - NEAREST) * wristLevel)) {
            throw new InvalidMeasuresException(Violation.lengthOutside(
                    Dimension.ELBOW_LEVEL,
                    "too near to the bicep line or the wrist line for a sleeve that is turned at the elbow",
                    level,
                    NEAREST * wristLevel,
                    (1 - NEAREST) * wristLevel));
        }
        return level;
    }

    private static void addUnused(List<Violation> found, Dimensions dimensions, ElbowShaping shaping) {
        if (shaping != ElbowShaping.ELBOW_DART) {
            for (Dimension dart : List.of(Dimension.ELBOW_DART, Dimension.ELBOW_DART_LENGTH)) {
                if (dimensions.has(dart)) {
                    found.add(Violation.of(dart, "only an under-sleeve shaped by an elbow dart has one"));
                }
            }
        }
        if (shaping != ElbowShaping.EASED_SEAM && dimensions.has(Dimension.ELBOW_EASE)) {
            found.add(Violation.of(Dimension.ELBOW_EASE, "only an under-sleeve shaped by an eased seam has such ease"));
        }
    }

    /** The part of the sleeve above the elbow or that below it, whichever is shorter, mm. */
    double shorterPart() {
        return Math.min(elbowLevel, wristLevel - elbowLevel);
    }

    /** A dart points to the centre line and ends no further than there; its legs are at least twice as long as it is wide. */
    private UnderSleeveMeasures withDart(Dimensions dimensions) {
        double widest = Math.min(Math.min(GREATEST_TURN * elbow, GREATEST_SHARE * shorterPart()), backElbow() / 2);
        double usual = Math.min(USUAL_DART, widest / 2);
        double width = dimensions.getOr(
                Dimension.ELBOW_DART, Math.min(usual, dimensions.getOr(Dimension.ELBOW_DART_LENGTH, 2 * usual) / 2));
        if (width > widest) {
            throw new InvalidMeasuresException(Violation.lengthAbove(
                    Dimension.ELBOW_DART, "the dart is wider than the elbow can take", width, widest));
        }
        double length = dimensions.getOr(Dimension.ELBOW_DART_LENGTH, Math.max(2 * width, backElbow() / 2));
        if (length < 2 * width || length > backElbow()) {
            throw new InvalidMeasuresException(Violation.lengthOutside(
                    Dimension.ELBOW_DART_LENGTH,
                    "a leg is at least twice as long as the dart is wide and ends at the centre line at the latest",
                    length,
                    2 * width,
                    backElbow()));
        }
        return shaped(width, length);
    }

    private UnderSleeveMeasures withEase(Dimensions dimensions) {
        double reach = Math.min(USUAL_REACH, GREATEST_REACH * shorterPart());
        double most = Math.min(GREATEST_EASE * 2 * reach, GREATEST_TURN * elbow);
        double ease = dimensions.getOr(Dimension.ELBOW_EASE, Math.min(USUAL_EASE, most / 2));
        if (ease > most) {
            throw new InvalidMeasuresException(Violation.lengthAbove(
                    Dimension.ELBOW_EASE, "more ease than the seam at the elbow can take up", ease, most));
        }
        return shaped(ease, reach);
    }

    UnderSleeveMeasures withWrist(double other) {
        return new UnderSleeveMeasures(elbowLevel, wristLevel, elbow, other, skew, opening, reach);
    }

    private UnderSleeveMeasures shaped(double opened, double reached) {
        return new UnderSleeveMeasures(elbowLevel, wristLevel, elbow, wrist, skew, opened, reached);
    }
}
