package org.capwright.pattern;

import java.util.OptionalDouble;

/**
 * How thick the cloths are, so that the bulk of folded pleats can be told. Each may be unknown.
 *
 * @param main thickness of the main cloth, mm, above 0 to 20
 * @param lining thickness of the lining, mm, above 0 to 20
 * @param interfacing thickness of the interfacing, mm, above 0 to 20
 */
public record LayerThickness(OptionalDouble main, OptionalDouble lining, OptionalDouble interfacing) {

    /** The thickest cloth that is reckoned with, mm. */
    public static final double GREATEST = 20;

    /**
     * Nothing is known.
     *
     * @return three unknown thicknesses
     */
    public static LayerThickness unknown() {
        return new LayerThickness(OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty());
    }
}
