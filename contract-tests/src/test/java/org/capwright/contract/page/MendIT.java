package org.capwright.contract.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;
import org.openqa.selenium.Keys;

/** The jump table as a picture: every jump between its bounds, the culprit ringed with its reason, mended by one press. */
class MendIT {

    private static void spoil(Browser browser) {
        browser.show("jumps");
        browser.find("#f-grade-bicep-1").sendKeys(Keys.chord(Keys.CONTROL, "a"), "0.1");
        browser.settle();
        browser.await("the culprit", "return !!document.getElementById('mend-bicep-1');");
    }

    private static void undo(Browser browser) {
        browser.actions()
                .keyDown(Keys.CONTROL)
                .sendKeys("z")
                .keyUp(Keys.CONTROL)
                .perform();
        browser.settle();
    }

    /** Judgements come and go without anything sliding away under the hand. */
    @Test
    void theTableKeepsItsHeight() {
        String height = "return document.querySelector('#panel-jumps table').offsetHeight;";
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            browser.await(
                    "what is asked for at leisure",
                    "return performance.getEntriesByType('resource').some(entry => entry.name.endsWith('/v1/checks') &&"
                            + " entry.responseEnd > 0);");
            browser.show("jumps");
            Object first = browser.run(height);
            browser.await("the bounds", "return !!document.querySelector('.jump-bar');");
            assertEquals(first, browser.run(height), "the bounds were there from the beginning");
            spoil(browser);
            Object spoilt = browser.run(height);
            undo(browser);
            browser.await("no culprit", "return !document.getElementById('mend-bicep-1');");
            assertEquals(spoilt, browser.run(height), "the room of what is mended stays");
        }
    }

    @ParameterizedTest
    @ArgumentsSource(ScreenSample.class)
    void theCulpritIsRingedAndMendedByOnePress(Screen screen) {
        try (Browser browser = Browser.open(screen)) {
            spoil(browser);
            assertTrue(browser.find("td:has(#f-grade-bicep-1)")
                    .getDomAttribute("class")
                    .contains("culprit stop"));
            assertTrue(browser.text("[data-reasons=bicep] .jump-reasons")
                    .contains("38–40: The garment grows less than the body"));
            assertEquals(
                    5,
                    browser.all("[data-grade=bicep] .jump-bar .passing").size(),
                    "every jump that a body stands behind");
            browser.run("document.getElementById('mend-bicep-1').scrollIntoView({block: 'center'});");
            browser.keep("jump-picture");
            browser.find("#mend-bicep-1").sendKeys(Keys.ENTER);
            browser.await("it to be mended", "return document.querySelector('#panel-jumps .says').textContent !== '';");
            browser.settle();
            browser.await(
                    "no ring",
                    "return !document.querySelector('td:has(#f-grade-bicep-1)').classList.contains('culprit');");
            assertTrue(browser.all(".finding.stop").isEmpty(), "nothing stops the grade");
            assertTrue(
                    browser.text("#panel-jumps .says").contains("instead of 0.1"), browser.text("#panel-jumps .says"));
            double mended = Double.parseDouble(browser.value("#f-grade-bicep-1"));
            assertTrue(mended >= 1.12 && mended < 1.4, "the nearest that passes: " + mended);
            undo(browser);
            assertEquals("0.1", browser.value("#f-grade-bicep-1"), "one step back");
            assertFalse(browser.all(".finding.stop").isEmpty());
        }
    }

    /** What is mended stays mended when front and back differ: the front keeps its share. */
    @Test
    void halvesAreMendedWithTheWhole() {
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            browser.input("s-halves").click();
            browser.settle();
            spoil(browser);
            browser.click("#mend-bicep-1");
            browser.await("it to be mended", "return document.querySelector('#panel-jumps .says').textContent !== '';");
            browser.settle();
            assertTrue(browser.all(".finding.stop").isEmpty(), "nothing stops the grade");
        }
    }

    @Test
    void saysItInFrench() {
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            browser.choose("language", "fr");
            browser.show("jumps");
            browser.find("#f-grade-bicep-1").sendKeys(Keys.chord(Keys.CONTROL, "a"), "0,1");
            browser.settle();
            browser.await("the culprit", "return !!document.getElementById('mend-bicep-1');");
            assertTrue(
                    browser.text("[data-reasons=bicep] .jump-reasons").contains("moins que le corps"),
                    browser.text("[data-reasons=bicep] .jump-reasons"));
            assertEquals(List.of(), browser.complaints());
        }
    }
}
