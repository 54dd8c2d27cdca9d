package org.capwright.contract.page;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.openqa.selenium.support.ui.Select;

/** The call behind a download, as the page shows it, brings the same bytes when it is run by what it is written for: a shell with curl, Node, or Java. */
class RequestIT {

    private static final String ROW = ".file:has([data-kind='text/csv'])";

    @TempDir
    Path folder;

    /** A name with every sign that a language writes otherwise. */
    private static void named(Browser browser) {
        browser.type("f-name", "Gown \"A\" \\ 'one' $x");
        browser.show("files");
    }

    private static String shown(Browser browser, String language) {
        browser.run("document.querySelector(arguments[0] + ' .request').open = true;", ROW);
        new Select(browser.find(ROW + " .request select")).selectByValue(language);
        return (String) browser.run("return document.querySelector(arguments[0] + ' .request-code').textContent;", ROW);
    }

    private static byte[] download(Browser browser) throws IOException {
        browser.click("[data-kind='text/csv']");
        return browser.downloaded(".csv");
    }

    private void run(List<String> command) throws IOException, InterruptedException {
        File out = folder.resolve("out.txt").toFile();
        Process process = new ProcessBuilder(command)
                .directory(folder.toFile())
                .redirectErrorStream(true)
                .redirectOutput(out)
                .start();
        assertTrue(process.waitFor(60, TimeUnit.SECONDS), "it ends");
        assertEquals(0, process.exitValue(), Files.readString(out.toPath()));
    }

    @ParameterizedTest
    @CsvSource({"curl", "JavaScript", "Java"})
    void bringsTheSameBytes(String language) throws Exception {
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            named(browser);
            String code = shown(browser, language);
            byte[] expected = download(browser);
            switch (language) {
                case "curl" -> {
                    Files.writeString(folder.resolve("request.sh"), code);
                    run(List.of("bash", "request.sh"));
                }
                case "JavaScript" -> {
                    Files.writeString(
                            folder.resolve("request.mjs"),
                            code
                                    + "(await import('node:fs')).writeFileSync('sleeve.csv', Buffer.from(await"
                                    + " file.arrayBuffer()));");
                    run(List.of("node", "request.mjs"));
                }
                default -> {
                    Files.writeString(folder.resolve("Sleeve.java"), code);
                    run(List.of(
                            Path.of(System.getProperty("java.home"), "bin", "java")
                                    .toString(),
                            "Sleeve.java"));
                }
            }
            assertArrayEquals(expected, Files.readAllBytes(folder.resolve("sleeve.csv")));
        }
    }

    /** Beside what is derived, checked and bought as well; with the style as it is. */
    @Test
    void standsBesideOtherActionsAndFollowsTheStyle() {
        try (Browser browser = Browser.open(Screen.PHONE)) {
            browser.type("f-overlay-rise", "15.5");
            for (String[] at :
                    new String[][] {{"findings", "v1/checks"}, {"jumps", "v1/grade-rules"}, {"cloth", "v1/materials"}
                    }) {
                browser.show(at[0]);
                browser.await(
                        "its place", "return !!document.querySelector('#panel-' + arguments[0] + ' .request');", at[0]);
                browser.run("document.querySelector('#panel-' + arguments[0] + ' .request').open = true;", at[0]);
                browser.await(
                        "the call",
                        "const code = document.querySelector('#panel-' + arguments[0] + ' .request-code').textContent;"
                                + "return code.includes(arguments[1]) && code.includes('15.5');",
                        at[0],
                        at[1]);
                assertEquals(true, browser.run("return document.documentElement.scrollWidth <= innerWidth;"), at[0]);
            }
            assertEquals(List.of(), browser.complaints());
        }
    }
}
