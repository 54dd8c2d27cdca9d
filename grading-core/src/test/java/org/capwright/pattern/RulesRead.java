package org.capwright.pattern;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.capwright.exchange.dxf.PointGrading;
import org.capwright.geometry.Point;
import org.locationtech.jts.algorithm.Distance;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.operation.distance.IndexedFacetDistance;

/** A graded drawing and its rule table read from their bytes by group codes alone, and every size put together again: each point of the drawn line moved by the rule whose number stands there. */
final class RulesRead {

    private static final Pattern PAIR = Pattern.compile("-?[0-9.]+,-?[0-9.]+");

    private static final long GRID = 1_000_000;

    /** Rules at one place may part by the rounding of their points, mm. */
    private static final double ALIKE = 5e-3;

    /** A chord nearer than this need not be the nearest, mm. */
    private static final double NEAR = 2e-3;

    /** So many chords are looked at before all are. */
    private static final int AT_HAND = 12;

    private record Line(String layer, List<Point> points) {}

    private final Map<String, List<Line>> lines = new HashMap<>();
    private final Map<String, Map<String, TreeSet<Integer>>> numbers = new HashMap<>();
    private final Map<Integer, List<Point>> rules = new HashMap<>();

    private RulesRead() {}

    /** The greatest distance, mm, of any size's cut line from the one that the rules give. */
    static double worst(PatternSet set) {
        PointGrading grading = PointGrading.of(set);
        RulesRead read = new RulesRead();
        read.drawing(new String(grading.drawing(), StandardCharsets.ISO_8859_1));
        read.table(new String(grading.rules().bytes(), StandardCharsets.ISO_8859_1));
        double worst = 0;

        int base = set.run().base();
        for (int kind = 0; kind < set.sizes().get(base).size(); kind++) {
            String block = (set.sizes().get(base).get(kind).kind().id() + "-"
                            + set.sizes().get(base).get(kind).size())
                    .toUpperCase(Locale.ROOT);
            for (int size = 0; size < set.sizes().size(); size++) {
                Piece piece = set.sizes().get(size).get(kind);
                boolean onSeam = piece.edges().stream().allMatch(edge -> edge.allowance() == 0);
                double cut = apart(read.graded(block, "1", size), onSeam ? net(piece) : piece.cutLine());
                double net = apart(read.graded(block, "14", size), net(piece));
                worst = Math.max(worst, Math.max(cut, net));
            }
        }
        return worst;
    }

    private static List<Point> net(Piece piece) {
        List<Point> points = new ArrayList<>();
        piece.edges().forEach(edge -> {
            List<Point> flat = edge.curve().flattened(0.0005);
            points.addAll(flat.subList(0, flat.size() - 1));
        });
        return points;
    }

    private static double apart(List<Point> one, List<Point> other) {
        return Math.max(farthest(one, other), farthest(other, one));
    }

    /** How far the farthest of some points lies from a ring. Both mostly run beside one another: a chord at hand is enough to show that a point is near; all are looked at where none is. */
    private static double farthest(List<Point> points, List<Point> ring) {
        IndexedFacetDistance all = null;
        double farthest = 0;
        int hand = 0;
        for (Point point : points) {
            double distance = Double.POSITIVE_INFINITY;
            int best = hand;
            for (int ahead = 0; ahead < AT_HAND && distance > NEAR; ahead++) {
                int from = (hand + ahead) % ring.size();
                double here = Distance.pointToSegment(
                        coordinate(point), coordinate(ring.get(from)), coordinate(ring.get((from + 1) % ring.size())));
                if (here < distance) {
                    distance = here;
                    best = from;
                }
            }
            if (distance > NEAR) {
                if (all == null) {
                    all = new IndexedFacetDistance(Check.polygon(ring).getExteriorRing());
                }
                distance = Math.min(distance, all.distance(Check.point(point)));
            }
            hand = distance > NEAR ? hand : best;
            farthest = Math.max(farthest, distance);
        }
        return farthest;
    }

    private static Coordinate coordinate(Point point) {
        return new Coordinate(point.x(), point.y());
    }

    private List<Point> graded(String block, String layer, int size) {
        List<Point> points = new ArrayList<>();
        for (Line line : lines.getOrDefault(block, List.of())) {
            if (line.layer.equals(layer)) {
                for (Point point : line.points) {
                    TreeSet<Integer> here = numbers.get(block).getOrDefault(key(point), new TreeSet<>());
                    if (here.isEmpty()) {
                        throw new AssertionError("no rule at " + point + " of " + block);
                    }
                    int rule = here.first();
                    for (int other : here) {
                        double apart = rules.get(rule)
                                .get(size)
                                .distanceTo(rules.get(other).get(size));
                        if (apart > ALIKE) {
                            throw new AssertionError(
                                    "two rules at " + point + " of " + block + " that part by " + apart);
                        }
                    }
                    points.add(point.plus(rules.get(rule).get(size)));
                }
                return points;
            }
        }
        throw new AssertionError("no line on layer " + layer + " of " + block);
    }

    private static String key(Point at) {
        return Math.round(at.x() * GRID) + "," + Math.round(at.y() * GRID);
    }

    private void drawing(String file) {
        String[] text = file.split("\r?\n");
        String block = "";
        String entity = "";
        String layer = "";
        String words = "";
        double x = 0;
        double y = 0;
        List<Point> open = new ArrayList<>();
        String openLayer = "";
        for (int i = 0; i + 1 < text.length; i += 2) {
            int code = Integer.parseInt(text[i].strip());
            String value = text[i + 1];
            if (code == 0) {
                if (entity.equals("VERTEX")) {
                    open.add(new Point(x, y));
                } else if (entity.equals("POLYLINE")) {
                    open = new ArrayList<>();
                    openLayer = layer;
                } else if (entity.equals("SEQEND")) {
                    lines.computeIfAbsent(block, b -> new ArrayList<>()).add(new Line(openLayer, open));
                } else if (entity.equals("TEXT") && words.startsWith("# ")) {
                    numbers.computeIfAbsent(block, b -> new HashMap<>())
                            .computeIfAbsent(key(new Point(x, y)), k -> new TreeSet<>())
                            .add(Integer.parseInt(words.substring(2)));
                }
                entity = value;
                words = "";
            } else if (code == 2 && entity.equals("BLOCK")) {
                block = value;
            } else if (code == 8) {
                layer = value;
            } else if (code == 1) {
                words = value;
            } else if (code == 10) {
                x = Double.parseDouble(value);
            } else if (code == 20) {
                y = Double.parseDouble(value);
            }
        }
    }

    private void table(String file) {
        List<Point> deltas = List.of();
        for (String line : file.split("\r?\n")) {
            if (line.startsWith("RULE: DELTA ")) {
                deltas = new ArrayList<>();
                rules.put(Integer.parseInt(line.substring(12)), deltas);
            } else if (PAIR.matcher(line).matches()) {
                String[] pair = line.split(",");
                deltas.add(new Point(Double.parseDouble(pair[0]), Double.parseDouble(pair[1])));
            }
        }
    }
}
