package org.capwright.service.sizerun;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.capwright.check.Findings;
import org.capwright.check.GradeCheck;
import org.capwright.check.GradeChecks;
import org.capwright.gradeimport.Unread;
import org.junit.jupiter.api.Test;

/** Every code that an answer may have has a page, and every page is of such a code. */
class FindingPagesTest {

    private static final Path PAGES = Path.of("..", "docs", "checks");

    @Test
    void everyCodeHasAPageAndEveryPageACode() throws IOException {
        Set<String> codes = new TreeSet<>(Findings.CODES);
        codes.addAll(Set.of("ease-loss", "body-figure-missing", Unread.CODE, Unread.QUESTION));
        GradeChecks.all().stream().map(GradeCheck::code).forEach(codes::add);
        try (Stream<Path> files = Files.list(PAGES)) {
            Set<String> pages = files.map(file -> file.getFileName().toString())
                    .filter(name -> name.endsWith(".md") && !name.equals("README.md"))
                    .map(name -> name.substring(0, name.length() - 3))
                    .collect(Collectors.toCollection(TreeSet::new));
            assertEquals(codes, pages);
        }
        String list = Files.readString(PAGES.resolve("README.md"));
        for (String code : codes) {
            String page = Files.readString(PAGES.resolve(code + ".md"));
            assertTrue(page.contains("`" + code + "`"), code);
            for (String part : new String[] {"## What it looks at", "## Thresholds", "## What to do"}) {
                assertTrue(page.contains(part), code + " lacks " + part);
            }
            assertTrue(list.contains("(" + code + ".md)"), code);
        }
    }
}
