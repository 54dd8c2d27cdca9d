package org.capwright.gradeimport;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.DoublePredicate;
import org.capwright.check.CheckedMeasure;
import org.capwright.exchange.ForeignInputException;
import org.capwright.quantity.Quantity;
import org.capwright.quantity.Unit;
import org.capwright.words.Text;

/**
 * Figures that are those of no sleeve as they stand, but of one in another unit, or when they are halves. What sleeves measure, and how their measures stand to one another, is common practice, no source.
 */
final class Doubts {

    /** What finished sleeves of women, men and children measure, mm. */
    private static final Map<CheckedMeasure, double[]> USUAL = Map.of(
            CheckedMeasure.BICEP, new double[] {190, 640},
            CheckedMeasure.LENGTH, new double[] {130, 780},
            CheckedMeasure.CAP_HEIGHT, new double[] {40, 240},
            CheckedMeasure.ARMHOLE, new double[] {240, 760},
            CheckedMeasure.CAP_LINE, new double[] {250, 820},
            CheckedMeasure.ELBOW, new double[] {150, 600},
            CheckedMeasure.WRIST, new double[] {115, 760});

    /** A row about a sleeve is a half where it is less than this share of the other row. */
    private record Half(CheckedMeasure measure, CheckedMeasure beside, double least) {}

    private static final List<Half> HALVES = List.of(
            new Half(CheckedMeasure.BICEP, CheckedMeasure.CAP_HEIGHT, 1.75),
            new Half(CheckedMeasure.ARMHOLE, CheckedMeasure.CAP_HEIGHT, 2.2),
            new Half(CheckedMeasure.BICEP, CheckedMeasure.LENGTH, 0.42),
            new Half(CheckedMeasure.ARMHOLE, CheckedMeasure.LENGTH, 0.5),
            new Half(CheckedMeasure.ARMHOLE, CheckedMeasure.CAP_LINE, 0.68),
            new Half(CheckedMeasure.ARMHOLE, CheckedMeasure.BICEP, 0.85),
            new Half(CheckedMeasure.BICEP, CheckedMeasure.ARMHOLE, 0.58),
            new Half(CheckedMeasure.BICEP, CheckedMeasure.CAP_LINE, 0.56),
            // A cap line goes over the bicep line from end to end.
            new Half(CheckedMeasure.CAP_LINE, CheckedMeasure.BICEP, 0.98),
            new Half(CheckedMeasure.CAP_LINE, CheckedMeasure.ARMHOLE, 0.75),
            new Half(CheckedMeasure.ELBOW, CheckedMeasure.BICEP, 0.58),
            new Half(CheckedMeasure.WRIST, CheckedMeasure.BICEP, 0.33),
            new Half(CheckedMeasure.WRIST, CheckedMeasure.LENGTH, 0.2));

    /** A sleeve shorter than this share of its bicep ends above the elbow. */
    private static final double SHORT = 0.8;

    /** A lower edge narrower than this share of the bicep is that of a long sleeve. */
    private static final double NARROWED = 0.8;

    /** How much longer a cap line is than the straight lines of its cap, at most. */
    private static final double CURVED = 1.1;

    /** How much a cap line may be shorter than the armhole, and a sleeve still be set in. */
    private static final double TIGHT = 0.97;

    /** How far the straight lines of a cap are off its armhole, at most. */
    private static final double LOOSE = 0.15;

    private final TableContext context;
    private final List<String> sizes;
    private final Map<String, Map<CheckedMeasure, Double>> values;
    private final Set<CheckedMeasure> doubtful = EnumSet.noneOf(CheckedMeasure.class);

    private Doubts(TableContext context, List<String> sizes, Map<String, Map<CheckedMeasure, Double>> values) {
        this.context = context;
        this.sizes = sizes;
        this.values = values;
    }

    /** The points whose figures are in question; the questions are put to the context. A unit that the sender says is used where the one stated makes no sleeve. */
    static Set<CheckedMeasure> of(
            TableContext context, List<String> sizes, Map<String, Map<CheckedMeasure, Double>> values) {
        Doubts doubts = new Doubts(context, sizes, values);
        if (!doubts.otherUnit()) {
            doubts.halves();
        }
        return doubts.doubtful;
    }

    private Map<CheckedMeasure, Double> middles() {
        Map<CheckedMeasure, Double> middles = new EnumMap<>(CheckedMeasure.class);
        for (CheckedMeasure measure : USUAL.keySet()) {
            double[] known = sizes.stream()
                    .map(size -> Objects.requireNonNull(values.get(size)).get(measure))
                    .filter(Objects::nonNull)
                    .mapToDouble(Double::doubleValue)
                    .sorted()
                    .toArray();
            if (known.length > 0) {
                middles.put(measure, known[known.length / 2]);
            }
        }
        return middles;
    }

    private WrittenRow written(CheckedMeasure measure) {
        return Objects.requireNonNull(context.written().get(measure));
    }

    private static boolean isUsual(CheckedMeasure measure, double value) {
        double[] range = Objects.requireNonNull(USUAL.get(measure));
        return value >= range[0] && value <= range[1];
    }

    /** Whether the whole sheet seems to be written in another unit than it says. */
    private boolean otherUnit() {
        Map<CheckedMeasure, Double> middles = middles();
        Set<Unit> stated = EnumSet.noneOf(Unit.class);
        middles.keySet().forEach(measure -> stated.addAll(written(measure).units()));
        long usual = middles.entrySet().stream()
                .filter(row -> isUsual(row.getKey(), row.getValue()))
                .count();
        boolean certain =
                middles.keySet().stream().allMatch(measure -> written(measure).certain());
        if (stated.size() != 1 || usual == middles.size() || certain || isForChildren()) {
            return false;
        }
        Unit said = stated.iterator().next();
        Optional<Unit> meant = Optional.empty();
        for (Unit unit : Unit.values()) {
            double factor = unit.toMillimetres(1) / said.toMillimetres(1);
            boolean all = middles.entrySet().stream().allMatch(row -> isUsual(row.getKey(), row.getValue() * factor));
            meant = all && unit != said && (middles.size() > 1 || usual == 0) ? Optional.of(unit) : meant;
        }
        if (meant.isEmpty() || middles.size() < 2 && usual > 0) {
            return false;
        }
        if (context.options().unit().equals(meant)) {
            double factor = meant.get().toMillimetres(1) / said.toMillimetres(1);
            values.values()
                    .forEach(of -> of.replaceAll(
                            (measure, value) -> measure.quantity() == Quantity.LENGTH ? value * factor : value));
            context.traces()
                    .assumed(
                            0,
                            ImportNote.FILE,
                            Text.of("read in {unit} as the sender says, since the figures are those of no"
                                            + " sleeve in {stated}")
                                    .with("unit", meant.get().symbol())
                                    .with("stated", said.symbol()));
            return false;
        }
        doubtful.addAll(EnumSet.allOf(CheckedMeasure.class));
        List<Text> figures =
                middles.keySet().stream().map(measure -> range(measure, said)).toList();
        context.questions()
                .add(new OpenQuestion(
                        0,
                        Unread.Part.FILE,
                        List.of(),
                        Text.of("the sheet says {stated}, but its figures are those of no sleeve in that unit,"
                                        + " and usual ones in {unit}: {figures}")
                                .with("stated", word(said))
                                .with("unit", word(meant.get()))
                                .with("figures", Text.joined(figures, ", ")),
                        Text.of("Set fileUnits to {unit} if they are meant so; else correct the unit or the"
                                        + " figures in the sheet.")
                                .with("unit", meant.get().symbol())));
        return true;
    }

    private static Text word(Unit unit) {
        return unit == Unit.INCH ? Text.of("inches") : Text.name(unit.symbol());
    }

    /** Sizes by the height of a child, or by its age. */
    private boolean isForChildren() {
        return sizes.stream()
                        .anyMatch(
                                size -> size.toLowerCase(Locale.ROOT)
                                        .matches(
                                                ".*\\d"
                                                        + " ?(?:m|y|t|mois|ans|months?|years?|jahre|monate|anni|mesi|meses|an|a\\u00f1os)\\b.*"))
                || sizes.size() > 1
                        && sizes.stream()
                                .allMatch(size -> size.matches("\\d{2,3}")
                                        && Integer.parseInt(size) >= 50
                                        && (Integer.parseInt(size) - 50) % 6 == 0);
    }

    /** One row in a smaller unit than the sheet says: as it stands no sleeve is so large. */
    private void tooLarge(Map<CheckedMeasure, Double> middles) {
        boolean others = middles.entrySet().stream().anyMatch(row -> isUsual(row.getKey(), row.getValue()));
        for (CheckedMeasure measure : List.copyOf(middles.keySet())) {
            double middle = Objects.requireNonNull(middles.get(measure));
            if (!others || middle <= Objects.requireNonNull(USUAL.get(measure))[1]) {
                continue;
            }
            List<Text> answers = inAnotherUnit(measure, middle, factor -> factor < 1);
            if (!answers.isEmpty()) {
                Unit unit = written(measure).units().iterator().next();
                ask(
                        measure,
                        Text.of("{figures} is large for a sleeve beside the other rows: it may be in another"
                                        + " unit; it is not judged")
                                .with("figures", range(measure, unit)),
                        answers);
                doubtful.add(measure);
                middles.remove(measure);
            }
        }
    }

    /** Rows that would fit the others in inches: a length that ends above the elbow though the sleeve is narrowed to the wrist; a cap whose line cannot reach round the armhole. */
    private static Map<CheckedMeasure, CheckedMeasure> inInches(Map<CheckedMeasure, Double> middles) {
        Map<CheckedMeasure, CheckedMeasure> found = new EnumMap<>(CheckedMeasure.class);
        Double bicep = middles.get(CheckedMeasure.BICEP);
        if (bicep == null) {
            return found;
        }
        Double length = middles.get(CheckedMeasure.LENGTH);
        Double wrist = middles.get(CheckedMeasure.WRIST);
        if (length != null && wrist != null && length < SHORT * bicep && wrist < NARROWED * bicep) {
            found.put(CheckedMeasure.LENGTH, CheckedMeasure.WRIST);
        }
        Double height = middles.get(CheckedMeasure.CAP_HEIGHT);
        Double armhole = middles.get(CheckedMeasure.ARMHOLE);
        if (height != null
                && armhole != null
                && CURVED * chord(bicep, height) < TIGHT * armhole
                && Math.abs(chord(bicep, Unit.INCH.toMillimetres(height) / Unit.CENTIMETRE.toMillimetres(1)) / armhole
                                - 1)
                        < LOOSE) {
            found.put(CheckedMeasure.CAP_HEIGHT, CheckedMeasure.ARMHOLE);
        }
        return found;
    }

    /** From underarm to apex to underarm, straight. */
    private static double chord(double bicep, double height) {
        return 2 * Math.hypot(bicep / 2, height);
    }

    private void halves() {
        Map<CheckedMeasure, Double> middles = middles();
        tooLarge(middles);
        Map<CheckedMeasure, CheckedMeasure> half = new EnumMap<>(CheckedMeasure.class);
        for (int round = 0; round < 2; round++) {
            for (Half bound : HALVES) {
                Double value = middles.get(bound.measure);
                Double beside = middles.get(bound.beside);
                if (value != null
                        && beside != null
                        && !half.containsKey(bound.measure)
                        && !written(bound.measure).certain()
                        && value * factor(half, bound.measure) < bound.least * beside * factor(half, bound.beside)) {
                    half.put(bound.measure, bound.beside);
                }
            }
            Double bicep = middles.get(CheckedMeasure.BICEP);
            if (bicep != null
                    && middles.size() == 1
                    && bicep < 205
                    && !written(CheckedMeasure.BICEP).certain()
                    && !isForChildren()) {
                half.put(CheckedMeasure.BICEP, CheckedMeasure.BICEP);
            }
        }
        if (half.isEmpty()) {
            half.putAll(inInches(middles));
            half.keySet().removeIf(measure -> written(measure).certain());
        }
        half.forEach(this::askHalf);
        doubtful.addAll(half.keySet());
    }

    private static double factor(Map<CheckedMeasure, CheckedMeasure> half, CheckedMeasure measure) {
        return half.containsKey(measure) ? 2 : 1;
    }

    private void askHalf(CheckedMeasure measure, CheckedMeasure beside) {
        Unit unit = written(measure).units().iterator().next();
        String shown = ForeignInputException.shown(written(measure).name());
        String code = measure.code();
        double middle = Objects.requireNonNull(middles().get(measure));
        List<Text> answers = new ArrayList<>();
        if (measure != CheckedMeasure.LENGTH && measure != CheckedMeasure.CAP_HEIGHT) {
            answers.add(Text.of("Set the mapping {half} if half of it is measured, laid flat or on the fold")
                    .with("half", mapped(shown, "half " + code)));
        }
        if (measure == CheckedMeasure.CAP_LINE && isUsual(CheckedMeasure.CAP_HEIGHT, middle)) {
            answers.add(Text.of("{mapping} if it is the height of the cap")
                    .with("mapping", mapped(shown, CheckedMeasure.CAP_HEIGHT.code())));
        }
        answers.addAll(inAnotherUnit(measure, middle, factor -> factor > 1));
        ask(
                measure,
                (beside == measure
                                ? Text.of("{figures} is small for a whole sleeve: it may be a half, or in"
                                        + " another unit; it is not judged")
                                : Text.of("{figures} is small for a whole sleeve beside {others}: it may"
                                                + " be a half, or in another unit; it is not judged")
                                        .with("others", range(beside, unit)))
                        .with("figures", range(measure, unit)),
                answers);
    }

    /** What to map a row to for each unit in which it would be usual, of those that are so many times the unit it is read in. */
    private List<Text> inAnotherUnit(CheckedMeasure measure, double middle, DoublePredicate times) {
        Unit unit = written(measure).units().iterator().next();
        String shown = ForeignInputException.shown(written(measure).name());
        List<Text> answers = new ArrayList<>();
        for (Unit other : Unit.values()) {
            double factor = other.toMillimetres(1) / unit.toMillimetres(1);
            if (times.test(factor) && isUsual(measure, middle * factor)) {
                answers.add(Text.of("{mapping} if it is in {unit}")
                        .with("mapping", mapped(shown, measure.code() + " (" + other.symbol() + ")"))
                        .with("unit", other.symbol()));
            }
        }
        return answers;
    }

    /** Asks what a row is; the last answer is that it is meant as it stands. */
    private void ask(CheckedMeasure measure, Text what, List<Text> answers) {
        List<Text> all = new ArrayList<>(answers);
        all.add(Text.of("{mapping} if it is meant as it stands.")
                .with(
                        "mapping",
                        mapped(ForeignInputException.shown(written(measure).name()), "full " + measure.code())));
        context.questions()
                .add(new OpenQuestion(written(measure).line(), measure, List.of(), what, Text.joined(all, "; ")));
    }

    private static String mapped(String name, String meaning) {
        return "{\"" + name + "\": \"" + meaning + "\"}";
    }

    private Text range(CheckedMeasure measure, Unit unit) {
        double[] known = sizes.stream()
                .map(size -> Objects.requireNonNull(values.get(size)).get(measure))
                .filter(Objects::nonNull)
                .mapToDouble(Double::doubleValue)
                .sorted()
                .toArray();
        String least = unit.format(known[0]);
        String most = unit.format(known[known.length - 1]);
        return (least.equals(most)
                        ? Text.of("{measure} {least} {unit}")
                        : Text.of("{measure} {least} to {most} {unit}").with("most", Text.figures(most)))
                .with("measure", Text.of(measure.code()))
                .with("least", Text.figures(least))
                .with("unit", unit.symbol());
    }
}
