package org.capwright.exchange.dxf;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.capwright.geometry.Point;

/** Numbers the grade rules: points that move alike have the same one. */
final class RuleBook {

    private final int base;
    private final Map<List<Point>, Integer> numbers = new HashMap<>();
    private final List<RuleTable.Rule> rules = new ArrayList<>();

    RuleBook(int base) {
        this.base = base;
    }

    /**
     * The rule for a point.
     *
     * @param places where it lies in every size
     * @return number of the rule
     */
    int number(List<Point> places) {
        List<Point> deltas = deltas(places);
        Integer known = numbers.get(deltas);
        if (known != null) {
            return known;
        }
        int number = rules.size() + 1;
        numbers.put(deltas, number);
        rules.add(new RuleTable.Rule(number, List.copyOf(deltas)));
        return number;
    }

    /** Whether a rule moves a point as its places ask; no rule is made for it. */
    boolean moves(int rule, List<Point> places) {
        return rules.get(rule - 1).deltas().equals(deltas(places));
    }

    private List<Point> deltas(List<Point> places) {
        Point from = rounded(places.get(base));
        List<Point> deltas = new ArrayList<>(places.size());
        for (Point place : places) {
            deltas.add(rounded(rounded(place).minus(from)));
        }
        return deltas;
    }

    List<RuleTable.Rule> rules() {
        return List.copyOf(rules);
    }

    static Point rounded(Point point) {
        return new Point(rounded(point.x()), rounded(point.y()));
    }

    /** Adding zero turns a negative zero into a positive one. */
    private static double rounded(double value) {
        return Math.rint(value / RuleTable.GRID) * RuleTable.GRID + 0.0;
    }
}
