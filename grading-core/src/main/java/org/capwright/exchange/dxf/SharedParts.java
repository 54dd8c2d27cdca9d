package org.capwright.exchange.dxf;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.capwright.pattern.MarkKind;
import org.capwright.pattern.MarkLine;
import org.capwright.pattern.Notch;
import org.capwright.pattern.NotchKind;
import org.capwright.pattern.Piece;

/**
 * A piece in all sizes, with those notches and marks alone that every size has, in the order of the base size: only these can be graded. A notch may be missing in a size because it would fall on another
 * there, or because a gap has grown from 0.
 *
 * @param pieces the piece per size
 * @param left what some sizes have and others have not, in words
 */
record SharedParts(List<Piece> pieces, Set<String> left) {

    /** Lines that start nearer to one another than this start at one place, mm. */
    private static final double SAME = 0.01;

    /** Reduces a piece to what it has in every size. */
    static SharedParts of(List<Piece> sizes, int base) {
        Set<String> left = new TreeSet<>();
        List<Map<String, Notch>> notches = notches(sizes);
        List<Map<String, MarkLine>> marks = sizes.stream()
                .map(piece -> named(piece.marks(), SharedParts::name))
                .toList();
        List<String> noted = shared(notches, base, left);
        List<Notch> asDrawn = sizes.get(base).notches();
        noted.sort(Comparator.comparingInt(
                name -> asDrawn.indexOf(notches.get(base).get(name))));
        List<String> drawn = shared(marks, base, left);
        List<Piece> reduced = new ArrayList<>(sizes.size());
        for (int size = 0; size < sizes.size(); size++) {
            Piece piece = sizes.get(size);
            reduced.add(new Piece(
                    piece.kind(),
                    piece.size(),
                    piece.edges(),
                    piece.cutLine(),
                    piece.cutCorners(),
                    noted.stream().map(notches.get(size)::get).toList(),
                    drawn.stream().map(marks.get(size)::get).toList(),
                    piece.cut(),
                    piece.label()));
        }
        return new SharedParts(List.copyOf(reduced), left);
    }

    private static String name(MarkLine mark) {
        return mark.kind() + " " + mark.name();
    }

    private static <T> Map<String, T> named(List<T> parts, java.util.function.Function<T, String> name) {
        Map<String, T> named = new LinkedHashMap<>();
        parts.forEach(part -> named.put(name.apply(part), part));
        return named;
    }

    private static <T> List<String> shared(List<Map<String, T>> sizes, int base, Set<String> left) {
        List<String> shared = new ArrayList<>(sizes.get(base).keySet());
        shared.removeIf(name -> sizes.stream().anyMatch(own -> !own.containsKey(name)));
        sizes.forEach(own ->
                own.keySet().stream().filter(name -> !shared.contains(name)).forEach(left::add));
        return shared;
    }

    /** A snip at a pleat is named by the line it belongs to; others that tell the same on one edge are told apart by their order, counted on the size that has fewest. */
    private static List<Map<String, Notch>> notches(List<Piece> sizes) {
        List<Map<String, List<Notch>>> kinds = new ArrayList<>();
        sizes.forEach(piece -> kinds.add(byKind(piece)));
        List<Map<String, Notch>> named = new ArrayList<>();
        for (int size = 0; size < sizes.size(); size++) {
            Map<String, Notch> own = new LinkedHashMap<>();
            Piece piece = sizes.get(size);
            kinds.get(size).forEach((kind, all) -> {
                List<Notch> model = kinds.stream()
                        .map(other -> other.getOrDefault(kind, List.of()))
                        .min(Comparator.comparingInt(List::size))
                        .orElseThrow();
                List<Notch> rest = new ArrayList<>(all);
                for (int i = 0; i < model.size(); i++) {
                    int number = i;
                    Notch nearest = all.size() == model.size()
                            ? all.get(i)
                            : rest.stream()
                                    .min(Comparator.comparingDouble(n -> Math.abs(
                                            n.distance() - model.get(number).distance())))
                                    .orElseThrow();
                    rest.remove(nearest);
                    own.put(kind + (model.size() > 1 ? " " + (i + 1) : ""), nearest);
                }
                if (all.size() > model.size()) {
                    rest.forEach(notch ->
                            own.put(kind + " at " + Math.round(notch.distance()) + " of " + piece.size(), notch));
                }
            });
            named.add(own);
        }
        return named;
    }

    private static Map<String, List<Notch>> byKind(Piece piece) {
        Map<String, List<Notch>> kinds = new LinkedHashMap<>();
        Set<String> named = new TreeSet<>();
        for (Notch notch : piece.notches()) {
            String on = notch.kind() == NotchKind.PLEAT ? line(piece, notch, named) : notch.edge();
            kinds.computeIfAbsent(notch.kind() + " " + on, k -> new ArrayList<>())
                    .add(notch);
        }
        return kinds;
    }

    /** The pleat line that starts at a snip, and that no other snip is named by: of two that start at one place the first. */
    private static String line(Piece piece, Notch notch, Set<String> named) {
        String nearest = notch.edge();
        double least = Double.POSITIVE_INFINITY;
        for (MarkLine mark : piece.marks()) {
            boolean pleat = mark.kind() == MarkKind.PLEAT_FOLD || mark.kind() == MarkKind.PLEAT_PLACEMENT;
            double distance = mark.line().start().distanceTo(notch.at());
            if (pleat && distance < least - SAME && !named.contains(mark.name())) {
                least = distance;
                nearest = mark.name();
            }
        }
        named.add(nearest);
        return nearest;
    }
}
