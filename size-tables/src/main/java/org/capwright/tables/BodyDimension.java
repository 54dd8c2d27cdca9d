package org.capwright.tables;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/**
 * Body dimensions, named in the manner of ISO 8559-1:2017 and defined in our own words.
 *
 * <p>The clause numbers were read second-hand, on the page of a vendor of body scans, and not in the standard.
 * A dimension without a clause is one whose number could not be read; the landmarks are then those of the survey.
 *
 * <p>The plausible range is a bound of ours for catching slips such as centimetres entered as millimetres. It is
 * wider than the smallest and largest adult of the two surveys ANSUR 1988 and ANSUR II 2012 and leaves room for
 * children from about two years. It is not a published figure.
 */
public enum BodyDimension implements TableDimension {
    /** Standing height, from the floor to the top of the head. */
    STATURE(
            "stature",
            "",
            Family.LENGTH,
            700,
            2300,
            "Vertical distance from the floor to the highest point of the head, standing without shoes."),
    /** Horizontal girth at the bust points; for men and boys the chest girth at the same level. */
    BUST_GIRTH(
            "bustGirth",
            "5.3.4",
            Family.GIRTH,
            400,
            2000,
            "Horizontal girth of the trunk at the level of the bust points; for men and boys the chest girth at the"
                    + " nipples."),
    /** Chest girth at the sixth rib after breathing out, below the bust points. */
    CHEST_GIRTH_SIXTH_RIB(
            "chestGirthSixthRib",
            "",
            Family.GIRTH,
            400,
            1900,
            "Horizontal girth of the trunk at the sixth rib after breathing out. Not a bust girth."),
    /** Girth over the upper chest, above the bust and under the arms. */
    UPPER_CHEST_GIRTH(
            "upperChestGirth", "", Family.GIRTH, 400, 1900, "Girth of the trunk above the bust, close under the arms."),
    /** Girth of the body and both arms at the level of the shoulders. */
    SHOULDER_GIRTH(
            "shoulderGirth",
            "",
            Family.GIRTH,
            500,
            2100,
            "Horizontal girth of the body over both upper arms, a little below the shoulder points."),
    /** Girth of the base of the neck. */
    NECK_BASE_GIRTH(
            "neckBaseGirth",
            "5.3.3",
            Family.GIRTH,
            200,
            700,
            "Girth of the neck where it meets the trunk, through the back neck point and over both side neck points."),
    /** Girth of the natural waist. */
    WAIST_GIRTH("waistGirth", "5.3.10", Family.GIRTH, 350, 2000, "Horizontal girth of the trunk at the natural waist."),
    /** Girth of the hips at their fullest. */
    HIP_GIRTH(
            "hipGirth",
            "5.3.13",
            Family.GIRTH,
            400,
            2100,
            "Horizontal girth of the trunk at the fullest level of the buttocks."),
    /** Girth of the hanging, relaxed upper arm. */
    UPPER_ARM_GIRTH(
            "upperArmGirth",
            "5.3.16",
            Family.GIRTH,
            100,
            700,
            "Girth of the relaxed upper arm, square to its axis, half way from the shoulder point to the elbow point."
                    + " The survey of 1988 takes it a little higher, at the armpit."),
    /** Girth of the upper arm over the tensed biceps. */
    UPPER_ARM_GIRTH_FLEXED(
            "upperArmGirthFlexed",
            "",
            Family.GIRTH,
            100,
            750,
            "Girth of the upper arm over the tensed biceps with the elbow bent. Not the girth a sleeve is drafted to."),
    /** Girth of the elbow with the arm straight. */
    ELBOW_GIRTH("elbowGirth", "", Family.GIRTH, 100, 550, "Girth of the straight arm at the level of the elbow point."),
    /** Girth of the tensed forearm below the elbow. */
    FOREARM_GIRTH_FLEXED(
            "forearmGirthFlexed",
            "",
            Family.GIRTH,
            100,
            550,
            "Largest girth of the forearm below the elbow, arm bent and fist clenched."),
    /** Girth of the wrist over the wrist bones. */
    WRIST_GIRTH("wristGirth", "5.3.19", Family.GIRTH, 80, 350, "Girth of the wrist at the level of the wrist bone."),
    /** Girth round the joint of arm and trunk. */
    ARMSCYE_GIRTH(
            "armscyeGirth",
            "",
            Family.GIRTH,
            150,
            900,
            "Girth of the arm where it joins the trunk: over the shoulder point and through the armpit."),
    /** Depth of the armhole at the back, from the neck to the armpit level. */
    SCYE_DEPTH(
            "scyeDepth",
            "",
            Family.LENGTH,
            80,
            400,
            "Distance down the back from the back neck point to the level of the armpit."),
    /** Length of the upper arm. */
    UPPER_ARM_LENGTH(
            "upperArmLength",
            "",
            Family.LENGTH,
            100,
            550,
            "Length from the shoulder point (acromion) to the elbow; in the army surveys to the top of the radius."),
    /** Length of the whole arm without the hand. */
    ARM_LENGTH(
            "armLength",
            "5.7.8",
            Family.LENGTH,
            180,
            950,
            "Length of the outer arm from the shoulder point to the wrist bone. In the army surveys it is the sleeve"
                    + " outseam with the arm hanging, not bent.");

    /** What sort of length it is: round the body, or along it. */
    public enum Family {
        /** A length round the trunk or a limb; grows with the bust girth. */
        GIRTH,
        /** A length along the body; grows with the stature. */
        LENGTH
    }

    private static final Map<String, BodyDimension> BY_ID = new HashMap<>();

    static {
        for (BodyDimension dimension : values()) {
            BY_ID.put(dimension.id, dimension);
        }
    }

    private final String id;
    private final String isoClause;
    private final Family family;
    private final Interval plausible;
    private final String definition;

    BodyDimension(String id, String isoClause, Family family, double least, double greatest, String definition) {
        this.id = id;
        this.isoClause = isoClause;
        this.family = family;
        this.plausible = new Interval(least, greatest);
        this.definition = definition;
    }

    @Override
    public String id() {
        return id;
    }

    @Override
    public String definition() {
        return definition;
    }

    /**
     * The clause of ISO 8559-1:2017 that defines the dimension.
     *
     * @return the clause, such as {@code 5.3.16}, or empty when it could not be read
     */
    public Optional<String> isoClause() {
        return isoClause.isEmpty() ? Optional.empty() : Optional.of(isoClause);
    }

    /**
     * Whether the dimension lies round the body or along it.
     *
     * @return the family
     */
    public Family family() {
        return family;
    }

    /**
     * The range outside of which a value is taken for a slip.
     *
     * @return the range in millimetres, both ends allowed
     */
    public Interval plausible() {
        return plausible;
    }

    /**
     * Finds a body dimension by its name.
     *
     * @param id the name in camelCase, such as {@code upperArmGirth}
     * @return the dimension, or empty when the name is not known
     */
    public static Optional<BodyDimension> find(String id) {
        return Optional.ofNullable(BY_ID.get(id));
    }
}
