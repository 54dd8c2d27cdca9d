package org.capwright.drawing.svg;

/** Text of an SVG file: fixed-point numbers without the garbage and the locale of a formatter, and escaped words. */
final class SvgText {

    private static final double GREATEST = 1e9;

    private final StringBuilder out;

    SvgText(int expected) {
        this.out = new StringBuilder(expected);
    }

    SvgText raw(String markup) {
        out.append(markup);
        return this;
    }

    /** A number with at most three decimals: a micrometre, where the unit is a millimetre. */
    SvgText number(double value) {
        if (!(Math.abs(value) <= GREATEST)) {
            throw new IllegalArgumentException("not a coordinate: " + value);
        }
        long scaled = Math.round(value * 1000);
        if (scaled < 0) {
            out.append('-');
            scaled = -scaled;
        }
        out.append(scaled / 1000);
        int rest = (int) (scaled % 1000);
        if (rest != 0) {
            out.append('.').append((char) ('0' + rest / 100));
            if (rest % 100 != 0) {
                out.append((char) ('0' + rest / 10 % 10));
                if (rest % 10 != 0) {
                    out.append((char) ('0' + rest % 10));
                }
            }
        }
        return this;
    }

    /** Two numbers, as a path wants them. */
    SvgText pair(double x, double y) {
        number(x);
        out.append(' ');
        return number(y);
    }

    /** An attribute with a number. */
    SvgText attribute(String name, double value) {
        out.append(' ').append(name).append("=\"");
        number(value);
        out.append('"');
        return this;
    }

    /** An attribute with words. */
    SvgText attribute(String name, String words) {
        out.append(' ').append(name).append("=\"");
        words(words);
        out.append('"');
        return this;
    }

    /** Words, escaped; characters that XML 1.0 does not allow become U+FFFD. */
    SvgText words(String words) {
        words.codePoints().forEach(c -> {
            switch (c) {
                case '<' -> out.append("&lt;");
                case '>' -> out.append("&gt;");
                case '&' -> out.append("&amp;");
                case '"' -> out.append("&quot;");
                default -> out.appendCodePoint(allowed(c) ? c : 0xFFFD);
            }
        });
        return this;
    }

    private static boolean allowed(int c) {
        return c == '\t' || c == '\n' || c >= 0x20 && c <= 0xD7FF || c >= 0xE000 && c <= 0xFFFD || c >= 0x10000;
    }

    @Override
    public String toString() {
        return out.toString();
    }
}
