package org.capwright.lay;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.capwright.geometry.Point;
import org.capwright.quantity.InvalidMeasuresException;

/**
 * Pieces laid on a cloth so that little of its length is used. Guaranteed to be immutable.
 *
 * <p>Pieces are placed as outlines, not as boxes, with the grain along the cloth. Method: bottom-left filling. Each piece in turn goes where it reaches
 * least far along the cloth, among the places that the no-fit regions (Minkowski sums) of the pieces already placed leave free, hollows between outlines
 * included. Orders by area, length, width and box, free and top to tail, are tried; then order and turns are altered at random from a fixed seed, and a lay
 * is left for one at most 1 % longer than the best, less and less so. The work is bounded by counting, so that the same input always gives the same lay.
 * Outlines are first simplified outward, by about half a millimetre, so that pieces lie apart by the gap or a little more, never less.
 *
 * <p>The lay is good, not proven best: it is never shorter than {@link #areaBound()}, and {@link #utilisation()} tells how close it comes. With the nap it
 * is never shorter than without. On a wider cloth the search takes another course and can, now and then, end a little longer; {@link #acrossWidths} compares
 * widths so that this does not show. More than 40 placings are laid in sections of like mix, one after the other.
 *
 * @param fabric the cloth
 * @param placements every placing
 * @param usableWidth width of one layer that pieces may cover, mm
 * @param length length of the lay, mm, from its cut end to the farthest point of a piece
 * @param area total area of the placed outlines in one layer, mm²
 */
public record Lay(Fabric fabric, List<Placement> placements, double usableWidth, double length, double area) {

    /** The most placings that are laid together. */
    static final int SECTION = 40;

    /** Any fixed number serves: the seed of the exchanges that the search tries. */
    static final long SEED = 3646;

    /** How many no-fit regions the search may look up: this many per pair of placings, up to what the effort allows. */
    private static final long BUDGET_PER_PAIR = 5_000;

    private static final double TOLERANCE = 0.5;

    /**
     * Lays pieces on a cloth.
     *
     * @param pieces what to cut, at least one piece; on folded cloth a placing away from the fold gives a left and a right piece
     *     at once, and a piece drawn as a half lies on the fold or, two cut at once, opened out away from it: whichever takes less
     * @param fabric the cloth
     * @return the lay
     * @throws InvalidMeasuresException if a piece is wider than the cloth; the least width that works is named
     * @throws IllegalArgumentException if there is nothing to cut, or a piece to be cut on the fold has no fold edge
     */
    public static Lay of(List<PieceToCut> pieces, Fabric fabric) {
        return of(pieces, fabric, LayEffort.USUAL, LayEffort.USUAL.mostInAll());
    }

    /** The same; all searches together look up no more than a share of the effort, once every piece has found a place. */
    static Lay of(List<PieceToCut> pieces, Fabric fabric, LayEffort effort, long share) {
        CutPlan plan = plan(pieces, fabric);
        return of(plan, regions(plan, fabric), fabric, effort, share, new WatchedShare(LayWatch.UNWATCHED, 1));
    }

    private static CutPlan plan(List<PieceToCut> pieces, Fabric fabric) {
        if (pieces.isEmpty()) {
            throw new IllegalArgumentException("a lay needs at least one piece");
        }
        return new CutPlan(pieces, fabric);
    }

    private static NoFitTable regions(CutPlan plan, Fabric fabric) {
        // The more kinds of piece, the more pairs of outlines: fewer corners keep the work within bounds.
        int corners = plan.shapes.length <= 4 ? 36 : plan.shapes.length <= 10 ? 24 : 16;
        for (LayPiece shape : plan.shapes) {
            shape.prepare(fabric.gap(), TOLERANCE, corners);
        }
        return new NoFitTable(plan.shapes);
    }

    private static Lay of(
            CutPlan plan, NoFitTable regions, Fabric fabric, LayEffort effort, long share, WatchedShare watched) {
        LaySearch nesting = new LaySearch(regions, fabric.usableWidth(), plan.foldMargin());
        long searches = 0;
        for (List<LaySearch.Item> items : plan.plans) {
            searches += 2L * sections(items);
        }
        long most = Math.min(effort.mostForOne(), share / searches);
        int plans = plan.plans.size();
        Lay best = laid(plan.plans.get(0), plan.shapes, nesting, fabric, most, watched.part(plans));
        for (List<LaySearch.Item> items : plan.plans.subList(1, plans)) {
            Lay other = laid(items, plan.shapes, nesting, fabric, most, watched.part(plans));
            if (other.length < best.length) {
                best = other;
            }
        }
        return best;
    }

    private static int sections(List<LaySearch.Item> items) {
        return (items.size() + SECTION - 1) / SECTION;
    }

    private static Lay laid(
            List<LaySearch.Item> items,
            LayPiece[] shapes,
            LaySearch nesting,
            Fabric fabric,
            long most,
            WatchedShare watched) {
        int sections = sections(items);
        Map<List<Integer>, LaySearch.Solution> known = new HashMap<>();
        List<Placement> placements = new ArrayList<>(items.size());
        double start = 0;
        double end = 0;
        double area = 0;
        for (int s = 0; s < sections; s++) {
            List<LaySearch.Item> section = new ArrayList<>();
            List<Integer> mix = new ArrayList<>();
            for (int i = s; i < items.size(); i += sections) {
                LaySearch.Item item = items.get(i);
                section.add(item);
                mix.add(4 * item.shape() + item.flips()[0]);
            }
            WatchedShare part = watched.part(sections);
            LaySearch.Solution solution = known.get(mix);
            if (solution == null) {
                solution = solve(nesting, section, shapes, fabric, most, part);
                known.put(mix, solution);
            } else {
                part.isAt(1);
            }
            for (int i = 0; i < section.size(); i++) {
                LaySearch.Item item = section.get(i);
                LayPiece shape = shapes[item.shape()];
                placements.add(
                        placement(shape, solution.flip[i], start + solution.x[i], solution.y[i], fabric.laying()));
                area += shape.area;
            }
            end = start + solution.length;
            start = end + fabric.gap();
        }
        return new Lay(fabric, List.copyOf(placements), fabric.usableWidth(), end, area);
    }

    /**
     * Lays the same pieces on cloths of several widths, where a lay found for a narrower cloth also serves a wider one: so that a wider cloth never needs
     * more length than a narrower one in the list.
     *
     * @param pieces what to cut
     * @param fabric the cloth, whose own width is not looked at
     * @param widths widths from selvedge edge to selvedge edge, mm
     * @return one lay per width, in the order given
     * @throws InvalidMeasuresException if a piece is wider than one of them
     */
    public static List<Lay> acrossWidths(List<PieceToCut> pieces, Fabric fabric, List<Double> widths) {
        return acrossWidths(
                pieces,
                fabric,
                widths,
                LayEffort.USUAL,
                LayEffort.USUAL.mostInAll() / widths.size(),
                new WatchedShare(LayWatch.UNWATCHED, 1));
    }

    static List<Lay> acrossWidths(
            List<PieceToCut> pieces,
            Fabric fabric,
            List<Double> widths,
            LayEffort effort,
            long share,
            WatchedShare watched) {
        List<Integer> narrowFirst = new ArrayList<>();
        for (int i = 0; i < widths.size(); i++) {
            narrowFirst.add(i);
        }
        narrowFirst.sort((a, b) -> Double.compare(widths.get(a), widths.get(b)));
        Lay[] lays = new Lay[widths.size()];
        List<Lay> sofar = new ArrayList<>();
        // How outlines keep one another off does not hang on the width; which halves can be opened out does.
        Map<List<Integer>, NoFitTable> regions = new HashMap<>();
        for (int i : narrowFirst) {
            Fabric cloth = fabric.withWidth(widths.get(i));
            CutPlan plan = plan(pieces, cloth);
            NoFitTable known = regions.computeIfAbsent(plan.openedOut(), shapes -> regions(plan, cloth));
            Lay lay = of(plan, known, cloth, effort, share, watched.part(widths.size()));
            for (Lay narrower : sofar) {
                if (narrower.length < lay.length) {
                    lay = new Lay(lay.fabric, narrower.placements, lay.usableWidth, narrower.length, lay.area);
                }
            }
            sofar.add(lay);
            lays[i] = lay;
        }
        return List.of(lays);
    }

    private static LaySearch.Solution solve(
            LaySearch nesting,
            List<LaySearch.Item> section,
            LayPiece[] shapes,
            Fabric fabric,
            long most,
            WatchedShare watched) {
        double area = 0;
        double longest = 0;
        double onFold = 0;
        LaySearch.Item[] free = new LaySearch.Item[section.size()];
        LaySearch.Item[] oneWay = new LaySearch.Item[section.size()];
        for (int i = 0; i < free.length; i++) {
            LaySearch.Item item = section.get(i);
            area += shapes[item.shape()].area;
            longest = Math.max(longest, shapes[item.shape()].length());
            onFold += item.onFold() ? shapes[item.shape()].foldLength() : 0;
            free[i] = item;
            int[] upright =
                    Arrays.stream(item.flips()).filter(flip -> (flip & 1) == 0).toArray();
            oneWay[i] = i > 0 && section.get(i - 1) == item
                    ? oneWay[i - 1]
                    : new LaySearch.Item(item.shape(), upright, item.onFold());
        }
        long budget = Math.min(most, BUDGET_PER_PAIR * free.length * free.length);
        double bound = Math.max(Math.max(longest, onFold), area / fabric.usableWidth());
        // A lay with the nap is a lay without as well: so leaving the nap out of account never costs length.
        boolean turning = fabric.nap() == Fabric.Nap.WITHOUT;
        LaySearch.Solution best = nesting.solve(oneWay, bound, SEED, budget, watched.part(turning ? 2 : 1));
        if (turning) {
            LaySearch.Solution turned = nesting.solve(free, bound, SEED, budget, watched.part(2));
            if (turned.length < best.length) {
                best = turned;
            }
        }
        return best;
    }

    private static Placement placement(LayPiece shape, int flip, double x, double y, Fabric.Laying laying) {
        double[] ring = LayPiece.flipped(shape.ring, flip);
        List<Point> outline = new ArrayList<>(ring.length / 2);
        for (int i = 0; i < ring.length; i += 2) {
            outline.add(new Point(ring[i] + x, ring[i + 1] + y));
        }
        boolean mirrored = flip == 1 || flip == 2;
        boolean single = laying == Fabric.Laying.OPEN || shape.cover == Placement.Cover.HALF_ON_FOLD;
        return new Placement(
                shape.piece,
                shape.cover,
                mirrored ? Placement.Facing.MIRRORED : Placement.Facing.AS_DRAWN,
                (flip & 1) == 0 ? 0 : 180,
                new Point(x, y),
                List.copyOf(outline),
                single ? 1 : 2,
                shape.grain);
    }

    /**
     * The length that the pieces would take if no cloth were left between them.
     *
     * @return area / usable width, mm; no lay is shorter
     */
    public double areaBound() {
        return area / usableWidth;
    }

    /**
     * The share of the usable cloth of this lay that the pieces cover.
     *
     * @return above 0, at most 1
     */
    public double utilisation() {
        return area / (usableWidth * length);
    }

    /**
     * What to buy.
     *
     * @return the length to buy, with the factors that lead to it
     */
    public Purchase purchase() {
        return Purchase.of(length, fabric.shrinkageLengthwise(), fabric.waste(), fabric.step());
    }
}
