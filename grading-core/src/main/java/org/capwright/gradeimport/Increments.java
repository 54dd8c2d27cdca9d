package org.capwright.gradeimport;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import org.capwright.check.CheckedMeasure;
import org.capwright.exchange.ForeignInputException;
import org.capwright.quantity.Quantity;
import org.capwright.words.Text;

/**
 * A sheet of increments: one size with its measurements, and steps with their signs to either side (common practice, no source). The steps may be from size to size, or from the base size; they
 * are from the base size where they grow with the distance from it.
 */
final class Increments {

    /** A step per size is no more than this share of the full figure. */
    private static final double SHARE = 0.09;

    /** Steps from the base size grow at least so much from one column to the next but one; steps from size to size vary less. */
    private static final double GROWTH = 1.6;

    /** Between the two it cannot be told. */
    private static final double UNSURE = 1.4;

    private static final Set<CheckedMeasure> MAY_BE_SMALL = Set.of(
            CheckedMeasure.CAP_EASE,
            CheckedMeasure.RISE,
            CheckedMeasure.PLEAT_DEPTH,
            CheckedMeasure.OVERLAY_TOTAL_LENGTH);

    private final TableContext context;
    private final List<String> sizes;
    private final Map<String, Map<CheckedMeasure, Double>> values;

    private Increments(TableContext context, List<String> sizes, Map<String, Map<CheckedMeasure, Double>> values) {
        this.context = context;
        this.sizes = sizes;
        this.values = values;
    }

    /**
     * Adds the steps up, where the values are steps.
     *
     * @param sizes smallest first, as the steps are added along them
     * @param values of each size; changed where they are steps
     * @return the base size of a sheet of increments
     * @throws ForeignInputException if a length of a sleeve is not above 0
     */
    static Optional<String> added(
            TableContext context, List<String> sizes, Map<String, Map<CheckedMeasure, Double>> values)
            throws ForeignInputException {
        Increments increments = new Increments(context, sizes, values);
        Optional<Integer> base = increments.base();
        base.ifPresent(increments::add);
        increments.refuseNegative();
        return base.map(sizes::get);
    }

    /**
     * Spans such as {@code 36-38} beside one full size hold the step between their two sizes: the sizes are put in their place.
     *
     * @return the sizes, smallest first; as they were where the table has no spans, or not those of neighbouring sizes, which is asked about
     */
    static List<String> spans(
            TableContext context, List<String> sizes, Map<String, Map<CheckedMeasure, Double>> values) {
        List<String> single =
                sizes.stream().filter(size -> SizeScale.ends(size).isEmpty()).toList();
        if (single.size() != 1 || sizes.size() < 2) {
            return sizes;
        }
        String base = single.get(0);
        // EU 38 beside 36-38: the spans go by the number alone.
        String prefix = base.replaceAll("\\d.*", "");
        Set<String> labels = new LinkedHashSet<>(Set.of(base));
        for (String span : sizes) {
            ends(span, prefix).ifPresent(labels::addAll);
        }
        List<String> all = List.copyOf(labels);
        List<String> ordered = SizeScale.order(all).stream().map(all::get).toList();
        boolean chain = ordered.size() == sizes.size();
        for (int i = 0; i + 1 < ordered.size() && chain; i++) {
            List<String> pair = List.of(ordered.get(i), ordered.get(i + 1));
            chain = sizes.stream().anyMatch(size -> ends(size, prefix).equals(Optional.of(pair)));
        }
        // Of wider and narrower ranges nobody knows how many steps they hold.
        chain &= IntStream.range(1, ordered.size())
                        .mapToLong(i -> Math.round(
                                10 * (SizeScale.place(ordered.get(i)) - SizeScale.place(ordered.get(i - 1)))))
                        .distinct()
                        .count()
                == 1;
        double most = 0;
        for (Map.Entry<String, Map<CheckedMeasure, Double>> size : values.entrySet()) {
            for (Map.Entry<CheckedMeasure, Double> entry : size.getValue().entrySet()) {
                Double of = required(values, base).get(entry.getKey());
                if (of != null && isFull(entry.getKey()) && !size.getKey().equals(base)) {
                    most = Math.max(most, Math.abs(entry.getValue()) / of);
                }
            }
        }
        if (!chain || most > 2 * SHARE) {
            Optional<String> span = sizes.stream()
                    .filter(size -> SizeScale.ends(size).isPresent())
                    .findFirst();
            if (most <= 2 * SHARE && span.isPresent()) {
                context.questions()
                        .add(new OpenQuestion(
                                0,
                                Unread.Part.FILE,
                                List.of(),
                                Text.of("steps for ranges of sizes such as \u201c{range}\u201d do not"
                                                + " tell which sizes lie between, nor whether they are"
                                                + " meant for each of them")
                                        .with("range", ForeignInputException.shown(span.get())),
                                Text.of("Write a column for every size, or for the step between every two"
                                        + " neighbouring sizes.")));
            }
            return sizes;
        }
        Map<String, Map<CheckedMeasure, Double>> steps = new LinkedHashMap<>();
        int at = ordered.indexOf(base);
        for (int i = 0; i < ordered.size(); i++) {
            Optional<List<String>> pair = i == at
                    ? Optional.empty()
                    : Optional.of(List.of(ordered.get(i < at ? i : i - 1), ordered.get(i < at ? i + 1 : i)));
            String from = pair.isEmpty()
                    ? base
                    : sizes.stream()
                            .filter(size -> ends(size, prefix).equals(pair))
                            .findFirst()
                            .orElseThrow();
            Map<CheckedMeasure, Double> own = new EnumMap<>(CheckedMeasure.class);
            for (Map.Entry<CheckedMeasure, Double> entry :
                    required(values, from).entrySet()) {
                own.put(entry.getKey(), i < at ? -entry.getValue() : entry.getValue());
            }
            steps.put(ordered.get(i), own);
        }
        values.clear();
        values.putAll(steps);
        return ordered;
    }

    private static Optional<List<String>> ends(String span, String prefix) {
        return SizeScale.ends(span)
                .map(pair -> pair.stream()
                        .map(end -> Character.isDigit(end.charAt(0)) ? prefix + end : end)
                        .toList());
    }

    private static Map<CheckedMeasure, Double> required(Map<String, Map<CheckedMeasure, Double>> values, String size) {
        return Objects.requireNonNull(values.get(size));
    }

    private static boolean isFull(CheckedMeasure measure) {
        return measure.quantity() == Quantity.LENGTH && !MAY_BE_SMALL.contains(measure);
    }

    /** The one size that has full measurements where rows have steps in the others, if most rows agree on it. */
    private Optional<Integer> base() {
        int[] votes = new int[sizes.size()];
        int rows = 0;
        for (CheckedMeasure measure : CheckedMeasure.values()) {
            if (isFull(measure)) {
                Optional<Integer> own = base(measure);
                own.ifPresent(base -> votes[base]++);
                rows += own.isPresent() || isWhole(measure) ? 1 : 0;
            }
        }
        int best = 0;
        for (int i = 0; i < votes.length; i++) {
            best = votes[i] > votes[best] ? i : best;
        }
        return votes.length > 0 && 2 * votes[best] > rows ? Optional.of(best) : Optional.empty();
    }

    private Optional<Integer> base(CheckedMeasure measure) {
        int full = -1;
        double most = 0;
        for (int i = 0; i < sizes.size(); i++) {
            double value = Math.abs(of(i).getOrDefault(measure, 0.0));
            full = value > most ? i : full;
            most = Math.max(most, value);
        }
        int others = 0;
        double least = full < 0 ? 0 : of(full).getOrDefault(measure, 0.0);
        for (int i = 0; i < sizes.size(); i++) {
            Double step = of(i).get(measure);
            if (i != full && step != null) {
                others++;
                if (Math.abs(step) > SHARE * least * Math.abs(i - full)) {
                    return Optional.empty();
                }
            }
        }
        return others > 0 && least > 0 ? Optional.of(full) : Optional.empty();
    }

    /** Whether a row has full measurements in every size. */
    private boolean isWhole(CheckedMeasure measure) {
        double[] known = sizes.stream()
                .map(size -> required(size).get(measure))
                .filter(Objects::nonNull)
                .mapToDouble(Double::doubleValue)
                .sorted()
                .toArray();
        return known.length > 1 && known[0] > 0.5 * known[known.length - 1];
    }

    private Map<CheckedMeasure, Double> of(int size) {
        return required(sizes.get(size));
    }

    private Map<CheckedMeasure, Double> required(String size) {
        return required(values, size);
    }

    private void add(int base) {
        Set<CheckedMeasure> stepped = EnumSet.noneOf(CheckedMeasure.class);
        for (CheckedMeasure measure : CheckedMeasure.values()) {
            if (!isWhole(measure) || base(measure).isPresent()) {
                stepped.add(measure);
            }
        }
        double growth = growth(base);
        boolean fromBase = growth >= GROWTH;
        if (growth > UNSURE && growth < GROWTH + GROWTH - UNSURE) {
            context.questions()
                    .add(new OpenQuestion(
                            0,
                            Unread.Part.FILE,
                            List.of(),
                            Text.of("the steps beside size {size} may be from size to size or from that size:"
                                            + " the second is {times} times the first; read as those {read}")
                                    .with("size", ForeignInputException.shown(sizes.get(base)))
                                    .with("times", Text.figures(Double.toString(Math.round(growth * 10) / 10.0)))
                                    .with("read", fromBase ? Text.of("from that size") : Text.of("from size to size")),
                            Text.of("Write full measurements in every size, or steps that leave no doubt.")));
        }
        // Below the base size a room may write the steps with or without their minus.
        int below = allStepsNotNegative() ? -1 : 1;
        Map<CheckedMeasure, Double> full = new EnumMap<>(of(base));
        for (int side : new int[] {-1, 1}) {
            Map<CheckedMeasure, Double> running = new EnumMap<>(full);
            for (int i = base + side; i >= 0 && i < sizes.size(); i += side) {
                for (Map.Entry<CheckedMeasure, Double> entry : of(i).entrySet()) {
                    if (!stepped.contains(entry.getKey())) {
                        continue;
                    }
                    Double from = (fromBase ? full : running).get(entry.getKey());
                    if (from != null) {
                        entry.setValue(from + (side < 0 ? below : 1) * entry.getValue());
                        running.put(entry.getKey(), entry.getValue());
                    }
                }
            }
        }
        context.traces()
                .assumed(
                        0,
                        ImportNote.FILE,
                        Text.of("only size {size} has full measurements, so the other columns were read as"
                                        + " increments {read}")
                                .with("size", ForeignInputException.shown(sizes.get(base)))
                                .with(
                                        "read",
                                        fromBase
                                                ? Text.of("from that size")
                                                : Text.of("from size to size, starting at that size")));
    }

    private boolean allStepsNotNegative() {
        return values.values().stream()
                .flatMap(of -> of.entrySet().stream())
                .filter(entry -> isFull(entry.getKey()))
                .allMatch(entry -> entry.getValue() >= 0);
    }

    /** How many times the first step from the base size the second one is, in most rows; 1 where there is none. */
    private double growth(int base) {
        List<Double> growth = new ArrayList<>();
        for (int side : new int[] {-1, 1}) {
            for (CheckedMeasure measure : of(base).keySet()) {
                int near = base + side;
                int far = base + 2 * side;
                if (far < 0 || far >= sizes.size() || base(measure).isEmpty()) {
                    continue;
                }
                Double one = of(near).get(measure);
                Double two = of(far).get(measure);
                if (one != null && two != null && Math.abs(one) > 0) {
                    growth.add(Math.abs(two) / Math.abs(one));
                }
            }
        }
        growth.sort(null);
        return growth.isEmpty() ? 1 : growth.get(growth.size() / 2);
    }

    private void refuseNegative() throws ForeignInputException {
        for (String size : sizes) {
            for (Map.Entry<CheckedMeasure, Double> entry : required(size).entrySet()) {
                if (isFull(entry.getKey()) && !(entry.getValue() > 0)) {
                    throw new ForeignInputException(
                            context.file(),
                            0,
                            Text.of("{measure} of size {size} is {value} mm; a sleeve measures more than 0. A"
                                            + " sheet of increments needs one size with full measurements in every"
                                            + " row, and steps in all others")
                                    .with("measure", Text.of(entry.getKey().code()))
                                    .with("size", ForeignInputException.shown(size))
                                    .with(
                                            "value",
                                            Text.figures(Double.toString(Math.round(entry.getValue() * 100) / 100.0))));
                }
            }
        }
    }
}
