package org.capwright.contract.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.openqa.selenium.Keys;

/** What people type: lengths with a unit of their own, fractions, slips. An inch is 25.4 mm (NIST Special Publication 811, appendix B.8). */
class TypingIT {

    @Test
    void aLengthMayBringItsUnit() {
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            browser.click("label[for=units-in]");
            browser.settle();
            browser.type("f-sleeve-bicep", "36 cm");
            browser.input("f-sleeve-armhole");
            assertEquals("14 3/16", browser.value("#f-sleeve-bicep"), "36 / 2.54 = 14.173");
            browser.click("label[for=units-cm]");
            browser.settle();
            assertEquals("36", browser.value("#f-sleeve-bicep"));
        }
    }

    @Test
    void nothingIsDividedByNought() {
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            browser.type("f-sleeve-bicep", "1/0");
            browser.input("f-sleeve-armhole");
            assertEquals("1/0", browser.value("#f-sleeve-bicep"), "stays as typed");
            assertFalse(browser.text("#f-sleeve-bicep-error").isEmpty());
            assertEquals("36", browser.spec("bicep", "40"));
        }
    }

    @Test
    void aFractionOfAnInchReadsInTheSpecTableAsItWasEntered() {
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            browser.click("label[for=units-in]");
            browser.settle();
            browser.type("f-sleeve-bicep", "14 5/16");
            assertEquals("14 5/16", browser.spec("bicep", "40"));
            browser.show("jumps");
            browser.find("#f-grade-wrist").sendKeys(Keys.chord(Keys.CONTROL, "a"), "2 mm", Keys.TAB);
            browser.settle();
            assertEquals("≈ 1/16", browser.value("#f-grade-wrist"), "2 mm are 0.0787 in");
        }
    }

    @Test
    void theRollStaysAsWideAsItIsInAnotherUnit() {
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            browser.show("files");
            browser.choose("paper", "roll");
            assertEquals("90", browser.value("#roll"));
            browser.click("label[for=units-in]");
            browser.settle();
            assertEquals("35 7/16", browser.value("#roll"), "90 / 2.54 = 35.433");
        }
    }

    @Test
    void aSlipStaysInSightUntilItIsMended() {
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            browser.type("f-sleeve-bicep", "2 5");
            browser.input("f-sleeve-armhole");
            assertEquals("2 5", browser.value("#f-sleeve-bicep"));
            browser.await("the list", "return document.querySelector('.problems').textContent.includes('Bicep');");
            browser.show("jumps");
            browser.find("#f-grade-wrist").sendKeys(Keys.chord(Keys.CONTROL, "a"), "abc", Keys.TAB);
            assertEquals("abc", browser.value("#f-grade-wrist"));
            assertFalse(browser.text("#f-grade-wrist-error").isEmpty());
            browser.find("#f-grade-wrist").sendKeys(Keys.ESCAPE);
            assertEquals("0.5", browser.value("#f-grade-wrist"));
            browser.type("f-sleeve-bicep", "37");
            assertEquals("", browser.text(".problems"));
        }
    }

    @Test
    void noSleeveIsDraftedFromAGuessInThePlaceOfASlip() {
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            browser.task("wearer");
            browser.fill("w-bustGirth", "96");
            browser.fill("w-stature", "168");
            browser.await("the sleeve", "return !!document.querySelector('.plan path.cut');");
            browser.fill("w-upperArmGirth", "abc");
            browser.find("#w-stature").click();
            browser.await(
                    "words", "return document.querySelector('.fitted-trouble').textContent.includes('Upper-arm');");
            assertEquals("abc", browser.value("#w-upperArmGirth"));
            assertTrue(browser.all(".plan path.cut").isEmpty(), "no sleeve from an estimate");
        }
    }
}
