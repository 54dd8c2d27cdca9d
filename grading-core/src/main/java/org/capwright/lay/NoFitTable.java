package org.capwright.lay;

import org.jspecify.annotations.Nullable;

/**
 * No-fit regions of all pairs of shapes in all flips, each computed once, when first asked for. Flipping both shapes flips their region, and exchanging the
 * two turns it by half a turn; so a pair of shapes needs four regions at most.
 */
final class NoFitTable {

    private final LayPiece[] shapes;
    private final @Nullable NoFit[] regions;
    private int turned;

    NoFitTable(LayPiece[] shapes) {
        this.shapes = shapes;
        this.regions = new NoFit[4 * shapes.length * shapes.length];
    }

    /** The shapes. */
    LayPiece[] shapes() {
        return shapes;
    }

    /**
     * The region of a fixed and a moving shape; whether it must be read mirrored is then told by {@link #flipsX} and {@link #flipsY}.
     *
     * <p>With F and G the flips of the fixed and the moving shape: N(F a, G b) = F N(a, F G b), and N(a, b) = -N(b, a).
     */
    NoFit region(int fixed, int fixedFlip, int moving, int movingFlip) {
        int relative = fixedFlip ^ movingFlip;
        int first;
        int second;
        if (fixed <= moving) {
            first = fixed;
            second = moving;
            turned = fixedFlip;
        } else {
            first = moving;
            second = fixed;
            turned = movingFlip ^ 3;
        }
        int key = (first * shapes.length + second) * 4 + relative;
        NoFit region = regions[key];
        if (region == null) {
            region = NoFit.of(shapes[first].envelopes[0], shapes[second].envelopes[relative]);
            regions[key] = region;
        }
        return region;
    }

    boolean flipsX() {
        return (turned & 1) != 0;
    }

    boolean flipsY() {
        return (turned & 2) != 0;
    }
}
