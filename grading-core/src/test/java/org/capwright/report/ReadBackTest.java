package org.capwright.report;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.time.Instant;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.capwright.drawing.Script;
import org.capwright.drawing.Typeface;
import org.capwright.grade.Alignment;
import org.capwright.lay.Fabric;
import org.capwright.lay.MaterialNeed;
import org.capwright.lay.Materials;
import org.capwright.lay.Trimming;
import org.capwright.measure.SleeveSubject.Option;
import org.capwright.pattern.Material;
import org.capwright.pattern.PatternSet;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Unit;
import org.capwright.quantity.Violation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The files as PDFBox reads them, and what is refused. */
class ReadBackTest {

    private static final PatternSet SET = ChoirGown.inSizes("Choir gown", "36", "38", "40", "42");

    private static byte[] written(PatternSet set, PdfOptions options) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try {
            PdfExport.write(set, options, out);
        } catch (java.io.IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
        return out.toByteArray();
    }

    private static String text(byte[] file, int first, int last) throws Exception {
        try (PDDocument document = Loader.loadPDF(file)) {
            PDFTextStripper stripper = new PDFTextStripper();
            stripper.setSortByPosition(true);
            stripper.setStartPage(first);
            stripper.setEndPage(last);
            return stripper.getText(document);
        }
    }

    @Test
    void coverStatesWhatTheFileIs() throws Exception {
        byte[] file = written(
                SET,
                PdfOptions.on(Paper.A4)
                        .withSewing(
                                List.of("Pleat the top edge to the marks and baste."),
                                List.of("Keep flowing sleeves away from flames.")));
        String cover = text(file, 1, 2);
        for (String words : List.of(
                "Choir gown",
                "Revision 3",
                "sizes 36, 38, 40, 42",
                "base size 40",
                "figures in cm",
                "50 mm",
                "2 in",
                "measure before cutting",
                "Overlay lining",
                "cut 2 on the fold",
                "interfacing",
                "Bicep",
                "Attach span",
                "Pleat the top edge to the marks and baste.",
                "Keep flowing sleeves away from flames.",
                "Page map")) {
            assertTrue(cover.contains(words), words + " is missing in: " + cover);
        }
    }

    @Test
    void specTableShowsValuesAndJumps() throws Exception {
        List<String> lines =
                text(written(SET, PdfOptions.on(Paper.A4)), 1, 1).lines().toList();
        // Bicep 36 cm in the base size, graded by 12 mm; tolerance 1 cm.
        int row = lines.indexOf("Bicep 33.6 34.8 36 37.2 1");
        assertTrue(row >= 0, String.join("\n", lines));
        assertEquals("+1.2 +1.2 +1.2", lines.get(row + 1));
    }

    @Test
    void coverTellsWhatToBuyAndHowTheBaseSizeLies() throws Exception {
        List<Fabric> cloths = List.of(
                Fabric.plain(Material.MAIN, 1400, Fabric.Laying.OPEN),
                Fabric.plain(Material.INTERFACING, 900, Fabric.Laying.OPEN));
        Materials each = Materials.of(SET, cloths);
        String cover = text(written(SET, PdfOptions.on(Paper.A4).withMaterials(each)), 1, 2);
        assertTrue(cover.contains("To buy for one pair of sleeves in each size, cm"), cover);
        assertTrue(cover.contains("Main cloth, 140 cm wide, open, single layer, without nap"), cover);
        MaterialNeed base = each.cloths().stream()
                .filter(need -> need.pairs().containsKey("40") && need.material() == Material.MAIN)
                .findFirst()
                .orElseThrow();
        String lay = Unit.CENTIMETRE.format(base.lay().length());
        assertTrue(cover.contains("lay " + lay + " cm"), cover);
        assertTrue(
                cover.contains("40:\u00a0"
                        + Unit.CENTIMETRE.format(base.lay().purchase().length())),
                cover);
        String ordered = text(
                written(
                        SET,
                        PdfOptions.on(Paper.A4)
                                .withMaterials(Materials.ofOrder(
                                        SET,
                                        cloths,
                                        Trimming.USUAL,
                                        java.util.Map.of("36", 2, "42", 1),
                                        org.capwright.lay.LayEffort.USUAL,
                                        org.capwright.lay.LayWatch.UNWATCHED))),
                1,
                2);
        assertTrue(ordered.contains("To buy for the whole order, cm"), ordered);
        assertTrue(ordered.contains("2 × 36, 1 × 42:"), ordered);
    }

    /** Pages are counted before they are made: the count is what PDFBox finds in the file. */
    @Test
    void pagesAreCountedWithoutWriting() throws Exception {
        for (Paper paper : List.of(Paper.A4, Paper.A3, Paper.LETTER, new Paper.Roll(900), new Paper.Roll(1600))) {
            for (List<String> sizes : List.of(List.<String>of(), List.of("38"))) {
                PdfOptions options = PdfOptions.on(paper).withSizes(sizes);
                try (PDDocument document = Loader.loadPDF(written(SET, options))) {
                    assertEquals(document.getNumberOfPages(), PdfExport.pages(SET, options), paper + " " + sizes);
                }
            }
        }
    }

    @Test
    void sheetsNameTheirPiecesAndSizes() throws Exception {
        byte[] file = written(SET, PdfOptions.on(Paper.A4));
        String all = text(file, 2, 99);
        for (String words : List.of(
                "Overlay",
                "Overlay lining",
                "Overlay interfacing",
                "Under-sleeve",
                "grain line",
                "bicep line",
                "size 36–42",
                "A1",
                "B2",
                "glue A2 here")) {
            assertTrue(all.contains(words), words);
        }
        String one = text(written(SET, PdfOptions.on(Paper.A4).withSizes(List.of("38"))), 2, 99);
        assertTrue(one.contains("Choir gown, size 38"), one);
        assertFalse(one.contains("36,"), "only the size asked for");
    }

    @Test
    void propertiesAreStated() throws Exception {
        Instant when = Instant.parse("2026-03-01T10:15:30Z");
        try (PDDocument document =
                Loader.loadPDF(written(SET, PdfOptions.on(Paper.A4).withDate(when)))) {
            assertEquals("Choir gown", document.getDocumentInformation().getTitle());
            assertEquals(
                    "Sewing pattern at true scale, revision 3, sizes 36, 38, 40, 42",
                    document.getDocumentInformation().getSubject());
            assertEquals(
                    when, document.getDocumentInformation().getCreationDate().toInstant());
            assertEquals(
                    "None", document.getDocumentCatalog().getViewerPreferences().getPrintScaling());
            assertNotNull(document.getDocumentCatalog().getLanguage());
        }
        try (PDDocument document = Loader.loadPDF(written(SET, PdfOptions.on(Paper.A4)))) {
            assertNull(document.getDocumentInformation().getCreationDate());
        }
    }

    @Test
    void sameInputGivesTheSameBytesFromEveryThread() throws Exception {
        PdfOptions options = PdfOptions.on(Paper.A4).withDate(Instant.EPOCH);
        byte[] first = written(SET, options);
        ExecutorService threads = Executors.newFixedThreadPool(4);
        try {
            List<Callable<byte[]>> tasks = java.util.Collections.nCopies(12, () -> written(SET, options));
            for (Future<byte[]> other : threads.invokeAll(tasks)) {
                assertArrayEquals(first, other.get());
            }
        } finally {
            threads.shutdown();
        }
        assertFalse(java.util.Arrays.equals(first, written(SET, options.withAlignment(Alignment.APEX))));
    }

    @ParameterizedTest
    @ValueSource(strings = {"Χιτώνας χορωδίας", "Хоровая мантия", "Kórus köpeny, Żupan, İpek", "Robe à l’épaule"})
    void stylesOfOtherScriptsAreShownAndFound(String style) throws Exception {
        byte[] file = written(ChoirGown.inSizes(style, "40"), PdfOptions.on(Paper.A4));
        String cover = text(file, 1, 1);
        assertTrue(cover.contains(style), cover);
        assertFalse(cover.contains("\uFFFD"));
        try (PDDocument document = Loader.loadPDF(file)) {
            assertEquals(style, document.getDocumentInformation().getTitle());
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"聖歌隊ガウン", "성가대 가운", "गाउन", "gown \uD83E\uDDF5"})
    void signsThatNoFontHasAreReplacedAndTheFileSaysSo(String style) throws Exception {
        byte[] file = written(ChoirGown.inSizes(style, "40"), PdfOptions.on(Paper.A4));
        try (PDDocument document = Loader.loadPDF(file)) {
            assertEquals(style, document.getDocumentInformation().getTitle());
        }
        int[] shown = Script.of(style, Typeface.BOLD).shown();
        assertTrue(java.util.stream.IntStream.of(shown).anyMatch(c -> c == Typeface.REPLACEMENT));
        assertTrue(text(file, 1, 1).contains("cannot show some characters of the style name"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"broken \uD800 pair", "tab\tnewline\nand null \0", " ", "()\\>> endstream"})
    void oddNamesNeverFail(String style) throws Exception {
        byte[] file = written(ChoirGown.inSizes(style, "40"), PdfOptions.on(Paper.A4));
        assertTrue(text(file, 1, 1).contains("Revision 3"));
    }

    private static Violation refused(PdfOptions options) {
        InvalidMeasuresException e = assertThrows(InvalidMeasuresException.class, () -> written(SET, options));
        assertEquals(1, e.violations().size());
        return e.violations().get(0);
    }

    @Test
    void pagesSmallerThanTheirMarginsAreRefused() {
        InvalidMeasuresException e =
                assertThrows(InvalidMeasuresException.class, () -> new Paper.Sheets("slip", 19, Double.NaN));
        assertEquals(
                List.of(Option.PAPER_WIDTH, Option.PAPER_HEIGHT),
                e.violations().stream().map(Violation::subject).toList());
        assertEquals(19, e.violations().get(0).value().orElseThrow());
        assertEquals(Paper.LEAST, e.violations().get(0).least().orElseThrow());
        assertEquals(5080, e.violations().get(0).greatest().orElseThrow(), 1e-9);
        byte[] least = written(SET, PdfOptions.on(new Paper.Sheets("least", Paper.LEAST, Paper.LEAST)));
        assertTrue(least.length > 0);
    }

    @ParameterizedTest
    @ValueSource(doubles = {Double.NaN, -1, 0, 150, 399, 5081})
    void rollsThatDoNotTakeTheWidestPieceAreRefused(double width) {
        Violation violation = refused(PdfOptions.on(new Paper.Roll(width)));
        assertEquals(Option.PAPER_WIDTH, violation.subject());
        double least = violation.least().orElseThrow();
        assertTrue(least > 399 && least < 450, "least width " + least);
        assertTrue(
                written(SET, PdfOptions.on(new Paper.Roll(least))).length > 0, "the range that is said to work works");
        assertTrue(
                written(SET, PdfOptions.on(new Paper.Roll(violation.greatest().orElseThrow()))).length > 0);
    }

    @Test
    void sizesThatAreNotInTheRunAreRefused() {
        Violation violation = refused(PdfOptions.on(Paper.A4).withSizes(List.of("40", "39")));
        assertEquals(Option.PAPER_SIZES, violation.subject());
        assertTrue(violation.reason().toString().contains("39")
                && violation.reason().toString().contains("36, 38, 40, 42"));
    }
}
