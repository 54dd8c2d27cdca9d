package org.capwright.lay;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import org.capwright.measure.SleeveSubject;
import org.capwright.measure.SleeveSubject.ClothFigure;
import org.capwright.measure.SleeveSubject.Option;
import org.capwright.pattern.EdgeKind;
import org.capwright.pattern.PatternSet;
import org.capwright.pattern.Piece;
import org.capwright.pattern.PieceEdge;
import org.capwright.pattern.PieceKind;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Violation;
import org.capwright.words.Text;

/**
 * What to buy. Guaranteed to be immutable.
 *
 * @param cloths per size (or for the order as a whole) and cloth, in the order of the run and of the cloths given; a cloth whose material the pattern does
 *     not use is left out
 * @param trimmings per size (or for the order as a whole); empty if the pattern has no overlay
 */
public record Materials(List<MaterialNeed> cloths, List<TrimmingNeed> trimmings) {

    /**
     * What one pair of sleeves needs in every size, with {@linkplain Trimming#USUAL usual} trimming.
     *
     * @param set the pattern
     * @param fabrics cloths to reckon with
     * @return needs per size, each for one pair
     * @throws InvalidMeasuresException if a piece is wider than a cloth
     */
    public static Materials of(PatternSet set, List<Fabric> fabrics) {
        return of(set, fabrics, Trimming.USUAL, LayEffort.USUAL, LayWatch.UNWATCHED);
    }

    /**
     * What one pair of sleeves needs in every size.
     *
     * @param set the pattern
     * @param fabrics cloths to reckon with: one or more for a material, for example in several widths; lays on cloths that differ in width alone are compared
     *     so that the wider never needs more
     * @param trimming how trimming is bought
     * @param effort how long good lays are looked for, shared by all sizes and cloths
     * @param watch is told how far the search is, and may give it up
     * @return needs per size, each for one pair
     * @throws InvalidMeasuresException if a piece is wider than a cloth; every such cloth is named
     * @throws CancellationException if the search was given up
     */
    public static Materials of(
            PatternSet set, List<Fabric> fabrics, Trimming trimming, LayEffort effort, LayWatch watch) {
        check(set, fabrics, Map.of());
        long lays = Math.max(1, (long) set.sizes().size() * fabrics.size());
        long share = effort.mostInAll() / lays;
        WatchedShare all = new WatchedShare(watch, 1);
        List<Materials> each = set.sizes().parallelStream()
                .map(pieces -> {
                    List<PieceToCut> cutting =
                            pieces.stream().map(PieceToCut::onePair).toList();
                    Map<String, Integer> pairs =
                            pieces.isEmpty() ? Map.of() : Map.of(pieces.get(0).size(), 1);
                    return new Materials(
                            cloths(
                                    cutting,
                                    pairs,
                                    fabrics,
                                    effort,
                                    share,
                                    all.part(set.sizes().size())),
                            trimming(cutting, pairs, trimming).stream().toList());
                })
                .toList();
        return new Materials(
                each.stream().flatMap(needs -> needs.cloths.stream()).toList(),
                each.stream().flatMap(needs -> needs.trimmings.stream()).toList());
    }

    /**
     * What an order needs, all sizes laid together.
     *
     * @param set the pattern
     * @param fabrics cloths to reckon with
     * @param trimming how trimming is bought
     * @param order pairs of sleeves per size, 0 to 1000 each, at least one in all; sizes left out are not ordered
     * @param effort how long good lays are looked for, shared by all cloths
     * @param watch is told how far the search is, and may give it up
     * @return needs for the whole order: one per cloth
     * @throws InvalidMeasuresException if the order names a size that the run does not have, a number is out of range, nothing is ordered, or a piece is
     *     wider than a cloth; every such cloth is named
     * @throws CancellationException if the search was given up
     */
    public static Materials ofOrder(
            PatternSet set,
            List<Fabric> fabrics,
            Trimming trimming,
            Map<String, Integer> order,
            LayEffort effort,
            LayWatch watch) {
        Map<String, Integer> pairs = new LinkedHashMap<>();
        List<PieceToCut> cutting = new ArrayList<>();
        for (List<Piece> pieces : set.sizes()) {
            for (Piece piece : pieces) {
                int ordered = order.getOrDefault(piece.size(), 0);
                PieceToCut.checkPairs(piece.size(), ordered, 0);
                if (ordered > 0) {
                    pairs.put(piece.size(), ordered);
                    cutting.add(new PieceToCut(piece, ordered));
                }
            }
        }
        checkSizes(set, order);
        if (cutting.isEmpty()) {
            throw new InvalidMeasuresException(
                    Violation.of(Option.ORDER, "the order asks for no pair of sleeves at all"));
        }
        check(set, fabrics, order);
        Map<String, Integer> fixed = Collections.unmodifiableMap(pairs);
        long share = effort.mostInAll() / Math.max(1, fabrics.size());
        return new Materials(
                cloths(cutting, fixed, fabrics, effort, share, new WatchedShare(watch, 1)),
                trimming(cutting, fixed, trimming).stream().toList());
    }

    /**
     * Checks, without laying anything, that every piece fits on its cloths.
     *
     * @param set the pattern
     * @param fabrics cloths to reckon with
     * @param order pairs per size; empty for all sizes
     * @throws InvalidMeasuresException if a piece is wider than a cloth; every such cloth is named
     */
    public static void check(PatternSet set, List<Fabric> fabrics, Map<String, Integer> order) {
        List<Violation> narrow = new ArrayList<>();
        for (int i = 0; i < fabrics.size(); i++) {
            Fabric fabric = fabrics.get(i);
            List<PieceToCut> pieces = new ArrayList<>();
            for (List<Piece> size : set.sizes()) {
                for (Piece piece : size) {
                    boolean cut = order.isEmpty() || order.getOrDefault(piece.size(), 0) > 0;
                    if (cut && piece.kind().material() == fabric.material()) {
                        pieces.add(PieceToCut.onePair(piece));
                    }
                }
            }
            CutPlan.tooNarrow(pieces, fabric, new SleeveSubject.Cloth(i, ClothFigure.WIDTH))
                    .ifPresent(narrow::add);
        }
        if (!narrow.isEmpty()) {
            throw new InvalidMeasuresException(narrow);
        }
    }

    private static void checkSizes(PatternSet set, Map<String, Integer> order) {
        List<String> labels = set.sizes().stream()
                .filter(pieces -> !pieces.isEmpty())
                .map(pieces -> pieces.get(0).size())
                .toList();
        List<Violation> found = order.keySet().stream()
                .filter(size -> !labels.contains(size))
                .sorted()
                .map(size -> Violation.of(
                        new SleeveSubject.PairsOf(size),
                        Text.of("there is no such size; the run has {sizes}").with("sizes", Text.names(labels))))
                .toList();
        if (!found.isEmpty()) {
            throw new InvalidMeasuresException(found);
        }
    }

    private static List<MaterialNeed> cloths(
            List<PieceToCut> cutting,
            Map<String, Integer> pairs,
            List<Fabric> fabrics,
            LayEffort effort,
            long share,
            WatchedShare watched) {
        Map<Fabric, List<Integer>> alike = new LinkedHashMap<>();
        for (int i = 0; i < fabrics.size(); i++) {
            alike.computeIfAbsent(fabrics.get(i).withWidth(Fabric.WIDEST), f -> new ArrayList<>())
                    .add(i);
        }
        MaterialNeed[] needs = new MaterialNeed[fabrics.size()];
        alike.entrySet().parallelStream().forEach(group -> {
            Fabric fabric = group.getKey();
            WatchedShare part = watched.part(alike.size());
            List<Integer> positions = group.getValue();
            List<PieceToCut> pieces = cutting.stream()
                    .filter(cut -> cut.piece().kind().material() == fabric.material())
                    .toList();
            if (pieces.isEmpty()) {
                part.isAt(1);
                return;
            }
            List<Double> widths =
                    positions.stream().map(p -> fabrics.get(p).width()).toList();
            List<Lay> lays = Lay.acrossWidths(pieces, fabric, widths, effort, share, part);
            int count = 0;
            double area = 0;
            for (PieceToCut cut : pieces) {
                count += cut.needed();
                double drawn = Outlines.polygon(cut.piece().cutLine()).getArea();
                area += cut.needed() * drawn * (cut.piece().onFold() ? 2 : 1);
            }
            for (int i = 0; i < lays.size(); i++) {
                needs[positions.get(i)] = new MaterialNeed(pairs, fabric.material(), count, area, lays.get(i));
            }
        });
        return Arrays.stream(needs).filter(Objects::nonNull).toList();
    }

    private static Optional<TrimmingNeed> trimming(
            List<PieceToCut> cutting, Map<String, Integer> pairs, Trimming trimming) {
        double hem = 0;
        double attached = 0;
        for (PieceToCut cut : cutting) {
            if (cut.piece().kind() != PieceKind.OVERLAY_MAIN) {
                continue;
            }
            double times = cut.needed() * (cut.piece().onFold() ? 2 : 1);
            for (PieceEdge edge : cut.piece().edges()) {
                if (edge.kind() == EdgeKind.HEM) {
                    hem += times * edge.curve().length();
                } else if (edge.kind() == EdgeKind.ATTACHED_EDGE) {
                    attached += times * edge.curve().length();
                }
            }
        }
        if (hem + attached == 0) {
            return Optional.empty();
        }
        Purchase purchase = Purchase.of(hem + attached, 0, trimming.waste(), trimming.step());
        return Optional.of(
                new TrimmingNeed(pairs, hem, attached, purchase.wasteFactor(), trimming.step(), purchase.length()));
    }
}
