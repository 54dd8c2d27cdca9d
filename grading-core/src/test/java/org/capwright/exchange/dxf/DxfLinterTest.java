package org.capwright.exchange.dxf;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** A sound drawing, written out by hand here, and one broken copy of it for every fault. */
class DxfLinterTest {

    private static final String SOUND = lines(
            "0|SECTION 2|HEADER 9|$ACADVER 1|AC1009 9|$EXTMIN 10|0.0 20|-5.0 30|0.0 9|$EXTMAX 10|110.0 20|50.0 30|0.0 0|ENDSEC",
            "0|SECTION 2|TABLES 0|TABLE 2|LTYPE 70|1 0|LTYPE 2|CONTINUOUS 70|64 3|Solid 72|65 73|0 40|0.0 0|ENDTAB",
            "0|TABLE 2|LAYER 70|2 0|LAYER 2|0 70|64 62|7 6|CONTINUOUS 0|LAYER 2|CUT 70|64 62|1 6|CONTINUOUS 0|ENDTAB",
            "0|TABLE 2|STYLE 70|1 0|STYLE 2|STANDARD 70|0 40|0.0 41|1.0 50|0.0 71|0 42|5.0 3|txt 4|x 0|ENDTAB 0|ENDSEC",
            "0|SECTION 2|BLOCKS 0|BLOCK 8|0 2|PIECE 70|0 10|0.0 20|0.0 30|0.0 3|PIECE",
            "0|POLYLINE 8|CUT 66|1 10|0.0 20|0.0 30|0.0 70|1 0|VERTEX 8|CUT 10|0.0 20|0.0 0|VERTEX 8|CUT 10|100.0 20|0.0",
            "0|VERTEX 8|CUT 10|100.0 20|50.0 0|SEQEND 8|CUT 0|ENDBLK 8|0 0|ENDSEC",
            "0|SECTION 2|ENTITIES 0|INSERT 8|CUT 2|PIECE 10|10.0 20|0.0 30|0.0 0|TEXT 8|CUT 10|0.0 20|-5.0 30|0.0 40|5.0 1|words",
            "0|LINE 8|CUT 10|20.0 20|1.0 30|0.0 11|30.0 21|2.0 31|0.0 0|ENDSEC 0|EOF");

    private static String lines(String... pairs) {
        return String.join(" ", pairs).replaceAll("[| ]", "\r\n") + "\r\n";
    }

    private record Broken(DxfFault fault, String from, String to) {
        byte[] file() {
            String pattern = lines(from);
            int at = SOUND.indexOf(pattern);
            if (at < 0) {
                throw new AssertionError("not in the sound file: " + from);
            }
            return bytes(
                    SOUND.substring(0, at) + (to.isEmpty() ? "" : lines(to)) + SOUND.substring(at + pattern.length()));
        }

        @Override
        public String toString() {
            return fault + ": " + from + " becomes " + (to.length() > 60 ? "a long value" : to);
        }
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.ISO_8859_1);
    }

    static List<Broken> broken() {
        return List.of(
                new Broken(DxfFault.NOT_ASCII, "1|words", "1|w\u00f6rds"),
                new Broken(DxfFault.NOT_ASCII, "1|words", "1|w\trds"),
                new Broken(DxfFault.LONG_STRING, "1|words", "1|" + "w".repeat(256)),
                new Broken(DxfFault.GROUP_CODE, "40|5.0", "4O|5.0"),
                new Broken(DxfFault.NUMBER, "10|20.0", "10|NaN"),
                new Broken(DxfFault.NUMBER, "10|20.0", "10|2e1"),
                new Broken(DxfFault.NUMBER, "10|20.0", "10|20,0"),
                new Broken(DxfFault.NUMBER, "10|20.0", "10|Infinity"),
                new Broken(DxfFault.WHOLE_NUMBER, "62|7", "62|7.0"),
                new Broken(DxfFault.NEWER_GROUP_CODE, "0|LINE 8|CUT", "0|LINE 100|AcDbEntity 8|CUT"),
                new Broken(DxfFault.TRUNCATED, "0|ENDSEC 0|EOF", "0|ENDSEC"),
                new Broken(DxfFault.TRUNCATED, "0|ENDSEC 0|EOF", "0|ENDSEC 0"),
                new Broken(DxfFault.AFTER_END, "0|ENDSEC 0|EOF", "0|ENDSEC 0|EOF 0|LINE"),
                new Broken(DxfFault.SECTION_ORDER, "2|BLOCKS", "2|HEADER"),
                new Broken(DxfFault.SECTION_ORDER, "2|BLOCKS", "2|OBJECTS"),
                new Broken(DxfFault.SECTION_ORDER, "0|ENDSEC 0|SECTION 2|ENTITIES", "0|SECTION 2|ENTITIES"),
                new Broken(DxfFault.TABLE_ORDER, "2|STYLE 70|1 0|STYLE 2|STANDARD", "2|LTYPE 70|1 0|LTYPE 2|DASHED"),
                new Broken(DxfFault.VERSION, "1|AC1009", "1|AC1015"),
                new Broken(DxfFault.EXTENTS, "10|110.0", "10|100.0"),
                new Broken(DxfFault.EXTENTS, "20|-5.0 30|0.0 9|$EXTMAX", "20|-6.0 30|0.0 9|$EXTMAX"),
                new Broken(DxfFault.NAME, "2|CUT", "2|" + "C".repeat(32)),
                new Broken(DxfFault.NAME, "2|CUT", "2|cut"),
                new Broken(DxfFault.DUPLICATE_NAME, "2|CUT", "2|0"),
                new Broken(
                        DxfFault.DUPLICATE_NAME,
                        "0|ENDBLK 8|0",
                        "0|ENDBLK 8|0 0|BLOCK 8|0 2|PIECE 70|0 10|0.0 20|0.0 30|0.0 3|PIECE 0|ENDBLK 8|0"),
                new Broken(DxfFault.NO_LAYER, "0|LINE 8|CUT", "0|LINE"),
                new Broken(DxfFault.UNDEFINED_LAYER, "0|LINE 8|CUT", "0|LINE 8|NET"),
                new Broken(DxfFault.UNDEFINED_LINE_TYPE, "62|1 6|CONTINUOUS", "62|1 6|DASHED"),
                new Broken(DxfFault.UNDEFINED_LINE_TYPE, "0|LINE 8|CUT", "0|LINE 8|CUT 6|DASHED"),
                new Broken(DxfFault.UNDEFINED_TEXT_STYLE, "1|words", "1|words 7|ROMANS"),
                new Broken(DxfFault.UNDEFINED_BLOCK, "0|INSERT 8|CUT 2|PIECE", "0|INSERT 8|CUT 2|OTHER"),
                new Broken(DxfFault.BLOCK_CYCLE, "0|ENDBLK", "0|INSERT 8|CUT 2|PIECE 10|0.0 20|0.0 30|0.0 0|ENDBLK"),
                new Broken(
                        DxfFault.NOT_R12,
                        "0|LINE 8|CUT 10|20.0 20|1.0 30|0.0 11|30.0 21|2.0 31|0.0",
                        "0|LWPOLYLINE 8|CUT 90|2 70|0 10|20.0 20|1.0 10|30.0 20|2.0"),
                new Broken(DxfFault.MISSING_VALUE, "11|30.0", ""),
                new Broken(DxfFault.MISSING_VALUE, "40|5.0 1|words", "1|words"),
                new Broken(DxfFault.NO_VERTICES_FLAG, "66|1", ""),
                new Broken(DxfFault.FEW_VERTICES, "0|VERTEX 8|CUT 10|0.0 20|0.0 0|VERTEX 8|CUT 10|100.0 20|0.0", ""),
                new Broken(DxfFault.REPEATED_FIRST_POINT, "0|SEQEND", "0|VERTEX 8|CUT 10|0.0 20|0.0 0|SEQEND"),
                new Broken(DxfFault.SEQUENCE, "0|SEQEND 8|CUT", ""),
                new Broken(DxfFault.SEQUENCE, "0|LINE", "0|VERTEX 8|CUT 10|20.0 20|1.0 0|LINE"),
                new Broken(DxfFault.SEQUENCE, "0|LINE", "0|SEQEND 8|CUT 0|LINE"),
                new Broken(DxfFault.MIXED_HANDLES, "0|LINE", "0|LINE 5|1F"));
    }

    private static Set<DxfFault> faults(byte[] file) {
        return DxfLinter.check(file).stream()
                .map(DxfFinding::fault)
                .collect(Collectors.toCollection(() -> EnumSet.noneOf(DxfFault.class)));
    }

    @Test
    void theSoundFileHasNoFindings() {
        assertEquals(List.of(), DxfLinter.check(bytes(SOUND)));
    }

    @ParameterizedTest
    @MethodSource
    void broken(Broken broken) {
        List<DxfFinding> findings = DxfLinter.check(broken.file());
        assertTrue(findings.stream().anyMatch(finding -> finding.fault() == broken.fault), () -> "found " + findings);
        long fileLines =
                new String(broken.file(), StandardCharsets.ISO_8859_1).lines().count();
        for (DxfFinding finding : findings) {
            assertTrue(finding.line() >= 1 && finding.line() <= fileLines, finding.toString());
        }
    }

    @Test
    void lineEndingsMustBeCrLf() {
        assertEquals(Set.of(DxfFault.LINE_ENDING), faults(bytes(SOUND.replace("\r\n", "\n"))));
        assertEquals(Set.of(DxfFault.LINE_ENDING), faults(bytes(SOUND.substring(0, SOUND.length() - 2))));
    }

    @Test
    void everyFaultHasABrokenFile() {
        Set<DxfFault> tested = EnumSet.of(DxfFault.LINE_ENDING);
        broken().forEach(broken -> tested.add(broken.fault));
        assertEquals(EnumSet.allOf(DxfFault.class), tested);
    }

    @Test
    void aFindingNamesItsLine() {
        List<DxfFinding> findings = DxfLinter.check(new Broken(DxfFault.WHOLE_NUMBER, "62|7", "62|7.0").file());
        assertEquals(1, findings.size());
        List<String> lines = SOUND.lines().toList();
        assertEquals(lines.indexOf("7") + 1, findings.get(0).line());
        assertEquals("7.0", findings.get(0).detail());
    }

    /** Whatever bytes come, the linter answers. */
    @ParameterizedTest
    @MethodSource("seeds")
    void garbageIsAnswered(long seed) {
        Random random = new Random(seed);
        byte[] file = bytes(SOUND);
        for (int i = 0; i < 40; i++) {
            file[random.nextInt(file.length)] = (byte) random.nextInt(256);
        }
        int cut = random.nextInt(file.length);
        assertTrue(DxfLinter.check(Arrays.copyOf(file, cut)).size() > 0, "seed " + seed);
    }

    static List<Long> seeds() {
        List<Long> seeds = new ArrayList<>();
        for (long seed = 0; seed < 200; seed++) {
            seeds.add(seed);
        }
        return seeds;
    }

    @Test
    void findingsAreBounded() {
        byte[] file = bytes(SOUND.replace("0\r\nEOF\r\n", "40\r\nNaN\r\n".repeat(5000)));
        assertEquals(DxfLinter.MOST_FINDINGS, DxfLinter.check(file).size());
    }
}
