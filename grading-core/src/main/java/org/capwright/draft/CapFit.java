package org.capwright.draft;

/** Which of bicep, cap height and cap ease follows from the other two. */
public sealed interface CapFit {

    /** Bicep and cap height are both given; the ease follows. */
    record Given() implements CapFit {}

    /**
     * The cap height follows from bicep and ease.
     *
     * @param ease the ease asked for over the whole armhole
     */
    record CapHeightFor(CapEase ease) implements CapFit {}

    /**
     * The bicep follows from cap height and ease.
     *
     * @param ease the ease asked for over the whole armhole
     */
    record BicepFor(CapEase ease) implements CapFit {}

    /**
     * Cap height and the share of the bicep that the front half takes follow from bicep and the eases of both halves.
     *
     * @param front ease over the front armhole
     * @param back ease over the back armhole
     */
    record HalvesFor(CapEase front, CapEase back) implements CapFit {}
}
