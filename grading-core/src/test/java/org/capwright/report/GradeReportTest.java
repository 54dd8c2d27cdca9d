package org.capwright.report;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.capwright.check.BodyReference;
import org.capwright.check.CheckedGrade;
import org.capwright.check.CheckedMeasure;
import org.capwright.check.CheckedSize;
import org.capwright.check.Finding;
import org.capwright.check.GradeChecks;
import org.capwright.check.RunCoverage;
import org.capwright.check.Thresholds;
import org.capwright.check.WhatIf;
import org.capwright.grade.GradeRule;
import org.capwright.grade.SizeRun;
import org.capwright.measure.Dimension;
import org.capwright.quantity.Rounding;
import org.capwright.quantity.Unit;
import org.capwright.words.Language;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The report of a checked grade, read back by PDFBox, poppler and qpdf. */
class GradeReportTest {

    private static GradeReport jumping(String name) {
        List<GradeRule> rules = new ArrayList<>(org.capwright.check.ChoirGown.RULES);
        rules.set(0, new GradeRule(Dimension.BICEP, List.of(12.0, 12.0, 40.0, 12.0, 12.0)));
        SizeRun run = org.capwright.check.ChoirGown.run(rules);
        BodyReference body = BodyReference.of(org.capwright.check.ChoirGown.women());
        CheckedGrade grade = CheckedGrade.of(run).against(body);
        List<Finding> findings = GradeChecks.run(grade, Thresholds.usual());
        WhatIf.Proposal proposal = WhatIf.smallest(run, Optional.of(body), Thresholds.usual(), new Rounding(1));
        return new GradeReport(
                name,
                Unit.CENTIMETRE,
                Language.ENGLISH,
                grade,
                findings,
                proposal.cures(),
                Optional.of(proposal),
                RunCoverage.aboutBase(grade));
    }

    private static byte[] written(GradeReport report) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try {
            report.write(out);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toByteArray();
    }

    private static String text(byte[] file) throws IOException {
        try (PDDocument document = Loader.loadPDF(file)) {
            PDFTextStripper stripper = new PDFTextStripper();
            stripper.setSortByPosition(true);
            return stripper.getText(document);
        }
    }

    @Test
    void tellsEverythingThatWasFound() throws Exception {
        GradeReport report = jumping("Choir gown");
        String text = text(written(report)).replaceAll("\\s+", " ");
        for (String words : List.of(
                "Choir gown",
                "sizes 36, 38, 40, 42, 44, 46",
                "base size 40",
                "figures in cm",
                "Do not cut before every stop is corrected, or known to be intended.",
                "Bicep beside upper arm girth, cm",
                "Findings",
                "What if: the smallest change of the rules",
                "Bicep, as it is",
                "Bicep, proposed",
                "no stop is left",
                "Table of jumps, cm",
                "garment less body",
                "Who finds a size",
                "of 2208",
                "page 1 of")) {
            assertTrue(text.contains(words), words + " is missing in: " + text);
        }
        for (Finding finding : report.findings()) {
            for (String part : List.of(
                    finding.sentence().toString(),
                    finding.remedy().toString(),
                    finding.source().toString())) {
                assertTrue(text.contains(part.strip().replaceAll("\\s+", " ")), part + " is missing in: " + text);
            }
        }
        // The jump of 4 cm and what is expected of it: once in the chart, once in the findings, once in the table.
        assertTrue(text.contains("4 cm; expected"), text);
    }

    /** The figures of the published class means: 29.45 and 30.74 cm in the classes called 40 and 42. */
    @Test
    void theTableHasTheBodysJumps() throws Exception {
        List<String> lines = text(written(jumping("Choir gown"))).lines().toList();
        assertTrue(lines.contains("Bicep +1.2 +1.2 +4 +1.2 +1.2"), String.join("\n", lines));
        assertTrue(lines.contains("upper arm girth +1.24 +1.12 +1.29 +1.27 +1.38"), String.join("\n", lines));
        assertTrue(lines.contains("garment less body −0.04 +0.08 +2.71 −0.07 −0.18"), String.join("\n", lines));
    }

    @Test
    void sameReportGivesTheSameBytes() {
        assertArrayEquals(written(jumping("Choir gown")), written(jumping("Choir gown")));
        assertFalse(java.util.Arrays.equals(written(jumping("Choir gown")), written(jumping("Other gown"))));
    }

    @Test
    void propertiesAreStatedAndFontsEmbedded(@TempDir Path folder) throws Exception {
        byte[] bytes = written(jumping("Χιτώνας χορωδίας"));
        try (PDDocument document = Loader.loadPDF(bytes)) {
            assertEquals("Χιτώνας χορωδίας", document.getDocumentInformation().getTitle());
            assertTrue(document.getDocumentInformation().getSubject().contains("36, 38, 40, 42, 44, 46"));
            assertNull(document.getDocumentInformation().getCreationDate());
            assertEquals("en", document.getDocumentCatalog().getLanguage());
        }
        Path file = folder.resolve("report.pdf");
        Files.write(file, bytes);
        assertEquals(0, Tool.QPDF.run(folder, "--check", file.toString()).code());
        String fonts = Tool.PDFFONTS.run(folder, file.toString()).text();
        List<String> rows = fonts.lines().skip(2).toList();
        assertEquals(2, rows.size(), fonts);
        // Columns of pdffonts: embedded, subset, has a map to Unicode.
        rows.forEach(row -> assertTrue(row.matches(".*\\byes\\s+yes\\s+yes\\b.*"), row));
        String words =
                Tool.PDFTOTEXT.run(folder, "-layout", file.toString(), "-").text();
        assertTrue(words.contains("Χιτώνας χορωδίας"), words);
        assertTrue(words.contains("Table of jumps, cm"), words);
    }

    /** Writes the report where the property report.out says, to be looked at. */
    @Test
    void mayBeKept() throws IOException {
        String out = System.getProperty("report.out", "");
        if (!out.isEmpty()) {
            Files.write(Path.of(out), written(jumping("Choir gown, bell shoulder")));
        }
        assertTrue(written(jumping("Choir gown, bell shoulder")).length > 10_000);
    }

    /** A report without bodies, stops or even a second size. */
    @Test
    void poorGradesHaveReportsToo() throws Exception {
        CheckedGrade one = new CheckedGrade(
                List.of(new CheckedSize("40", Map.of(CheckedMeasure.BICEP, 360.0))), 0, Optional.empty());
        String text = text(written(new GradeReport(
                "Sleeve",
                Unit.INCH,
                Language.ENGLISH,
                one,
                List.of(),
                List.of(),
                Optional.empty(),
                RunCoverage.aboutBase(one))));
        assertTrue(text.contains("Nothing stops this grade."), text);
        assertTrue(text.contains("No body table was chosen"), text);
    }

    /** Forty sizes with long names still stay between the margins: no text of a page lies outside it. */
    @Test
    void manySizesStayOnThePage(@TempDir Path folder) throws Exception {
        List<CheckedSize> sizes = new ArrayList<>();
        for (int i = 0; i < 40; i++) {
            sizes.add(new CheckedSize(
                    "size number " + i,
                    Map.of(CheckedMeasure.BICEP, 300.0 + 7 * i, CheckedMeasure.LENGTH, 600.0 - 3 * i)));
        }
        CheckedGrade grade = new CheckedGrade(sizes, 20, Optional.empty());
        List<Finding> findings = GradeChecks.run(grade, Thresholds.usual());
        byte[] bytes = written(new GradeReport(
                "A very long name ".repeat(20),
                Unit.INCH,
                Language.ENGLISH,
                grade,
                findings,
                List.of(),
                Optional.empty(),
                Optional.empty()));
        try (PDDocument document = Loader.loadPDF(bytes)) {
            PDFTextStripper stripper = new PDFTextStripper() {
                @Override
                protected void processTextPosition(org.apache.pdfbox.text.TextPosition text) {
                    double left = text.getXDirAdj() * 25.4 / 72;
                    double right = (text.getXDirAdj() + text.getWidthDirAdj()) * 25.4 / 72;
                    double down = text.getYDirAdj() * 25.4 / 72;
                    assertTrue(left > Paper.MARGIN - 0.5 && right < 200.5, text + " at " + left + " to " + right);
                    assertTrue(down > Paper.MARGIN && down < 287.5, text + " at " + down);
                }
            };
            stripper.getText(document);
        }
    }
}
