package org.capwright.report;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.capwright.GradeRules;
import org.capwright.Pieces;
import org.capwright.StructuredSleeve;
import org.capwright.grade.Sizes;
import org.capwright.quantity.Unit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The small pictures on the cover, of a child's sleeve with its strips drawn as pieces: the narrow ones stand side by side. */
class CoverPictureTest {

    /** Points of 1/72 inch in a millimetre. */
    private static final double POINTS = 72 / 25.4;

    /** The least lettering that is read without effort, from ascender to descender, mm; common practice, no source. */
    private static final double LEAST = 2.1;

    @TempDir
    private Path folder;

    @Test
    void everyWordIsLegibleAndLiesBetweenTheMargins() throws Exception {
        Pieces pieces = StructuredSleeve.named("Choir gown sleeve", Unit.CENTIMETRE)
                .sleeve(sleeve -> sleeve.bicep(21).length(28).capHeight(9).armhole(28))
                .overlay(overlay ->
                        overlay.rise(5).length(17).frontGap(2).backGap(2).pleats(pleats -> pleats.count(8)))
                .underSleeve(under -> under.elbow(19).wrist(14))
                .grade(GradeRules.in(Unit.CENTIMETRE), Sizes.withBase("128", "128"))
                .pieces(finish -> finish.seamAllowance(1).wholePieces().strips());
        Path file = folder.resolve("strips.pdf");
        try (OutputStream out = Files.newOutputStream(file)) {
            pieces.writePdf(out);
        }
        String words = Tool.PDFTOTEXT
                .run(folder, "-bbox", "-l", "1", file.toString(), "-")
                .text();
        Matcher word = Pattern.compile(
                        "<word xMin=\"([0-9.]+)\" yMin=\"([0-9.]+)\" xMax=\"([0-9.]+)\" yMax=\"([0-9.]+)\">")
                .matcher(words);
        int found = 0;
        while (word.find()) {
            found++;
            assertTrue(millimetres(word, 1) > Paper.MARGIN - 0.2, word::group);
            assertTrue(millimetres(word, 3) < Paper.A4.width() - Paper.MARGIN + 0.2, word::group);
            assertTrue(millimetres(word, 4) - millimetres(word, 2) > LEAST, word::group);
        }
        assertTrue(found > 100 && words.contains(">Stay<"), words);
    }

    private static double millimetres(Matcher word, int group) {
        return Double.parseDouble(word.group(group)) / POINTS;
    }
}
