package org.capwright.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.capwright.geometry.Box;
import org.capwright.pattern.PatternSet;
import org.capwright.pattern.Piece;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Violation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The page for a projector as poppler sees it, one pixel to the millimetre. */
class ProjectedTest {

    private static final PatternSet SET = ChoirGown.inSizes("Choir gown", "38", "40", "42");

    /** Half a thick line each side, and a pixel each side, mm. */
    private static final double LINE = 4.5;

    @TempDir
    Path folder;

    /** What stands out from the ground: lines, not the grid. */
    private record Seen(int width, int height, boolean[] line, boolean[] any) {
        boolean line(int x, int y) {
            return line[y * width + x];
        }
    }

    private Path written(PdfOptions options) throws Exception {
        return written(SET, options);
    }

    private Path written(PatternSet set, PdfOptions options) throws Exception {
        Path file = folder.resolve("table.pdf");
        try (OutputStream out = Files.newOutputStream(file)) {
            PdfExport.write(set, options, out);
        }
        return file;
    }

    private static PdfOptions table(Paper.Ground ground) {
        return PdfOptions.on(new Paper.Projection(1500, ground));
    }

    private Seen seen(Path file, Paper.Ground ground) throws Exception {
        byte[] page = Tool.PDFTOPPM
                .run(folder, "-r", "25.4", "-gray", "-singlefile", file.toString())
                .out();
        Matcher header = Pattern.compile("^P5\\s+(\\d+)\\s+(\\d+)\\s+255\\s")
                .matcher(new String(page, 0, 40, java.nio.charset.StandardCharsets.ISO_8859_1));
        assertTrue(header.find());
        int width = Integer.parseInt(header.group(1));
        int height = Integer.parseInt(header.group(2));
        boolean[] line = new boolean[width * height];
        boolean[] any = new boolean[width * height];
        for (int i = 0; i < line.length; i++) {
            int grey = page[header.end() + i] & 0xFF;
            int contrast = ground == Paper.Ground.DARK ? grey - 13 : 255 - grey;
            line[i] = contrast > 110;
            any[i] = contrast > 15;
        }
        return new Seen(width, height, line, any);
    }

    @ParameterizedTest
    @EnumSource
    void piecesGridAndLengthsLieAtTrueScaleOnOnePage(Paper.Ground ground) throws Exception {
        Path file = written(table(ground).withSizes(List.of("40")));
        String info = Tool.PDFINFO.run(folder, file.toString()).text();
        assertTrue(info.matches("(?s).*Pages:\\s+1\\n.*"), info);
        Seen seen = seen(file, ground);
        assertTrue(seen.width() % 100 <= 1, "whole parts of the grid, " + seen.width());
        assertTrue(seen.height() % 100 <= 1, seen.height() + " mm");
        for (int at = 108; at < 592; at++) {
            assertTrue(seen.line(at, 50), "the length across, at " + at + " mm");
            assertTrue(seen.line(50, at), "the length down, at " + at + " mm");
        }
        for (int end : new int[] {100, 600}) {
            assertTrue(seen.line(end, 38) && seen.line(38, end), "its ends, at " + end + " mm");
        }
        for (int outside : new int[] {90, 610}) {
            assertTrue(!seen.line(outside, 50) && !seen.line(50, outside), "not beyond, at " + outside + " mm");
        }
        for (int x = 100; x < seen.width(); x += 100) {
            int at = 3 * seen.width() + x;
            assertTrue(
                    seen.any()[at - 1] || seen.any()[at] || x + 1 < seen.width() && seen.any()[at + 1],
                    "the grid at " + x + " mm");
        }
        List<Box> pieces = SET.sizes().get(1).stream()
                .map(piece -> Box.of(piece.cutLine()))
                .sorted(Comparator.comparingDouble(box -> -box.height()))
                .toList();
        List<int[]> found = besideOneAnother(seen);
        assertEquals(
                pieces.size(),
                found.size(),
                () -> found.stream().map(java.util.Arrays::toString).toList() + " of " + seen.width() + " mm");
        for (int i = 0; i < found.size(); i++) {
            assertEquals(pieces.get(i).width(), found.get(i)[1] - found.get(i)[0], LINE, "piece " + i);
        }
    }

    /** Where there are lines, from left to right; pieces are 10 mm apart. */
    private static List<int[]> besideOneAnother(Seen seen) {
        List<int[]> found = new ArrayList<>();
        for (int x = 95; x < seen.width() - 1; x++) {
            boolean there = false;
            for (int y = 98; y < seen.height() - 1; y++) {
                there |= seen.line(x, y);
            }
            if (there && !found.isEmpty() && x - found.get(found.size() - 1)[1] <= 3) {
                found.get(found.size() - 1)[1] = x;
            } else if (there) {
                found.add(new int[] {x, x});
            }
        }
        return found;
    }

    @Test
    void linesAreThickAndTheGroundIsDark() throws Exception {
        Seen seen = seen(written(table(Paper.Ground.DARK)), Paper.Ground.DARK);
        int lit = 0;
        for (boolean each : seen.line()) {
            lit += each ? 1 : 0;
        }
        assertTrue(lit < 0.2 * seen.line().length, "mostly dark");
        int thick = 0;
        for (int y = 44; y <= 56; y++) {
            thick += seen.line(300, y) ? 1 : 0;
        }
        assertTrue(thick >= 2, thick + " mm");
    }

    @Test
    void everySizeIsALayerOfItsOwnAndTheFileIsSound() throws Exception {
        Path file = written(table(Paper.Ground.LIGHT));
        assertEquals(0, Tool.QPDF.run(folder, "--check", file.toString()).code());
        String layers = new String(Files.readAllBytes(file), java.nio.charset.StandardCharsets.ISO_8859_1);
        for (String size : List.of("38", "40", "42")) {
            assertTrue(layers.contains("(Size " + size + ")"), size);
        }
        String text = Tool.PDFTOTEXT.run(folder, file.toString(), "-").text();
        assertTrue(text.contains("50 cm on the table, both ways"), text);
        assertTrue(text.contains("revision"), text);
    }

    /** Poppler's boxes of words, in points: a page no wider than its lengths need, and a name as long as one may be. */
    @Test
    void theNameStandsWholeOnAPageThatIsNoWiderThanItsLengths() throws Exception {
        PatternSet named =
                ChoirGown.inSizes("Choir gown with a raised shoulder overlay and sleeves to the wrist", "38", "40");
        Path file = written(named, PdfOptions.on(new Paper.Projection(450, Paper.Ground.LIGHT)));
        String words = Tool.PDFTOTEXT.run(folder, "-bbox", file.toString(), "-").text();
        Matcher page = Pattern.compile("<page width=\"([0-9.]+)\"").matcher(words);
        assertTrue(page.find() && Double.parseDouble(page.group(1)) < 701 / 25.4 * 72, words);
        Matcher word = Pattern.compile("xMax=\"([0-9.]+)\" [^>]*>([^<]*)<").matcher(words);
        List<String> found = new ArrayList<>();
        while (word.find()) {
            found.add(word.group(2));
            assertTrue(Double.parseDouble(word.group(1)) <= Double.parseDouble(page.group(1)), word::group);
        }
        assertTrue(found.containsAll(List.of("raised", "wrist,", "revision")), found::toString);
    }

    @Test
    void refusesATableThatIsTooNarrowWithAWidthThatWorks() {
        assertEquals(1, pages(SET, refused(SET, 150).least().orElseThrow()));
    }

    /** One below another they would reach beyond 14400 units, the longest page of PDF Reference 1.6, appendix C. */
    @Test
    void refusesATableThatIsTooNarrowForLongPiecesWithAWidthThatWorks() {
        PatternSet longPieces = ChoirGown.inSizes("Train", 700, 1900, "40");
        Violation violation = refused(longPieces, 300);
        assertEquals(1, pages(longPieces, violation.least().orElseThrow()));
        assertEquals(1, pages(longPieces, violation.greatest().orElseThrow()));
    }

    /** Pieces side by side all over the widest table: the page is no wider than 14400 units, as above. */
    @Test
    void thePageOfTheWidestTableIsOneThatAPdfCanHave() throws Exception {
        List<Piece> many = Collections.nCopies(40, SET.sizes().get(0).get(0));
        PatternSet wide = new PatternSet(SET.title(), SET.run(), List.of(many, many, many));
        PdfOptions widest =
                PdfOptions.on(new Paper.Projection(refused(wide, 150).greatest().orElseThrow(), Paper.Ground.DARK));
        Path file = written(wide, widest.withSizes(List.of("38")));
        Matcher page = Pattern.compile("Page size: +([0-9.]+) x")
                .matcher(Tool.PDFINFO.run(folder, file.toString()).text());
        assertTrue(page.find());
        double width = Double.parseDouble(page.group(1));
        assertTrue(width > 13500 && width <= 14400, page::group);
    }

    private static int pages(PatternSet set, double table) {
        return PdfExport.pages(set, PdfOptions.on(new Paper.Projection(table, Paper.Ground.DARK)));
    }

    private static Violation refused(PatternSet set, double table) {
        return assertThrows(InvalidMeasuresException.class, () -> pages(set, table))
                .violations()
                .get(0);
    }
}
