package org.capwright.exchange.dxf;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/**
 * What DXF release 12 asks of a file and ezdxf forgives. Everything else (references, sequences, truncation, cycles) is left to ezdxf's reader and audit. Source: the published
 * reference of release 12, by the notes on it in ezdxf's documentation.
 */
final class R12Rules {

    private static final Set<String> ENTITIES =
            Set.of("LINE", "POINT", "CIRCLE", "ARC", "SOLID", "TEXT", "INSERT", "POLYLINE", "VERTEX", "SEQEND");
    private static final List<String> SECTIONS = List.of("HEADER", "TABLES", "BLOCKS", "ENTITIES");
    /** A layer names line types, so these stand before it. */
    private static final List<String> TABLES = List.of("LTYPE", "LAYER", "STYLE");

    private record Group(int line, int code, String value) {}

    /** A group of code 0 with the groups that follow it. */
    private record Item(int line, String type, Map<Integer, String> values) {}

    private final List<String> faults = new ArrayList<>();

    private R12Rules() {}

    /** What is wrong, each with its line; empty for a sound file. */
    static List<String> broken(byte[] file) {
        R12Rules rules = new R12Rules();
        rules.check(new String(file, StandardCharsets.ISO_8859_1));
        return rules.faults;
    }

    private void require(boolean right, int line, String what) {
        if (!right) {
            faults.add("line " + line + ": " + what);
        }
    }

    private void check(String text) {
        require(
                text.matches("(?:[\\x20-\\x7e]*+\\r\\n)*+"),
                1,
                "not lines of printable 7-bit ASCII that end with CR LF");
        String[] lines = text.split("\r?\n");
        List<Item> items = new ArrayList<>();
        for (int i = 0; i + 1 < lines.length; i += 2) {
            Group group = new Group(i + 2, Integer.parseInt(lines[i].strip()), lines[i + 1]);
            value(group);
            if (group.code == 0) {
                items.add(new Item(group.line, group.value, new TreeMap<>()));
            } else {
                items.get(items.size() - 1).values.putIfAbsent(group.code, group.value);
            }
        }
        require(lines.length % 2 == 0, lines.length, "a group without a value");
        order(items, "SECTION", SECTIONS);
        order(items, "TABLE", TABLES);
        names(items);
        entities(items);
    }

    private void value(Group group) {
        int code = group.code;
        require(group.value.length() <= 255, group.line, "a string of more than 255 characters");
        require(
                code >= 0 && code < 80 || code >= 210 && code < 240,
                group.line,
                "no group code of release 12: " + code);
        if (code >= 10 && code < 60 || code >= 210) {
            require(group.value.matches("-?\\d+\\.\\d+"), group.line, "no fixed-point number: " + group.value);
        } else if (code >= 60 && code < 80) {
            require(group.value.strip().matches("-?\\d+"), group.line, "no whole number: " + group.value);
        }
    }

    private void order(List<Item> items, String type, List<String> order) {
        int last = -1;
        for (Item item : items) {
            if (item.type.equals(type)) {
                int place = order.indexOf(item.values.get(2));
                require(place > last, item.line, type + " out of order: " + item.values.get(2));
                last = place;
            }
        }
    }

    private void names(List<Item> items) {
        Set<String> layers = new HashSet<>();
        Set<String> blocks = new HashSet<>();
        for (Item item : items) {
            String name = item.values.getOrDefault(2, "");
            if (item.type.equals("LAYER") || item.type.equals("BLOCK")) {
                require(name.matches("[A-Z0-9$_-]{1,31}"), item.line, "no name of release 12: " + name);
                require((item.type.equals("LAYER") ? layers : blocks).add(name), item.line, "defined twice: " + name);
            } else if (ENTITIES.contains(item.type)) {
                String layer = item.values.getOrDefault(8, "");
                require(layers.contains(layer), item.line, "no layer of the table: " + layer);
            }
        }
    }

    private void entities(List<Item> items) {
        boolean drawing = false;
        List<String> vertices = new ArrayList<>();
        Item polyline = items.get(0);
        for (Item item : items) {
            switch (item.type) {
                case "SECTION" -> drawing = Set.of("BLOCKS", "ENTITIES").contains(item.values.get(2));
                case "ENDSEC" -> drawing = false;
                case "BLOCK", "ENDBLK" -> {}
                case "POLYLINE" -> {
                    polyline = item;
                    vertices.clear();
                    require(
                            item.values.getOrDefault(66, "").strip().equals("1"),
                            item.line,
                            "a polyline that does not say that vertices follow");
                }
                case "VERTEX" -> vertices.add(item.values.get(10) + " " + item.values.get(20));
                case "SEQEND" -> {
                    require(vertices.size() > 1, item.line, "a polyline of fewer than two vertices");
                    boolean closed =
                            polyline.values.getOrDefault(70, "").strip().equals("1");
                    boolean repeated = closed && vertices.get(0).equals(vertices.get(vertices.size() - 1));
                    require(!repeated, item.line, "a closed polyline that repeats its first point");
                }
                default ->
                    require(!drawing || ENTITIES.contains(item.type), item.line, "no entity of ours: " + item.type);
            }
            require(!drawing || !item.values.containsKey(5), item.line, "handles are for all or for none");
        }
    }
}
