package org.capwright.exchange.dxf;

import java.util.Arrays;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.capwright.exchange.FileText;
import org.capwright.exchange.ForeignFile;
import org.capwright.exchange.ForeignInputException;
import org.capwright.words.Text;

/** The pairs of group code and value of an ASCII DXF file, kept as positions in its bytes. */
final class DxfTags {

    static final int MOST_TAGS = 3_000_000;

    private static final int LONGEST_VALUE = 4096;
    private static final double FARTHEST = 1e7;
    private static final Pattern ESCAPED = Pattern.compile("\\\\U\\+([0-9A-Fa-f]{4})");

    private final ForeignFile file;
    private final byte[] bytes;
    private int[] codes = new int[1024];
    private int[] starts = new int[1024];
    private int[] ends = new int[1024];
    private int count;
    private int next;
    private int line;

    private DxfTags(ForeignFile file) {
        this.file = file;
        this.bytes = file.bytes();
    }

    /** Cuts a file into pairs, up to its end mark. */
    static DxfTags of(ForeignFile file) throws ForeignInputException {
        DxfTags tags = new DxfTags(file);
        tags.read();
        return tags;
    }

    private void read() throws ForeignInputException {
        if (bytes.length >= 3 && bytes[0] == (byte) 0xef && bytes[1] == (byte) 0xbb && bytes[2] == (byte) 0xbf) {
            next = 3;
        }
        boolean ended = false;
        while (!ended) {
            if (next >= bytes.length) {
                throw error(line, Text.of("the file ends without its end mark EOF: it was cut off"));
            }
            int code = code();
            if (next >= bytes.length) {
                throw error(line, Text.of("the file ends after a group code: it was cut off"));
            }
            int start = next;
            int end = endOfLine();
            if (end - start > LONGEST_VALUE) {
                throw error(
                        line, Text.of("a value of more than {most} characters").with("most", LONGEST_VALUE));
            }
            add(code, start, end);
            ended = code == 0 && is(count - 1, "EOF");
        }
    }

    private void add(int code, int start, int end) throws ForeignInputException {
        if (count == MOST_TAGS) {
            throw error(
                    line,
                    Text.of("a drawing of more than {most} values is not read").with("most", MOST_TAGS));
        }
        if (count == codes.length) {
            codes = Arrays.copyOf(codes, 2 * count);
            starts = Arrays.copyOf(starts, 2 * count);
            ends = Arrays.copyOf(ends, 2 * count);
        }
        codes[count] = code;
        starts[count] = trimmedStart(start, end);
        ends[count] = trimmedEnd(starts[count], end);
        count++;
    }

    private int code() throws ForeignInputException {
        int start = next;
        int end = endOfLine();
        int from = trimmedStart(start, end);
        int to = trimmedEnd(from, end);
        int sign = from < to && bytes[from] == '-' ? -1 : 1;
        int number = 0;
        int digits = 0;
        for (int i = sign < 0 ? from + 1 : from; i < to; i++) {
            digits = bytes[i] >= '0' && bytes[i] <= '9' && digits < 4 ? digits + 1 : 9;
            number = digits == 9 ? 0 : 10 * number + bytes[i] - '0';
        }
        if (digits == 0 || digits == 9) {
            String found = ForeignInputException.shown(FileText.part(bytes, from, Math.min(to, from + 60)));
            throw error(
                    line,
                    line == 1 || found.indexOf('\ufffd') >= 0
                            ? Text.of("not an ASCII DXF file: a group code should stand here, not \u201c{found}\u201d")
                                    .with("found", found)
                            : Text.of("a group code should stand here, not \u201c{found}\u201d")
                                    .with("found", found));
        }
        return sign * number;
    }

    private int endOfLine() {
        line++;
        int end = next;
        while (end < bytes.length && bytes[end] != '\n' && bytes[end] != '\r') {
            end++;
        }
        next = end + (end + 1 < bytes.length && bytes[end] == '\r' && bytes[end + 1] == '\n' ? 2 : 1);
        return end;
    }

    private int trimmedStart(int start, int end) {
        int from = start;
        while (from < end && (bytes[from] == ' ' || bytes[from] == '\t')) {
            from++;
        }
        return from;
    }

    private int trimmedEnd(int start, int end) {
        int to = end;
        while (to > start && (bytes[to - 1] == ' ' || bytes[to - 1] == '\t')) {
            to--;
        }
        return to;
    }

    ForeignFile file() {
        return file;
    }

    int size() {
        return count;
    }

    int code(int tag) {
        return codes[tag];
    }

    /** Line of a value; that of its group code is one less. */
    int line(int tag) {
        return 2 * tag + 2;
    }

    boolean is(int tag, String value) {
        int length = value.length();
        boolean same = ends[tag] - starts[tag] == length;
        for (int i = 0; i < length && same; i++) {
            same = bytes[starts[tag] + i] == value.charAt(i);
        }
        return same;
    }

    /** A value as text, with letters written as {@code \U+XXXX} put in. */
    String text(int tag) {
        String raw = FileText.part(bytes, starts[tag], ends[tag]);
        if (raw.indexOf('\\') < 0) {
            return raw;
        }
        Matcher escaped = ESCAPED.matcher(raw);
        return escaped.replaceAll(
                found -> Matcher.quoteReplacement(String.valueOf((char) Integer.parseInt(found.group(1), 16))));
    }

    /** A value that must be a number within what a drawing can hold. */
    double number(int tag) throws ForeignInputException {
        String text = new String(
                bytes,
                starts[tag],
                Math.min(ends[tag] - starts[tag], 64),
                java.nio.charset.StandardCharsets.ISO_8859_1);
        double number;
        try {
            number = isNumeric(text) ? Double.parseDouble(text) : Double.NaN;
        } catch (NumberFormatException e) {
            number = Double.NaN;
        }
        if (!(Math.abs(number) <= FARTHEST)) {
            throw error(
                    line(tag),
                    Text.of("group code {code} needs a number between -1e7 and 1e7, not \u201c{value}\u201d")
                            .with("code", codes[tag])
                            .with("value", ForeignInputException.shown(text)));
        }
        return number;
    }

    private static boolean isNumeric(String text) {
        for (int i = 0; i < text.length(); i++) {
            if ("0123456789+-.eE".indexOf(text.charAt(i)) < 0) {
                return false;
            }
        }
        return true;
    }

    int whole(int tag) throws ForeignInputException {
        double number = number(tag);
        if (number != Math.rint(number)) {
            throw error(
                    line(tag), Text.of("group code {code} needs a whole number").with("code", codes[tag]));
        }
        return (int) number;
    }

    ForeignInputException error(int atLine, Text reason) {
        return new ForeignInputException(file.name(), atLine, reason);
    }
}
