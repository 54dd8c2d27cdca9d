package org.capwright.exchange.dxf;

import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.capwright.geometry.Box;
import org.capwright.geometry.Point;
import org.capwright.geometry.Points;
import org.capwright.quantity.FileBytes;

/**
 * Writes the entities of a DXF R12 (AC1009) drawing as they come, and keeps the extents; the header, which states them, is put in
 * front at the end. Sections in the order HEADER, TABLES, BLOCKS, ENTITIES; lines end with CR LF; 7-bit ASCII; no handles, and only entities of R12.
 */
final class DxfWriter {

    /** A layer of the open. */
    record Layer(String name, int colour, LineType lineType) {}

    /** The line types that every drawing defines. */
    enum LineType {
        CONTINUOUS,
        DASHED
    }

    private static final String NEW_LINE = "\r\n";

    /** The lines of the group codes in use, each at the right of three columns. */
    private static final byte[][] CODES = IntStream.range(0, 100)
            .mapToObj(code -> ((code < 10 ? "  " : " ") + code + NEW_LINE).getBytes(StandardCharsets.US_ASCII))
            .toArray(byte[][]::new);

    /** All lies on one level. */
    private static final String LEVEL = "0.0" + NEW_LINE;

    /** A nanometre: finer than any reader keeps. */
    static final int DECIMALS = 6;

    private final FileBytes file = new FileBytes();
    private final Map<String, Box> blocks = new HashMap<>();
    private Box open = Box.EMPTY;
    private String block = "";

    private DxfWriter() {}

    /**
     * Begins a drawing with its tables; the next call must be {@link #beginBlocks()}.
     *
     * @param layers layers in use, the layer 0 not among them
     */
    static DxfWriter with(List<Layer> layers) {
        DxfWriter writer = new DxfWriter();
        writer.tables(layers);
        return writer;
    }

    private void tables(List<Layer> layers) {
        section("TABLES");
        table("LTYPE", 2);
        lineType("CONTINUOUS", "Solid line", 0);
        lineType("DASHED", "__ __ __ __", 2);
        pair(0, "ENDTAB");
        table("LAYER", layers.size() + 1);
        layer(new Layer("0", 7, LineType.CONTINUOUS));
        for (Layer layer : layers) {
            layer(layer);
        }
        pair(0, "ENDTAB");
        table("STYLE", 1);
        pair(0, "STYLE");
        pair(2, "STANDARD");
        pair(70, 0);
        pair(40, 0.0);
        pair(41, 1.0);
        pair(50, 0.0);
        pair(71, 0);
        pair(42, 5.0);
        pair(3, "txt");
        pair(4, "");
        pair(0, "ENDTAB");
        pair(0, "ENDSEC");
    }

    private void table(String name, int entries) {
        pair(0, "TABLE");
        pair(2, name);
        pair(70, entries);
    }

    private void lineType(String name, String description, int elements) {
        pair(0, "LTYPE");
        pair(2, name);
        pair(70, 64);
        pair(3, description);
        pair(72, 65);
        pair(73, elements);
        pair(40, elements == 0 ? 0.0 : 9.0);
        if (elements > 0) {
            pair(49, 6.0);
            pair(49, -3.0);
        }
    }

    private void layer(Layer layer) {
        pair(0, "LAYER");
        pair(2, layer.name);
        pair(70, 64);
        pair(62, layer.colour);
        pair(6, layer.lineType.name());
    }

    private void section(String name) {
        pair(0, "SECTION");
        pair(2, name);
    }

    void beginBlocks() {
        section("BLOCKS");
    }

    void beginBlock(String name) {
        pair(0, "BLOCK");
        pair(8, "0");
        pair(2, name);
        pair(70, 0);
        place(10, 0, 0);
        pair(3, name);
        block = name;
    }

    void endBlock() {
        pair(0, "ENDBLK");
        pair(8, "0");
        blocks.put(block, open);
        open = Box.EMPTY;
    }

    void beginEntities() {
        pair(0, "ENDSEC");
        section("ENTITIES");
    }

    void insert(String layer, String block, Point at) {
        Box box = blocks.get(block);
        if (box == null) {
            throw new IllegalArgumentException("no block " + block);
        }
        pair(0, "INSERT");
        pair(8, layer);
        pair(2, block);
        place(10, at.x(), at.y());
        open = open.including(box.moved(at));
    }

    void line(String layer, Point from, Point to) {
        pair(0, "LINE");
        pair(8, layer);
        place(10, from.x(), from.y());
        place(11, to.x(), to.y());
        open = open.including(from).including(to);
    }

    void point(String layer, Point at) {
        pair(0, "POINT");
        pair(8, layer);
        place(10, at.x(), at.y());
        open = open.including(at);
    }

    /** Text that begins at a point of its base line. */
    void text(String layer, Point at, double height, String words) {
        textHead(layer, at, height, words);
        open = open.including(at);
    }

    /** Text whose middle lies on a point. */
    void centredText(String layer, Point at, double height, String words) {
        textHead(layer, at, height, words);
        pair(72, 1);
        place(11, at.x(), at.y());
        pair(73, 2);
        open = open.including(at);
    }

    private void textHead(String layer, Point at, double height, String words) {
        pair(0, "TEXT");
        pair(8, layer);
        place(10, at.x(), at.y());
        pair(40, height);
        pair(1, DxfText.escaped(words));
    }

    void closedLine(String layer, List<Point> points) {
        closedLine(layer, points, Point.ORIGIN);
    }

    /** A closed line of points that are moved first. */
    void closedLine(String layer, List<Point> points, Point move) {
        polyline(layer, points, move, 1);
    }

    void openLine(String layer, List<Point> points) {
        openLine(layer, points, Point.ORIGIN);
    }

    /** A line of points that are moved first. */
    void openLine(String layer, List<Point> points, Point move) {
        if (points.size() == 2) {
            line(layer, points.get(0).plus(move), points.get(1).plus(move));
        } else {
            polyline(layer, points, move, 0);
        }
    }

    private void polyline(String layer, List<Point> points, Point move, int closed) {
        if (points.size() < 2) {
            throw new IllegalArgumentException("a polyline of " + points.size() + " points");
        }
        pair(0, "POLYLINE");
        pair(8, layer);
        pair(66, 1);
        place(10, 0, 0);
        pair(70, closed);
        String head = "  0\r\nVERTEX\r\n  8\r\n" + layer + "\r\n 10\r\n";
        Points line = Points.of(points);
        for (int i = 0; i < line.size(); i++) {
            file.put(head);
            file.put(line.x(i) + move.x(), 1, DECIMALS);
            file.put("\r\n 20\r\n");
            file.put(line.y(i) + move.y(), 1, DECIMALS);
            file.put(NEW_LINE);
        }
        open = open.including(Box.of(line).moved(move));
        pair(0, "SEQEND");
        pair(8, layer);
    }

    private void place(int code, double x, double y) {
        pair(code, x);
        pair(code + 10, y);
        file.put(CODES[code + 20]);
        file.put(LEVEL);
    }

    private void pair(int code, String ascii) {
        file.put(CODES[code]);
        file.put(ascii);
        file.put(NEW_LINE);
    }

    private void pair(int code, double number) {
        file.put(CODES[code]);
        file.put(number, 1, DECIMALS);
        file.put(NEW_LINE);
    }

    /** Whole numbers stand at the right of six columns. */
    private void pair(int code, int number) {
        file.put(CODES[code]);
        for (int bound = 100_000; bound > Math.max(1, number); bound /= 10) {
            file.put(' ');
        }
        file.whole(number);
        file.put(NEW_LINE);
    }

    Box extents() {
        return open;
    }

    /**
     * Ends the open.
     *
     * @return the whole file
     */
    byte[] finish() {
        pair(0, "ENDSEC");
        pair(0, "EOF");
        DxfWriter header = new DxfWriter();
        header.section("HEADER");
        header.pair(9, "$ACADVER");
        header.pair(1, "AC1009");
        header.variable("$INSBASE", 0, 0);
        if (!open.isEmpty()) {
            header.variable("$EXTMIN", open.left(), open.bottom());
            header.variable("$EXTMAX", open.right(), open.top());
        }
        header.pair(0, "ENDSEC");
        return file.after(header.file.all());
    }

    private void variable(String name, double x, double y) {
        pair(9, name);
        place(10, x, y);
    }
}
