package org.capwright.service.sizerun;

import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.capwright.geometry.Cubic;
import org.capwright.geometry.Curve;
import org.capwright.geometry.Point;
import org.capwright.geometry.Points;
import org.capwright.quantity.Decimals;
import org.capwright.quantity.Unit;
import org.capwright.words.Language;
import org.capwright.words.Text;

/** Shows lengths and points in the caller's unit, off the noise of binary fractions. */
record UnitFormat(Unit unit, Language language) {

    /** Points of flattened lines lie within 0.01 mm of the curve; six decimals are ample. */
    private static final double POINT = 1e6;

    /** Figures alone. */
    UnitFormat(Unit unit) {
        this(unit, Language.ENGLISH);
    }

    String say(Text text) {
        return text.in(language);
    }

    String say(String text) {
        return language.say(text);
    }

    double length(double millimetres) {
        return unit.figure(millimetres);
    }

    /** An area in the square of the unit, from mm². */
    double area(double squareMillimetres) {
        double one = unit.toMillimetres(1);
        return Decimals.clean(squareMillimetres / (one * one), POINT);
    }

    static double ratio(double value) {
        return Decimals.clean(value);
    }

    double[] exact(Point point) {
        return new double[] {length(point.x()), length(point.y())};
    }

    static double[] direction(Point point) {
        return new double[] {Decimals.clean(point.x()), Decimals.clean(point.y())};
    }

    double[][] points(Points line) {
        double[][] points = new double[line.size()][];
        for (int i = 0; i < points.length; i++) {
            points[i] = new double[] {
                Decimals.clean(unit.fromMillimetres(line.x(i)), POINT),
                Decimals.clean(unit.fromMillimetres(line.y(i)), POINT)
            };
        }
        return points;
    }

    double[][][] segments(Curve curve) {
        List<Cubic> cubics = curve.segments();
        double[][][] segments = new double[cubics.size()][][];
        for (int i = 0; i < segments.length; i++) {
            Cubic cubic = cubics.get(i);
            segments[i] = new double[][] {
                exact(cubic.start()), exact(cubic.control1()), exact(cubic.control2()), exact(cubic.end())
            };
        }
        return segments;
    }

    double[] lengths(List<Double> millimetres) {
        return millimetres.stream().mapToDouble(this::length).toArray();
    }

    /** The jumps between lengths as they are shown, so that they are what a reader finds between them. */
    static double[] jumps(double[] lengths) {
        return IntStream.range(1, lengths.length)
                .mapToDouble(i -> Decimals.clean(lengths[i] - lengths[i - 1]))
                .toArray();
    }

    /** The name of a constant as the API writes it: {@code side-seam}. */
    static String word(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
