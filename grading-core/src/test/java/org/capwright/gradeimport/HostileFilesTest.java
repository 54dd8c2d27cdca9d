package org.capwright.gradeimport;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.management.ThreadMXBean;
import java.io.InputStream;
import java.lang.management.ManagementFactory;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.capwright.check.CheckedSize;
import org.capwright.check.GradeChecks;
import org.capwright.check.Thresholds;
import org.capwright.exchange.ForeignFile;
import org.capwright.exchange.ForeignInputException;
import org.capwright.exchange.TestPatterns;
import org.capwright.exchange.dxf.DxfExport;
import org.capwright.exchange.table.SpecCsv;
import org.capwright.grade.Alignment;
import org.capwright.grade.SpecTable;
import org.capwright.pattern.PatternSet;
import org.capwright.quantity.Unit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Broken and hostile files: each gives a grade or the checked exception, and nothing hangs or takes memory without bound. */
class HostileFilesTest {

    /** Only against hanging: what takes seconds on a busy machine is no fault. */
    private static final Duration HANGS = Duration.ofSeconds(60);

    /** All that is ever allocated while one file is read, and so more than is ever held. */
    private static final long MOST_ALLOCATED = 1_500_000_000L;

    private static final PatternSet GOWN = TestPatterns.choirGown();
    private static final byte[] BLOCKS = DxfExport.blocks(GOWN);
    private static final byte[] NEST = DxfExport.nest(GOWN, Alignment.UNDERARM);
    private static final byte[] TABLE = SpecCsv.write(GOWN.title(), SpecTable.of(GOWN.run()), Optional.empty());
    private static final String[] WORDS = {
        "NaN",
        "Infinity",
        "-1e308",
        "1e7",
        "9999999999999999999999",
        "",
        "  ",
        "0",
        "-1",
        "x",
        "\u00e4\u00f6",
        "EOF",
        "SECTION",
        "0x1p3",
        "1e-320",
        "1/0",
        "1,2,3",
        "\"",
        "=1+1",
        "%s%n",
        "../../x",
        "2147483648",
        "1e5d"
    };

    /** A file with a name for the report. */
    private record Upload(String name, Supplier<byte[]> content) {
        @Override
        public String toString() {
            return name;
        }
    }

    static Stream<Upload> drawings() {
        List<Upload> uploads = new ArrayList<>();
        for (int seed = 0; seed < 60; seed++) {
            int s = seed;
            uploads.add(new Upload("cut off, seed " + s, () -> cutOff(s % 2 == 0 ? BLOCKS : NEST, new Random(s))));
            uploads.add(new Upload("values exchanged, seed " + s, () -> exchanged(s % 2 == 0 ? BLOCKS : NEST, s)));
            uploads.add(new Upload("bytes changed, seed " + s, () -> changed(s % 2 == 0 ? BLOCKS : NEST, s)));
        }
        String text = new String(BLOCKS, StandardCharsets.US_ASCII);
        for (String mark : List.of(
                "HEADER",
                "TABLES",
                "BLOCKS",
                "ENDBLK",
                "ENTITIES",
                "POLYLINE",
                "SEQEND",
                "INSERT",
                "EOF",
                "$ACADVER")) {
            int at = text.indexOf(mark);
            uploads.add(new Upload("cut off before " + mark, () -> Arrays.copyOf(BLOCKS, at)));
            uploads.add(new Upload("cut off after " + mark, () -> Arrays.copyOf(BLOCKS, at + mark.length() + 2)));
            uploads.add(new Upload(
                    "without " + mark,
                    () -> ascii(
                            text.replaceFirst("(?s) *\\d+\r\n" + java.util.regex.Pattern.quote(mark) + "\r\n", ""))));
            uploads.add(new Upload(
                    "twice " + mark,
                    () -> ascii(text.replaceFirst(
                            "(?s)( *\\d+\r\n" + java.util.regex.Pattern.quote(mark) + "\r\n)", "$1$1"))));
        }
        uploads.add(new Upload("empty", () -> new byte[0]));
        uploads.add(new Upload("blanks", () -> filled(OutlineReader.MOST_BYTES, ' ')));
        uploads.add(new Upload("blank lines", () -> filled(OutlineReader.MOST_BYTES, '\n')));
        uploads.add(new Upload("too large", () -> filled(OutlineReader.MOST_BYTES + 1, '0')));
        uploads.add(new Upload("zero bytes", () -> new byte[100_000]));
        uploads.add(new Upload("random bytes", () -> random(200_000)));
        uploads.add(new Upload("UTF-16", () -> text.getBytes(StandardCharsets.UTF_16)));
        uploads.add(new Upload(
                "wrong code page",
                () -> text.replace("Overlay", "\u00c4rmel").getBytes(Charset.forName("windows-1252"))));
        uploads.add(new Upload("comments", () -> ascii("999\n\n".repeat(4_000_000) + "0\nEOF\n")));
        uploads.add(
                new Upload("many sections", () -> ascii("0\nSECTION\n2\nX\n0\nENDSEC\n".repeat(500_000) + "0\nEOF\n")));
        uploads.add(
                new Upload("one long value", () -> ascii("0\nSECTION\n2\n" + "A".repeat(20_000_000) + "\n0\nEOF\n")));
        uploads.add(new Upload("block in itself", () -> dxf(block("A", insert("A", 1, 1)), insert("A", 1, 1))));
        uploads.add(new Upload(
                "blocks in a ring",
                () -> dxf(
                        block("A", insert("B", 1, 1)) + block("B", insert("C", 1, 1)) + block("C", insert("A", 1, 1)),
                        insert("A", 1, 1))));
        uploads.add(new Upload(
                "a ring that nothing inserts",
                () -> dxf(block("A", insert("B", 1, 1)) + block("B", insert("A", 1, 1)), "")));
        uploads.add(new Upload("ten thousand blocks deep", () -> deep(10_000, 1)));
        uploads.add(new Upload("ten times ten times ten", () -> deep(15, 10)));
        uploads.add(new Upload(
                "a grid of inserts", () -> dxf(block("A", line(0, 0, 1, 1)), insert("A", 32767, 32767))));
        uploads.add(new Upload("a negative grid", () -> dxf(block("A", line(0, 0, 1, 1)), insert("A", -5, -9))));
        uploads.add(new Upload("missing block", () -> dxf("", insert("NONE", 1, 1))));
        uploads.add(new Upload("kilometres away", () -> dxf("", line(1e6, 1e6, 9e6, 9e6))));
        uploads.add(new Upload(
                "a star of lines", () -> dxf("", repeated(200_000, i -> line(0, 0, i % 997 + 1, i / 997.0)))));
        uploads.add(new Upload("the same line", () -> dxf("", repeated(200_000, i -> line(0, 0, 500, 500)))));
        uploads.add(new Upload(
                "a grid of lines",
                () -> dxf(
                        "",
                        repeated(
                                150_000,
                                i -> i % 2 == 0
                                        ? line(i / 600, i % 600, i / 600 + 1, i % 600)
                                        : line(i / 600, i % 600, i / 600, i % 600 + 1)))));
        uploads.add(new Upload("small rings", () -> dxf("", repeated(100_000, i -> circle(i, 0, 1)))));
        uploads.add(new Upload("rings of a piece's size", () -> dxf("", repeated(100_000, i -> circle(i, 0, 100)))));
        uploads.add(new Upload("huge ring", () -> dxf("", circle(0, 0, 9e5))));
        uploads.add(new Upload("ring without radius", () -> dxf("", circle(0, 0, 0))));
        uploads.add(new Upload(
                "texts",
                () -> dxf(
                        "",
                        circle(0, 0, 200)
                                + repeated(
                                        200_000, i -> "0\nTEXT\n8\n0\n10\n" + i + "\n20\n0\n1\nSIZE: " + i + "\n"))));
        uploads.add(new Upload(
                "sizes without end",
                () -> dxf(
                        "",
                        repeated(2_000, i -> circle(500 * i, 0, 200).replace("\n8\n0\n", "\n8\nNET-" + i + "\n")))));
        uploads.add(new Upload(
                "bulges",
                () -> dxf(
                        "",
                        "0\nLWPOLYLINE\n8\n0\n70\n1\n"
                                + repeated(
                                        100_000,
                                        i -> "10\n" + i % 1000 + "\n20\n" + i / 1000 + "\n42\n"
                                                + (i % 2 == 0 ? 9999 : -1e-8) + "\n"))));
        uploads.add(new Upload("spline of a high degree", () -> dxf("", spline(1_000_000, 4, 8, i -> i))));
        uploads.add(new Upload("spline of degree 0", () -> dxf("", spline(0, 4, 5, i -> i))));
        uploads.add(new Upload("spline with one knot", () -> dxf("", spline(3, 4, 8, i -> 1))));
        uploads.add(new Upload("spline with falling knots", () -> dxf("", spline(3, 4, 8, i -> -i))));
        uploads.add(new Upload("spline with close knots", () -> dxf("", spline(3, 4, 8, i -> i * 1e-300))));
        uploads.add(new Upload("long spline", () -> dxf("", spline(3, 19_000, 19_004, i -> i))));
        uploads.add(new Upload("longer spline", () -> dxf("", spline(3, 200_000, 200_004, i -> i))));
        uploads.add(new Upload(
                "many long splines",
                () -> dxf("", spline(11, 19_000, 19_012, i -> i).repeat(20))));
        uploads.add(new Upload(
                "polyline without end",
                () -> dxf(
                        "",
                        "0\nPOLYLINE\n8\n0\n66\n1\n70\n1\n"
                                + repeated(300_000, i -> "0\nVERTEX\n8\n0\n10\n" + i + "\n20\n0\n"))));
        uploads.add(new Upload(
                "flat outline",
                () -> dxf(
                        "",
                        "0\nLWPOLYLINE\n8\n0\n70\n1\n10\n0\n20\n0\n10\n500\n20\n0\n10\n900\n20\n0\n10\n100\n20\n0\n")));
        return uploads.stream();
    }

    static Stream<Upload> tables() {
        List<Upload> uploads = new ArrayList<>();
        String text = new String(TABLE, StandardCharsets.UTF_8);
        for (int seed = 0; seed < 40; seed++) {
            int s = seed;
            uploads.add(new Upload("cut off, seed " + s, () -> cutOff(TABLE, new Random(s))));
            uploads.add(new Upload("bytes changed, seed " + s, () -> changed(TABLE, s)));
            uploads.add(new Upload("cells exchanged, seed " + s, () -> cells(text, s)));
        }
        uploads.add(new Upload("empty", () -> new byte[0]));
        uploads.add(new Upload("mark alone", () -> new byte[] {(byte) 0xef, (byte) 0xbb, (byte) 0xbf}));
        uploads.add(new Upload("half a UTF-16 letter", () -> new byte[] {(byte) 0xff, (byte) 0xfe, 65}));
        uploads.add(new Upload("blanks", () -> filled(SpecTableReader.MOST_BYTES, ' ')));
        uploads.add(new Upload("blank lines", () -> filled(SpecTableReader.MOST_BYTES, '\n')));
        uploads.add(new Upload("commas", () -> filled(SpecTableReader.MOST_BYTES, ',')));
        uploads.add(new Upload("quotes", () -> filled(SpecTableReader.MOST_BYTES, '"')));
        uploads.add(new Upload("an open quote", () -> ascii("bicep,\"" + "a,\n".repeat(1_000_000))));
        uploads.add(new Upload("zero bytes", () -> new byte[10_000]));
        uploads.add(new Upload("random bytes", () -> random(100_000)));
        uploads.add(new Upload("wide", () -> ascii("point" + ",1".repeat(300_000) + "\nbicep" + ",1".repeat(300_000))));
        uploads.add(new Upload("long", () -> ascii("size,point,value cm\n" + "36,bicep,36\n".repeat(200_000))));
        uploads.add(
                new Upload("brackets", () -> ascii("(".repeat(1900) + ",36\nbicep" + "(cm".repeat(300) + ",12 cm\n")));
        uploads.add(new Upload(
                "figures", () -> ascii("cm,36\nbicep," + "1".repeat(1900) + "\nwrist," + "1,".repeat(100) + "\n")));
        uploads.add(new Upload(
                "wrong code page",
                () -> "Gr\u00f6\u00dfe;36;38\n\u00c4rmell\u00e4nge (cm);60,5;61\n"
                        .getBytes(Charset.forName("windows-1252"))));
        return uploads.stream();
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("drawings")
    void drawing(Upload upload) {
        read(upload, file -> OutlineReader.read(List.of(file), ForeignOptions.in(Unit.MILLIMETRE)));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("tables")
    void table(Upload upload) {
        read(upload, file -> SpecTableReader.read(file, ForeignOptions.in(Unit.CENTIMETRE)));
    }

    @Test
    void thereAreTwoHundredAndMore() {
        assertTrue(drawings().count() >= 200);
        assertTrue(tables().count() >= 100);
    }

    @Test
    void aHundredMillionBlanksAreNotEvenTakenIn() {
        for (byte filling : new byte[] {' ', '\n'}) {
            Blanks stream = new Blanks(100_000_000, filling);
            assertThrows(
                    ForeignInputException.class,
                    () -> ForeignFile.read("blanks.dxf", stream, OutlineReader.MOST_BYTES));
            assertTrue(stream.left > 70_000_000);
            Blanks other = new Blanks(100_000_000, filling);
            assertThrows(
                    ForeignInputException.class,
                    () -> ForeignFile.read("blanks.csv", other, SpecTableReader.MOST_BYTES));
            assertTrue(other.left > 90_000_000);
        }
    }

    @Test
    void aCutOffDrawingSaysWhere() {
        String text = new String(BLOCKS, StandardCharsets.US_ASCII);
        byte[] half = Arrays.copyOf(BLOCKS, BLOCKS.length / 2);
        int lines = (int) new String(half, StandardCharsets.US_ASCII).lines().count();
        ForeignInputException e = assertThrows(
                ForeignInputException.class,
                () -> OutlineReader.read(List.of(ForeignFile.of("half.dxf", half)), ForeignOptions.none()));
        assertTrue(Math.abs(e.line() - lines) <= 1, e.getMessage());
        assertTrue(e.reason().toString().contains("cut off"), e.getMessage());
        int at = text.indexOf(" 10\r\n", text.length() / 3) + 5;
        int end = text.indexOf('\r', at);
        String broken = text.substring(0, at) + "NaN" + text.substring(end);
        int line = (int) text.substring(0, at).lines().count() + 1;
        ForeignInputException nan = assertThrows(
                ForeignInputException.class,
                () -> OutlineReader.read(List.of(ForeignFile.of("nan.dxf", ascii(broken))), ForeignOptions.none()));
        assertTrue(
                nan.line() == line && nan.reason().toString().contains("NaN"), nan.getMessage() + " not line " + line);
    }

    private interface Reading {
        ForeignGrade of(ForeignFile file) throws ForeignInputException;
    }

    private static void read(Upload upload, Reading reading) {
        ForeignFile file = ForeignFile.of("upload", upload.content().get());
        ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
        long allocated = assertTimeoutPreemptively(HANGS, () -> {
            long before = threads.getCurrentThreadAllocatedBytes();
            try {
                ForeignGrade read = reading.of(file);
                for (CheckedSize size : read.grade().sizes()) {
                    size.lines()
                            .forEach(line -> line.points()
                                    .forEach(p -> assertTrue(
                                            Double.isFinite(p.x()) && Double.isFinite(p.y()),
                                            () -> upload + ": " + p)));
                }
                assertDoesNotThrow(() -> GradeChecks.run(read.grade(), Thresholds.usual()), upload::name);
            } catch (ForeignInputException e) {
                assertNotNull(e.reason());
                assertFalse(e.reason().toString().isBlank());
                assertTrue(e.line() >= 0 && e.getMessage().length() < 400, e.getMessage());
            }
            return threads.getCurrentThreadAllocatedBytes() - before;
        });
        assertTrue(allocated < MOST_ALLOCATED, () -> upload + " allocates " + allocated);
    }

    /** A stream that is never held in memory. */
    private static final class Blanks extends InputStream {
        private final byte filling;
        private long left;

        Blanks(long length, byte filling) {
            this.left = length;
            this.filling = filling;
        }

        @Override
        public int read() {
            return left-- > 0 ? filling : -1;
        }

        @Override
        public int read(byte[] into, int from, int length) {
            if (left <= 0) {
                return -1;
            }
            int count = (int) Math.min(length, left);
            Arrays.fill(into, from, from + count, filling);
            left -= count;
            return count;
        }
    }

    private static byte[] ascii(String text) {
        return text.getBytes(StandardCharsets.US_ASCII);
    }

    private static byte[] filled(int length, char filling) {
        byte[] bytes = new byte[length];
        Arrays.fill(bytes, (byte) filling);
        return bytes;
    }

    private static byte[] random(int length) {
        byte[] bytes = new byte[length];
        new Random(7).nextBytes(bytes);
        return bytes;
    }

    private static byte[] cutOff(byte[] file, Random random) {
        return Arrays.copyOf(file, random.nextInt(file.length));
    }

    private static byte[] changed(byte[] file, int seed) {
        Random random = new Random(seed);
        byte[] bytes = file.clone();
        for (int i = 0; i <= seed; i++) {
            bytes[random.nextInt(bytes.length)] =
                    (byte) (seed % 3 == 0 ? random.nextInt(256) : '0' + random.nextInt(10));
        }
        return bytes;
    }

    /** Some lines that hold values replaced by words that no one expects there. */
    private static byte[] exchanged(byte[] file, int seed) {
        Random random = new Random(seed);
        String[] lines = new String(file, StandardCharsets.US_ASCII).split("\r\n", -1);
        for (int i = 0; i <= seed / 10; i++) {
            int at = random.nextInt(lines.length / 2) * 2 + (random.nextInt(5) == 0 ? 0 : 1);
            lines[Math.min(at, lines.length - 1)] = WORDS[random.nextInt(WORDS.length)];
        }
        return String.join("\r\n", lines).getBytes(StandardCharsets.UTF_8);
    }

    private static byte[] cells(String table, int seed) {
        Random random = new Random(seed);
        String[] cells = table.split(",", -1);
        for (int i = 0; i <= seed / 5; i++) {
            cells[random.nextInt(cells.length)] = WORDS[random.nextInt(WORDS.length)];
        }
        return String.join(",", cells).getBytes(StandardCharsets.UTF_8);
    }

    private static byte[] dxf(String blocks, String entities) {
        return ascii("0\nSECTION\n2\nBLOCKS\n" + blocks + "0\nENDSEC\n0\nSECTION\n2\nENTITIES\n" + entities
                + "0\nENDSEC\n0\nEOF\n");
    }

    private static String block(String name, String content) {
        return "0\nBLOCK\n8\n0\n2\n" + name + "\n70\n0\n10\n0\n20\n0\n" + content + "0\nENDBLK\n";
    }

    private static String insert(String name, int columns, int rows) {
        return "0\nINSERT\n8\n0\n2\n" + name + "\n10\n0\n20\n0\n70\n" + columns + "\n71\n" + rows + "\n44\n1\n45\n1\n";
    }

    private static String line(double x1, double y1, double x2, double y2) {
        return "0\nLINE\n8\n0\n10\n" + x1 + "\n20\n" + y1 + "\n11\n" + x2 + "\n21\n" + y2 + "\n";
    }

    private static String circle(double x, double y, double radius) {
        return "0\nCIRCLE\n8\n0\n10\n" + x + "\n20\n" + y + "\n40\n" + radius + "\n";
    }

    private static String spline(int degree, int points, int knots, java.util.function.IntToDoubleFunction knot) {
        return "0\nSPLINE\n8\n0\n70\n0\n71\n" + degree + "\n"
                + repeated(knots, i -> "40\n" + knot.applyAsDouble(i) + "\n")
                + repeated(points, i -> "10\n" + 300 * Math.cos(i) + "\n20\n" + 300 * Math.sin(i) + "\n");
    }

    private static String repeated(int times, java.util.function.IntFunction<String> part) {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < times; i++) {
            text.append(part.apply(i));
        }
        return text.toString();
    }

    /** A chain of blocks, each inserted several times in the one before. */
    private static byte[] deep(int depth, int each) {
        String blocks = IntStream.range(0, depth)
                .mapToObj(i -> block(
                        "B" + i,
                        i + 1 == depth
                                ? line(0, 0, 1, 1)
                                : insert("B" + (i + 1), 1, 1).repeat(each)))
                .reduce(new StringBuilder(), StringBuilder::append, StringBuilder::append)
                .toString();
        return dxf(blocks, insert("B0", 1, 1));
    }

    /** A text of a drawing may have megabytes; looked at from each of its words, it would take hours. */
    @ParameterizedTest
    @ValueSource(strings = {"sleeve", "sleeve ", "size ", "sleeve size-"})
    void longTextsNameNoSizes(String word) {
        String text = word.repeat(400_000);
        assertTimeoutPreemptively(HANGS, () -> {
            assertEquals(Optional.empty(), PieceName.sizeBeside(text));
            SizeScale.named(text);
        });
    }

    /** Files of other formats are told by their first bytes, and what to save them as is said. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "PK\u0003\u0004[Content_Types].xml",
                "\u00d0\u00cf\u0011\u00e0\u00a1\u00b1",
                "%PDF-1.7\n",
                "\n<svg/>",
                "<?xml?>",
                "AC1032\u0000"
            })
    void otherFormatsAreTold(String start) {
        ForeignFile file = ForeignFile.of("spec", (start + "\n".repeat(80)).getBytes(StandardCharsets.ISO_8859_1));
        for (Executable read : List.<Executable>of(
                () -> SpecTableReader.read(file, ForeignOptions.none()),
                () -> OutlineReader.read(List.of(file), ForeignOptions.none()))) {
            ForeignInputException e = assertThrows(ForeignInputException.class, read);
            assertTrue(e.reason().toString().contains("save"), e.getMessage());
        }
    }
}
