package org.capwright.exchange.dxf;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import org.capwright.geometry.Box;
import org.capwright.geometry.Point;

/** Checks blocks and entities of a DXF file. */
final class DxfEntities {

    /** Entities of R12 and the values that each must have. */
    private static final Map<String, int[]> R12 = Map.ofEntries(
            Map.entry("LINE", new int[] {10, 20, 11, 21}),
            Map.entry("POINT", new int[] {10, 20}),
            Map.entry("CIRCLE", new int[] {10, 20, 40}),
            Map.entry("ARC", new int[] {10, 20, 40, 50, 51}),
            Map.entry("TRACE", new int[] {10, 20, 11, 21, 12, 22}),
            Map.entry("SOLID", new int[] {10, 20, 11, 21, 12, 22}),
            Map.entry("3DFACE", new int[] {10, 20, 11, 21, 12, 22}),
            Map.entry("TEXT", new int[] {10, 20, 40, 1}),
            Map.entry("SHAPE", new int[] {10, 20, 2}),
            Map.entry("INSERT", new int[] {10, 20, 2}),
            Map.entry("ATTDEF", new int[] {10, 20, 40, 2}),
            Map.entry("ATTRIB", new int[] {10, 20, 40, 2}),
            Map.entry("POLYLINE", new int[] {}),
            Map.entry("VERTEX", new int[] {10, 20}),
            Map.entry("SEQEND", new int[] {}),
            Map.entry("DIMENSION", new int[] {2}),
            Map.entry("VIEWPORT", new int[] {10, 20}));

    private static final double TRUE = 2e-6;

    /** Blocks nested deeper than this count as a cycle. */
    private static final int DEEPEST = 200;

    private record Insertion(int line, String block, double x, double y) {}

    /** What is drawn in a block or in the model. */
    private static final class Drawn {
        Box box = Box.EMPTY;
        final List<Insertion> inserts = new ArrayList<>();
    }

    private final DxfStructure structure;
    private final Map<String, Drawn> blocks = new HashMap<>();
    private final Drawn model = new Drawn();
    private final double[] extents = {Double.NaN, Double.NaN, Double.NaN, Double.NaN};
    private final List<DxfRecord> vertices = new ArrayList<>();
    private final Set<String> missingLayers = new HashSet<>();
    private Drawn open = model;
    private String openBlock = "";
    private DxfRecord sequence = DxfRecord.at(0, "");
    private int extentsLine;
    private int withHandle;
    private int withoutHandle;
    private boolean curved;

    DxfEntities(DxfStructure structure) {
        this.structure = structure;
    }

    void headerValue(String variable, DxfRecord.Pair pair) {
        int first = variable.equals("$EXTMIN") ? 0 : variable.equals("$EXTMAX") ? 2 : -1;
        if (first >= 0 && (pair.code() == 10 || pair.code() == 20)) {
            extents[first + (pair.code() == 10 ? 0 : 1)] =
                    DxfRecord.finite(pair.value()).orElse(Double.NaN);
            extentsLine = pair.line();
        }
    }

    void record(DxfRecord record) {
        String type = record.type();
        if (!type.equals("VERTEX") && !type.equals("SEQEND") && !type.equals("ATTRIB")) {
            endSequence(record.line());
        }
        switch (type) {
            case "BLOCK" -> beginBlock(record);
            case "ENDBLK" -> endBlock(record);
            default -> entity(record);
        }
    }

    private void beginBlock(DxfRecord record) {
        if (!openBlock.isEmpty()) {
            structure.report(record.line(), DxfFault.SECTION_ORDER, "block in a block");
        }
        openBlock = record.text(2);
        structure.define("BLOCK", openBlock, record.line());
        open = new Drawn();
        blocks.put(openBlock, open);
        require(record, 10, 20);
    }

    private void endBlock(DxfRecord record) {
        if (openBlock.isEmpty()) {
            structure.report(record.line(), DxfFault.SECTION_ORDER, "ENDBLK without a block");
        }
        openBlock = "";
        open = model;
    }

    private void entity(DxfRecord record) {
        int[] required = R12.get(record.type());
        if (required == null) {
            structure.report(record.line(), DxfFault.NOT_R12, DxfLexer.shown(record.type()));
            return;
        }
        require(record, required);
        checkUses(record);
        if (record.find(5).isPresent()) {
            withHandle++;
        } else {
            withoutHandle++;
        }
        switch (record.type()) {
            case "POLYLINE" -> beginPolyline(record);
            case "VERTEX" -> vertex(record);
            case "SEQEND" -> endOfSequence(record);
            case "INSERT" -> insert(record);
            case "CIRCLE" -> circle(record);
            case "ARC" -> curved = true;
            default -> points(record);
        }
    }

    private void require(DxfRecord record, int... codes) {
        for (int code : codes) {
            if (record.find(code).isEmpty()) {
                structure.report(record.line(), DxfFault.MISSING_VALUE, record.type() + " without " + code);
            }
        }
    }

    private void checkUses(DxfRecord record) {
        if (record.find(8).isEmpty()) {
            structure.report(record.line(), DxfFault.NO_LAYER, record.type());
        }
        record.find(8)
                .filter(pair -> !structure.isDefined("LAYER", pair.value()) && missingLayers.add(pair.value()))
                .ifPresent(
                        pair -> structure.report(pair.line(), DxfFault.UNDEFINED_LAYER, DxfLexer.shown(pair.value())));
        record.find(6)
                .filter(pair -> !structure.isDefined("LTYPE", pair.value())
                        && !pair.value().equals("BYLAYER")
                        && !pair.value().equals("BYBLOCK"))
                .ifPresent(pair ->
                        structure.report(pair.line(), DxfFault.UNDEFINED_LINE_TYPE, DxfLexer.shown(pair.value())));
        record.find(7)
                .filter(pair -> !structure.isDefined("STYLE", pair.value()))
                .ifPresent(pair ->
                        structure.report(pair.line(), DxfFault.UNDEFINED_TEXT_STYLE, DxfLexer.shown(pair.value())));
    }

    private void points(DxfRecord record) {
        for (int code = 10; code < 14; code++) {
            OptionalDouble x = record.number(code);
            OptionalDouble y = record.number(code + 10);
            if (x.isPresent() && y.isPresent()) {
                open.box = open.box.including(new Point(x.getAsDouble(), y.getAsDouble()));
            }
        }
    }

    private void circle(DxfRecord record) {
        double x = record.number(10).orElse(0);
        double y = record.number(20).orElse(0);
        double radius = record.number(40).orElse(0);
        open.box = open.box.including(new Box(x - radius, y - radius, x + radius, y + radius));
    }

    private void insert(DxfRecord record) {
        open.inserts.add(new Insertion(
                record.line(),
                record.text(2),
                record.number(10).orElse(0),
                record.number(20).orElse(0)));
        curved |= record.number(50).orElse(0) != 0
                || record.number(41).orElse(1) != 1
                || record.number(42).orElse(1) != 1;
        if (record.text(66).strip().equals("1")) {
            sequence = record;
        }
    }

    private void beginPolyline(DxfRecord record) {
        if (!record.text(66).strip().equals("1")) {
            structure.report(record.line(), DxfFault.NO_VERTICES_FLAG, "POLYLINE without 66");
        }
        sequence = record;
        vertices.clear();
    }

    private void vertex(DxfRecord record) {
        if (!sequence.type().equals("POLYLINE")) {
            structure.report(record.line(), DxfFault.SEQUENCE, "VERTEX outside a polyline");
        }
        vertices.add(record);
        curved |= record.number(42).orElse(0) != 0;
        points(record);
    }

    private void endOfSequence(DxfRecord record) {
        if (sequence.type().isEmpty()) {
            structure.report(record.line(), DxfFault.SEQUENCE, "SEQEND without a polyline");
        } else if (sequence.type().equals("POLYLINE")) {
            checkVertices();
        }
        sequence = DxfRecord.at(0, "");
    }

    private void checkVertices() {
        if (vertices.size() < 2) {
            structure.report(sequence.line(), DxfFault.FEW_VERTICES, vertices.size() + " vertices");
            return;
        }
        DxfRecord first = vertices.get(0);
        DxfRecord last = vertices.get(vertices.size() - 1);
        boolean closed = (int) sequence.number(70).orElse(0) % 2 == 1;
        if (closed
                && first.number(10).equals(last.number(10))
                && first.number(20).equals(last.number(20))) {
            structure.report(last.line(), DxfFault.REPEATED_FIRST_POINT, "closed polyline");
        }
    }

    /** Called where a polyline must have ended. */
    void endSequence(int line) {
        if (!sequence.type().isEmpty()) {
            structure.report(line, DxfFault.SEQUENCE, sequence.type() + " without SEQEND");
            sequence = DxfRecord.at(0, "");
        }
    }

    void finish() {
        if (withHandle > 0 && withoutHandle > 0) {
            structure.report(1, DxfFault.MIXED_HANDLES, withHandle + " with, " + withoutHandle + " without");
        }
        List<Drawn> all = new ArrayList<>(blocks.values());
        all.add(model);
        for (Drawn drawn : all) {
            for (Insertion insert : drawn.inserts) {
                if (!blocks.containsKey(insert.block)) {
                    structure.report(insert.line, DxfFault.UNDEFINED_BLOCK, DxfLexer.shown(insert.block));
                }
            }
        }
        Map<String, Box> resolved = new HashMap<>();
        Box drawn = resolve("", model, resolved, new HashSet<>());
        checkExtents(drawn);
        for (Map.Entry<String, Drawn> block : blocks.entrySet()) {
            resolve(block.getKey(), block.getValue(), resolved, new HashSet<>());
        }
    }

    private Box resolve(String name, Drawn drawn, Map<String, Box> resolved, Set<String> within) {
        Box known = resolved.get(name);
        if (known != null) {
            return known;
        }
        within.add(name);
        Box box = drawn.box;
        for (Insertion insert : drawn.inserts) {
            Drawn block = blocks.get(insert.block);
            if (within.contains(insert.block) || within.size() > DEEPEST) {
                structure.report(insert.line, DxfFault.BLOCK_CYCLE, DxfLexer.shown(insert.block));
            } else if (block != null) {
                box = box.including(
                        resolve(insert.block, block, resolved, within).moved(new Point(insert.x, insert.y)));
            }
        }
        within.remove(name);
        resolved.put(name, box);
        return box;
    }

    private void checkExtents(Box drawn) {
        if (extentsLine == 0 || curved || drawn.isEmpty()) {
            return;
        }
        boolean right = Math.abs(extents[0] - drawn.left()) <= TRUE
                && Math.abs(extents[1] - drawn.bottom()) <= TRUE
                && Math.abs(extents[2] - drawn.right()) <= TRUE
                && Math.abs(extents[3] - drawn.top()) <= TRUE;
        if (!right) {
            structure.report(
                    extentsLine,
                    DxfFault.EXTENTS,
                    "drawn from " + drawn.left() + ", " + drawn.bottom() + " to " + drawn.right() + ", " + drawn.top());
        }
    }
}
