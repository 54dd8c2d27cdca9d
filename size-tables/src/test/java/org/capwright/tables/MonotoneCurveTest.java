package org.capwright.tables;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import java.util.Random;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class MonotoneCurveTest {

    private static double[] numbers(String text) {
        return Stream.of(text.split(";")).mapToDouble(Double::parseDouble).toArray();
    }

    /** Source: SciPy's PchipInterpolator, an independent implementation of the same published method. */
    @Test
    void agreesWithAnIndependentImplementation() {
        int checked = 0;
        for (Map<String, String> line : TestCsv.read("monotone-curve-scipy.csv")) {
            double[] x = numbers(line.get("x"));
            double[] y = numbers(line.get("y"));
            double value = new MonotoneCurve(x, y).at(Double.parseDouble(line.get("place")));
            assertEquals(Double.parseDouble(line.get("expected")), value, 1e-9, line.toString());
            checked++;
        }
        assertEquals(480, checked);
    }

    static LongStream seeds() {
        return LongStream.range(0, 200);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void staysBetweenNeighboursAndGrowsWhereTheyGrow(long seed) {
        Random random = new Random(seed);
        int n = 1 + random.nextInt(12);
        double[] x = new double[n];
        double[] y = new double[n];
        for (int i = 0; i < n; i++) {
            x[i] = (i == 0 ? 0 : x[i - 1]) + 0.1 + 80 * random.nextDouble();
            y[i] = (i == 0 ? 100 : y[i - 1]) + (random.nextInt(4) == 0 ? 0 : 30 * random.nextDouble());
        }
        MonotoneCurve curve = new MonotoneCurve(x, y);
        if (n == 1) {
            assertEquals(y[0], curve.at(x[0]), "seed " + seed);
            return;
        }
        for (int i = 0; i < n - 1; i++) {
            assertEquals(y[i], curve.at(x[i]), 1e-9, "seed " + seed);
            double last = y[i];
            for (int k = 1; k <= 50; k++) {
                double value = curve.at(x[i] + (x[i + 1] - x[i]) * k / 50);
                assertTrue(value >= last - 1e-9 && value <= y[i + 1] + 1e-9, "seed " + seed + " at " + i);
                last = value;
            }
        }
        assertEquals(y[n - 1], curve.at(x[n - 1]), 1e-9, "seed " + seed);
    }
}
