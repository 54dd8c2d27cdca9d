package org.capwright.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.graphics.optionalcontent.PDOptionalContentProperties;
import org.capwright.pattern.PatternSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A layer for each size (PDF Reference 1.6, section 4.10), an outline and a language, as poppler, qpdf and mupdf read them. */
class PdfLayersTest {

    private static final List<String> SIZES = List.of("38", "40", "42");
    private static final PatternSet SET = ChoirGown.inSizes("Choir gown", "38", "40", "42");

    @TempDir
    private Path folder;

    private Path written(PatternSet set, PdfOptions options) throws Exception {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        PdfExport.write(set, options, out);
        return Files.write(folder.resolve("pattern.pdf"), out.toByteArray());
    }

    /** The same file with only some layers shown. */
    private Path showing(Path file, List<String> sizes) throws Exception {
        Path other = folder.resolve("shown-" + String.join("-", sizes) + ".pdf");
        try (PDDocument document = Loader.loadPDF(file.toFile())) {
            PDOptionalContentProperties layers = document.getDocumentCatalog().getOCProperties();
            for (String size : SIZES) {
                assertTrue(layers.hasGroup("Size " + size), size);
                layers.setGroupEnabled("Size " + size, sizes.contains(size));
            }
            document.save(other.toFile());
        }
        return other;
    }

    private static boolean[] ink(Path file) throws Exception {
        Tool.Result result =
                Tool.PDFTOPPM.run(file.getParent(), "-r", "60", "-gray", "-f", "2", "-l", "2", file.toString());
        assertEquals(0, result.code(), result.errors());
        assertEquals("", result.errors());
        byte[] page = result.out();
        Matcher header =
                Pattern.compile("P5\\s+(\\d+) (\\d+)\\s+255\\s").matcher(new String(page, StandardCharsets.ISO_8859_1));
        assertTrue(header.find());
        boolean[] ink = new boolean[page.length - header.end()];
        for (int i = 0; i < ink.length; i++) {
            ink[i] = (page[header.end() + i] & 0xFF) < 200;
        }
        return ink;
    }

    private static int count(boolean[] ink) {
        int count = 0;
        for (boolean each : ink) {
            count += each ? 1 : 0;
        }
        return count;
    }

    /** Sizes switched one by one: each alone has its own lines, and all of them together cover what the whole shows. */
    @Test
    void everySizeCanBeShownAlone() throws Exception {
        Path file = written(SET, PdfOptions.on(Paper.A0));
        boolean[] all = ink(file);
        boolean[] none = ink(showing(file, List.of()));
        boolean[] together = none.clone();
        for (String size : SIZES) {
            boolean[] alone = ink(showing(file, List.of(size)));
            assertTrue(count(alone) > count(none) + 300, size + " has lines of its own");
            assertTrue(count(alone) < count(all) - 300, size + " hides the others");
            for (int i = 0; i < together.length; i++) {
                together[i] |= alone[i];
            }
        }
        int missing = 0;
        for (int i = 0; i < all.length; i++) {
            missing += all[i] && !together[i] ? 1 : 0;
        }
        assertTrue(missing < count(all) / 200, missing + " pixels of " + count(all) + " belong to no size");
    }

    @Test
    void layersStandInTheOrderOfTheSizesAndTheFileIsSound() throws Exception {
        Path file = written(SET, PdfOptions.on(Paper.A4));
        Tool.Result sound = Tool.QPDF.run(folder, "--check", file.toString());
        assertEquals(0, sound.code(), sound.text() + sound.errors());
        String catalog = Tool.MUTOOL
                .run(folder, "show", file.toString(), "trailer/Root/OCProperties/D/Order")
                .text();
        Matcher number = Pattern.compile("(\\d+) 0 R").matcher(catalog);
        StringBuilder names = new StringBuilder();
        while (number.find()) {
            names.append(Tool.MUTOOL
                    .run(folder, "show", file.toString(), number.group(1))
                    .text());
        }
        assertTrue(
                Pattern.compile("Size 38.*Size 40.*Size 42", Pattern.DOTALL)
                        .matcher(names)
                        .find(),
                names.toString());
    }

    @Test
    void theOutlineGoesToThePagesOfThePieces() throws Exception {
        Path file = written(SET, PdfOptions.on(Paper.A4));
        String outline =
                Tool.MUTOOL.run(folder, "show", file.toString(), "outline").text();
        assertTrue(outline.contains("Cover"), outline);
        for (String piece : List.of("Overlay", "Overlay lining", "Overlay interfacing", "Under-sleeve")) {
            assertTrue(outline.contains("\"" + piece + "\""), outline);
        }
        assertEquals(
                "en",
                Tool.MUTOOL
                        .run(folder, "show", file.toString(), "trailer/Root/Lang")
                        .text()
                        .strip()
                        .replaceAll("[()]", ""));
        String text = Tool.PDFTOTEXT.run(folder, file.toString(), "-").text();
        assertTrue(text.contains("Under-sleeve"), "can be searched");
    }

    /** ISO 216: A0 is 841 mm by 1189 mm, here to the hundredth of a point. */
    @Test
    void a0IsAsLargeAsTheStandardSays() throws Exception {
        String info = Tool.PDFINFO
                .run(
                        folder,
                        "-f",
                        "2",
                        "-l",
                        "2",
                        written(SET, PdfOptions.on(Paper.A0)).toString())
                .text();
        Matcher size = Pattern.compile("size:\\s+([\\d.]+) x ([\\d.]+) pts").matcher(info);
        assertTrue(size.find(), info);
        double shorter = Math.min(Double.parseDouble(size.group(1)), Double.parseDouble(size.group(2)));
        double longer = Math.max(Double.parseDouble(size.group(1)), Double.parseDouble(size.group(2)));
        assertEquals(841, shorter / 72 * 25.4, 0.01);
        assertEquals(1189, longer / 72 * 25.4, 0.01);
    }
}
