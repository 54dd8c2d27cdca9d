package org.capwright.contract.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.restassured.RestAssured;
import io.restassured.path.json.JsonPath;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.capwright.contract.RunningService;
import org.capwright.contract.Tool;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.openqa.selenium.Keys;

/** Somebody else's grade, brought as a file. */
class CheckIT {

    /** The cap height of size 40 lies below both neighbours. */
    private static final String SLIP = """
        measure,unit,36,38,40,42
        bicep,cm,33,34.2,35.4,36.6
        armhole,cm,43,44.4,46,47.6
        cap height,cm,13,13.2,13.1,13.6
        """;

    private static Path write(Path folder, String name, String text) throws IOException {
        return Files.writeString(folder.resolve(name), text);
    }

    /** The same table as a workbook, written by openpyxl. */
    private static Path workbook(Path folder, String name, String text) {
        Path file = folder.resolve(name);
        String writer = """
            import sys, openpyxl
            book = openpyxl.Workbook()
            for line in sys.argv[2].splitlines():
                book.active.append([float(cell) if cell[:1].isdigit() else cell for cell in line.split(",")])
            book.save(sys.argv[1])
            """;
        Tool.run("python3-openpyxl", List.of("/usr/bin/python3", "-c", writer, file.toString(), text));
        return file;
    }

    private static Browser open(Screen screen, Path file) {
        Browser browser = Browser.open(screen);
        browser.task("check");
        browser.find("#check-file").sendKeys(file.toString());
        return browser;
    }

    private static void reportIsThere(Browser browser) {
        browser.await("the report", "return !!document.querySelector('.verdict');");
    }

    @ParameterizedTest
    @ArgumentsSource(ScreenSample.class)
    void reportsOnASpecTable(Screen screen, @TempDir Path folder) throws IOException {
        Path file = write(folder, "slip.csv", SLIP);
        JsonPath answer = JsonPath.from(RestAssured.given()
                .contentType("text/csv")
                .queryParam("units", "cm")
                .queryParam("sizeTable", "women-en-13402-3-bust")
                .body(Files.readAllBytes(file))
                .post(RunningService.address() + "/v1/checks")
                .asString());
        try (Browser browser = open(screen, file)) {
            reportIsThere(browser);
            assertTrue(browser.find(".verdict").getDomAttribute("class").contains(answer.getString("summary.gravest")));
            assertTrue(browser.text(".report .findings").contains("Cap height"), "the slip is named");
            assertEquals(
                    answer.getList("jumps").size(),
                    browser.all(".report-jumps tbody tr").size());
            assertEquals(
                    answer.getList("traces").size(),
                    browser.all(".traces tbody tr").size());
            browser.await(
                    "the chart",
                    "const img = document.querySelector('.chart-sheet img'); return img.complete && img.naturalWidth >"
                            + " 100;");
            browser.run("window.scrollTo(0, 0);");
            browser.keep("check-report");
        }
    }

    /** Where a figure was left out, neither table nor chart shows a jump. */
    @Test
    void aFigureThatWasLeftOutIsNotFilledIn(@TempDir Path folder) throws IOException {
        Path file = write(folder, "gap.csv", SLIP.replace("43,44.4,46,47.6", "43,44.4,,47.6"));
        try (Browser browser = open(Screen.DESKTOP, file)) {
            reportIsThere(browser);
            String rows = "return [...document.querySelectorAll('.report-jumps tbody tr')].filter(row =>"
                    + " row.cells[0].textContent === arguments[0]).map(row => row.cells[1].textContent);";
            assertEquals(List.of("36–38"), browser.run(rows, "Armhole"));
            assertEquals(List.of("36–38", "38–40", "40–42"), browser.run(rows, "Bicep"));
            assertTrue(browser.text(".report").contains("missing"), browser.text(".report"));
        }
    }

    /** A row of another name is asked about above all findings; once said what it is, the grade is judged. */
    @ParameterizedTest
    @ValueSource(strings = {"zwickel.csv", "zwickel.xlsx"})
    void asksWhatARowIs(String name, @TempDir Path folder) throws IOException {
        String table = SLIP.replace("bicep", "Zwickel");
        Path file = name.endsWith(".xlsx") ? workbook(folder, name, table) : write(folder, name, table);
        try (Browser browser = open(Screen.values()[0], file)) {
            reportIsThere(browser);
            assertTrue(browser.text(".verdict").startsWith("Not judged"), browser.text(".verdict"));
            assertTrue(browser.text(".unread li").contains("Zwickel"));
            assertTrue(browser.text(".unread select").contains("likely"));
            browser.find(".unread select").sendKeys("Bicep", Keys.TAB);
            browser.await(
                    "the row read",
                    "return !document.querySelector('.unread') && !!document.querySelector('.verdict');");
            assertTrue(!browser.text(".verdict").startsWith("Not judged"));
        }
    }

    @ParameterizedTest
    @ArgumentsSource(ScreenSample.class)
    void saysInWhichLineSomethingIsWrong(Screen screen, @TempDir Path folder) throws IOException {
        Path file = write(folder, "typo.csv", SLIP.replace("44.4", "44.4.1"));
        try (Browser browser = open(screen, file)) {
            browser.await("the error", "return !!document.querySelector('.check-error');");
            assertEquals("Line 3", browser.text(".line-number"));
            assertTrue(browser.text(".check-error").contains("44.4.1"), browser.text(".check-error"));
            browser.find("#check-file")
                    .sendKeys(write(folder, "mended.csv", SLIP).toString());
            reportIsThere(browser);
        }
    }

    /** Outlines that the service itself wrote carry every size. */
    @Test
    void readsOutlines(@TempDir Path folder) throws IOException {
        byte[] dxf = RestAssured.given()
                .contentType("application/json")
                .accept("image/vnd.dxf")
                .body(Files.readAllBytes(RunningService.root().resolve("examples/choir-gown.json")))
                .post(RunningService.address() + "/v1/size-runs")
                .asByteArray();
        Path file = folder.resolve("outlines.dxf");
        Files.write(file, dxf);
        try (Browser browser = open(Screen.DESKTOP, file)) {
            reportIsThere(browser);
            assertTrue(browser.text(".report-head").contains("36, 38, 40, 42, 44"), browser.text(".report-head"));
        }
    }

    /** One drawing per size, chosen together; the nest is drawn from them. */
    @Test
    void readsOneFilePerSize(@TempDir Path folder) throws IOException {
        StringBuilder files = new StringBuilder();
        for (int i = -1; i <= 1; i++) {
            String size = Integer.toString(40 + 2 * i);
            byte[] dxf = RestAssured.given()
                    .contentType("application/json")
                    .accept("image/vnd.dxf")
                    .body("{\"units\":\"cm\",\"baseSize\":\"" + size + "\",\"sizes\":[\"" + size
                            + "\"],\"layout\":\"blocks\",\"underSleeve\":{\"wrist\":22},\"sleeve\":{\"bicep\":"
                            + (36 + 1.3 * i)
                            + ",\"length\":60,\"capHeight\":" + (13.5 + 0.4 * i) + ",\"armhole\":45}}")
                    .post(RunningService.address() + "/v1/size-runs")
                    .asByteArray();
            Path file = Files.write(folder.resolve("sleeve-" + size + ".dxf"), dxf);
            files.append(i > -1 ? "\n" : "").append(file);
        }
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            browser.task("check");
            browser.find("#check-file").sendKeys(files.toString());
            reportIsThere(browser);
            assertTrue(browser.text(".report-head").contains("38, 40, 42"), browser.text(".report-head"));
            assertEquals(3, browser.all(".check-files li").size());
            browser.await(
                    "both pictures",
                    "return [...document.querySelectorAll('.chart-sheet img')].filter(img => img.naturalWidth >"
                            + " 100).length === 2;");
            browser.click("#desk [data-kind='application/pdf']");
            assertTrue(new String(browser.downloaded(".pdf"), StandardCharsets.ISO_8859_1).startsWith("%PDF-"));
        }
    }

    @Test
    void asksForWhatTheFileDoesNotSay(@TempDir Path folder) throws IOException {
        Path file = write(folder, "no-unit.csv", SLIP.replace("unit,", "").replace("cm,", ""));
        try (Browser browser = open(Screen.DESKTOP, file)) {
            browser.await("the error", "return !!document.querySelector('.check-error');");
            browser.choose("check-units", "cm");
            reportIsThere(browser);
            browser.choose("check-table", "");
            browser.await(
                    "the report anew",
                    "return ![...document.querySelectorAll('.report-body td')].some(td => td.textContent ==="
                            + " 'Upper-arm girth');");
        }
    }

    @Test
    void takesTheReportAway(@TempDir Path folder) throws IOException {
        try (Browser browser = open(Screen.DESKTOP, write(folder, "slip.csv", SLIP))) {
            reportIsThere(browser);
            browser.click("#desk [data-kind='application/json']");
            JsonPath report = JsonPath.from(new String(browser.downloaded(".json"), StandardCharsets.UTF_8));
            assertEquals("cm", report.getString("unit"));
            browser.click("#desk [data-kind='text/csv']");
            assertTrue(new String(browser.downloaded(".csv"), StandardCharsets.UTF_8).contains("capHeight"));
        }
    }

    @Test
    void isWorkedByKeyboardAlone() {
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            browser.tabTo("document.activeElement.dataset.task === 'check'");
            browser.actions().sendKeys(Keys.ENTER).perform();
            browser.await("the form", "return !!document.getElementById('check-file');");
            browser.tabTo("document.activeElement.id === 'check-file'");
            browser.tabTo("document.activeElement.id === 'check-own'");
            browser.actions().sendKeys(Keys.ENTER).perform();
            reportIsThere(browser);
            browser.tabTo("document.activeElement.closest('.finding summary') !== null ||"
                    + " document.activeElement.matches('.findings-more > summary')");
        }
    }
}
