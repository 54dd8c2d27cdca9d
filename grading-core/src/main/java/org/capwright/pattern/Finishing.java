package org.capwright.pattern;

/**
 * What the inside of a sleeve is finished with.
 *
 * @param strips whether stays and the strip for the armhole are drawn as pieces
 * @param interfacing whether the interfacing goes into the folds of pleats
 * @param thickness how thick the cloths are
 */
public record Finishing(Strips strips, PleatInterfacing interfacing, LayerThickness thickness) {

    /**
     * Usual finishing: strips are told in words, the interfacing runs through, nothing is known of thicknesses. Common practice, no source.
     *
     * @return the finishing
     */
    public static Finishing usual() {
        return new Finishing(Strips.IN_WORDS, PleatInterfacing.THROUGH, LayerThickness.unknown());
    }
}
