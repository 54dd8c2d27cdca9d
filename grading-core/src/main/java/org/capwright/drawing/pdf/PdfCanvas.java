package org.capwright.drawing.pdf;

import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Optional;
import org.capwright.drawing.Appearance;
import org.capwright.drawing.Canvas;
import org.capwright.drawing.Ink;
import org.capwright.drawing.Letters;
import org.capwright.drawing.Place;
import org.capwright.drawing.Script;
import org.capwright.drawing.Stroke;
import org.capwright.geometry.Cubic;
import org.capwright.geometry.Point;

/** Writes a picture as the operators of a content stream (PDF Reference 1.6, chapter 4). Decimals end at a micrometre. */
public final class PdfCanvas extends Canvas {

    private static final int DECIMALS = 3;

    /** For matrices, so that true scale holds over the longest page. */
    private static final int PRECISE = 9;

    private static final byte[] HEX = "0123456789ABCDEF".getBytes(StandardCharsets.US_ASCII);

    /** Groups of this kind are layers of the document, named by their size. */
    private static final String LAYERED = "size";

    private final Lettering lettering;
    private final Layers layers;
    private final Appearance appearance;
    private final Deque<Boolean> layered = new ArrayDeque<>();

    /** What was said last about lines and areas, and need not be said again; nothing at the beginning, where a page and a form differ. */
    private record State(Optional<Stroke> stroke, Optional<Ink> ink) {}

    private final Deque<State> saved = new ArrayDeque<>();
    private State state = new State(Optional.empty(), Optional.empty());

    PdfCanvas(Lettering lettering, Layers layers, Appearance appearance) {
        this.lettering = lettering;
        this.layers = layers;
        this.appearance = appearance;
    }

    /** What is drawn, as operators. */
    byte[] content() {
        return file.all();
    }

    /** What is drawn, after what was drawn on another. */
    byte[] contentAfter(PdfCanvas first) {
        return file.after(first.content());
    }

    private void put(int letter) {
        file.put(letter);
    }

    private PdfCanvas op(String operator) {
        file.put(operator);
        put('\n');
        return this;
    }

    private PdfCanvas number(double value) {
        file.put(value, 0, DECIMALS);
        put(' ');
        return this;
    }

    private PdfCanvas pair(double x, double y) {
        return number(x).number(y);
    }

    /** From points of 1/72 inch to millimetres. */
    PdfCanvas millimetres() {
        transform(72 / 25.4, 0, 0, 72 / 25.4, 0, 0);
        return this;
    }

    /**
     * Draws no more outside the line; until {@link #restore}.
     *
     * @return this
     */
    public PdfCanvas clip() {
        return op("W n");
    }

    /**
     * Draws a form of the file.
     *
     * @param name its name
     * @return this
     */
    public PdfCanvas form(String name) {
        put('/');
        return op(name + " Do");
    }

    @Override
    public Canvas picture(String name, double x, double y, double width, double height) {
        save().transform(width, 0, 0, height, x, y);
        return form(name).restore();
    }

    @Override
    public Canvas group(String kind, String name, Point move) {
        save();
        boolean layer = kind.equals(LAYERED);
        layered.push(layer);
        if (layer) {
            file.put("/OC /");
            op(layers.of(name) + " BDC");
        }
        return move.equals(Point.ORIGIN) ? this : move(move.x(), move.y());
    }

    @Override
    public Canvas end() {
        if (layered.pop()) {
            op("EMC");
        }
        return restore();
    }

    @Override
    public Canvas about(String kind, String words) {
        return this;
    }

    @Override
    public Canvas save() {
        saved.push(state);
        return op("q");
    }

    @Override
    public Canvas restore() {
        state = saved.pop();
        return op("Q");
    }

    @Override
    public Canvas transform(double a, double b, double c, double d, double e, double f) {
        for (double part : new double[] {a, b, c, d, e, f}) {
            file.put(part, 0, PRECISE);
            put(' ');
        }
        return op("cm");
    }

    /** Lines of dashes end bluntly, so that dashes keep their lengths. */
    @Override
    public Canvas stroke(Stroke drawn) {
        Stroke stroke = appearance.of(drawn);
        if (state.stroke.filter(stroke::equals).isPresent()) {
            return this;
        }
        state = new State(Optional.of(stroke), state.ink);
        colour(stroke.ink(), "RG").number(stroke.width()).op("w");
        op(stroke.dash().isEmpty() ? "1 J 1 j" : "0 J 1 j");
        put('[');
        stroke.dash().forEach(this::number);
        return op("] 0 d");
    }

    @Override
    public Canvas ink(Ink ink) {
        return filling(appearance.of(ink));
    }

    private PdfCanvas filling(Ink ink) {
        if (state.ink.filter(ink::equals).isPresent()) {
            return this;
        }
        state = new State(state.stroke, Optional.of(ink));
        return colour(ink, "rg");
    }

    private PdfCanvas colour(Ink ink, String operator) {
        return number(ink.red()).number(ink.green()).number(ink.blue()).op(operator);
    }

    @Override
    public Canvas from(double x, double y) {
        return pair(x, y).op("m");
    }

    @Override
    public Canvas to(double x, double y) {
        return pair(x, y).op("l");
    }

    @Override
    public Canvas curve(Cubic cubic) {
        if (cubic.isStraight()) {
            return to(cubic.end());
        }
        Point first = cubic.control1();
        Point second = cubic.control2();
        Point end = cubic.end();
        return pair(first.x(), first.y())
                .pair(second.x(), second.y())
                .pair(end.x(), end.y())
                .op("c");
    }

    @Override
    public Canvas close() {
        return op("h");
    }

    @Override
    public Canvas box(double x, double y, double width, double height) {
        return pair(x, y).pair(width, height).op("re");
    }

    @Override
    public Canvas draw() {
        return op("S");
    }

    @Override
    public Canvas fill() {
        return op("f");
    }

    @Override
    public Canvas fillAndDraw() {
        return op("B");
    }

    @Override
    public Canvas text(Letters drawn, Place place, double x, double y, String text) {
        Letters letters = appearance.of(drawn);
        Script script = Script.of(text, letters.face());
        if (script.shown().length == 0) {
            return this;
        }
        double shift = switch (place) {
            case LEFT -> 0;
            case CENTRE -> letters.face().width(script, letters.size()) / 2;
            case RIGHT -> letters.face().width(script, letters.size());
        };
        filling(letters.ink());
        if (script.altered()) {
            actualText(script.text());
        }
        file.put("BT/");
        file.put(Lettering.name(letters.face()));
        put(' ');
        number(letters.size()).op("Tf").pair(x - shift, y).op("Td");
        put('<');
        lettering.use(letters.face(), script.shown());
        for (int codePoint : script.shown()) {
            hex(letters.face().glyph(codePoint));
        }
        op("> Tj").op("ET");
        return script.altered() ? op("EMC") : this;
    }

    /** What stands here in truth, for whoever searches or copies (PDF Reference 1.6, section 10.8.3). */
    private void actualText(String text) {
        file.put("/Span <</ActualText <FEFF");
        text.chars().forEach(this::hex);
        op(">>> BDC");
    }

    private void hex(int sixteenBits) {
        for (int shift = 12; shift >= 0; shift -= 4) {
            put(HEX[sixteenBits >> shift & 15]);
        }
    }
}
