package org.capwright.exchange.dxf;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.capwright.exchange.ForeignInputException;
import org.capwright.geometry.Placing;
import org.capwright.geometry.Point;
import org.capwright.words.Text;

/** Puts the blocks of a drawing in place and turns its lines into chords in millimetres. What it makes is bounded, whatever the drawing holds. */
final class DxfExpansion {

    private static final int DEEPEST = 16;
    private static final int MOST_ENTITIES = 100_000;
    private static final int MOST_POINTS = 500_000;
    private static final int MOST_OF_CURVES = 1_000_000;
    private static final int MOST_WORDS = 20_000;
    private static final double FARTHEST = 1e6;
    private static final Pattern FORMS = Pattern.compile("\\\\[A-Za-z][^;\\\\]{0,60};");
    private static final Pattern PARAGRAPH = Pattern.compile("\\\\P");
    private static final Set<String> DRAWN = Set.of(
            "POLYLINE",
            "LWPOLYLINE",
            "LINE",
            "ARC",
            "CIRCLE",
            "ELLIPSE",
            "SPLINE",
            "TEXT",
            "MTEXT",
            "ATTRIB",
            "INSERT");
    private static final Set<String> SILENT = Set.of("POINT", "ATTDEF", "SEQEND", "VERTEX", "VIEWPORT");

    private final DxfDrawing drawing;
    private final List<DrawnLine> lines = new ArrayList<>();
    private final List<DrawnText> words = new ArrayList<>();
    private final Set<String> leftOut = new TreeSet<>();
    private final Flattening.Budget budget = new Flattening.Budget(MOST_OF_CURVES);
    private int entities;
    private int points;
    private final List<Insertion> instances = new ArrayList<>(List.of(Insertion.DRAWING));

    private DxfExpansion(DxfDrawing drawing) {
        this.drawing = drawing;
    }

    static DxfContent of(DxfDrawing drawing, double millimetresPerUnit) throws ForeignInputException {
        DxfExpansion expansion = new DxfExpansion(drawing);
        Placing scale = Placing.scale(millimetresPerUnit);
        expansion.expand(drawing.entities(), scale, Insertion.DRAWING, "0", new ArrayList<>());
        if (expansion.lines.isEmpty()) {
            // A library of blocks that nothing inserts: each is a piece.
            for (DxfDrawing.Block block : drawing.blocks().values().stream()
                    .sorted(java.util.Comparator.comparingInt(DxfDrawing.Block::line))
                    .toList()) {
                if (!block.name().startsWith("*")) {
                    Insertion instance = expansion.instance(block.name(), Insertion.DRAWING);
                    expansion.expand(
                            block.entities(),
                            scale,
                            instance,
                            "0",
                            new ArrayList<>(List.of(block.name().toUpperCase(Locale.ROOT))));
                }
            }
        }
        return new DxfContent(expansion.lines, expansion.words, expansion.instances, expansion.leftOut);
    }

    private Insertion instance(String block, Insertion parent) {
        Insertion instance = new Insertion(instances.size(), block, parent.number());
        instances.add(instance);
        return instance;
    }

    private void expand(
            List<DxfEntity> list, Placing placing, Insertion instance, String insertLayer, List<String> path)
            throws ForeignInputException {
        for (int i = 0; i < list.size(); i++) {
            DxfEntity entity = list.get(i);
            if (++entities > MOST_ENTITIES) {
                throw entity.error(Text.of("with all blocks put in place, more than {most} entities are not read")
                        .with("most", MOST_ENTITIES));
            }
            String layer = entity.layer().equals("0") ? insertLayer : entity.layer();
            switch (entity.type()) {
                case "POLYLINE" -> i = polyline(list, i, placing, instance, layer);
                case "INSERT" -> insert(entity, placing, instance, layer, path);
                case "TEXT", "MTEXT", "ATTRIB" -> text(entity, placing, instance, layer);
                default -> {
                    if (DRAWN.contains(entity.type())) {
                        curve(entity, seen(entity, placing), placing, instance, layer);
                    } else if (!SILENT.contains(entity.type())) {
                        leftOut.add(ForeignInputException.shown(entity.type()));
                    }
                }
            }
        }
    }

    private static Placing seen(DxfEntity entity, Placing placing) throws ForeignInputException {
        return entity.seenFromBehind() ? placing.after(Placing.stretch(-1, 1)) : placing;
    }

    private void insert(DxfEntity entity, Placing placing, Insertion instance, String layer, List<String> path)
            throws ForeignInputException {
        String name = entity.text(2).toUpperCase(Locale.ROOT);
        DxfDrawing.Block block = drawing.blocks().get(name);
        if (block == null) {
            throw entity.error(
                    Text.of("there is no block {name}").with("name", ForeignInputException.shown(entity.text(2))));
        }
        if (path.contains(name)) {
            throw entity.error(
                    Text.of("block {name} contains itself").with("name", ForeignInputException.shown(block.name())));
        }
        if (path.size() >= DEEPEST) {
            throw entity.error(
                    Text.of("blocks within blocks, deeper than {most}").with("most", DEEPEST));
        }
        double scaleX = entity.number(41, 1);
        double scaleY = entity.number(42, 1);
        if (scaleX == 0 || scaleY == 0) {
            throw entity.error(Text.of("its scale is 0"));
        }
        int columns = Math.max(1, entity.whole(70, 1));
        int rows = Math.max(1, entity.whole(71, 1));
        if ((long) columns * rows > MOST_ENTITIES) {
            throw entity.error(Text.of("{columns} columns and {rows} rows of a block are not read")
                    .with("columns", columns)
                    .with("rows", rows));
        }
        path.add(name);
        Placing whole = seen(entity, placing)
                .after(Placing.move(entity.number(10, 0), entity.number(20, 0)))
                .after(Placing.turn(entity.number(50, 0)));
        for (int k = 0; k < columns * rows; k++) {
            if (++entities > MOST_ENTITIES) {
                throw entity.error(Text.of("with all blocks put in place, more than {most} entities are not read")
                        .with("most", MOST_ENTITIES));
            }
            Placing place = whole.after(
                            Placing.move(k % columns * entity.number(44, 0), k / columns * entity.number(45, 0)))
                    .after(Placing.stretch(scaleX, scaleY))
                    .after(Placing.move(-block.x(), -block.y()));
            Insertion inside = instance(block.name(), instance);
            expand(block.entities(), place, inside, layer, path);
        }
        path.remove(path.size() - 1);
    }

    private void text(DxfEntity entity, Placing placing, Insertion instance, String layer)
            throws ForeignInputException {
        String text = entity.text(1);
        Placing place = entity.type().equals("MTEXT") ? placing : seen(entity, placing);
        for (String part : PARAGRAPH.split(text)) {
            if (!part.isBlank() && words.size() < MOST_WORDS) {
                words.add(new DrawnText(
                        layer,
                        entity.colour(),
                        instance,
                        entity.line(),
                        checked(entity, place.at(entity.number(10, 0), entity.number(20, 0))),
                        plain(part)));
            }
        }
    }

    /** Text without the codes that set its form. */
    private static String plain(String text) {
        String bare = text.indexOf('\\') < 0 ? text : FORMS.matcher(text).replaceAll("");
        return bare.indexOf('{') < 0
                ? bare.strip()
                : bare.replace("{", "").replace("}", "").strip();
    }

    private void curve(DxfEntity entity, Placing own, Placing world, Insertion instance, String layer)
            throws ForeignInputException {
        switch (entity.type()) {
            case "LINE" -> {
                Point start = world.at(entity.number(10), entity.number(20));
                Point end = world.at(entity.number(11), entity.number(21));
                add(entity, layer, instance, false, List.of(start, end));
            }
            case "LWPOLYLINE" -> lightweight(entity, own, instance, layer);
            case "SPLINE" -> {
                List<Point> flat = SplineEntity.flattened(entity, world, budget);
                add(entity, layer, instance, (entity.whole(70, 0) & 1) != 0, flat);
            }
            case "ELLIPSE" -> ellipse(entity, world, instance, layer);
            default -> {
                double x = entity.number(10);
                double y = entity.number(20);
                double radius = entity.number(40);
                boolean whole = entity.type().equals("CIRCLE");
                double from = whole ? 0 : Math.toRadians(entity.number(50));
                double to = whole ? 2 * Math.PI : Math.toRadians(entity.number(51));
                if (!(radius > 0)) {
                    throw entity.error(Text.of("its radius is not above 0"));
                }
                add(entity, layer, instance, whole, arc(own, x, y, radius, from, beyond(from, to)));
            }
        }
    }

    /** The same angle, more than another and by a full turn at most. */
    private static double beyond(double from, double to) {
        double sweep = (to - from) % (2 * Math.PI);
        return from + (sweep <= 1e-12 ? sweep + 2 * Math.PI : sweep);
    }

    private List<Point> arc(Placing placing, double x, double y, double radius, double from, double to) {
        return Flattening.of(
                t -> placing.at(x + radius * Math.cos(t), y + radius * Math.sin(t)), breaks(from, to), budget);
    }

    private static double[] breaks(double from, double to) {
        int parts = (int) Math.max(1, Math.ceil(Math.abs(to - from) / (Math.PI / 4)));
        double[] breaks = new double[parts + 1];
        for (int i = 0; i <= parts; i++) {
            breaks[i] = from + (to - from) * i / parts;
        }
        return breaks;
    }

    private void ellipse(DxfEntity entity, Placing placing, Insertion instance, String layer)
            throws ForeignInputException {
        double x = entity.number(10);
        double y = entity.number(20);
        double majorX = entity.number(11);
        double majorY = entity.number(21);
        double ratio = entity.number(40) * (entity.seenFromBehind() ? -1 : 1);
        double from = entity.number(41, 0);
        double to = beyond(from, entity.number(42, 2 * Math.PI));
        List<Point> flat = Flattening.of(
                t -> placing.at(
                        x + majorX * Math.cos(t) - ratio * majorY * Math.sin(t),
                        y + majorY * Math.cos(t) + ratio * majorX * Math.sin(t)),
                breaks(from, to),
                budget);
        add(entity, layer, instance, to - from > 2 * Math.PI - 1e-9, flat);
    }

    /** A vertex with the bulge of the stretch that begins at it: the tangent of a quarter of its angle. */
    private record Vertex(double x, double y, double bulge) {}

    private void lightweight(DxfEntity entity, Placing placing, Insertion instance, String layer)
            throws ForeignInputException {
        List<Vertex> vertices = new ArrayList<>();
        DxfTags tags = entity.tags();
        double x = 0;
        double y = 0;
        double bulge = 0;
        boolean open = false;
        boolean complete = true;
        for (int i = entity.from() + 1; i < entity.to(); i++) {
            switch (tags.code(i)) {
                case 10 -> {
                    if (open) {
                        vertices.add(new Vertex(x, y, bulge));
                    }
                    x = tags.number(i);
                    bulge = 0;
                    open = true;
                    complete = false;
                }
                case 20 -> {
                    y = tags.number(i);
                    complete = true;
                }
                case 42 -> bulge = tags.number(i);
                default -> {
                    // width and the like
                }
            }
        }
        if (!complete) {
            throw entity.error(Text.of("its last vertex has no y"));
        }
        if (open) {
            vertices.add(new Vertex(x, y, bulge));
        }
        vertices(entity, vertices, entity.whole(70, 0), placing, instance, layer);
    }

    private int polyline(List<DxfEntity> list, int at, Placing placing, Insertion instance, String layer)
            throws ForeignInputException {
        DxfEntity head = list.get(at);
        int flags = head.whole(70, 0);
        List<Vertex> vertices = new ArrayList<>();
        int i = at + 1;
        while (i < list.size() && list.get(i).type().equals("VERTEX")) {
            DxfEntity vertex = list.get(i);
            // 16: a control point of a fitted spline, not on the line.
            if ((vertex.whole(70, 0) & 16) == 0) {
                vertices.add(new Vertex(vertex.number(10), vertex.number(20), vertex.number(42, 0)));
            }
            i++;
        }
        if (i >= list.size() || !list.get(i).type().equals("SEQEND")) {
            throw head.error(Text.of("not ended by SEQEND"));
        }
        if ((flags & (16 | 64)) == 0) {
            vertices(head, vertices, flags, seen(head, placing), instance, layer);
        } else {
            leftOut.add("POLYLINE that is a mesh");
        }
        return i;
    }

    private void vertices(
            DxfEntity entity, List<Vertex> vertices, int flags, Placing placing, Insertion instance, String layer)
            throws ForeignInputException {
        boolean closed = (flags & 1) != 0;
        List<Point> flat = new ArrayList<>(vertices.size() + 1);
        int last = closed ? vertices.size() : vertices.size() - 1;
        for (int i = 0; i < vertices.size(); i++) {
            Vertex from = vertices.get(i);
            flat.add(placing.at(from.x, from.y));
            if (i < last && Math.abs(from.bulge) > 1e-9) {
                bulge(entity, from, vertices.get((i + 1) % vertices.size()), placing, flat);
                checkSize(entity, flat.size());
            }
        }
        if (flat.size() >= 2) {
            add(entity, layer, instance, closed, flat);
        }
    }

    /** The inner points of the arc between two vertices: positive bulges run counter-clockwise. */
    private void bulge(DxfEntity entity, Vertex from, Vertex to, Placing placing, List<Point> flat)
            throws ForeignInputException {
        double dx = to.x - from.x;
        double dy = to.y - from.y;
        double b = from.bulge;
        if (Math.abs(b) > 1e4) {
            throw entity.error(Text.of("a bulge of {bulge}").with("bulge", Double.toString(b)));
        }
        if (dx == 0 && dy == 0) {
            return;
        }
        double side = (1 - b * b) / (4 * b);
        double x = from.x + dx / 2 - side * dy;
        double y = from.y + dy / 2 + side * dx;
        double start = Math.atan2(from.y - y, from.x - x);
        List<Point> arc = arc(placing, x, y, Math.hypot(from.x - x, from.y - y), start, start + 4 * Math.atan(b));
        flat.addAll(arc.subList(1, arc.size() - 1));
    }

    private void add(DxfEntity entity, String layer, Insertion instance, boolean closed, List<Point> flat)
            throws ForeignInputException {
        checkSize(entity, flat.size());
        points += flat.size();
        for (Point point : flat) {
            checked(entity, point);
        }
        lines.add(new DrawnLine(layer, entity.colour(), instance, entity.line(), closed, flat));
    }

    private void checkSize(DxfEntity entity, int more) throws ForeignInputException {
        if (points + more > MOST_POINTS || budget.isSpent()) {
            throw entity.error(Text.of("lines and curves that need more than {most} points are not read")
                    .with("most", MOST_POINTS));
        }
    }

    private static Point checked(DxfEntity entity, Point point) throws ForeignInputException {
        if (!(Math.abs(point.x()) <= FARTHEST && Math.abs(point.y()) <= FARTHEST)) {
            throw entity.error(Text.of("it lies more than a kilometre away; is the unit right?"));
        }
        return point;
    }
}
