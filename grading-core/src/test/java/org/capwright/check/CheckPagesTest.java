package org.capwright.check;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The pages about the checks tell what the program does. */
class CheckPagesTest {

    private static final Path PAGES = Path.of("..", "docs", "checks");

    private static List<String> pages() throws IOException {
        try (Stream<Path> files = Files.list(PAGES)) {
            return files.map(file -> {
                        try {
                            return Files.readString(file);
                        } catch (IOException e) {
                            throw new java.io.UncheckedIOException(e);
                        }
                    })
                    .toList();
        }
    }

    @Test
    void everyCheckHasAPage() throws IOException {
        Stream<String> codes = Stream.concat(
                GradeChecks.all().stream().map(GradeCheck::code), Stream.of("ease-loss", "body-figure-missing"));
        for (String code : codes.toList()) {
            String page = Files.readString(PAGES.resolve(code + ".md"));
            assertTrue(page.contains("`" + code + "`"), code);
            for (String part : List.of("## What it looks at", "## Thresholds", "## What to do")) {
                assertTrue(page.contains(part), code + " lacks " + part);
            }
            assertTrue(Files.readString(PAGES.resolve("README.md")).contains(code + ".md"), code);
        }
    }

    @Test
    void everyThresholdStandsOnAPageWithItsUsualValueAndSource() throws IOException {
        for (Threshold threshold : Threshold.values()) {
            String usual = threshold.usual() == Math.rint(threshold.usual())
                    ? Long.toString(Math.round(threshold.usual()))
                    : Double.toString(threshold.usual());
            String row = "| `" + threshold.key() + "` | " + usual;
            assertTrue(
                    pages().stream()
                            .flatMap(String::lines)
                            .anyMatch(line -> line.startsWith(row) && line.contains(threshold.source())),
                    row + " ... " + threshold.source());
        }
    }
}
