package org.capwright.tables;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/** Finished measurements of a garment, as the garment standards among the tables give them. Widths are flat halves. */
public enum GarmentDimension implements TableDimension {
    /** Half the width of the body at the depth of the armhole. */
    WIDTH_AT_ARMHOLE_DEPTH_HALF(
            "garmentWidthAtArmholeDepthHalf", "Width of the closed garment laid flat, at the depth of the armhole."),
    /** Width of the back between the armhole seams. */
    BACK_WIDTH("garmentBackWidth", "Width of the back between the armhole seams at their narrowest."),
    /** Half the width of the body. */
    BODY_WIDTH_HALF("garmentBodyWidthHalf", "Width of the body laid flat, under the armholes."),
    /** Half the width of the sleeve at its top. */
    SLEEVE_WIDTH_TOP_HALF(
            "garmentSleeveWidthTopHalf",
            "Width of the sleeve laid flat, at its top under the armhole; half the bicep."),
    /** Half the width of the sleeve, level not stated. */
    SLEEVE_WIDTH_HALF("garmentSleeveWidthHalf", "Width of the sleeve laid flat, at its widest."),
    /** Half the width of the sleeve hem, cuffed form of the jacket. */
    SLEEVE_WIDTH_HEM_HALF_TYPE_A_CUFF(
            "garmentSleeveWidthHemHalfTypeACuff", "Width of the sleeve at its hem laid flat, type A with a cuff."),
    /** Half the width of the sleeve hem, plain form of the jacket. */
    SLEEVE_WIDTH_HEM_HALF_TYPE_B("garmentSleeveWidthHemHalfTypeB", "Width of the sleeve at its hem laid flat, type B."),
    /** Half the width of the cuff. */
    CUFF_WIDTH_HALF("garmentCuffWidthHalf", "Width of the cuff laid flat."),
    /** Length of the sleeve. */
    SLEEVE_LENGTH("garmentSleeveLength", "Length of the sleeve from the top of the cap to the hem."),
    /** Length of the long sleeve. */
    LONG_SLEEVE_LENGTH("garmentLongSleeveLength", "Length of the long sleeve from the top of the cap to the hem."),
    /** Length of the short sleeve. */
    SHORT_SLEEVE_LENGTH("garmentShortSleeveLength", "Length of the short sleeve from the top of the cap to the hem."),
    /** Length of the collar. */
    COLLAR_LENGTH("garmentCollarLength", "Length of the collar along the neck seam.");

    private static final Map<String, GarmentDimension> BY_ID = new HashMap<>();

    static {
        for (GarmentDimension dimension : values()) {
            BY_ID.put(dimension.id, dimension);
        }
    }

    private final String id;
    private final String definition;

    GarmentDimension(String id, String definition) {
        this.id = id;
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
     * Finds a garment dimension by its name.
     *
     * @param id the name in camelCase, such as {@code garmentSleeveLength}
     * @return the dimension, or empty when the name is not known
     */
    public static Optional<GarmentDimension> find(String id) {
        return Optional.ofNullable(BY_ID.get(id));
    }
}
