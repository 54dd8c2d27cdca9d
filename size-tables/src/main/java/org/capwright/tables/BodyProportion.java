package org.capwright.tables;

import java.util.List;
import java.util.Map;

/**
 * What no body exceeds, of women, men or children: one measurement as a share of another. The limits are ours (common practice, no source), well outside the people of the
 * surveys that come with the library.
 *
 * @param part the smaller measurement
 * @param whole the larger one
 * @param greatest greatest share of the larger one that the smaller one has, above 0
 */
public record BodyProportion(BodyDimension part, BodyDimension whole, double greatest) {

    /** The proportions that are looked at. */
    public static final List<BodyProportion> ALL = List.of(
            new BodyProportion(BodyDimension.WRIST_GIRTH, BodyDimension.UPPER_ARM_GIRTH, 0.9),
            new BodyProportion(BodyDimension.WRIST_GIRTH, BodyDimension.ELBOW_GIRTH, 0.9),
            new BodyProportion(BodyDimension.WRIST_GIRTH, BodyDimension.FOREARM_GIRTH_FLEXED, 0.9),
            new BodyProportion(BodyDimension.WRIST_GIRTH, BodyDimension.UPPER_ARM_GIRTH_FLEXED, 0.9),
            new BodyProportion(BodyDimension.WRIST_GIRTH, BodyDimension.ARMSCYE_GIRTH, 0.65),
            new BodyProportion(BodyDimension.WRIST_GIRTH, BodyDimension.BUST_GIRTH, 0.35),
            new BodyProportion(BodyDimension.ELBOW_GIRTH, BodyDimension.UPPER_ARM_GIRTH, 1.1),
            new BodyProportion(BodyDimension.ELBOW_GIRTH, BodyDimension.ARMSCYE_GIRTH, 0.95),
            new BodyProportion(BodyDimension.ELBOW_GIRTH, BodyDimension.BUST_GIRTH, 0.45),
            new BodyProportion(BodyDimension.UPPER_ARM_GIRTH, BodyDimension.ARMSCYE_GIRTH, 1),
            new BodyProportion(BodyDimension.UPPER_ARM_GIRTH, BodyDimension.BUST_GIRTH, 0.5),
            new BodyProportion(BodyDimension.UPPER_ARM_GIRTH_FLEXED, BodyDimension.BUST_GIRTH, 0.55),
            new BodyProportion(BodyDimension.UPPER_ARM_GIRTH, BodyDimension.UPPER_ARM_GIRTH_FLEXED, 1.35),
            new BodyProportion(BodyDimension.UPPER_ARM_GIRTH_FLEXED, BodyDimension.UPPER_ARM_GIRTH, 1.35),
            new BodyProportion(BodyDimension.ARMSCYE_GIRTH, BodyDimension.BUST_GIRTH, 0.65),
            new BodyProportion(BodyDimension.BUST_GIRTH, BodyDimension.SHOULDER_GIRTH, 1.2),
            new BodyProportion(BodyDimension.NECK_BASE_GIRTH, BodyDimension.BUST_GIRTH, 0.7),
            new BodyProportion(BodyDimension.UPPER_ARM_LENGTH, BodyDimension.ARM_LENGTH, 0.75),
            new BodyProportion(BodyDimension.ARM_LENGTH, BodyDimension.UPPER_ARM_LENGTH, 2.3),
            new BodyProportion(BodyDimension.ARM_LENGTH, BodyDimension.STATURE, 0.45),
            new BodyProportion(BodyDimension.STATURE, BodyDimension.ARM_LENGTH, 4.5),
            new BodyProportion(BodyDimension.UPPER_ARM_LENGTH, BodyDimension.STATURE, 0.27),
            new BodyProportion(BodyDimension.SCYE_DEPTH, BodyDimension.STATURE, 0.2),
            new BodyProportion(BodyDimension.BUST_GIRTH, BodyDimension.STATURE, 1.1),
            new BodyProportion(BodyDimension.UPPER_ARM_GIRTH, BodyDimension.STATURE, 0.4),
            new BodyProportion(BodyDimension.UPPER_ARM_GIRTH, BodyDimension.ARM_LENGTH, 1.2));

    /**
     * Whether two measurements of one body go together.
     *
     * @param measured measurements, mm
     * @return false only where both are there and the smaller one has too great a share
     */
    public boolean holds(Map<BodyDimension, Double> measured) {
        Double small = measured.get(part);
        Double large = measured.get(whole);
        return small == null || large == null || small <= greatest * large;
    }
}
