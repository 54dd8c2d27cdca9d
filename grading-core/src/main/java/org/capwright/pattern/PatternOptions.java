package org.capwright.pattern;

/**
 * What a workroom settles about its pieces.
 *
 * @param allowances seam and hem allowances by kind of edge
 * @param corners how the cut line turns corners
 * @param turnOfCloth how much smaller the lining is than the main cloth along hem and sides, mm, 0 to 20
 * @param interfacingOverlap how far the interfacing reaches into the allowances, mm, 0 to the least allowance of the overlay; 0 is cut net
 * @param marking how pieces are drawn and marked
 * @param finishing what the inside is finished with
 */
public record PatternOptions(
        Allowances allowances,
        CornerKind corners,
        double turnOfCloth,
        double interfacingOverlap,
        PieceMarking marking,
        Finishing finishing) {

    /** The greatest turn of cloth that is drawn, mm. */
    public static final double GREATEST_TURN_OF_CLOTH = 20;

    /**
     * Options with usual marks.
     *
     * @param allowances seam and hem allowances by kind of edge
     * @param corners how the cut line turns corners
     * @param turnOfCloth how much smaller the lining is than the main cloth along hem and sides, mm, 0 to 20
     * @param interfacingOverlap how far the interfacing reaches into the allowances, mm, 0 to the least allowance of the overlay; 0 is cut net
     */
    public PatternOptions(Allowances allowances, CornerKind corners, double turnOfCloth, double interfacingOverlap) {
        this(allowances, corners, turnOfCloth, interfacingOverlap, PieceMarking.usual(), Finishing.usual());
    }

    /**
     * Usual options: 10 mm all round, mitred, 2 mm turn of cloth, interfacing cut net. Common practice, no source.
     *
     * @return the options
     */
    public static PatternOptions usual() {
        return new PatternOptions(Allowances.all(10), CornerKind.MITRED, 2, 0);
    }

    /**
     * These options with other allowances.
     *
     * @param other seam and hem allowances
     * @return new options
     */
    public PatternOptions with(Allowances other) {
        return new PatternOptions(other, corners, turnOfCloth, interfacingOverlap, marking, finishing);
    }

    /**
     * These options with other corners.
     *
     * @param kind how the cut line turns corners
     * @return new options
     */
    public PatternOptions with(CornerKind kind) {
        return new PatternOptions(allowances, kind, turnOfCloth, interfacingOverlap, marking, finishing);
    }

    /**
     * These options with another turn of cloth.
     *
     * @param height mm, 0 to 20
     * @return new options
     */
    public PatternOptions withTurnOfCloth(double height) {
        return new PatternOptions(allowances, corners, height, interfacingOverlap, marking, finishing);
    }

    /**
     * These options with another overlap of the interfacing.
     *
     * @param width mm, 0 to 100
     * @return new options
     */
    public PatternOptions withInterfacingOverlap(double width) {
        return new PatternOptions(allowances, corners, turnOfCloth, width, marking, finishing);
    }

    /**
     * These options with other marks.
     *
     * @param other how pieces are drawn and marked
     * @return new options
     */
    public PatternOptions with(PieceMarking other) {
        return new PatternOptions(allowances, corners, turnOfCloth, interfacingOverlap, other, finishing);
    }

    /**
     * These options with other finishing.
     *
     * @param other what the inside is finished with
     * @return new options
     */
    public PatternOptions with(Finishing other) {
        return new PatternOptions(allowances, corners, turnOfCloth, interfacingOverlap, marking, other);
    }
}
