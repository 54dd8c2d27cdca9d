package org.capwright.gradeimport;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** Sizes that a drawing names and that have no piece in it: their layer is empty, their block is put nowhere, their text stands alone. */
final class LostSizes {

    /** How many steps beyond the sizes that were read a name may lie and be a size still. */
    private static final int BEYOND = 2;

    private static final double EXACT = 1e-6;

    private LostSizes() {}

    /**
     * Those of some names that would be sizes among others. A name alone must stand where a step of the others leads; that of a piece, anywhere among them.
     *
     * @param drawn names of pieces
     * @param names of layers, blocks and texts
     * @param read sizes that were read
     * @return labels, each once; empty where the sizes that were read do not go in steps
     */
    static List<String> among(Set<String> drawn, Collection<String> names, Set<String> read) {
        double[] places =
                read.stream().mapToDouble(SizeScale::place).sorted().distinct().toArray();
        if (places.length < 2 || Arrays.stream(places).anyMatch(Double::isNaN)) {
            return List.of();
        }
        double[] steps = IntStream.range(1, places.length)
                .mapToDouble(i -> places[i] - places[i - 1])
                .sorted()
                .toArray();
        double step = steps[(steps.length - 1) / 2];
        List<String> lost = new ArrayList<>();
        Set<Double> known = new TreeSet<>();
        Arrays.stream(places).forEach(known::add);
        for (String name : Stream.concat(drawn.stream(), names.stream()).toList()) {
            double place = SizeScale.place(name);
            double at = (place - places[0]) / step;
            boolean fits = (drawn.contains(name) || Math.abs(at - Math.rint(at)) < EXACT)
                    && place > places[0] - (BEYOND + EXACT) * step
                    && place < places[places.length - 1] + (BEYOND + EXACT) * step;
            if (fits && known.add(place)) {
                lost.add(name.strip());
            }
        }
        return lost;
    }
}
