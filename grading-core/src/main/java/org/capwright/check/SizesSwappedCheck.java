package org.capwright.check;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.capwright.quantity.Quantity;
import org.capwright.quantity.Subject;

/**
 * Two sizes, or two figures of a row, in each other's place: the row falls somewhere, and grows evenly once the two are changed back. Evenness is the sum of the squared second differences. A row that
 * falls all the way while others grow stands from large to small, or has the wrong sign.
 */
final class SizesSwappedCheck implements PlausibilityCheck {

    /** Falls smaller than this are rounding, mm. */
    private static final double ROUNDING = 0.5;
    /** By how much more even the row must get. */
    private static final double GAIN = 0.15;

    /** The share of the rows that must agree before whole sizes count as exchanged. Common practice, no source. */
    private static final double AGREE = 0.6;

    /** The same for figures measured on outlines: an exchanged outline shows in every row. Common practice, no source. */
    private static final double AGREE_MEASURED = 0.8;

    /** A row that falls by less in all is level, mm. Common practice, no source. */
    private static final double FALL = 6.5;

    /** What no girth is: these may be graded smaller on purpose, so they are asked about. */
    private static final List<CheckedMeasure> LENGTHWISE = List.of(CheckedMeasure.LENGTH, CheckedMeasure.CAP_HEIGHT);

    private record Swap(int first, int second) {}

    private record Row(CheckedMeasure measure, int[] sizes, double[] values) {}

    @Override
    public String code() {
        return "sizes-swapped";
    }

    @Override
    public Sifted sift(CheckedGrade grade, Thresholds thresholds) {
        List<Row> falling = new ArrayList<>();
        List<Row> backward = new ArrayList<>();
        int growing = 0;
        for (CheckedMeasure measure : GROWING) {
            Row row = row(grade, measure);
            double[] v = row.values;
            if (v.length >= 3) {
                boolean falls = !rises(v);
                if (falls && risesBackward(v)) {
                    backward.add(row);
                }
                growing += Math.abs(v[v.length - 1] - v[0]) > ROUNDING || falls ? 1 : 0;
                if (falls && !risesBackward(v)) {
                    falling.add(row);
                }
            }
        }
        List<Finding> found = new ArrayList<>();
        if (2 * backward.size() > growing) {
            found.add(finding(
                    List.of(grade.label(0), grade.label(grade.sizes().size() - 1)),
                    WHOLE_SIZE,
                    Severity.STOP,
                    "the run goes from large to small: sizes must stand smallest first"));
            return new Sifted(
                    found,
                    grade.with(grade.sizes().stream().map(CheckedSize::blank).toList()));
        }
        List<CheckedSize> rest = new ArrayList<>(grade.sizes());
        backward.removeIf(row -> !fallsSteadily(row.values));
        for (Row row : backward) {
            found.add(finding(
                    List.of(grade.label(0), grade.label(grade.sizes().size() - 1)),
                    row.measure,
                    LENGTHWISE.contains(row.measure) ? Severity.CAUTION : Severity.STOP,
                    "this row falls from size to size while others grow: it may be written from large to small, or"
                            + " its steps have the wrong sign"));
            rest.replaceAll(size -> size.without(row.measure));
        }
        swaps(falling).forEach((swap, rows) -> {
            boolean whole = rows.size() > 1
                    && rows.size() >= (grade.isMeasured() ? AGREE_MEASURED : AGREE) * differing(grade, swap);
            if (!whole) {
                // One wrong figure is the smaller fault, and is told by the checks of the jumps.
                rows.removeIf(measure -> oneFigureExplains(row(grade, measure).values));
            }
            if (!whole && grade.isMeasured()) {
                return;
            }
            for (CheckedMeasure measure : rows) {
                if (!whole || measure == rows.get(0)) {
                    found.add(finding(
                            List.of(grade.label(swap.first), grade.label(swap.second)),
                            whole ? WHOLE_SIZE : measure,
                            Severity.STOP,
                            "these two seem to stand in each other's place: changed back, the row grows evenly"));
                }
            }
            for (int i : new int[] {swap.first, swap.second}) {
                if (whole) {
                    rest.set(i, rest.get(i).blank());
                }
                for (CheckedMeasure measure : rows) {
                    rest.set(i, rest.get(i).without(measure));
                }
            }
        });
        return new Sifted(List.copyOf(found), grade.with(rest));
    }

    /** In how many rows two sizes differ: where whole sizes are exchanged, nearly all of these tell. */
    private static int differing(CheckedGrade grade, Swap swap) {
        int differing = 0;
        for (CheckedMeasure measure : GROWING) {
            OptionalDouble one = grade.value(swap.first, measure);
            OptionalDouble other = grade.value(swap.second, measure);
            if (one.isPresent() && other.isPresent() && Math.abs(one.getAsDouble() - other.getAsDouble()) > ROUNDING) {
                differing++;
            }
        }
        return differing;
    }

    /** For every falling row, the pair of sizes that mends it; the pair most rows agree on comes first. */
    private static Map<Swap, List<CheckedMeasure>> swaps(List<Row> falling) {
        Map<Swap, List<CheckedMeasure>> mended = new LinkedHashMap<>();
        for (Row row : falling) {
            double before = roughness(row.values);
            double least = GAIN * before;
            Swap best = new Swap(-1, -1);
            for (int i = 0; i < row.values.length; i++) {
                for (int j = i + 1; j < row.values.length; j++) {
                    double[] changed = row.values.clone();
                    changed[i] = row.values[j];
                    changed[j] = row.values[i];
                    double after = roughness(changed);
                    if (rises(changed) && after < least) {
                        least = after;
                        best = new Swap(row.sizes[i], row.sizes[j]);
                    }
                }
            }
            if (best.first >= 0) {
                mended.computeIfAbsent(best, swap -> new ArrayList<>()).add(row.measure);
            }
        }
        return mended;
    }

    /** Whether a row is as even with one figure put right as with two exchanged. */
    private static boolean oneFigureExplains(double[] v) {
        double exchanged = Double.POSITIVE_INFINITY;
        double mended = Double.POSITIVE_INFINITY;
        for (int i = 0; i < v.length; i++) {
            for (int j = i + 1; j < v.length; j++) {
                double[] changed = v.clone();
                changed[i] = v[j];
                changed[j] = v[i];
                exchanged = rises(changed) ? Math.min(exchanged, roughness(changed)) : exchanged;
            }
            for (double meant : meant(v, i)) {
                double[] changed = v.clone();
                changed[i] = meant;
                mended = rises(changed) ? Math.min(mended, roughness(changed)) : mended;
            }
        }
        return mended <= exchanged;
    }

    /** What a figure would be by its neighbours on both sides, on the left, or on the right. */
    private static double[] meant(double[] v, int i) {
        List<Double> meant = new ArrayList<>();
        if (i > 0 && i < v.length - 1) {
            meant.add((v[i - 1] + v[i + 1]) / 2);
        }
        if (i > 1) {
            meant.add(2 * v[i - 1] - v[i - 2]);
        }
        if (i < v.length - 2) {
            meant.add(2 * v[i + 1] - v[i + 2]);
        }
        return meant.stream().mapToDouble(Double::doubleValue).toArray();
    }

    private static Row row(CheckedGrade grade, CheckedMeasure measure) {
        List<Integer> sizes = new ArrayList<>();
        for (int i = 0; i < grade.sizes().size(); i++) {
            if (grade.value(i, measure).isPresent()) {
                sizes.add(i);
            }
        }
        return new Row(
                measure,
                sizes.stream().mapToInt(Integer::intValue).toArray(),
                sizes.stream()
                        .mapToDouble(i -> grade.value(i, measure).orElseThrow())
                        .toArray());
    }

    private static boolean rises(double[] values) {
        for (int i = 1; i < values.length; i++) {
            if (values[i] < values[i - 1] - ROUNDING) {
                return false;
            }
        }
        return true;
    }

    private static boolean risesBackward(double[] values) {
        for (int i = 1; i < values.length; i++) {
            if (values[i] > values[i - 1] + ROUNDING) {
                return false;
            }
        }
        return true;
    }

    /** Whether a row falls in most of its jumps, and by more than one step of a coarse ruler in all. */
    private static boolean fallsSteadily(double[] values) {
        int falls = 0;
        for (int i = 1; i < values.length; i++) {
            falls += values[i] < values[i - 1] - ROUNDING ? 1 : 0;
        }
        return 2 * falls > values.length - 1 && values[0] - values[values.length - 1] > FALL;
    }

    private static double roughness(double[] v) {
        double sum = 0;
        for (int i = 1; i < v.length - 1; i++) {
            double c = v[i - 1] - 2 * v[i] + v[i + 1];
            sum += c * c;
        }
        return sum;
    }

    private Finding finding(List<String> sizes, Subject measure, Severity severity, String message) {
        return new Finding(
                code(),
                severity,
                sizes,
                measure,
                Quantity.OTHER,
                OptionalDouble.empty(),
                Expected.ANYTHING,
                message,
                Finding.PRACTICE,
                "Put them in order; they are left out of the other checks.");
    }
}
