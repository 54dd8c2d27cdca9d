package org.capwright.measure;

/**
 * A dimension of a sleeve style that is given in numbers and can be graded. All are lengths in millimetres.
 */
public enum Dimension implements SleeveSubject {
    /** Width of the sleeve on the bicep line, front and back halves together. */
    BICEP("bicep", 60, 1500, "Width of the finished sleeve along the bicep line, underarm point to underarm point."),
    /** Length of the under-sleeve, from the apex down the centre line to the wrist. */
    LENGTH("length", 20, 2000, "From the apex down the centre line to the finished lower edge of the under-sleeve."),
    /** Height of the cap above the bicep line. */
    CAP_HEIGHT("capHeight", 10, 500, "From the bicep line up the centre line to the apex."),
    /** Length of the whole armhole seam of the garment body. */
    ARMHOLE("armhole", 80, 1500, "Length of the armhole seam line of the body, all round."),
    /** How far the cap line stands outward at the first division, both halves. */
    CAP_OUTWARD("capOutward", 0.5, 200, "At the first quarter of the slanted cap line, square out to the cap line."),
    /** How far the cap line is scooped inward at the third division, both halves. */
    CAP_INWARD("capInward", 0.5, 200, "At the third quarter of the slanted cap line, square in to the cap line."),
    /** Width of the front half on the bicep line. */
    FRONT_WIDTH("frontWidth", 30, 800, "From the centre line to the front underarm point along the bicep line."),
    /** Front outward displacement, where the halves differ. */
    FRONT_CAP_OUTWARD("frontCapOutward", 0.5, 200, "As the outward displacement, front half alone."),
    /** Front inward displacement, where the halves differ. */
    FRONT_CAP_INWARD("frontCapInward", 0.5, 200, "As the inward displacement, front half alone."),
    /** Length of the front armhole seam, shoulder to underarm. */
    FRONT_ARMHOLE("frontArmhole", 40, 800, "Length of the front armhole seam line, shoulder point to underarm point."),
    /** Back outward displacement, where the halves differ. */
    BACK_CAP_OUTWARD("backCapOutward", 0.5, 200, "As the outward displacement, back half alone."),
    /** Back inward displacement, where the halves differ. */
    BACK_CAP_INWARD("backCapInward", 0.5, 200, "As the inward displacement, back half alone."),
    /** How far the overlay's apex is raised above the apex of the cap. */
    RISE("rise", 0, 800, "From the apex of the cap straight up to the apex of the overlay."),
    /** Length of the overlay from the cap's apex down the fold. */
    OVERLAY_LENGTH(
            "overlayLength",
            20,
            2000,
            "From the apex of the cap (before the rise) down the fold to the finished hem of the overlay."),
    /** How far the overlay's hem lies below the bicep line at its side. */
    SIDE_DEPTH("sideDepth", 0, 1500, "From the underarm point of the overlay straight down its side to the hem."),
    /** How far a bowed hem bows out from the straight line. */
    HEM_SAGITTA(
            "hemSagitta",
            -400,
            400,
            "From the middle of the straight hem line, square out to the bowed hem; negative is hollow."),
    /** Width added to each half of the overlay. */
    EXTRA_WIDTH("extraWidth", 0, 600, "Width added to each half of the overlay along the bicep line."),
    /** Armhole left free in front. */
    FRONT_GAP("frontGap", 0, 700, "Along the armhole from the underarm point up to the front end of the overlay."),
    /** Armhole left free behind. */
    BACK_GAP("backGap", 0, 700, "Along the armhole from the underarm point up to the back end of the overlay."),
    /** Depth of a pleat. */
    PLEAT_DEPTH("pleatDepth", 1, 300, "From the fold of a closed pleat to the fold beneath it."),
    /** Width of the under-sleeve at the elbow. */
    ELBOW("elbow", 40, 1500, "Width of the finished under-sleeve at the elbow line, all round."),
    /** Width of the under-sleeve at the wrist. */
    WRIST("wrist", 30, 1500, "Width of the finished under-sleeve at its lower edge, all round."),
    /** Depth of the elbow line below the bicep line. */
    ELBOW_LEVEL("elbowLevel", 5, 1500, "From the bicep line straight down to the elbow line."),
    /** Width of the elbow dart. */
    ELBOW_DART("elbowDart", 2, 150, "Across the open elbow dart along the back underarm seam, leg end to leg end."),
    /** Length of the elbow dart. */
    ELBOW_DART_LENGTH(
            "elbowDartLength",
            10,
            500,
            "Along a leg of the elbow dart, from the back underarm seam to the point of the dart."),
    /** Ease of the back underarm seam at the elbow. */
    ELBOW_EASE(
            "elbowEase", 1, 80, "Length of the back underarm seam less that of the front one, eased in at the elbow."),
    /** Girth that the lower edge must let pass. */
    HAND_GIRTH(
            "handGirth",
            60,
            600,
            "Round the widest part of the hand with the thumb laid across the palm: what the lower edge must let pass.");

    private final String gradeName;
    private final double least;
    private final double greatest;
    private final String definition;

    Dimension(String gradeName, double least, double greatest, String definition) {
        this.gradeName = gradeName;
        this.least = least;
        this.greatest = greatest;
        this.definition = definition;
    }

    /**
     * The name of the dimension, as grade rules have it.
     *
     * @return for example {@code capHeight}; unique
     */
    public String gradeName() {
        return gradeName;
    }

    @Override
    public String code() {
        return gradeName;
    }

    /**
     * The least value that a sleeve for any wearer can need.
     *
     * @return millimetres
     */
    public double least() {
        return least;
    }

    /**
     * The greatest value that is drafted.
     *
     * @return millimetres
     */
    public double greatest() {
        return greatest;
    }

    /**
     * How the dimension is measured.
     *
     * @return one sentence
     */
    public String definition() {
        return definition;
    }
}
