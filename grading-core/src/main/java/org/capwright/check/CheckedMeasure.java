package org.capwright.check;

import java.util.Optional;
import org.capwright.quantity.Quantity;
import org.capwright.quantity.Subject;
import org.capwright.tables.BodyDimension;

/** What a check can look at in one size. The codes are those of the spec table where it has the same row. */
public enum CheckedMeasure implements Subject {
    /** Width of the sleeve along the bicep line. */
    BICEP("bicep", Quantity.LENGTH, 120, 700, BodyDimension.UPPER_ARM_GIRTH),
    /** Apex to the finished lower edge. */
    LENGTH("length", Quantity.LENGTH, 80, 1000, BodyDimension.ARM_LENGTH),
    /** Bicep line to apex. */
    CAP_HEIGHT("capHeight", Quantity.LENGTH, 20, 300),
    /** Length of the cap seam line. */
    CAP_LINE("capLine", Quantity.LENGTH, 140, 1000),
    /** Length of the armhole seam line. */
    ARMHOLE("armhole", Quantity.LENGTH, 140, 1000, BodyDimension.ARMSCYE_GIRTH),
    /** Cap line less armhole; may be negative. */
    CAP_EASE("capEase", Quantity.LENGTH, -400, 400),
    /** Width of the sleeve at the elbow, all round. */
    ELBOW("elbow", Quantity.LENGTH, 100, 650, BodyDimension.ELBOW_GIRTH),
    /** Width of the sleeve at its lower edge, all round. */
    WRIST("wrist", Quantity.LENGTH, 70, 900, BodyDimension.WRIST_GIRTH),
    /** Apex of the cap to the raised apex of the overlay. */
    RISE("overlayRise", Quantity.LENGTH, 0, 800),
    /** Raised apex down to the hem of the overlay. */
    OVERLAY_TOTAL_LENGTH("overlayTotalLength", Quantity.LENGTH, 20, 2000),
    /** Flat top edge of the overlay before pleating. */
    OVERLAY_EDGE("overlayEdge", Quantity.LENGTH, 50, 3000),
    /** The part of the armhole that the overlay covers. */
    ATTACH_SPAN("attachSpan", Quantity.LENGTH, 10, 1500),
    /** Depth of the deepest pleat. */
    PLEAT_DEPTH("pleatDepth", Quantity.LENGTH, 0, 300),
    /** Number of pleats. */
    PLEAT_COUNT("pleatCount", Quantity.COUNT, 0, 200),
    /** Most layers of cloth that lie on one another on the pleated seam. */
    PLEAT_LAYERS("pleatLayers", Quantity.COUNT, 1, 400),
    /** Centre line to the front underarm point. */
    FRONT_WIDTH("frontWidth", Quantity.LENGTH, 40, 400),
    /** Centre line to the back underarm point. */
    BACK_WIDTH("backWidth", Quantity.LENGTH, 40, 400),
    /** Length of the cap seam line in front of the apex. */
    FRONT_CAP_LINE("frontCapLine", Quantity.LENGTH, 50, 600),
    /** Length of the cap seam line behind the apex. */
    BACK_CAP_LINE("backCapLine", Quantity.LENGTH, 50, 600),
    /** How often the curvature of the front cap line changes its sign. */
    FRONT_INFLECTIONS("frontInflections", Quantity.COUNT, 0, 100),
    /** How often the curvature of the back cap line changes its sign. */
    BACK_INFLECTIONS("backInflections", Quantity.COUNT, 0, 100);

    private final String code;
    private final Quantity quantity;
    private final double least;
    private final double greatest;
    private final Optional<BodyDimension> body;

    CheckedMeasure(String code, Quantity quantity, double least, double greatest) {
        this(code, quantity, least, greatest, Optional.empty());
    }

    CheckedMeasure(String code, Quantity quantity, double least, double greatest, BodyDimension body) {
        this(code, quantity, least, greatest, Optional.of(body));
    }

    CheckedMeasure(String code, Quantity quantity, double least, double greatest, Optional<BodyDimension> body) {
        this.code = code;
        this.quantity = quantity;
        this.least = least;
        this.greatest = greatest;
        this.body = body;
    }

    @Override
    public String code() {
        return code;
    }

    /**
     * What kind of number it is.
     *
     * @return a length or a count
     */
    public Quantity quantity() {
        return quantity;
    }

    /**
     * Below this, a value was likely written in another unit (common practice, no source).
     *
     * @return millimetres, or a number for a count
     */
    public double least() {
        return least;
    }

    /**
     * Above this, a value was likely written in another unit (common practice, no source).
     *
     * @return millimetres, or a number for a count
     */
    public double greatest() {
        return greatest;
    }

    /**
     * The dimension of the body that it goes round or along.
     *
     * @return the dimension, or empty where a body has no such one
     */
    public Optional<BodyDimension> body() {
        return body;
    }

    /**
     * Finds a measure by its code.
     *
     * @param code such as {@code capHeight}
     * @return the measure, or empty
     */
    public static Optional<CheckedMeasure> ofCode(String code) {
        for (CheckedMeasure measure : values()) {
            if (measure.code.equals(code)) {
                return Optional.of(measure);
            }
        }
        return Optional.empty();
    }
}
