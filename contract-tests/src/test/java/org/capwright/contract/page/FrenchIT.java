package org.capwright.contract.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.Keys;

/** In French the words of the service are French too: findings, order of sewing, cautions, seams, and why something cannot be drafted. Titles of publications stay as they are. */
class FrenchIT {

    private static Object english(Browser browser) {
        return browser.run("return [...document.querySelectorAll('#bench [lang=en]')]"
                + ".filter(each => !each.closest('.source')).map(each => each.textContent);");
    }

    @Test
    void findingsSewingOrderAndCautionsAreFrench() {
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            browser.choose("language", "fr");
            browser.show("findings");
            assertEquals(List.of(), english(browser));
            browser.show("jumps");
            browser.find("#f-grade-bicep-1").sendKeys(Keys.chord(Keys.CONTROL, "a"), "0,1");
            browser.find("#f-grade-capHeight-3").sendKeys(Keys.chord(Keys.CONTROL, "a"), "2");
            browser.settle();
            browser.show("findings");
            assertTrue(browser.all(".finding.stop").size() > 0);
            assertEquals(List.of(), english(browser));
            assertTrue(browser.text(".finding.stop").contains("l’aisance diminue"), browser.text(".finding.stop"));
            browser.show("sewing");
            assertTrue(browser.text(".order").contains("Piquez"), browser.text(".order"));
            assertEquals(List.of(), english(browser));
            browser.input("s-pleats").click();
            browser.settle();
            browser.show("findings");
            assertEquals(List.of(), english(browser));
        }
    }

    @Test
    void whyNothingIsDraftedIsFrenchAndNamesNoPlaceOfTheRequest() {
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            browser.choose("language", "fr");
            for (String[] wrong : new String[][] {
                {"f-overlay-pleats-count", "1"},
                {"f-overlay-frontGap", "30"},
                {"f-sleeve-length", "5"},
                {"f-sleeve-capHeight", "60"},
                {"f-sizes", "36 36 38"}
            }) {
                browser.input(wrong[0]).sendKeys(Keys.chord(Keys.CONTROL, "a"), wrong[1], Keys.TAB);
                browser.await("a word", "return document.querySelectorAll('.problems li').length > 0;");
                String words = browser.text(".problems ul");
                assertTrue(browser.all(".problems ul [lang=en]").isEmpty(), words);
                assertTrue(!words.contains("/sizes"), words);
                browser.run("document.activeElement.blur();");
                browser.click(".history button");
                browser.settle();
                browser.await("no word", "return document.querySelectorAll('.problems li').length === 0;");
            }
        }
    }
}
