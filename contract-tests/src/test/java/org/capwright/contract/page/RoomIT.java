package org.capwright.contract.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.Keys;

/** What is asked for is seen, on a phone, on a laptop, on a magnified page and on a large screen. */
class RoomIT {

    private static final String SEEN = "const box = document.querySelector(arguments[0]).getBoundingClientRect();"
            + "return box.height > 0 && box.top >= -1 && box.top < 0.7 * innerHeight;";

    @Test
    void aViewThatIsPressedIsSeenOnAMagnifiedPage() {
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            browser.room(640, 450);
            browser.reload();
            browser.show("spec");
            browser.show("files");
            browser.await("the files", SEEN, ".dock");
            browser.keep("magnified");
        }
    }

    @Test
    void theRowOfJumpsToDeriveFitsAPhoneInFrench() {
        try (Browser browser = Browser.open(Screen.PHONE)) {
            browser.choose("language", "fr");
            browser.show("jumps");
            browser.await("the form", "return !!document.getElementById('derive-take');");
            assertTrue((Boolean) browser.run("return document.documentElement.scrollWidth <= innerWidth;"));
        }
    }

    /** Both languages, on a phone: nothing of the menu of the view lies beyond the edges. */
    @Test
    void theMenuOfTheViewFitsAPhone() {
        try (Browser browser = Browser.open(Screen.PHONE)) {
            for (String language : List.of("en", "fr")) {
                browser.choose("language", language);
                browser.run("document.querySelector('.layers').open = true;");
                assertEquals(
                        List.of(),
                        browser.run("return [...document.querySelectorAll('.layer-list, .layer-list *')].filter(each =>"
                                + " { const box = each.getBoundingClientRect(); return box.left < 0 || box.right >"
                                + " innerWidth; }).map(each => each.textContent);"),
                        language);
            }
        }
    }

    @Test
    void theHeadIsOneRowOnADesktopInBothLanguages() {
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            for (String language : List.of("en", "fr")) {
                browser.choose("language", language);
                assertEquals(
                        1L,
                        browser.run("return new Set([...document.querySelectorAll('.top > *')].filter(each =>"
                                + " each.checkVisibility()).map(each => { const box = each.getBoundingClientRect(); return"
                                + " Math.round((box.top + box.bottom) / 60); })).size;"),
                        language);
            }
        }
    }

    @Test
    void theLayIsSeenAsSoonAsItIsFound() {
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            browser.show("cloth");
            browser.click("#cloth-start");
            browser.await("the lay", "return !!document.querySelector('.lay img')?.complete;");
            browser.await(
                    "the lay in sight",
                    "const box = document.querySelector('.lay img').getBoundingClientRect();"
                            + "return box.top < innerHeight - 80 && box.bottom > 0;");
        }
    }

    /** Drawing and views share the height; a large screen is written larger. */
    @Test
    void thereIsRoomForTheViews() {
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            assertTrue((Boolean) browser.run("const height = selector => document.querySelector(selector).offsetHeight;"
                    + "return height('.dock') > 0.9 * height('.view');"));
            browser.room(2560, 1440);
            browser.await("a larger hand", "return getComputedStyle(document.documentElement).fontSize === '20px';");
            assertEquals(true, browser.run("return document.documentElement.scrollWidth <= innerWidth;"));
        }
    }

    private static double size(Browser browser, String selector, String side) {
        return ((Number) browser.run(
                        "return document.querySelector(arguments[0]).getBoundingClientRect()[arguments[1]];",
                        selector,
                        side))
                .doubleValue();
    }

    private static void press(Browser browser, String border, Keys... keys) {
        browser.run("document.querySelector(arguments[0]).focus();", border);
        browser.actions().sendKeys(keys).perform();
    }

    /** Panes are as wide and high as one likes, by keys and by pointer, and stay so; a large screen has a taste of its own. */
    @Test
    void bordersStayWhereTheyWerePut() {
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            double measures = size(browser, ".measures", "width");
            double drawing = size(browser, ".view", "height");
            press(browser, ".border-measures", Keys.ARROW_RIGHT, Keys.ARROW_RIGHT);
            press(browser, ".border-views", Keys.ARROW_DOWN, Keys.ARROW_DOWN);
            assertEquals(measures + 4 * 16, size(browser, ".measures", "width"), 1);
            assertTrue(size(browser, ".view", "height") > drawing + 10, "more of the drawing");
            browser.actions()
                    .clickAndHold(browser.find(".border-measures"))
                    .moveByOffset(-48, 0)
                    .release()
                    .perform();
            double dragged = size(browser, ".measures", "width");
            assertEquals(measures + 16, dragged, 10, "follows the pointer");
            browser.reload();
            assertEquals(dragged, size(browser, ".measures", "width"), 1, "also the next time");
            browser.room(2560, 1440);
            browser.await(
                    "a border from top to bottom",
                    "return document.querySelector('.border-views').ariaOrientation === 'vertical';");
            double wide = size(browser, ".view", "width");
            press(browser, ".border-views", Keys.ARROW_LEFT, Keys.ARROW_LEFT, Keys.ARROW_LEFT);
            assertTrue(size(browser, ".view", "width") < wide, "more of the views");
            assertEquals(2560, size(browser, ".dock", "right"), 25, "to the rim of the screen");
            assertEquals(true, browser.run("return document.documentElement.scrollWidth <= innerWidth;"));
            browser.keep("panes-2560");
            browser.room(1280, 800);
            press(browser, ".border-measures", Keys.HOME);
            assertEquals(measures, size(browser, ".measures", "width"), 1, "back as it was");
        }
        try (Browser browser = Browser.open(Screen.PHONE)) {
            double board = size(browser, ".board", "height");
            press(browser, ".border-board", Keys.ARROW_UP, Keys.ARROW_UP);
            assertTrue(size(browser, ".board", "height") < board, "less of the drawing");
            assertTrue(size(browser, ".border-board", "height") >= 24, "enough for a thumb");
        }
    }
}
