package org.capwright.contract.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

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
}
