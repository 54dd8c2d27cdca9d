package org.capwright.drawing.svg;

import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.Map;
import org.capwright.drawing.Canvas;
import org.capwright.drawing.Ink;
import org.capwright.drawing.Letters;
import org.capwright.drawing.Place;
import org.capwright.drawing.Stroke;
import org.capwright.drawing.Typeface;
import org.capwright.geometry.Cubic;
import org.capwright.geometry.Point;
import org.capwright.quantity.Decimals;
import org.capwright.words.Language;

/** Writes a picture as an SVG 1.1 document at true scale: one user unit is one millimetre. SVG counts y downward, so every y changes its sign. */
public final class SvgCanvas extends Canvas {

    private static final int DECIMALS = 3;

    /** For matrices. */
    private static final int PRECISE = 9;

    /** What {@link #restore} brings back, and how many elements it closes. */
    private record State(Stroke stroke, Ink ink, int open) {}

    private final Deque<State> saved = new ArrayDeque<>();
    private Stroke stroke = Stroke.solid(Ink.BLACK, 0.2);
    private Ink ink = Ink.BLACK;
    private int open;
    private String kind = "";
    private String words = "";
    private String element = "";
    private boolean path;

    /** Each as it is written, for most are used often. */
    private final Map<Stroke, String> strokes = new HashMap<>();

    private Stroke told = stroke;
    private String toldAs = attributes(told);

    private final Map<String, Integer> identities = new HashMap<>();
    private String piece = "";

    private SvgCanvas() {}

    /**
     * Begins a document; its origin is the upper left corner of the paper.
     *
     * @param title what it is called
     * @param description what it shows, in words
     * @param language what its words are in; named where it is not English
     * @param width of the paper, mm
     * @param height of the paper, mm
     * @return a canvas for what is on it
     */
    public static SvgCanvas begin(String title, String description, Language language, double width, double height) {
        SvgCanvas canvas = new SvgCanvas();
        canvas.file.put("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
                + "<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\" width=\"");
        canvas.number(width);
        canvas.file.put("mm\" height=\"");
        canvas.number(height);
        canvas.file.put("mm\" viewBox=\"0 0 ");
        canvas.number(width);
        canvas.file.put(' ');
        canvas.number(height);
        canvas.file.put("\" fill=\"none\" stroke-linecap=\"round\" stroke-linejoin=\"round\" font-family=\"DejaVu Sans"
                + " Condensed, DejaVu Sans, Verdana, Helvetica, sans-serif\" font-stretch=\"condensed\""
                + (language.equals(Language.ENGLISH) ? "" : " xml:lang=\"" + language.tag() + "\"")
                + ">\n<title>");
        canvas.words(title);
        canvas.file.put("</title>\n<desc>");
        canvas.words(description);
        canvas.file.put("</desc>\n");
        canvas.ink(Ink.WHITE).about("paper", "").box(0, -height, width, height).fill();
        return canvas;
    }

    /**
     * Ends the document.
     *
     * @return the whole file, UTF-8
     */
    public byte[] finish() {
        put("</svg>\n");
        return file.all();
    }

    private void put(int letter) {
        file.put(letter);
    }

    private void put(String ascii) {
        file.put(ascii);
    }

    private void number(double value) {
        file.put(value, 0, DECIMALS);
    }

    private void pair(double x, double y) {
        number(x);
        put(' ');
        number(-y);
    }

    private void point(int letter, double x, double y) {
        file.point(letter, x, -y, DECIMALS);
    }

    private void attribute(String name, double value) {
        put(name);
        number(value);
        put('"');
    }

    private void colour(String name, Ink colour) {
        put(name);
        put(hexadecimal(colour));
        put('"');
    }

    private static String hexadecimal(Ink colour) {
        char[] digits = {'#', '0', '0', '0', '0', '0', '0'};
        hexadecimal(colour.red(), digits, 1);
        hexadecimal(colour.green(), digits, 3);
        hexadecimal(colour.blue(), digits, 5);
        return new String(digits);
    }

    private static void hexadecimal(double part, char[] digits, int at) {
        int whole = (int) Math.round(255 * part);
        digits[at] = Character.forDigit(whole >> 4, 16);
        digits[at + 1] = Character.forDigit(whole & 15, 16);
    }

    /** Escaped; characters that XML 1.0 does not allow become U+FFFD. */
    private void words(String text) {
        if (plain(text)) {
            put(text);
            return;
        }
        int c;
        for (int i = 0; i < text.length(); i += Character.charCount(c)) {
            c = text.codePointAt(i);
            switch (c) {
                case '<' -> put("&lt;");
                case '>' -> put("&gt;");
                case '&' -> put("&amp;");
                case '"' -> put("&quot;");
                default -> {
                    if (c >= 0x20 && c < 0x7f) {
                        put(c);
                    } else {
                        file.put(Character.toString(allowed(c) ? c : Typeface.REPLACEMENT)
                                .getBytes(StandardCharsets.UTF_8));
                    }
                }
            }
        }
    }

    private static boolean plain(String text) {
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c < ' ' || c > '~' || c == '<' || c == '>' || c == '&' || c == '"') {
                return false;
            }
        }
        return true;
    }

    private static boolean allowed(int c) {
        return c == '\t' || c == '\n' || c >= 0x20 && c <= 0xD7FF || c >= 0xE000 && c <= 0xFFFD || c >= 0x10000;
    }

    @Override
    public Canvas group(String sort, String name, Point move) {
        save();
        put("<g id=\"");
        put(identity(sort, name));
        put("\" class=\"");
        words(sort);
        if (!name.isEmpty()) {
            put("\" data-");
            put(sort);
            put("=\"");
            words(name);
        }
        if (!move.equals(Point.ORIGIN)) {
            put("\" transform=\"translate(");
            pair(move.x(), move.y());
            put(')');
        }
        put("\">\n");
        open++;
        return this;
    }

    /** A name of its own for a group, so that drawing programs list them: a size after its piece. */
    private String identity(String sort, String name) {
        if (sort.equals("piece")) {
            piece = safe(name) + "-";
        }
        String plain = sort.equals("piece") ? safe(name) : piece + sort + (name.isEmpty() ? "" : "-" + safe(name));
        int times = identities.merge(plain, 1, Integer::sum);
        return times == 1 ? plain : plain + "." + times;
    }

    private static boolean safe(int c) {
        return c >= '0' && c <= '9' || c >= 'A' && c <= 'Z' || c >= 'a' && c <= 'z' || c == '-' || c == '_';
    }

    /** Letters, digits, hyphens and underscores as they are; everything else by its number. */
    private static String safe(String name) {
        StringBuilder safe = new StringBuilder(name.length());
        int c;
        for (int i = 0; i < name.length(); i += Character.charCount(c)) {
            c = name.codePointAt(i);
            if (safe(c)) {
                safe.append((char) c);
            } else {
                safe.append(".x").append(Integer.toHexString(c));
            }
        }
        return safe.toString();
    }

    @Override
    public Canvas end() {
        return restore();
    }

    @Override
    public Canvas about(String sort, String text) {
        kind = sort;
        words = text;
        return this;
    }

    @Override
    public Canvas save() {
        saved.push(new State(stroke, ink, open));
        open = 0;
        return this;
    }

    @Override
    public Canvas restore() {
        for (; open > 0; open--) {
            put("</g>\n");
        }
        State state = saved.pop();
        stroke = state.stroke;
        ink = state.ink;
        open = state.open;
        return this;
    }

    @Override
    public Canvas transform(double a, double b, double c, double d, double e, double f) {
        put("<g transform=\"matrix(");
        for (double part : new double[] {a, -b, -c, d, e, -f}) {
            file.put(part, 0, PRECISE);
            put(' ');
        }
        put(")\">\n");
        open++;
        return this;
    }

    @Override
    public Canvas stroke(Stroke next) {
        stroke = next;
        return this;
    }

    @Override
    public Canvas ink(Ink next) {
        ink = next;
        return this;
    }

    private void begin(String name) {
        element = name;
        put('<');
        put(name);
        if (!kind.isEmpty()) {
            put(" class=\"");
            put(kind);
            put('"');
        }
    }

    @Override
    public Canvas from(double x, double y) {
        if (!path) {
            begin("path");
            put(" d=\"");
            path = true;
        }
        point('M', x, y);
        return this;
    }

    @Override
    public Canvas to(double x, double y) {
        point('L', x, y);
        return this;
    }

    @Override
    public Canvas curve(Cubic cubic) {
        if (cubic.isStraight()) {
            return to(cubic.end());
        }
        point('C', cubic.control1().x(), cubic.control1().y());
        point(' ', cubic.control2().x(), cubic.control2().y());
        point(' ', cubic.end().x(), cubic.end().y());
        return this;
    }

    @Override
    public Canvas close() {
        put('Z');
        return this;
    }

    @Override
    public Canvas box(double x, double y, double width, double height) {
        begin("rect");
        attribute(" x=\"", x);
        attribute(" y=\"", -y - height);
        attribute(" width=\"", width);
        attribute(" height=\"", height);
        return this;
    }

    @Override
    public Canvas draw() {
        stroked();
        return finished();
    }

    @Override
    public Canvas fill() {
        filled();
        return finished();
    }

    @Override
    public Canvas fillAndDraw() {
        filled();
        stroked();
        return finished();
    }

    private void endPath() {
        if (path) {
            put('"');
            path = false;
        }
    }

    private void filled() {
        endPath();
        colour(" fill=\"", ink);
    }

    private void stroked() {
        endPath();
        if (stroke != told) {
            told = stroke;
            toldAs = strokes.computeIfAbsent(stroke, SvgCanvas::attributes);
        }
        file.put(toldAs);
    }

    private static String attributes(Stroke stroke) {
        StringBuilder attributes = new StringBuilder(128)
                .append(" stroke=\"")
                .append(hexadecimal(stroke.ink()))
                .append("\" stroke-width=\"")
                .append(Decimals.text(stroke.width(), DECIMALS))
                .append('"');
        if (!stroke.dash().isEmpty()) {
            String between = " stroke-linecap=\"butt\" stroke-dasharray=\"";
            for (double part : stroke.dash()) {
                attributes.append(between).append(Decimals.text(part, DECIMALS));
                between = " ";
            }
            attributes.append('"');
        }
        return attributes.toString();
    }

    private Canvas finished() {
        if (words.isEmpty()) {
            put("/>\n");
        } else {
            put("><title>");
            words(words);
            put("</title></");
            put(element);
            put(">\n");
        }
        return about("", "");
    }

    @Override
    public Canvas text(Letters letters, Place place, double x, double y, String text) {
        begin("text");
        attribute(" x=\"", x);
        attribute(" y=\"", -y);
        attribute(" font-size=\"", letters.size());
        colour(" fill=\"", letters.ink());
        if (place != Place.LEFT) {
            put(place == Place.CENTRE ? " text-anchor=\"middle\"" : " text-anchor=\"end\"");
        }
        put(letters.face() == Typeface.BOLD ? " font-weight=\"bold\">" : ">");
        words(text);
        put("</text>\n");
        return about("", "");
    }
}
