package org.capwright.contract.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import org.capwright.contract.RunningService;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.openqa.selenium.Keys;

/** A style of one's own from five questions with pictures; the demonstration says that it is one. */
class StartIT {

    @ParameterizedTest
    @CsvSource({"DESKTOP,light", "PHONE,dark"})
    void fiveAnswersMakeAStyleThatCanBeDrafted(Screen screen, String scheme) {
        try (Browser browser =
                Browser.open(screen, Map.of("prefers-color-scheme", scheme), RunningService.address() + "/")) {
            assertTrue(browser.text(".notice").contains("a demonstration"), browser.text(".notice"));
            browser.click("#begin");
            browser.await("the questions", "return document.querySelectorAll('.start-question').length === 5;");
            browser.run(AccessIT.axe());
            assertEquals(List.of(), browser.runAsync(AccessIT.AXE));
            assertEquals(13, browser.all(".start-cards .start-picture").size());
            assertEquals(
                    true,
                    browser.run("const box = document.getElementById('start').getBoundingClientRect();"
                            + "return box.left >= 0 && box.right <= innerWidth;"));
            browser.keep("start-" + scheme);
            browser.find("#start-name").sendKeys("Feast day gown");
            browser.find("#start-sizes").sendKeys(Keys.chord(Keys.CONTROL, "a"), "S M L");
            browser.find("#start-upperArmGirth").sendKeys(Keys.chord(Keys.CONTROL, "a"), "13 in");
            browser.click("label[for=start-height-high]");
            browser.click("label[for=start-hem-level]");
            browser.find("#start-make").sendKeys(Keys.ENTER);
            browser.await("the style", "return !document.getElementById('start');");
            browser.settle();
            assertEquals("Feast day gown", browser.run("return document.querySelector('.style-name').textContent;"));
            browser.show("spec");
            assertEquals("38", browser.spec("bicep", "M"), "13 in are 33 cm, and 15 % more");
            assertTrue(browser.all(".problems li").isEmpty());
            assertFalse(browser.find(".notice").isDisplayed());
            assertEquals(List.of(), browser.complaints());
        }
    }

    /** What a table says of the base size fills the figures; its growth becomes the jumps. */
    @Test
    void aTableFillsInTheFiguresAndTheJumps() {
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            browser.click("#begin");
            browser.await("the tables", "return (document.getElementById('start-table')?.options.length ?? 0) > 2;");
            new org.openqa.selenium.support.ui.Select(browser.find("#start-table"))
                    .selectByValue("women-en-13402-3-bust");
            browser.await("the figures", "return document.getElementById('start-upperArmGirth').value !== '30';");
            browser.find("#start-make").sendKeys(Keys.ENTER);
            browser.await("the style", "return !document.getElementById('start');");
            browser.settle();
            double first = Double.parseDouble(browser.spec("bicep", "36"));
            assertTrue(
                    Double.parseDouble(browser.spec("bicep", "46")) > first + 4,
                    "graded as the bodies of the table grow");
        }
    }

    @Test
    void aFigureThatIsNoneIsNamedAndNothingIsLost() {
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            browser.type("f-overlay-rise", "15");
            browser.show("files");
            browser.click("#file-begin");
            browser.await("the questions", "return !!document.getElementById('start');");
            browser.find("#start-armhole").sendKeys(Keys.chord(Keys.CONTROL, "a"), "wide");
            browser.find("#start-make").sendKeys(Keys.ENTER);
            browser.await("a word", "return document.getElementById('start-says').textContent !== '';");
            assertTrue(browser.text("#start-says").startsWith("Armhole of the garment"), browser.text("#start-says"));
            browser.find("#start-armhole").sendKeys(Keys.chord(Keys.CONTROL, "a"), "300");
            browser.find("#start-make").sendKeys(Keys.ENTER);
            browser.await("the reason", "return /300/.test(document.getElementById('start-says').textContent);");
            browser.find("#start-armhole").sendKeys(Keys.chord(Keys.CONTROL, "a"), "44");
            browser.find("#start-make").sendKeys(Keys.ENTER);
            browser.await("the style", "return !document.getElementById('start');");
            browser.settle();
            browser.show("files");
            assertTrue(browser.text(".lately-list").contains("Choir gown sleeve"), "what was on the table is kept");
            browser.click("#file-begin");
            browser.await("the questions", "return !!document.getElementById('start');");
            browser.click("#start-empty");
            browser.settle();
            assertTrue(browser.all("#f-overlay-rise").isEmpty(), "nothing over the cap");
            assertEquals(
                    List.of("base-sleeve"),
                    browser.run("return [...document.querySelectorAll('g.piece')].map(piece => piece.dataset.piece);"));
            assertTrue(browser.all(".problems li").isEmpty());
        }
    }

    @Test
    void asksInFrench() {
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            browser.choose("language", "fr");
            browser.click("#begin");
            browser.await("the questions", "return !!document.getElementById('start');");
            assertTrue(browser.text("#start").contains("Pour quel bras"), browser.text("#start"));
        }
    }
}
