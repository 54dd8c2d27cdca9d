package org.capwright.check;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.capwright.quantity.Quantity;
import org.capwright.quantity.Subject;

/**
 * A size, or a figure, that is not there. A size left out shows in its label, when the labels otherwise go in equal steps and the figures jump by as much more; or, where labels do not
 * tell, in jumps of all figures at one place that are about twice those elsewhere.
 */
final class MissingSizeCheck implements PlausibilityCheck {

    private static final List<String> LETTERS =
            List.of("XXXS", "XXS", "XS", "S", "M", "L", "XL", "XXL", "XXXL", "4XL", "5XL", "6XL");
    private static final Pattern NUMBER = Pattern.compile("(?:[A-Z]{1,3}\\.? ?)?(\\d{1,4})");

    @Override
    public String code() {
        return "missing-size";
    }

    @Override
    public Sifted sift(CheckedGrade grade, Thresholds thresholds) {
        List<Finding> found = new ArrayList<>();
        figures(grade, found);
        List<CheckedSize> rest = new ArrayList<>();
        int base = grade.base();
        double[] places = places(grade);
        double step = usualStep(places);
        for (int i = 0; i < grade.sizes().size(); i++) {
            rest.add(grade.sizes().get(i));
            if (i < grade.intervals() && leftOut(grade, i, places, step)) {
                found.add(finding(
                        grade.pair(i),
                        WHOLE_SIZE,
                        "between these sizes one seems to be left out: they lie farther apart than the others"));
                rest.add(new CheckedSize("", java.util.Map.of()));
                base += i < grade.base() ? 1 : 0;
            }
        }
        return new Sifted(List.copyOf(found), new CheckedGrade(rest, base, grade.body(), grade.grids()));
    }

    /** Rows that most sizes have and some have not. */
    private void figures(CheckedGrade grade, List<Finding> found) {
        List<CheckedMeasure> usual =
                GROWING.stream().filter(measure -> isUsual(grade, measure)).toList();
        for (int i = 0; i < grade.sizes().size(); i++) {
            CheckedSize size = grade.sizes().get(i);
            List<CheckedMeasure> missing = usual.stream()
                    .filter(measure -> size.value(measure).isEmpty())
                    .toList();
            if (!usual.isEmpty() && missing.equals(usual)) {
                found.add(finding(List.of(grade.label(i)), WHOLE_SIZE, "the figures of this size are missing"));
            } else {
                for (CheckedMeasure measure : missing) {
                    found.add(finding(
                            List.of(grade.label(i)), measure, "this figure is missing, though other sizes have it"));
                }
            }
        }
    }

    private static boolean isUsual(CheckedGrade grade, CheckedMeasure measure) {
        int known = 0;
        for (CheckedSize size : grade.sizes()) {
            known += size.value(measure).isPresent() ? 1 : 0;
        }
        return 2 * known > grade.sizes().size();
    }

    private static boolean leftOut(CheckedGrade grade, int interval, double[] places, double step) {
        boolean byLabel = !Double.isNaN(step) && places[interval + 1] - places[interval] >= 2 * step - 1e-9;
        // Rounding is held in favour of what the labels say: a gap where they have one, none where they go on.
        double[] ratios = ratios(grade, interval, byLabel ? 1 : -1);
        if (byLabel) {
            return ratios.length == 0 || Arrays.stream(ratios).min().orElse(0) > 1.4;
        }
        return ratios.length >= 2
                && Arrays.stream(ratios).min().orElse(0) > 1.6
                && Arrays.stream(ratios).max().orElse(9) < 2.6;
    }

    /** Jumps at one place over the usual jump elsewhere, for all measures that grow evenly elsewhere. */
    private static double[] ratios(CheckedGrade grade, int interval, int sign) {
        List<Double> ratios = new ArrayList<>();
        for (CheckedMeasure measure : GROWING) {
            double[] others = java.util.stream.IntStream.range(0, grade.intervals())
                    .filter(i -> i != interval)
                    .mapToObj(i -> grade.jump(i, measure))
                    .filter(OptionalDouble::isPresent)
                    .mapToDouble(OptionalDouble::getAsDouble)
                    .sorted()
                    .toArray();
            OptionalDouble jump = grade.jump(interval, measure);
            double median = others.length == 0 ? 0 : others[others.length / 2];
            // A jump of a millimetre or two is mostly rounding.
            boolean even = others.length >= 2 && others[0] > 0.5 * median && others[others.length - 1] < 1.6 * median;
            if (even && jump.isPresent() && median > 2.5) {
                double leeway = grade.leeway(interval, measure) + grade.leeway(interval + 1, measure);
                ratios.add((jump.getAsDouble() + sign * leeway) / median);
            }
        }
        return ratios.stream().mapToDouble(Double::doubleValue).toArray();
    }

    /** Where the labels stand on a scale of their own, or nothing. */
    private static double[] places(CheckedGrade grade) {
        double[] places = new double[grade.sizes().size()];
        for (int i = 0; i < places.length; i++) {
            String label = grade.label(i).strip().toUpperCase(Locale.ROOT);
            String letters = label.equals("2XL") ? "XXL" : label.equals("3XL") ? "XXXL" : label;
            int letter = LETTERS.indexOf(letters);
            Matcher number = NUMBER.matcher(label);
            if (number.matches()) {
                places[i] = Integer.parseInt(number.group(1));
            } else if (letter >= 0) {
                places[i] = letter;
            } else {
                return new double[0];
            }
        }
        return places;
    }

    /** The step that more than half of the labels go by, or NaN. */
    private static double usualStep(double[] places) {
        double[] steps = new double[Math.max(0, places.length - 1)];
        for (int i = 0; i < steps.length; i++) {
            steps[i] = places[i + 1] - places[i];
        }
        double[] sorted = steps.clone();
        Arrays.sort(sorted);
        double middle = sorted.length < 2 ? Double.NaN : sorted[(sorted.length - 1) / 2];
        long same = Arrays.stream(steps).filter(s -> s == middle).count();
        return middle > 0 && 2 * same > steps.length ? middle : Double.NaN;
    }

    private Finding finding(List<String> sizes, Subject measure, String message) {
        return new Finding(
                code(),
                Severity.CAUTION,
                sizes,
                measure,
                Quantity.OTHER,
                OptionalDouble.empty(),
                Expected.ANYTHING,
                message,
                Finding.PRACTICE,
                "Supply it; jumps across it are not checked.");
    }
}
