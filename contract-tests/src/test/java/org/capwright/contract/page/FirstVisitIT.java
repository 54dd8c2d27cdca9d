package org.capwright.contract.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.capwright.contract.RunningService;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.Keys;

/**
 * The way of somebody who opens the page for the first time, with a picture of each step for the documentation: sleeve changed, run graded, PDF in hand; then
 * what else the page is for.
 */
class FirstVisitIT {

    private static final Path FOLDER = RunningService.root().resolve("contract-tests/target/first-visit");

    /** All pictures together, so that the documentation stays light. */
    private static final long MOST_BYTES = 850_000;

    /** Keeps a picture for the documentation. */
    static void keep(Browser browser, String name) throws IOException {
        Files.createDirectories(FOLDER);
        Files.write(FOLDER.resolve(name + ".png"), SmallPicture.of(browser.picture()));
    }

    @Test
    void fromTheFirstLookToThePatternOnPaper() throws IOException {
        long start = System.nanoTime();
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            keep(browser, "1-first-look");
            String before = browser.cutLine("overlay-main", "40");
            browser.type("f-overlay-rise", "10");
            assertTrue(!before.equals(browser.cutLine("overlay-main", "40")), "the overlay follows");
            keep(browser, "2-sleeve-changed");
            browser.show("jumps");
            browser.find("#f-grade-bicep").sendKeys(Keys.chord(Keys.CONTROL, "a"), "1.6");
            browser.settle();
            assertEquals("37.6", browser.spec("bicep", "42"));
            keep(browser, "3-run-graded");
            browser.show("files");
            browser.await("the pages", "return /page/.test(document.querySelector('.file-pages').textContent);");
            browser.click("[data-kind='application/pdf']");
            String pdf = new String(browser.downloaded(".pdf"), StandardCharsets.ISO_8859_1);
            assertTrue(pdf.startsWith("%PDF-"));
            browser.await("the state", "return document.querySelector('.file-state').textContent.includes('.pdf');");
            keep(browser, "4-pdf-in-hand");
        }
        long seconds = (System.nanoTime() - start) / 1_000_000_000;
        Files.writeString(FOLDER.resolve("seconds.txt"), "from the first look to the PDF, s: " + seconds + "\n");
        assertTrue(seconds < 120, "two minutes are enough even for a hand: " + seconds);
    }

    @Test
    void whatElseThePageIsFor() throws IOException {
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            browser.click("#begin");
            browser.await("the questions", "return document.querySelectorAll('.start-picture').length > 10;");
            keep(browser, "9-five-questions");
            browser.click("#start-close");
            browser.click("#as-worn");
            browser.await(
                    "the worn sleeve", "return document.querySelector('.worn3d-inner')?.dataset.state === 'settled';");
            keep(browser, "10-as-worn");
            browser.run("Object.assign(document.querySelector('#worn3d-canvas').style, {position: 'fixed',"
                    + " inset: '0 auto auto 0', width: '600px', height: '800px', zIndex: 99, background: 'white'});");
            browser.await(
                    "the large picture",
                    "const canvas = document.querySelector('#worn3d-canvas'); return canvas.height >= 800;");
            Files.write(FOLDER.resolve("as-worn.png"), SmallPicture.of(browser.picture("#worn3d-canvas")));
            browser.run("document.querySelector('#worn3d-canvas').removeAttribute('style');");
            browser.click("#as-worn");
            browser.show("cloth");
            browser.click("#cloth-start");
            browser.await("the lays", "return !!document.querySelector('.lay img')?.complete;");
            browser.run(
                    "document.activeElement.blur(); document.querySelector('.lay').scrollIntoView({block: 'start'});");
            keep(browser, "5-cloth");
            browser.show("files");
            browser.click("#file-keep");
            browser.type("f-overlay-rise", "17");
            browser.task("compare");
            browser.await("both", "return !!document.querySelector('.overlaid .outline.second');");
            keep(browser, "8-compare");
            browser.task("wearer");
            browser.fill("w-bustGirth", "96");
            browser.fill("w-stature", "168");
            browser.fill("w-upperArmGirth", "31.5");
            browser.await("the sleeve", "return !!document.querySelector('.plan path.cut');");
            browser.run("document.activeElement.blur(); document.getElementById('desk').scrollTo(0, 0);");
            keep(browser, "6-one-wearer");
            browser.task("check");
            browser.click("#check-own");
            browser.await("the chart", "return (document.querySelector('.chart-sheet img')?.naturalWidth ?? 0) > 100;");
            browser.run("document.getElementById('desk').scrollTo(0, 0);");
            keep(browser, "7-check");
        }
        try (var pictures = Files.list(FOLDER)) {
            long bytes = pictures.mapToLong(file -> file.toFile().length()).sum();
            assertTrue(bytes < MOST_BYTES, bytes + " bytes of pictures");
        }
    }
}
