package org.capwright.draft.pleat;

import java.util.Arrays;
import java.util.List;

/**
 * Where an edge is folded and where the folds land.
 *
 * @param front the half before the apex
 * @param back the half behind the apex
 * @param count pleats over both halves; 0 where nothing is to be taken up
 * @param folds all folds in order of arc length on the flat edge; one for a knife pleat, two for a box or inverted pleat
 * @param greatestLayers the most layers of cloth that lie on one another on the finished seam: 1 without pleats, 3 where pleats lie side by side
 */
public record PleatLayout(HalfPleats front, HalfPleats back, int count, List<PleatFold> folds, int greatestLayers) {

    /** Under-layers that only touch do not lie on one another, mm. */
    private static final double TOUCHING = 1e-6;

    /**
     * Keeps its own copy of the folds.
     *
     * @param front the half before the apex
     * @param back the half behind the apex
     * @param count pleats over both halves
     * @param folds all folds in order
     * @param greatestLayers the most layers on one another
     */
    public PleatLayout {
        folds = List.copyOf(folds);
    }

    static PleatLayout of(HalfPleats front, HalfPleats back, int count, List<PleatFold> folds) {
        return new PleatLayout(front, back, count, folds, layers(folds, front.span() + back.span()));
    }

    /** Sweeps along the seam: each fold adds two layers where its under-layers begin and takes them away where they end. */
    private static int layers(List<PleatFold> folds, double span) {
        double[] from = new double[folds.size()];
        double[] to = new double[folds.size()];
        for (int i = 0; i < from.length; i++) {
            PleatFold fold = folds.get(i);
            from[i] = Math.min(Math.max(fold.reachFrom(), 0), span);
            to[i] = Math.min(Math.max(fold.reachTo(), 0), span);
        }
        Arrays.sort(from);
        Arrays.sort(to);
        int open = 0;
        int most = 0;
        int closed = 0;
        for (double begin : from) {
            while (to[closed] <= begin + TOUCHING && closed < open) {
                closed++;
            }
            open++;
            most = Math.max(most, open - closed);
        }
        return 1 + 2 * most;
    }

    /**
     * The length of the flat edge.
     *
     * @return millimetres
     */
    public double edge() {
        return front.edge() + back.edge();
    }

    /**
     * The length of the finished seam.
     *
     * @return millimetres
     */
    public double span() {
        return front.span() + back.span();
    }

    /**
     * The length that the pleats take up: edge less span.
     *
     * @return millimetres, 0 or more
     */
    public double takeUp() {
        return front.takeUp() + back.takeUp();
    }

    /**
     * The fullness ratio: flat edge to finished seam.
     *
     * @return 1 or more
     */
    public double fullness() {
        return edge() / span();
    }

    /**
     * Whether under-layers of neighbouring folds lie on one another, so that the seam gets bulky.
     *
     * @return true where there are more than three layers
     */
    public boolean overlaps() {
        return greatestLayers > 3;
    }

    /**
     * The depth of the deepest fold.
     *
     * @return millimetres; 0 without folds
     */
    public double greatestDepth() {
        return folds.stream().mapToDouble(PleatFold::depth).max().orElse(0);
    }

    /**
     * The depth of the shallowest fold.
     *
     * @return millimetres; 0 without folds
     */
    public double leastDepth() {
        return folds.stream().mapToDouble(PleatFold::depth).min().orElse(0);
    }

    /**
     * How far under-layers stick out beyond the front end of the seam. A flat zone of that width more would hold them back.
     *
     * @return millimetres, 0 or more
     */
    public double overhangFront() {
        return folds.stream().mapToDouble(fold -> -fold.reachFrom()).reduce(0, Math::max);
    }

    /**
     * How far under-layers stick out beyond the back end of the seam.
     *
     * @return millimetres, 0 or more
     */
    public double overhangBack() {
        return folds.stream().mapToDouble(fold -> fold.reachTo() - span()).reduce(0, Math::max);
    }
}
