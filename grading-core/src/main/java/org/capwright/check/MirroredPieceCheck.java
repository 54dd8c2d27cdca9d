package org.capwright.check;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.capwright.geometry.Point;
import org.capwright.quantity.Quantity;

/**
 * A piece with front and back exchanged in one size. Front and back differ in width, in length of the cap line and in how high the cap line stands half way out; where the other sizes
 * agree on the sign of such a difference, a size with about the opposite difference is mirrored. A sleeve with equal halves cannot be mirrored by mistake.
 */
final class MirroredPieceCheck implements PlausibilityCheck {

    /** Differences below this say nothing, mm. */
    private static final double SAME = 0.3;

    /** On outlines, where a line may wobble, a mirrored line lies this near to those of the other sizes, as a share of the cap height: about 0.8 mm. */
    private static final double LIKE = 0.006;

    /** And nearer than this share of how far off it lies as drawn. */
    private static final double ASIDE = 0.7;

    @Override
    public String code() {
        return "mirrored-piece";
    }

    @Override
    public Sifted sift(CheckedGrade grade, Thresholds thresholds) {
        int n = grade.sizes().size();
        int[] votes = new int[n];
        double[][] signs = {
            difference(grade, CheckedMeasure.FRONT_WIDTH, CheckedMeasure.BACK_WIDTH),
            difference(grade, CheckedMeasure.FRONT_CAP_LINE, CheckedMeasure.BACK_CAP_LINE),
            heights(grade)
        };
        double[] told = new double[n];
        double[] meant = new double[n];
        for (double[] sign : signs) {
            double[] known =
                    Arrays.stream(sign).filter(v -> !Double.isNaN(v)).sorted().toArray();
            double median = known.length < 3 ? 0 : known[known.length / 2];
            for (int i = 0; i < n && Math.abs(median) > SAME; i++) {
                if (!Double.isNaN(sign[i])) {
                    boolean mirrored = Math.abs(sign[i] + median) < Math.abs(sign[i] - median) / 2;
                    votes[i] += mirrored ? 1 : -1;
                    told[i] = mirrored ? sign[i] : told[i];
                    meant[i] = mirrored ? median : meant[i];
                }
            }
        }
        List<Finding> found = new ArrayList<>();
        List<CheckedSize> rest = new ArrayList<>(grade.sizes());
        for (int i = 0; i < n; i++) {
            if (votes[i] > 0 && fits(grade, i)) {
                found.add(finding(grade.label(i), told[i], meant[i]));
                CheckedSize size = rest.get(i).withLines(List.of());
                for (CheckedMeasure half : List.of(
                        CheckedMeasure.FRONT_WIDTH,
                        CheckedMeasure.BACK_WIDTH,
                        CheckedMeasure.FRONT_CAP_LINE,
                        CheckedMeasure.BACK_CAP_LINE)) {
                    size = size.without(half);
                }
                rest.set(i, size);
            }
        }
        return new Sifted(List.copyOf(found), grade.with(rest));
    }

    private static double[] difference(CheckedGrade grade, CheckedMeasure front, CheckedMeasure back) {
        double[] differences = new double[grade.sizes().size()];
        for (int i = 0; i < differences.length; i++) {
            OptionalDouble a = grade.value(i, front);
            OptionalDouble b = grade.value(i, back);
            differences[i] = a.isPresent() && b.isPresent() ? a.getAsDouble() - b.getAsDouble() : Double.NaN;
        }
        return differences;
    }

    /**
     * Whether the cap line of a size, where it is drawn, lies on the mirror image of those of the others rather than on themselves. A line that only wobbles lies on neither.
     */
    private static boolean fits(CheckedGrade grade, int size) {
        if (!grade.isMeasured()) {
            return true;
        }
        List<double[]> others = new ArrayList<>();
        double[] own = profile(grade, size);
        for (int i = 0; i < grade.sizes().size(); i++) {
            double[] profile = profile(grade, i);
            if (i != size && profile.length > 0) {
                others.add(profile);
            }
        }
        if (own.length == 0 || others.size() < 2) {
            return true;
        }
        double[] usual = new double[own.length];
        double[] image = new double[own.length];
        for (int k = 0; k < own.length; k++) {
            int at = k;
            double[] sorted = others.stream().mapToDouble(o -> o[at]).sorted().toArray();
            usual[k] = sorted[sorted.length / 2];
            image[k] = own[own.length - 1 - k];
        }
        double mirrored = apart(image, usual);
        double unlike = others.stream().mapToDouble(o -> apart(o, usual)).max().orElse(0);
        return mirrored < apart(own, usual) * ASIDE && mirrored < Math.max(LIKE, 2 * unlike);
    }

    /** The root of the mean square of the differences of two profiles. */
    private static double apart(double[] one, double[] other) {
        double squares = 0;
        for (int k = 0; k < one.length; k++) {
            squares += (one[k] - other[k]) * (one[k] - other[k]);
        }
        return Math.sqrt(squares / one.length);
    }

    /** Heights of a cap line at tenths of half its width to the front and to the back, as shares of its own height; empty where none is drawn. */
    private static double[] profile(CheckedGrade grade, int size) {
        Optional<NestLine> line = grade.sizes().get(size).line(NestLine.Kind.CAP_LINE);
        if (line.isEmpty()) {
            return new double[0];
        }
        List<Point> points = line.get().points();
        double half = (points.get(points.size() - 1).x() - points.get(0).x()) / 2;
        double height = at(points, 0);
        double[] heights = new double[16];
        for (int k = 0; k < 8; k++) {
            double out = half * (k + 1) / 10;
            heights[7 - k] = at(points, 0.0 - out) / height;
            heights[8 + k] = at(points, out) / height;
        }
        return heights;
    }

    /** Mean height of the front cap line over that of the back one, at equal shares of their widths. */
    private static double[] heights(CheckedGrade grade) {
        double[] heights = new double[grade.sizes().size()];
        for (int i = 0; i < heights.length; i++) {
            Optional<NestLine> line = grade.sizes().get(i).line(NestLine.Kind.CAP_LINE);
            heights[i] = line.isPresent() ? height(line.get().points()) : Double.NaN;
        }
        return heights;
    }

    private static double height(List<Point> points) {
        double front = points.get(0).x();
        double back = points.get(points.size() - 1).x();
        double sum = 0;
        for (int tenth = 1; tenth < 10; tenth++) {
            sum += at(points, front * tenth / 10) - at(points, back * tenth / 10);
        }
        return sum / 9;
    }

    private static double at(List<Point> points, double x) {
        for (int i = 1; i < points.size(); i++) {
            Point a = points.get(i - 1);
            Point b = points.get(i);
            if (Math.min(a.x(), b.x()) <= x && x <= Math.max(a.x(), b.x()) && a.x() != b.x()) {
                return a.towards(b, (x - a.x()) / (b.x() - a.x())).y();
            }
        }
        return Double.NaN;
    }

    private Finding finding(String size, double difference, double usual) {
        return new Finding(
                code(),
                Severity.STOP,
                List.of(size),
                PlausibilityCheck.WHOLE_SIZE,
                Quantity.LENGTH,
                OptionalDouble.of(difference),
                Expected.between(Math.min(usual, usual / 2), Math.max(usual, usual / 2)),
                "front and back seem to be exchanged: the difference of the halves has the other sign than in the"
                        + " other sizes",
                Finding.PRACTICE,
                "Mirror the piece of this size; its halves are left out of the other checks.");
    }
}
