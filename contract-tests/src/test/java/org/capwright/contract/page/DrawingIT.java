package org.capwright.contract.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.interactions.WheelInput;

/** The drawing: what is seen of it, how it is moved, what is read off, and its handles. */
class DrawingIT {

    private static List<Double> window(Browser browser) {
        return List.of(((String) browser.run("return document.querySelector('.cloth svg').getAttribute('viewBox');"))
                        .split(" "))
                .stream()
                .map(Double::valueOf)
                .toList();
    }

    @ParameterizedTest
    @ArgumentsSource(ScreenSample.class)
    void switchesSizesOffAndOn(Screen screen) {
        try (Browser browser = Browser.found(screen)) {
            String group = "g.piece[data-piece=overlay-main] > g.size[data-size='38']";
            assertTrue(browser.find(group).isDisplayed());
            browser.click(".chip[data-chip='38']");
            assertFalse(browser.find(group).isDisplayed());
            browser.find(".chip[data-chip='38']").sendKeys(Keys.SPACE);
            assertTrue(browser.find(group).isDisplayed());
        }
    }

    @ParameterizedTest
    @ArgumentsSource(ScreenSample.class)
    void showsOnePieceOrAll(Screen screen) {
        try (Browser browser = Browser.found(screen)) {
            String before = browser.value("#piece");
            browser.choose("piece", "under-sleeve");
            assertFalse(browser.find("g.piece[data-piece=overlay-main]").isDisplayed());
            assertTrue(browser.find("g.piece[data-piece=under-sleeve]").isDisplayed());
            browser.keep("one-piece");
            browser.choose("piece", "all");
            assertTrue(browser.find("g.piece[data-piece=overlay-main]").isDisplayed());
            browser.choose("piece", before);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(ScreenSample.class)
    void laysTheSizesOnAnotherPoint(Screen screen) {
        try (Browser browser = Browser.open(screen)) {
            String shift = "return document.querySelector('g.piece[data-piece=under-sleeve] >"
                    + " g.size[data-size=\"46\"]').getAttribute('transform');";
            Object before = browser.run(shift);
            browser.click(".layers > summary");
            browser.keep("view");
            browser.choose("align", "apex");
            assertNotEquals(before, browser.run(shift));
        }
    }

    @Test
    void hidesMarksAndWords() {
        try (Browser browser = Browser.found(Screen.DESKTOP)) {
            assertTrue(browser.find("g.piece[data-piece=under-sleeve] .words").isDisplayed());
            browser.find(".layers > summary").sendKeys(Keys.ENTER);
            browser.find("#layer-words").sendKeys(Keys.SPACE);
            assertFalse(browser.find("g.piece[data-piece=under-sleeve] .words").isDisplayed());
            browser.find("#layer-words").sendKeys(Keys.SPACE, Keys.ESCAPE);
            assertFalse(browser.find("#layer-marks").isDisplayed());
        }
    }

    @ParameterizedTest
    @ArgumentsSource(ScreenSample.class)
    void zoomsAndMovesByKeys(Screen screen) {
        try (Browser browser = Browser.found(screen)) {
            List<Double> fitted = window(browser);
            WebElement sheet = browser.find("#sheet");
            sheet.sendKeys("+");
            List<Double> zoomed = window(browser);
            assertEquals(fitted.get(2) / 1.25, zoomed.get(2), 1e-6 * fitted.get(2));
            sheet.sendKeys(Keys.ARROW_RIGHT);
            assertTrue(window(browser).get(0) > zoomed.get(0));
            sheet.sendKeys("0");
            assertEquals(fitted, window(browser));
        }
    }

    @Test
    void zoomsByTheWheelAboutThePointerAndMovesByDragging() {
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            List<Double> fitted = window(browser);
            WebElement sheet = browser.find("#sheet");
            browser.actions()
                    .scrollFromOrigin(WheelInput.ScrollOrigin.fromElement(sheet), 0, -300)
                    .perform();
            browser.await(
                    "the zoom",
                    "return document.querySelector('.cloth svg').getAttribute('viewBox').split(' ')[2] < arguments[0];",
                    fitted.get(2) * 0.9);
            List<Double> zoomed = window(browser);
            double middle = fitted.get(0) + fitted.get(2) / 2;
            assertEquals(
                    middle, zoomed.get(0) + zoomed.get(2) / 2, 2, "what lies under the pointer stays there, in mm");
            browser.actions()
                    .moveToElement(sheet, -250, 60)
                    .clickAndHold()
                    .moveByOffset(100, 0)
                    .release()
                    .perform();
            double moved = zoomed.get(0) - window(browser).get(0);
            double pixels =
                    ((Number) browser.run("return document.querySelector('.cloth svg').clientWidth;")).doubleValue();
            assertEquals(100, moved / zoomed.get(2) * pixels, 1.5, "the drawing goes with the pointer, in pixels");
        }
    }

    @Test
    void keepsItsPlaceWhenAMeasureChangesWhileZoomedIn() {
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            browser.find("#sheet").sendKeys("+", "+");
            double width = window(browser).get(2);
            browser.input("f-sleeve-bicep").sendKeys(Keys.ARROW_UP);
            browser.settle();
            assertEquals(width, window(browser).get(2), 1e-9);
        }
    }

    @Test
    void readsOffThePlaceUnderThePointer() {
        try (Browser browser = Browser.found(Screen.DESKTOP)) {
            browser.actions().moveToElement(browser.find("#sheet"), 20, 20).perform();
            assertTrue(
                    browser.text(".readout").matches("(?s).*-?−?[0-9.]+ cm across, −?[0-9.]+ cm up.*"),
                    browser.text(".readout"));
        }
    }

    @Test
    void stepsThroughTheMarksByKey() {
        try (Browser browser = Browser.found(Screen.DESKTOP)) {
            WebElement sheet = browser.find("#sheet");
            sheet.sendKeys("n");
            String first = browser.text(".readout");
            assertTrue(first.startsWith("Overlay"), first);
            sheet.sendKeys("n");
            assertNotEquals(first, browser.text(".readout"));
            sheet.sendKeys("p");
            assertEquals(first, browser.text(".readout"));
            sheet.sendKeys(Keys.ESCAPE);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(ScreenSample.class)
    void movesAHandleByKeys(Screen screen) {
        try (Browser browser = Browser.open(screen)) {
            browser.choose("piece", "overlay-main");
            WebElement handle = browser.find("[data-handle='/overlay/rise']");
            assertEquals("Rise of the overlay", handle.getDomAttribute("aria-label"));
            browser.run("arguments[0].focus();", handle);
            handle.sendKeys(Keys.ARROW_UP, Keys.ARROW_UP);
            browser.settle();
            assertEquals("14.2", browser.spec("overlayRise", "40"));
            assertEquals("14.2", handle.getDomAttribute("aria-valuenow"));
        }
    }

    @ParameterizedTest
    @ArgumentsSource(ScreenSample.class)
    void dragsAHandle(Screen screen) {
        try (Browser browser = Browser.open(screen)) {
            browser.choose("piece", "overlay-main");
            double window = window(browser).get(2);
            double pixels =
                    ((Number) browser.run("return document.querySelector('.cloth svg').clientWidth;")).doubleValue();
            WebElement handle = browser.find("[data-handle='/overlay/rise'] .knob");
            browser.actions()
                    .moveToElement(handle)
                    .clickAndHold()
                    .moveByOffset(0, -10)
                    .moveByOffset(0, -10)
                    .release()
                    .perform();
            browser.settle();
            double expected = 14 + 20 / pixels * window / 10;
            double rise = Double.parseDouble(browser.spec("overlayRise", "40"));
            assertTrue(rise > 14, "risen to " + rise);
            // The drawing is fitted anew while it grows, so that the second step of the drag may be a little longer
            // than the first.
            assertEquals(expected, rise, 0.25 * (expected - 14) + 0.1);
            browser.keep("handle");
        }
    }

    /** The join lies on the slanted guide line: down is farther from the apex. */
    @ParameterizedTest
    @ArgumentsSource(ScreenSample.class)
    void movesTheJoinByKeysAndPointer(Screen screen) {
        try (Browser browser = Browser.open(screen)) {
            browser.choose("piece", "overlay-main");
            WebElement handle = browser.find("[data-handle='/overlay/join']");
            assertEquals("Join of the raised line", handle.getDomAttribute("aria-label"));
            assertEquals("0.75", handle.getDomAttribute("aria-valuenow"));
            browser.run("arguments[0].focus();", handle);
            handle.sendKeys(Keys.ARROW_DOWN, Keys.ARROW_DOWN);
            browser.settle();
            assertEquals("0.77", handle.getDomAttribute("aria-valuenow"));
            assertEquals("77 %", handle.getDomAttribute("aria-valuetext"));
            assertEquals("0.77", browser.input("f-overlay-join").getDomProperty("value"));
            WebElement knob = browser.find("[data-handle='/overlay/join'] .knob");
            browser.actions()
                    .moveToElement(knob)
                    .clickAndHold()
                    .moveByOffset(-6, -6)
                    .moveByOffset(-6, -6)
                    .release()
                    .perform();
            browser.settle();
            double join = Double.parseDouble(
                    browser.find("[data-handle='/overlay/join']").getDomAttribute("aria-valuenow"));
            assertTrue(join < 0.77 && join >= 0.1, "towards the apex: " + join);
        }
    }
}
