package org.capwright.pattern;

/**
 * What a workroom settles about its pieces.
 *
 * @param allowances seam and hem allowances by kind of edge
 * @param corners how the cut line turns corners
 * @param turnOfCloth how much higher the lining's hem lies than that of the main cloth, mm, 0 to 20
 * @param interfacingOverlap how far the interfacing reaches into the allowances, mm, 0 to 100; 0 is cut net
 */
public record PatternOptions(Allowances allowances, CornerKind corners, double turnOfCloth, double interfacingOverlap) {

    /** The greatest turn of cloth that is drawn, mm. */
    public static final double GREATEST_TURN_OF_CLOTH = 20;

    /**
     * Usual options: 10 mm all round, mitred, 2 mm turn of cloth, interfacing cut net. Common practice, no source.
     *
     * @return the options
     */
    public static PatternOptions usual() {
        return new PatternOptions(Allowances.all(10), CornerKind.MITRED, 2, 0);
    }
}
