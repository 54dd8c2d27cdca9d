package org.capwright.contract.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.restassured.path.json.JsonPath;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.Set;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import javax.imageio.ImageIO;
import org.capwright.contract.RunningService;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;
import org.junit.jupiter.params.provider.CsvSource;

/** Files taken away, and styles saved, opened and kept. */
class FilesIT {

    /** First bytes: of PDF ISO 32000-1, of ZIP the local file header of its application note. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "application/pdf | .pdf | %PDF-",
                "image/svg+xml | .svg | <?xml",
                "image/vnd.dxf | .dxf | 0",
                "text/csv | .csv | style,",
                "application/json | .json | {",
                "application/zip | .zip | PK"
            })
    void takesAwayEveryKindOfFile(String kind, String end, String start) throws IOException {
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            browser.show("files");
            browser.click("[data-kind='" + kind + "']");
            String file = new String(browser.downloaded(end), StandardCharsets.ISO_8859_1);
            assertTrue(file.stripLeading().startsWith(start), file.substring(0, 40));
            browser.await(
                    "the state",
                    "return document.querySelector('[data-kind=\"" + kind
                            + "\"]').parentNode.querySelector('.file-state').textContent.includes('" + end + "');");
        }
    }

    @ParameterizedTest
    @ArgumentsSource(ScreenSample.class)
    void printsOnThePaperChosen(Screen screen) throws IOException {
        try (Browser browser = Browser.open(screen)) {
            browser.show("files");
            browser.choose("paper", "letter");
            browser.choose("printed", "base");
            browser.click("[data-kind='application/pdf']");
            String pdf = new String(browser.downloaded(".pdf"), StandardCharsets.ISO_8859_1);
            assertTrue(pdf.contains("612"), "a letter sheet is 612 points wide");
            browser.keep("files");
        }
    }

    @Test
    void savesAStyleThatIsTheBodyOfTheRequestAndOpensItAgain(@TempDir Path folder) throws IOException {
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            browser.type("f-overlay-rise", "10.5");
            browser.show("files");
            browser.click("#file-save");
            byte[] saved = browser.downloaded(".json");
            JsonPath style = JsonPath.from(new String(saved, StandardCharsets.UTF_8));
            assertEquals(10.5f, style.getFloat("overlay.rise"));
            io.restassured.RestAssured.given()
                    .contentType("application/json")
                    .accept("text/csv")
                    .body(saved)
                    .post(RunningService.address() + "/v1/size-runs")
                    .then()
                    .statusCode(200);
            Path file = folder.resolve("mine.json");
            Files.write(file, saved);
            browser.type("f-overlay-rise", "13");
            browser.find("#open-style").sendKeys(file.toString());
            browser.await("the style", "return document.getElementById('f-overlay-rise').value === '10.5';");
        }
    }

    /** The forms that the interface takes besides the page's own: inches as text, one allowance for all, a null. */
    @Test
    void opensAStyleWrittenByHand(@TempDir Path folder) throws IOException {
        Path file = folder.resolve("hand.json");
        Files.writeString(file, """
            {"units":"in","baseSize":12,"sizes":["10","12","14"],
             "sleeve":{"bicep":"14 1/4","capHeight":"5 1/4","armhole":"17 3/4","length":"23 5/8"},
             "underSleeve":{"wrist":"8 1/2"},"sizeTable":null,
             "grade":{"bicep":"1/2","capHeight":"1/8","armhole":"1/2"},"seamAllowance":"5/8"}
            """);
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            browser.find("#open-style").sendKeys(file.toString());
            browser.await("the style", "return document.getElementById('f-sleeve-bicep').value === '14 1/4';");
            browser.settle();
            assertEquals("14 1/4", browser.spec("bicep", "12"));
            assertEquals("5/8", browser.value("#f-seamAllowance-hem"));
        }
    }

    @Test
    void saysThatAFileIsNoStyle(@TempDir Path folder) throws IOException {
        Path file = folder.resolve("list.json");
        Files.writeString(file, "[1, 2]");
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            browser.show("files");
            browser.find("#open-style").sendKeys(file.toString());
            browser.await(
                    "words",
                    "return document.querySelector('#panel-files .says').textContent.includes('list.json is not a"
                            + " style');");
        }
    }

    @Test
    void keepsAStyleInTheBrowser() {
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            browser.type("f-overlay-rise", "9");
            browser.show("files");
            browser.click("#file-keep");
            browser.type("f-overlay-rise", "13");
            browser.show("files");
            browser.click(".kept-list .link");
            browser.await("the style", "return document.getElementById('f-overlay-rise').value === '9';");
            browser.click(".kept-list .square");
            assertTrue(browser.all(".kept-list li").isEmpty());
        }
    }

    /** Two papers side by side in a folder do not write over one another. */
    @Test
    void namesAFileByWhatWasChosenForIt() throws IOException {
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            browser.show("files");
            for (String[] file : new String[][] {
                {"paper", "a3", "application/pdf", "-a3.pdf"},
                {"paper", "letter", "application/zip", "-letter-nest.zip"},
                {"paper", "projector-light", "application/pdf", "-projector-light.pdf"},
                {"layout", "blocks", "image/vnd.dxf", "-blocks.dxf"}
            }) {
                browser.choose(file[0], file[1]);
                browser.click("[data-kind='" + file[2] + "']");
                assertTrue(browser.downloaded(file[3]).length > 1000);
            }
        }
    }

    /** A letter sheet is 612 points wide (8.5 in). */
    @Test
    void theArchiveHasThePaperChosen() throws IOException {
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            browser.show("files");
            browser.choose("paper", "letter");
            browser.click("[data-kind='application/zip']");
            try (var zip =
                    new java.util.zip.ZipInputStream(new java.io.ByteArrayInputStream(browser.downloaded(".zip")))) {
                for (var entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
                    if (entry.getName().endsWith(".pdf")) {
                        assertTrue(new String(zip.readAllBytes(), StandardCharsets.ISO_8859_1).contains("612"));
                        return;
                    }
                }
            }
            throw new AssertionError("no PDF in the archive");
        }
    }

    /** The worn sleeve is settled and drawn out of sight, and sent along. */
    @Test
    void thePictureAsWornGoesIntoTheArchive() throws IOException {
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            browser.show("files");
            browser.click("#pictured");
            browser.click("[data-kind='application/zip']");
            byte[] worn = new byte[0];
            try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(browser.downloaded(".zip")))) {
                for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
                    if (entry.getName().endsWith("worn.png")) {
                        worn = zip.readAllBytes();
                    }
                }
            }
            BufferedImage picture = ImageIO.read(new ByteArrayInputStream(worn));
            assertEquals(3.0 / 4, (double) picture.getWidth() / picture.getHeight(), 0.01);
            Set<Integer> colours = new HashSet<>();
            for (int x = 0; x < picture.getWidth(); x++) {
                colours.add(picture.getRGB(x, picture.getHeight() / 3));
            }
            assertTrue(colours.size() > 20, colours.size() + " colours across the upper arm");
        }
    }

    @Test
    void saysWhatIsWrongWithoutPlacesOfTheRequest() {
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            browser.show("files");
            browser.choose("paper", "roll");
            browser.fill("roll", "5");
            browser.click("[data-kind='application/pdf']");
            browser.await(
                    "words", "return /Width of the roll/.test(document.querySelector('.file-state').textContent);");
            assertTrue(!browser.text(".file-state").contains("/paper"), browser.text(".file-state"));
        }
    }
}
