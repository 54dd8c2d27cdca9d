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
            if (votes[i] > 0) {
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
                "front and back seem to be exchanged: the difference of the halves has the other sign than in the other sizes",
                Finding.PRACTICE,
                "Mirror the piece of this size; its halves are left out of the other checks.");
    }
}
