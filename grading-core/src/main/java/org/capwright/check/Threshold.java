package org.capwright.check;

import org.capwright.quantity.Quantity;
import org.capwright.quantity.Subject;

/**
 * A limit that a label can set for itself. Growth of ease is stated per 40 mm of bust girth, or per 80 mm of stature where the sizes of the table go by stature, and is
 * scaled to the step of the sizes.
 */
public enum Threshold implements Subject {
    /** How much more than the arm the bicep may grow per step before it counts as ballooning. */
    BICEP_EASE_GROWTH(
            4,
            0,
            40,
            Quantity.LENGTH,
            "GOST 12.4.111-82: finished sleeve top +16 mm round per 40 mm of chest; less the arm's 12.3 mm (ANSUR"
                    + " 1988)"),
    /** How much more than the elbow the sleeve may grow there. */
    ELBOW_EASE_GROWTH(
            6,
            0,
            40,
            Quantity.LENGTH,
            "GOST 12.4.111-82: half way between sleeve top +16 and hem +8 mm round per 40 mm of chest; less the"
                    + " elbow's 5.8 mm (ANSUR 1988)"),
    /** How much more than the wrist the lower edge may grow. */
    WRIST_EASE_GROWTH(
            6,
            0,
            40,
            Quantity.LENGTH,
            "GOST 12.4.111-82: finished sleeve hem +8 mm round per 40 mm of chest; less the wrist's 2.1 mm (ANSUR"
                    + " 1988)"),
    /** How much more than the armscye the armhole may grow. */
    ARMHOLE_EASE_GROWTH(8, 0, 60, Quantity.LENGTH, Finding.PRACTICE),
    /** How much more than the arm the sleeve may grow in length. */
    LENGTH_GROWTH(
            5,
            0,
            60,
            Quantity.LENGTH,
            "a published grade of women's sizes 8 to 16 lengthens the sleeve by 6 mm per 50 mm of bust (Making"
                    + " Fashion, 2008); rounded up"),
    /** How much less than the arm a sleeve may grow in length per 80 mm of stature. */
    LENGTH_SHORTFALL(
            10,
            0,
            60,
            Quantity.LENGTH,
            "GOST 12.4.111-82: finished sleeve +20 mm per 80 mm of height; the arm grows by 29 mm (ANSUR 1988)"),
    /** How far below the body's jump the bicep's jump may fall, beyond the survey's interval, before it stops the grade. */
    BICEP_SHRINK_STOP(4, 0, 60, Quantity.LENGTH, Finding.PRACTICE),
    /** The same at the elbow, which many rooms do not grade at all. */
    ELBOW_SHRINK_STOP(8, 0, 60, Quantity.LENGTH, Finding.PRACTICE),
    /** The same at the wrist. */
    WRIST_SHRINK_STOP(5, 0, 60, Quantity.LENGTH, Finding.PRACTICE),
    /** The same at the armhole. */
    ARMHOLE_SHRINK_STOP(6, 0, 60, Quantity.LENGTH, Finding.PRACTICE),
    /** The same in length. */
    LENGTH_SHRINK_STOP(15, 0, 100, Quantity.LENGTH, Finding.PRACTICE),
    /** How far beyond body jump and growth of ease any jump may go before it stops the grade. */
    BALLOON_STOP(10, 0, 100, Quantity.LENGTH, Finding.PRACTICE),
    /** How much of its ease over the arm the bicep of a size may lose against the base size. */
    BICEP_EASE_LOSS_STOP(
            10,
            0,
            100,
            Quantity.LENGTH,
            "tolerance of a finished sleeve width, ±5 mm flat, so ±10 mm round: GOST 12.4.111-82"),
    /** The same at the elbow. */
    ELBOW_EASE_LOSS_STOP(
            20,
            0,
            100,
            Quantity.LENGTH,
            "twice the tolerance of a finished sleeve width: GOST 12.4.111-82; the factor is common practice, no"
                    + " source"),
    /** The same at the wrist. */
    WRIST_EASE_LOSS_STOP(
            10,
            0,
            100,
            Quantity.LENGTH,
            "tolerance of a finished sleeve width, ±5 mm flat, so ±10 mm round: GOST 12.4.111-82"),
    /** How far one size may lie off the line of its neighbours. */
    UNEVEN_CAUTION(2, 0, 50, Quantity.LENGTH, Finding.PRACTICE),
    /** How far one size may lie off the line of its neighbours before it stops the grade. */
    UNEVEN_STOP(8, 0, 100, Quantity.LENGTH, Finding.PRACTICE),
    /** How much the first or last jump may differ from the one beside it. */
    UNEVEN_END_CAUTION(2.5, 0, 50, Quantity.LENGTH, Finding.PRACTICE),
    /** How deep a larger cap may reach inside a smaller one before it stops the grade. */
    CROSSING_STOP(1, 0, 50, Quantity.LENGTH, Finding.PRACTICE),
    /** How much the cap ease may differ between the sizes of a run. */
    CAP_EASE_DRIFT_CAUTION(5, 0, 100, Quantity.LENGTH, Finding.PRACTICE),
    /** How much the cap ease may differ between the sizes of a run before it stops the grade. */
    CAP_EASE_DRIFT_STOP(
            22.2,
            0,
            200,
            Quantity.LENGTH,
            "the whole width of the taught range, 1 to 1 7/8 in: Santa Rosa Junior College, course 74936, page 7.2"),
    /** Least cap ease. */
    CAP_EASE_LEAST(0, -100, 100, Quantity.LENGTH, "industrial view, 0 to 1/2 in: Design Loft, 2007"),
    /** Least cap ease as taught. */
    CAP_EASE_TAUGHT(
            25.4, -100, 100, Quantity.LENGTH, "1 to 1 7/8 in: Santa Rosa Junior College, course 74936, page 7.2"),
    /** Greatest cap ease as taught. */
    CAP_EASE_GREATEST(
            47.6, 0, 200, Quantity.LENGTH, "1 to 1 7/8 in: Santa Rosa Junior College, course 74936, page 7.2"),
    /** How far outside the range the cap ease may lie before it stops the grade. */
    CAP_EASE_STOP_MARGIN(12.7, 0, 100, Quantity.LENGTH, Finding.PRACTICE),
    /** Bicep ease over the arm as advised. */
    BICEP_EASE_ADVISED(50.8, 0, 300, Quantity.LENGTH, "2 in or more: Threads magazine, Set-in sleeve solutions, 2021"),
    /** Least bicep ease over the arm. */
    BICEP_EASE_LEAST(
            38.1, 0, 300, Quantity.LENGTH, "1 1/2 to 2 in or more: Santa Rosa Junior College, course 74936, page 7.2"),
    /** Bicep ease over the arm below which the sleeve stops the grade. */
    BICEP_EASE_STOP(12.7, -50, 300, Quantity.LENGTH, Finding.PRACTICE),
    /** Least elbow ease over the straight elbow. */
    ELBOW_EASE_LEAST(
            12.7,
            -50,
            300,
            Quantity.LENGTH,
            "taught is 1 1/2 to 2 in or more: Santa Rosa Junior College, course 74936, page 7.2; a third of that as"
                    + " the least is common practice, no source"),
    /** Elbow ease below which the sleeve stops the grade. */
    ELBOW_EASE_STOP(3, -50, 300, Quantity.LENGTH, Finding.PRACTICE),
    /** Least ease of the lower edge over the wrist. */
    WRIST_EASE_LEAST(
            10,
            -50,
            300,
            Quantity.LENGTH,
            "taught is 1 1/2 to 2 in or more: Santa Rosa Junior College, course 74936, page 7.2; 1 cm under a closed"
                    + " cuff is common practice, no source"),
    /** Wrist ease below which the sleeve stops the grade. */
    WRIST_EASE_STOP(0, -50, 300, Quantity.LENGTH, Finding.PRACTICE),
    /** Least ease of the armhole over the armscye. */
    ARMHOLE_EASE_LEAST(25.4, -100, 300, Quantity.LENGTH, Finding.PRACTICE),
    /** Armhole ease below which the garment stops the grade. */
    ARMHOLE_EASE_STOP(0, -100, 300, Quantity.LENGTH, Finding.PRACTICE),
    /** Share of the arm from which on a sleeve is a long one. */
    LONG_SLEEVE(0.8, 0, 1, Quantity.RATIO, Finding.PRACTICE),
    /** How far above the wrist bone a long sleeve may end. */
    SHORT_OF_WRIST_CAUTION(25.4, 0, 1000, Quantity.LENGTH, Finding.PRACTICE),
    /** How far beyond the wrist bone a sleeve may end. */
    BEYOND_WRIST_CAUTION(
            76.2,
            0,
            1000,
            Quantity.LENGTH,
            "a coat sleeve ends about 1 in below the wrist bone: US Army TM 10-227, p. 4-11; 2 in more for bent arms"
                    + " and loose sleeves are common practice, no source"),
    /** How far beyond the wrist bone a sleeve ends that stops the grade: at the finger tips. */
    BEYOND_WRIST_STOP(152.4, 0, 1000, Quantity.LENGTH, Finding.PRACTICE),
    /** How much the pleat depth may differ between the sizes of a run. */
    PLEAT_DEPTH_DRIFT_CAUTION(
            3,
            0,
            100,
            Quantity.LENGTH,
            "pleat width counts among the parts that are not graded (Making Fashion, 2008); the figure is common"
                    + " practice, no source"),
    /** How much the pleat depth may differ between the sizes of a run before it stops the grade. */
    PLEAT_DEPTH_DRIFT_STOP(10, 0, 100, Quantity.LENGTH, Finding.PRACTICE),
    /** How many layers of cloth on the pleated seam are no bulk: side by side, one over two. */
    PLEAT_LAYERS_CAUTION(
            3,
            1,
            100,
            Quantity.COUNT,
            "pleats whose depth is above their width overlap: NIMI, Dress Making, trade practical, p. 202"),
    /** How many layers of cloth on the pleated seam stop the grade. */
    PLEAT_LAYERS_STOP(7, 1, 200, Quantity.COUNT, Finding.PRACTICE),
    /** How often the curvature of one half of a cap line changes its sign. */
    INFLECTIONS(
            1,
            0,
            20,
            Quantity.COUNT,
            "the cap of a set-in sleeve is rounded out above and hollow below: common practice, no source"),
    /** How much the ratio of cap height to bicep may differ from the base size. */
    PROPORTION_CAUTION(0.025, 0, 1, Quantity.RATIO, Finding.PRACTICE),
    /** How much the ratio of cap height to bicep may differ from the base size before it stops the grade. */
    PROPORTION_STOP(0.08, 0, 1, Quantity.RATIO, Finding.PRACTICE),
    /** How far the balance of front and back may shift against the base size. */
    BALANCE_CAUTION(3, 0, 100, Quantity.LENGTH, Finding.PRACTICE),
    /** How far the balance of front and back may shift against the base size before it stops the grade. */
    BALANCE_STOP(12, 0, 100, Quantity.LENGTH, Finding.PRACTICE);

    private final double usual;
    private final double least;
    private final double greatest;
    private final Quantity quantity;
    private final String source;

    Threshold(double usual, double least, double greatest, Quantity quantity, String source) {
        this.usual = usual;
        this.least = least;
        this.greatest = greatest;
        this.quantity = quantity;
        this.source = source;
    }

    /**
     * The name in settings.
     *
     * @return camelCase, such as {@code capEaseDriftStop}
     */
    public String key() {
        StringBuilder key = new StringBuilder();
        for (String word : name().split("_")) {
            String small = word.toLowerCase(java.util.Locale.ROOT);
            key.append(key.isEmpty() ? small : Character.toUpperCase(small.charAt(0)) + small.substring(1));
        }
        return key.toString();
    }

    @Override
    public String code() {
        return key();
    }

    /**
     * The limit where a label sets none.
     *
     * @return millimetres, a count or a ratio
     */
    public double usual() {
        return usual;
    }

    /**
     * The least limit that can be set.
     *
     * @return millimetres, a count or a ratio
     */
    public double least() {
        return least;
    }

    /**
     * The greatest limit that can be set.
     *
     * @return millimetres, a count or a ratio
     */
    public double greatest() {
        return greatest;
    }

    /**
     * What kind of number it is.
     *
     * @return length, count or ratio
     */
    public Quantity quantity() {
        return quantity;
    }

    /**
     * Where the usual limit comes from.
     *
     * @return a publication, or {@code common practice, no source}
     */
    public String source() {
        return source;
    }
}
