package org.capwright.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.text.Normalizer;
import java.util.List;
import java.util.stream.Stream;
import org.capwright.geometry.Point;
import org.capwright.pattern.PatternSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The files as poppler, qpdf and mupdf read them. */
class PrintedPagesTest {

    private static final PatternSet SET = ChoirGown.inSizes("Choir gown", "38", "40", "42");

    @TempDir
    private Path folder;

    private Path written(PatternSet set, PdfOptions options) throws Exception {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        PdfExport.write(set, options, out);
        return Files.write(folder.resolve("pattern.pdf"), out.toByteArray());
    }

    static Stream<Paper> papers() {
        return Stream.of(Paper.A4, Paper.LETTER, Paper.A3, new Paper.Sheets("small", 140, 200), new Paper.Roll(914.4));
    }

    @ParameterizedTest
    @MethodSource("papers")
    void testSquaresMeasureWhatTheySay(Paper paper) throws Exception {
        Raster cover = Raster.of(written(SET, PdfOptions.on(paper)), 1);
        // Looked for below the title: the left sides of both squares on a row through their middles.
        int row = squareRow(cover);
        double left = cover.lineAcross(100, row);
        double right = cover.lineAcross((int) left + 100, row);
        // Words stand in the middle of each square: measured on a row above them.
        assertEquals(50.0, (right - left) / 10, 0.1, "width of the 50 mm square");
        double left2 = cover.lineAcross((int) right + 20, row);
        double right2 = cover.lineAcross((int) left2 + 100, row);
        assertEquals(50.8, (right2 - left2) / 10, 0.1, "width of the 2 in square");
        assertEquals(50.0, height(cover, (int) left + 50, row), 0.1, "height of the 50 mm square");
        assertEquals(50.8, height(cover, (int) left2 + 50, row), 0.1, "height of the 2 in square");
    }

    /** A row that meets exactly the four upright sides in the left 112 mm: found from the upper side of the first square, 5 mm below it. */
    private static int squareRow(Raster cover) {
        for (int y = 100; y < cover.height(); y++) {
            int run = 0;
            for (int x = 100; x < 700; x++) {
                run = cover.dark(x, y) ? run + 1 : 0;
                if (run > 490 && !cover.dark(x, y + 30)) {
                    int longer = x;
                    while (cover.dark(longer + 1, y)) {
                        longer++;
                    }
                    if (longer - (x - run) < 520) {
                        return y + 50;
                    }
                }
            }
        }
        throw new AssertionError("no square on the cover");
    }

    private static double height(Raster cover, int x, int row) {
        double top = cover.lineDown(x, row - 70);
        double bottom = cover.lineDown(x, (int) top + 100);
        return (bottom - top) / 10;
    }

    @ParameterizedTest
    @MethodSource("papers")
    void pagesHaveTheSizeOfThePaper(Paper paper) throws Exception {
        Path file = written(SET, PdfOptions.on(paper));
        String info = Tool.PDFINFO
                .run(folder, "-box", "-f", "1", "-l", "99", file.toString())
                .text();
        List<double[]> boxes = info.lines()
                .filter(line -> line.contains("MediaBox") || line.contains("CropBox"))
                .map(line -> Stream.of(
                                line.substring(line.indexOf(':') + 1).trim().split("\\s+"))
                        .mapToDouble(Double::parseDouble)
                        .toArray())
                .toList();
        assertFalse(boxes.isEmpty());
        for (double[] box : boxes) {
            assertEquals(0, box[0]);
            assertEquals(0, box[1]);
            double width = box[2] / 72 * 25.4;
            double height = box[3] / 72 * 25.4;
            if (paper instanceof Paper.Sheets sheets) {
                // poppler prints hundredths of a point: 0.004 mm
                assertEquals(sheets.width(), Math.min(width, height), 0.005);
                assertEquals(sheets.height(), Math.max(width, height), 0.005);
            } else if (paper instanceof Paper.Roll roll) {
                assertEquals(roll.width(), width, 0.005);
                assertTrue(box[3] <= 14400, "PDF Reference 1.6, appendix C: at most 14400 units");
            }
        }
    }

    /** ISO 216 and ANSI sizes in points as the PDF literature gives them: A4 595.276 x 841.890, Letter 612 x 792. */
    @Test
    void pagesOfA4AndLetterHaveThePublishedSizesInPoints() throws Exception {
        assertTrue(pageSize(Paper.A4).contains("595.276 x 841.89 pts (A4)"));
        assertTrue(pageSize(Paper.LETTER).contains("612 x 792 pts (letter)"));
    }

    private String pageSize(Paper paper) throws Exception {
        return Tool.PDFINFO
                .run(folder, written(SET, PdfOptions.on(paper)).toString())
                .text();
    }

    @ParameterizedTest
    @MethodSource("papers")
    void otherReadersFindNoFault(Paper paper) throws Exception {
        Path file = written(SET, PdfOptions.on(paper));
        Tool.Result qpdf = Tool.QPDF.run(folder, "--check", file.toString());
        assertEquals(0, qpdf.code(), qpdf.text() + qpdf.errors());
        Tool.Result mutool = Tool.MUTOOL.run(folder, "draw", "-F", "trace", file.toString());
        assertEquals(0, mutool.code(), mutool.errors());
        assertFalse(mutool.errors().contains("error"), mutool.errors());
        assertFalse(
                mutool.errors()
                        .replace("warning: ICC support is not available", "")
                        .contains("warning"),
                mutool.errors());
        Tool.Result json = Tool.QPDF.run(folder, "--json", file.toString());
        assertTrue(json.text().contains("\"/PrintScaling\": \"/None\""));
        assertFalse(json.text().contains("/UserUnit"));
        Tool.Result fonts = Tool.PDFFONTS.run(folder, file.toString());
        List<String> rows = fonts.text().lines().skip(2).toList();
        assertEquals(2, rows.size());
        for (String row : rows) {
            assertTrue(row.matches("[A-Z]{6}\\+DejaVuSansCondensed.*yes yes yes.*"), row);
        }
    }

    /** Poppler honours the replacement text of a span (PDF Reference 1.6, section 10.8.3), and puts Arabic back into the order of reading. */
    @ParameterizedTest
    @ValueSource(strings = {"Χιτώνας", "Хоровая мантия", "聖歌隊ガウン", "عباءة", "גלימה"})
    void stylesOfAnyScriptAreFoundByPoppler(String style) throws Exception {
        Path file = written(ChoirGown.inSizes(style, "40"), PdfOptions.on(Paper.A4));
        String text = Tool.PDFTOTEXT
                .run(folder, "-f", "1", "-l", "1", file.toString(), "-")
                .text();
        // Marks of direction that poppler may set are not part of the name; joined forms of letters are equal to the
        // letters under NFKC.
        String letters = Normalizer.normalize(text, Normalizer.Form.NFKC).replaceAll("[\u202A-\u202E\u200E\u200F]", "");
        assertTrue(letters.contains(style), text);
    }

    /** The embedded font has no ideographs: sizes that look alike on paper are told apart by what the cover says of them. */
    @Test
    void theCoverSaysWhereSizesThatTheFontCannotShowAreNamed() throws Exception {
        String cover = "cannot show some characters of the names of sizes";
        assertTrue(words(ChoirGown.inSizes("Choir gown", "小", "中", "大")).contains(cover));
        assertFalse(words(ChoirGown.inSizes("Choir gown", "S", "Größe M", "Большой"))
                .contains(cover));
    }

    private String words(PatternSet set) throws Exception {
        Path file = written(set, PdfOptions.on(Paper.A4));
        return Tool.PDFTOTEXT
                .run(folder, "-l", "1", file.toString(), "-")
                .text()
                .replaceAll("\\s+", " ");
    }

    static Stream<Paper.Sheets> sheets() {
        return Stream.of(Paper.A4, Paper.LETTER, Paper.A3);
    }

    @ParameterizedTest
    @MethodSource("sheets")
    void gluedSheetsGiveTheSameAsOnePage(Paper.Sheets paper) throws Exception {
        PdfOptions options = PdfOptions.on(paper).withSizes(List.of("40", "42"));
        Tiling[] tiled = new Tiling[1];
        Path sheets = write("sheets.pdf", options, paper, blocks -> tiled[0] = Tiling.fewest(blocks, paper));
        Tiling tiling = tiled[0];
        double width = tiling.printed(0, tiling.columns() - 1).right();
        double height = -tiling.printed(tiling.rows() - 1, 0).bottom();
        Path one = write(
                "one.pdf",
                options,
                paper,
                blocks -> Tiling.of(tiling.sheet(), width + 2 * Paper.MARGIN, height + 2 * Paper.MARGIN));
        Raster whole = Raster.of(one, covers(one, 1) + 1);

        int[] stepX = edges(tiling.columns(), tiling.stepX(), width);
        int[] stepY = edges(tiling.rows(), tiling.stepY(), height);
        boolean[] glued = new boolean[stepX[tiling.columns()] * stepY[tiling.rows()]];
        int across = stepX[tiling.columns()];
        int page = covers(sheets, tiling.count());
        for (int row = 0; row < tiling.rows(); row++) {
            for (int column = 0; column < tiling.columns(); column++) {
                if (tiling.needs(row, column)) {
                    Raster sheet = Raster.of(sheets, ++page);
                    for (int y = stepY[row]; y < stepY[row + 1]; y++) {
                        for (int x = stepX[column]; x < stepX[column + 1]; x++) {
                            glued[y * across + x] = sheet.dark(x - stepX[column] + 100, y - stepY[row] + 100);
                        }
                    }
                }
            }
        }
        long ink = 0;
        long differing = 0;
        for (int y = 0; y < stepY[tiling.rows()]; y++) {
            for (int x = 0; x < across; x++) {
                boolean there = whole.dark(x + 100, y + 100);
                ink += there ? 1 : 0;
                differing += there == glued[y * across + x] ? 0 : 1;
            }
        }
        assertTrue(ink > 50_000, "ink on " + ink + " pixels");
        assertTrue(differing < 0.001 * glued.length, differing + " of " + glued.length + " pixels differ");
        assertTrue(differing < 0.02 * ink, differing + " pixels differ, ink on " + ink);
        // And against the pattern itself: ink at every corner point of every cut line that is not on a fold.
        for (Sheet.Placed placed : tiling.sheet().placed()) {
            for (Block.Layer layer : placed.block().layers()) {
                for (int corner : layer.piece().cutCorners()) {
                    Point p = layer.piece()
                            .cutLine()
                            .get(corner)
                            .plus(layer.shift())
                            .plus(placed.at());
                    int x = (int) Math.floor(p.x() * 10) + 100;
                    int y = (int) Math.floor(-p.y() * 10) + 100;
                    assertTrue(whole.darkWithin(x, y, 3), layer.piece().kind() + " at " + p);
                }
            }
        }
    }

    private static int[] edges(int count, double step, double end) {
        int[] edges = new int[count + 1];
        for (int i = 0; i < count; i++) {
            edges[i] = (int) Math.round(i * step * 10);
        }
        edges[count] = (int) Math.round(end * 10);
        return edges;
    }

    private Path write(String name, PdfOptions options, Paper.Sheets paper, PdfExport.Layout layout) throws Exception {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        PdfExport.write(SET, options, paper, layout, out);
        return Files.write(folder.resolve(name), out.toByteArray());
    }

    private int covers(Path file, int sheets) throws Exception {
        String info = Tool.PDFINFO.run(folder, file.toString()).text();
        return Integer.parseInt(info.replaceAll("(?s).*Pages:\\s+(\\d+).*", "$1")) - sheets;
    }

    @Test
    void longRollsAreSplitIntoPagesThatPdfAllows() throws Exception {
        PatternSet tall = ChoirGown.inSizes("Processional gown", 140, 1900, "38", "40", "42");
        PdfOptions options = PdfOptions.on(new Paper.Roll(425)); // so narrow that the pieces lie one below another
        Path file = written(tall, options);
        String info =
                Tool.PDFINFO.run(folder, "-f", "1", "-l", "9", file.toString()).text();
        List<Double> heights = info.lines()
                .filter(line -> line.matches("Page\\s+\\d+ size:.*"))
                .map(line -> Double.parseDouble(line.replaceAll(".* x ([0-9.]+) pts.*", "$1")))
                .toList();
        assertEquals(1, heights.size());
        assertTrue(heights.get(0) <= 14400);
        PatternSet taller = stacked(tall, 3);
        Path longer = written(taller, options);
        String split = Tool.PDFINFO
                .run(folder, "-f", "1", "-l", "9", longer.toString())
                .text();
        List<String> pages = split.lines()
                .filter(line -> line.matches("Page\\s+\\d+ size:.*"))
                .toList();
        assertTrue(pages.size() > 1, split);
        assertEquals(pages.size(), PdfExport.pages(taller, options));
        for (String page : pages) {
            assertTrue(Double.parseDouble(page.replaceAll(".* x ([0-9.]+) pts.*", "$1")) <= 14400, page);
        }
        String text = Tool.PDFTOTEXT.run(folder, longer.toString(), "-").text();
        assertTrue(text.contains("glue B1 here"), "pages of a roll tell where the next one goes");
    }

    /** The same pieces several times over, to fill a long roll. */
    private static PatternSet stacked(PatternSet set, int times) {
        return new PatternSet(
                set.title(),
                set.run(),
                set.sizes().stream()
                        .map(pieces -> Stream.generate(() -> pieces)
                                .limit(times)
                                .flatMap(List::stream)
                                .toList())
                        .toList());
    }
}
