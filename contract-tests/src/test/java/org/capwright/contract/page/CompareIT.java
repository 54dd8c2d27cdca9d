package org.capwright.contract.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.capwright.contract.RunningService;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;
import org.openqa.selenium.Keys;

/** Two styles measured against one another. */
class CompareIT {

    private static String difference(Browser browser, String measure) {
        return (String) browser.run(
                "const rows = [...document.querySelectorAll('.compare-figures table:first-of-type tbody tr')];return"
                        + " rows.find(row => row.querySelector('th').textContent === arguments[0])?.lastChild.textContent"
                        + " ?? '';",
                measure);
    }

    private static void isThere(Browser browser) {
        browser.await("the comparison", "return !!document.querySelector('.overlaid .outline.second');");
    }

    @ParameterizedTest
    @ArgumentsSource(ScreenSample.class)
    void showsTheStyleBesideOneThatWasKept(Screen screen) {
        try (Browser browser = Browser.open(screen)) {
            browser.show("files");
            browser.click("#file-keep");
            browser.type("f-overlay-rise", "17");
            browser.task("compare");
            isThere(browser);
            assertEquals(
                    "−3", difference(browser, "Overlay rise"), "the kept one rises 14 cm, the one on the bench 17 cm");
            assertEquals("=", difference(browser, "Bicep"));
            browser.keep("compare-styles");
            browser.click("#compare-swap");
            browser.await(
                    "the swap",
                    "return [...document.querySelectorAll('.differs')].some(each => each.textContent === '+3');");
            assertEquals("+3", difference(browser, "Overlay rise"));
            String overlay = browser.find(".overlaid .outline.second").getDomAttribute("d");
            browser.choose("compare-piece", "under-sleeve");
            assertNotEquals(overlay, browser.find(".overlaid .outline.second").getDomAttribute("d"));
            browser.choose("compare-size", "36");
            assertTrue(browser.text(".compare-figures").contains("size 36"));
        }
    }

    /** Lengths of both are shown in the unit of the page, whatever the file is written in. */
    @Test
    void comparesWithAFileInAnotherUnit(@TempDir Path folder) throws IOException {
        String inches = """
            {"name":"Hand","units":"in","baseSize":"40","sizes":["38","40"],
             "sleeve":{"bicep":"15","capHeight":"5 1/4","armhole":"17 3/4"},"grade":{"bicep":"1/2"}}
            """;
        Path file = Files.writeString(folder.resolve("hand.json"), inches);
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            browser.task("compare");
            browser.find("#compare-file").sendKeys(file.toString());
            browser.await(
                    "the file", "return document.querySelector('.compare-figures')?.textContent.includes('38.1');");
            assertEquals("+2.1", difference(browser, "Bicep"), "15 in are 38.1 cm, 2.1 cm more than 36 cm");
            assertEquals("–", difference(browser, "Overlay rise"), "one of them has no overlay");
            browser.find("#compare-file")
                    .sendKeys(RunningService.root().resolve("README.md").toString());
            browser.await(
                    "words",
                    "return document.querySelector('#desk .says').textContent.includes('README.md is not a style');");
        }
    }

    @Test
    void isWorkedByKeyboardAlone() {
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            browser.show("files");
            browser.click("#file-keep");
            browser.tabTo("document.activeElement.dataset.task === 'compare'");
            browser.actions().sendKeys(Keys.SPACE).perform();
            isThere(browser);
            browser.tabTo("document.activeElement.id === 'compare-size'");
            browser.actions().sendKeys(Keys.ARROW_DOWN).perform();
            browser.await(
                    "the next size",
                    "return document.querySelector('.compare-figures').textContent.includes('size 42');");
        }
    }

    @Test
    void tellsTwoStylesOfOneNameApart() {
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            browser.show("files");
            browser.click("#file-keep");
            browser.type("f-overlay-rise", "17");
            browser.task("compare");
            browser.await("both", "return !!document.querySelector('.overlaid .outline.second');");
            String heads = (String)
                    browser.run("return [...document.querySelectorAll('.compare-figures thead')][0].textContent;");
            assertTrue(
                    heads.contains("On the bench: Choir gown sleeve") && heads.contains("Kept: Choir gown sleeve"),
                    heads);
        }
    }
}
