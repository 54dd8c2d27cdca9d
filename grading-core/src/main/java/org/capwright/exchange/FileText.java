package org.capwright.exchange;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.capwright.words.Text;

/**
 * Bytes to text: by the byte-order mark, else as declared, else UTF-16 where every other byte of the Latin text is 0, else UTF-8, else windows-1252.
 *
 * @param text the text
 * @param encoding name of the encoding it was read in
 */
public record FileText(String text, String encoding) {

    /** Bytes that are looked at. */
    private static final int SAMPLE = 4000;

    private static final Charset WESTERN = Charset.forName("windows-1252");

    /**
     * The text of a whole file.
     *
     * @param file the file
     * @return its text, and how it was read
     * @throws ForeignInputException if it holds bytes of value 0 or control characters, broken UTF-16, or bytes that the declared encoding has not
     */
    public static FileText of(ForeignFile file) throws ForeignInputException {
        byte[] bytes = file.bytes();
        if (startsWith(bytes, 0xff, 0xfe) || startsWith(bytes, 0xfe, 0xff)) {
            Charset charset = bytes[0] == (byte) 0xff ? StandardCharsets.UTF_16LE : StandardCharsets.UTF_16BE;
            String text = strict(charset, bytes, 2, bytes.length)
                    .orElseThrow(() -> new ForeignInputException(file.name(), 0, Text.of("broken UTF-16 text")));
            return refuseControls(file, text, charset);
        }
        int start = startsWith(bytes, 0xef, 0xbb, 0xbf) ? 3 : 0;
        if (start == 0
                && file.declared().isPresent()
                && !isPlainly8(file.declared().get(), bytes)) {
            Charset declared = file.declared().get();
            String text = strict(declared, bytes, 0, bytes.length)
                    .orElseThrow(() -> new ForeignInputException(
                            file.name(),
                            0,
                            Text.of("not in the declared encoding, {encoding}").with("encoding", declared.name())));
            return refuseControls(file, text, declared);
        }
        Optional<Charset> wide = wide(bytes);
        if (wide.isPresent()) {
            String text = strict(wide.get(), bytes, 0, bytes.length)
                    .orElseThrow(() -> new ForeignInputException(file.name(), 0, Text.of("broken UTF-16 text")));
            return refuseControls(file, text, wide.get());
        }
        int strange = firstNul(bytes);
        if (strange >= 0) {
            throw new ForeignInputException(
                    file.name(), lineOf(bytes, strange), Text.of("not a text file: it holds bytes of value 0"));
        }
        Optional<String> utf8 = strict(StandardCharsets.UTF_8, bytes, start, bytes.length);
        if (utf8.isPresent()) {
            return refuseControls(file, utf8.get(), StandardCharsets.UTF_8);
        }
        return refuseControls(file, new String(bytes, start, bytes.length - start, WESTERN), WESTERN);
    }

    /**
     * The text of a part of a file in an encoding that is ASCII where it can be.
     *
     * @param bytes bytes of the file
     * @param from first of the part
     * @param to where it ends
     * @return read as UTF-8, else as windows-1252
     */
    public static String part(byte[] bytes, int from, int to) {
        boolean ascii = true;
        for (int i = from; i < to && ascii; i++) {
            ascii = bytes[i] >= 0;
        }
        if (ascii) {
            return new String(bytes, from, to - from, StandardCharsets.ISO_8859_1);
        }
        return strict(StandardCharsets.UTF_8, bytes, from, to)
                .orElseGet(() -> new String(bytes, from, to - from, WESTERN));
    }

    private static FileText refuseControls(ForeignFile file, String text, Charset charset)
            throws ForeignInputException {
        int line = 1;
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c == '\n') {
                line++;
            } else if (c < 0x20 && c != '\t' && c != '\r' && c != '\f' && c != 0x1a) {
                throw new ForeignInputException(
                        file.name(),
                        line,
                        Text.of("not a text file: it holds the control character {code}")
                                .with("code", (int) c));
            }
        }
        return new FileText(text, charset.name());
    }

    private static Optional<String> strict(Charset charset, byte[] bytes, int from, int to) {
        try {
            return Optional.of(charset.newDecoder()
                    .onMalformedInput(CodingErrorAction.REPORT)
                    .onUnmappableCharacter(CodingErrorAction.REPORT)
                    .decode(ByteBuffer.wrap(bytes, from, to - from))
                    .toString());
        } catch (CharacterCodingException e) {
            return Optional.empty();
        }
    }

    /** UTF-16 without a mark: separators, digits and line ends have a byte 0 on one side and none on the other. */
    private static Optional<Charset> wide(byte[] bytes) {
        int[] zeros = new int[2];
        int end = Math.min(bytes.length, SAMPLE) & ~1;
        for (int i = 0; i < end; i++) {
            zeros[i & 1] += bytes[i] == 0 ? 1 : 0;
        }
        boolean even = bytes.length % 2 == 0 && end >= 4;
        if (even && zeros[0] == 0 && zeros[1] * 8 >= end) {
            return Optional.of(StandardCharsets.UTF_16LE);
        }
        return even && zeros[1] == 0 && zeros[0] * 8 >= end ? Optional.of(StandardCharsets.UTF_16BE) : Optional.empty();
    }

    /** Declared in a way of one byte to a letter, as programs do by default, but with letters that are written in several and spell UTF-8: no other text does. */
    private static boolean isPlainly8(Charset declared, byte[] bytes) {
        boolean ascii = true;
        for (byte b : bytes) {
            ascii &= b >= 0;
        }
        return !ascii
                && declared.canEncode()
                && declared.newEncoder().maxBytesPerChar() == 1
                && strict(StandardCharsets.UTF_8, bytes, 0, bytes.length).isPresent();
    }

    private static boolean startsWith(byte[] bytes, int... mark) {
        boolean same = bytes.length >= mark.length;
        for (int i = 0; i < mark.length && same; i++) {
            same = bytes[i] == (byte) mark[i];
        }
        return same;
    }

    private static int firstNul(byte[] bytes) {
        for (int i = 0; i < bytes.length; i++) {
            if (bytes[i] == 0) {
                return i;
            }
        }
        return -1;
    }

    private static int lineOf(byte[] bytes, int position) {
        int line = 1;
        for (int i = 0; i < position; i++) {
            line += bytes[i] == '\n' ? 1 : 0;
        }
        return line;
    }
}
