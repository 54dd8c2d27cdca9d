package org.capwright.lay;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import org.capwright.measure.SleeveSubject.ClothFigure;
import org.capwright.pattern.CutInstruction.Laying;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Subject;
import org.capwright.quantity.Violation;
import org.capwright.words.Text;

/**
 * Which outlines are placed, and how often, so that all pieces asked for are cut. On folded cloth a half may lie on the fold, which gives one piece, or two
 * of them may be cut at once from an opened-out outline away from the fold; the fold is soon used up, so several shares of the two are worth trying.
 */
final class CutPlan {

    /** How many of the pieces drawn as a half are opened out on folded cloth. */
    private enum OpenedOut {
        NONE,
        HALF,
        ALL
    }

    /** Parts of a millimetre by which a piece may seem too wide by rounding alone. */
    private static final double ROUNDING = 1e-7;

    final LayPiece[] shapes;

    /** The different plans: for each, what is placed. */
    final List<List<LaySearch.Item>> plans = new ArrayList<>();

    private final List<PieceToCut> pieces;
    private final Fabric fabric;

    /** Per piece the position of its opened-out shape, or -1. */
    private final int[] opened;

    CutPlan(List<PieceToCut> pieces, Fabric fabric) {
        this.pieces = pieces;
        this.fabric = fabric;
        this.opened = new int[pieces.size()];
        List<LayPiece> list = new ArrayList<>();
        for (PieceToCut cut : pieces) {
            list.add(LayPiece.of(cut.piece(), fabric.laying()));
        }
        tooNarrow(list.stream(), fabric, ClothFigure.WIDTH).ifPresent(violation -> {
            throw new InvalidMeasuresException(violation);
        });
        for (int i = 0; i < opened.length; i++) {
            opened[i] = -1;
            if (list.get(i).cover == Placement.Cover.HALF_ON_FOLD
                    && pieces.get(i).needed() > 1) {
                LayPiece whole = LayPiece.of(pieces.get(i).piece(), Fabric.Laying.OPEN);
                if (whole.width() + foldMargin() <= fabric.usableWidth()) {
                    opened[i] = list.size();
                    list.add(whole);
                }
            }
        }
        shapes = list.toArray(new LayPiece[0]);
        for (OpenedOut share : OpenedOut.values()) {
            List<LaySearch.Item> items = items(share);
            if (plans.stream().noneMatch(known -> counts(known).equals(counts(items)))) {
                plans.add(items);
            }
        }
    }

    /** Which outlines there are: per piece the position of its opened-out shape, or -1. */
    List<Integer> openedOut() {
        return Arrays.stream(opened).boxed().toList();
    }

    /** A piece away from the fold is cut round on double cloth: it keeps the gap off the fold. */
    double foldMargin() {
        return foldMargin(fabric);
    }

    private static double foldMargin(Fabric fabric) {
        return fabric.laying() == Fabric.Laying.FOLDED ? fabric.gap() : 0;
    }

    /** What is wrong where a piece does not fit on the cloth, with the least width that would do. */
    static Optional<Violation> tooNarrow(List<PieceToCut> pieces, Fabric fabric, Subject width) {
        return tooNarrow(pieces.stream().map(cut -> LayPiece.of(cut.piece(), fabric.laying())), fabric, width);
    }

    private static Optional<Violation> tooNarrow(Stream<LayPiece> shapes, Fabric fabric, Subject width) {
        ToDoubleFunction<LayPiece> needed =
                shape -> shape.width() + (shape.cover == Placement.Cover.HALF_ON_FOLD ? 0 : foldMargin(fabric));
        return shapes.max(Comparator.comparingDouble(needed))
                .filter(widest -> needed.applyAsDouble(widest) > fabric.usableWidth() + ROUNDING)
                .map(widest -> Violation.lengthBelow(
                        width,
                        Text.of("the cloth is too narrow for the {piece} of size {size}")
                                .with("piece", Text.of(widest.piece.kind().words()))
                                .with("size", widest.piece.size()),
                        fabric.width(),
                        fabric.widthFor(needed.applyAsDouble(widest))));
    }

    private static List<Integer> counts(List<LaySearch.Item> items) {
        return items.stream().map(LaySearch.Item::shape).toList();
    }

    private List<LaySearch.Item> items(OpenedOut share) {
        boolean folded = fabric.laying() == Fabric.Laying.FOLDED;
        List<LaySearch.Item> items = new ArrayList<>();
        for (int i = 0; i < opened.length; i++) {
            int needed = pieces.get(i).needed();
            Laying laying = pieces.get(i).piece().cut().laying();
            if (folded && laying == Laying.ON_FOLD) {
                int doubles = opened[i] < 0
                        ? 0
                        : switch (share) {
                            case NONE -> 0;
                            case HALF -> (needed + 2) / 4;
                            case ALL -> needed / 2;
                        };
                int up = shapes[i].liesAboveFold() ? 0 : 2;
                add(items, needed - 2 * doubles, new LaySearch.Item(i, new int[] {up, up | 1}, true));
                add(items, doubles, new LaySearch.Item(opened[i], new int[] {0, 3}, false));
            } else if (folded) {
                // The two layers lie face to face: a placing gives a left and a right piece.
                int[] flips = laying == Laying.FLAT ? new int[] {0, 3} : new int[] {0, 2, 1, 3};
                add(items, (needed + 1) / 2, new LaySearch.Item(i, flips, false));
            } else if (laying == Laying.MIRRORED_PAIR) {
                add(items, needed - needed / 2, new LaySearch.Item(i, new int[] {0, 3}, false));
                add(items, needed / 2, new LaySearch.Item(i, new int[] {2, 1}, false));
            } else {
                add(items, needed, new LaySearch.Item(i, new int[] {0, 3}, false));
            }
        }
        return items;
    }

    private static void add(List<LaySearch.Item> items, int count, LaySearch.Item item) {
        for (int i = 0; i < count; i++) {
            items.add(item);
        }
    }
}
