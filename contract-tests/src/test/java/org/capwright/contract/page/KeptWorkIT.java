package org.capwright.contract.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.capwright.contract.RunningService;
import org.junit.jupiter.api.Test;

/** Nobody loses a style: not to a link, not to another tab, not to a name used twice, not to a browser that keeps nothing. */
class KeptWorkIT {

    private static final String KEPT = "return Object.keys(localStorage).some(key => key.startsWith('capwright.work.')"
            + " && JSON.parse(localStorage[key]).style.overlay.rise === arguments[0]);";

    /** The address of the page with the rise that is given, as a colleague sends it. */
    private static String link(Browser browser, String rise) {
        browser.type("f-overlay-rise", rise);
        browser.await("the address", "return location.hash.length > 20;");
        browser.await("the work", KEPT, Double.parseDouble(rise));
        return browser.address();
    }

    @Test
    void aLinkOpensBesideOnesOwnWork() {
        String link;
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            link = link(browser, "17");
        }
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            link(browser, "9");
            browser.visit("about:blank");
            browser.go(link);
            assertEquals("17", browser.value("#f-overlay-rise"));
            browser.click(".tab[data-tab=jumps]");
            browser.type("f-overlay-rise", "16");
            browser.await("the copy", KEPT, 16);
            assertTrue((Boolean) browser.run(KEPT, 9), "one's own is still there");
            browser.click("#back-to-own");
            browser.await("one's own", "return document.getElementById('f-overlay-rise').value === '9';");
        }
    }

    @Test
    void aSecondTabHasAWorkOfItsOwn() {
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            link(browser, "9");
            browser.inAnotherTab(RunningService.address() + "/", () -> {
                assertEquals("9", browser.value("#f-overlay-rise"), "begins where the first is");
                assertTrue(browser.text(".notice").contains("open in another tab"), browser.text(".notice"));
                link(browser, "16");
            });
            assertEquals("9", browser.value("#f-overlay-rise"));
            assertTrue(browser.text(".notice").contains("works on a copy"), browser.text(".notice"));
            assertTrue((Boolean) browser.run(KEPT, 9));
            assertTrue((Boolean) browser.run(KEPT, 16));
            browser.show("files");
            assertEquals(1, browser.all(".lately-list li").size(), "and each knows of the other");
        }
    }

    private static void versions(Browser browser, int number) {
        browser.await(
                number + " versions", "return document.querySelectorAll('.version').length === arguments[0];", number);
    }

    /** What stood on the bench for a while is kept with a picture, also over a reload, and comes back by one press. */
    @Test
    void whatAStyleWasBeforeComesBackFromItsHistory() {
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            browser.show("files");
            versions(browser, 0);
            browser.type("f-overlay-rise", "9");
            versions(browser, 1);
            browser.type("f-overlay-rise", "16");
            versions(browser, 2);
            browser.reload();
            browser.show("files");
            versions(browser, 2);
            assertEquals(
                    2, browser.all(".version svg.small-picture .worn-overlay").size(), "each with its picture");
            assertFalse(
                    browser.all(".version svg")
                            .get(0)
                            .getDomProperty("outerHTML")
                            .equals(browser.all(".version svg").get(1).getDomProperty("outerHTML")),
                    "of its own");
            browser.click(".version-list li:nth-child(2) .version");
            browser.await("what it was", "return document.getElementById('f-overlay-rise').value === '9';");
            browser.settle();
            browser.run("document.querySelector('.history button').click();");
            browser.await("undone", "return document.getElementById('f-overlay-rise').value === '16';");
        }
    }

    @Test
    void aLinkThatWasCutOffSaysSo() {
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            String link = link(browser, "17");
            browser.visit("about:blank");
            browser.go(link.substring(0, link.length() - 40));
            assertTrue(browser.text(".notice").contains("cut off"), browser.text(".notice"));
        }
    }

    @Test
    void asksBeforeItKeepsAnotherStyleUnderAUsedName() {
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            browser.show("files");
            browser.click("#file-keep");
            browser.type("f-overlay-rise", "17");
            browser.show("files");
            browser.click("#file-keep");
            assertEquals(1, browser.all(".kept-list li").size());
            browser.click("#keep-both");
            assertEquals(2, browser.all(".kept-list li").size());
            assertEquals(
                    14L,
                    browser.run(
                            "return JSON.parse(localStorage['capwright.styles'])['Choir gown sleeve'].overlay.rise;"),
                    "the first is as it was");
        }
    }

    @Test
    void saysThatNothingWasKeptWhereTheBrowserRefuses() {
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            browser.run("Storage.prototype.setItem = () => { throw new DOMException('full', 'QuotaExceededError'); };");
            browser.show("files");
            browser.click("#file-keep");
            assertTrue(browser.text("#panel-files .says").contains("is not kept"), browser.text("#panel-files .says"));
            browser.type("f-overlay-rise", "17");
            browser.await(
                    "the notice", "return document.querySelector('.notice').textContent.includes('keeps nothing');");
            assertTrue(browser.text(".notice").contains("keeps nothing"));
        }
    }

    @Test
    void whatASwitchTakesOffComesBackAsItWas() {
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            browser.type("f-overlay-frontGap", "4.5");
            browser.click("#s-overlay");
            browser.settle();
            assertTrue(browser.all("#f-overlay-frontGap").isEmpty());
            browser.click("#s-overlay");
            browser.settle();
            assertEquals("4.5", browser.value("#f-overlay-frontGap"));
            browser.show("jumps");
            assertFalse(browser.all("#f-grade-overlayLength").isEmpty(), "its jumps too");
            assertEquals("1.1", browser.value("#f-grade-overlayLength"));
        }
    }
}
