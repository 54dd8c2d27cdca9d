package org.capwright.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.capwright.Sample;
import org.capwright.draft.StyleSpace;
import org.capwright.grade.GradeRule;
import org.capwright.grade.SizeRun;
import org.capwright.measure.Dimension;
import org.capwright.pattern.PatternDrafter;
import org.capwright.pattern.PatternOptions;
import org.capwright.pattern.PatternSet;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Unit;
import org.junit.jupiter.api.Test;

/** Pages that are counted without drawing any are those that PDFBox finds in the file, for styles from all over the style space. */
class PageCountTest {

    private static final List<Paper> PAPERS = List.of(
            Paper.A4,
            Paper.LETTER,
            Paper.A3,
            new Paper.Roll(1200),
            new Paper.Roll(1600),
            new Paper.Projection(1500, Paper.Ground.DARK));

    private static PatternSet set(long seed) {
        StyleSpace.Case drawn = StyleSpace.of(seed);
        SizeRun run = SizeRun.grade(
                StyleSpace.pleated(seed, drawn.style()),
                drawn.dimensions(),
                List.of("38", "40", "42"),
                1,
                List.of(
                        GradeRule.uniform(Dimension.BICEP, 8, 3),
                        GradeRule.uniform(Dimension.CAP_HEIGHT, 2, 3),
                        GradeRule.uniform(Dimension.ARMHOLE, 10, 3)));
        return PatternDrafter.draft(
                new PatternSet.Title("Choir gown " + seed, "1", Unit.CENTIMETRE), run, PatternOptions.usual());
    }

    @Test
    void countsThePagesThatAreDrawn() throws IOException {
        int counted = 0;
        int seeds = Sample.of(8, 400);
        for (long seed = 0; seed < seeds; seed++) {
            PdfOptions options = PdfOptions.on(PAPERS.get((int) (seed % PAPERS.size())))
                    .withSizes(seed % 4 == 0 ? List.of("40") : List.of());
            try {
                PatternSet set = set(seed);
                ByteArrayOutputStream out = new ByteArrayOutputStream();
                PdfExport.write(set, options, out);
                try (PDDocument document = Loader.loadPDF(out.toByteArray())) {
                    assertEquals(document.getNumberOfPages(), PdfExport.pages(set, options), "seed " + seed);
                }
                counted++;
            } catch (InvalidMeasuresException e) {
                // a style that cannot be drafted, or is too wide for the roll
            }
        }
        assertTrue(counted >= seeds / 2, counted + " counted");
    }
}
