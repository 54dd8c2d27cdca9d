package org.capwright.contract.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.capwright.contract.RunningService;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;

/** The sleeve as it is worn: simulated from the pieces that the service drafted, turned by hand, and painted where there is no graphics card. */
class WornIT {

    private static final String STATE = "return document.querySelector('.worn3d-inner')?.dataset.state === 'settled';";

    private static void open(Browser browser) {
        browser.click("#as-worn");
        browser.await("the cloth to settle", STATE);
    }

    private static String seen(Browser browser) {
        return (String) browser.run("return document.getElementById('worn3d-canvas').toDataURL();");
    }

    @ParameterizedTest
    @ArgumentsSource(ScreenSample.class)
    void isLoadedWhenItIsOpenedKeepsTheSeamsAndTurns(Screen screen) throws Exception {
        try (Browser browser = Browser.open(screen)) {
            String loaded =
                    "return performance.getEntriesByType('resource').some(each => each.name.includes('/vendor/'));";
            assertEquals(false, browser.run(loaded), "not before it is opened");
            open(browser);
            assertEquals(true, browser.run(loaded));
            assertEquals("solid", browser.run("return document.getElementById('worn3d-canvas').dataset.kind;"));
            @SuppressWarnings("unchecked")
            List<Map<String, Object>> seams = (List<Map<String, Object>>)
                    browser.run("return JSON.parse(document.querySelector('.worn3d-inner').dataset.seams);");
            assertEquals(
                    List.of("cap", "underarm seam", "overlay"),
                    seams.stream().map(each -> each.get("name")).toList());
            for (Map<String, Object> seam : seams.subList(1, 3)) {
                assertEquals(
                        1, ((Number) seam.get("lies")).doubleValue() / ((Number) seam.get("flat")).doubleValue(), 0.01);
            }
            // A graphics card that is played by the processor complains of its own pace.
            assertEquals(
                    List.of(),
                    browser.complaints().stream()
                            .filter(each -> !each.contains("GL Driver Message"))
                            .toList());
            assertEquals(true, browser.run("return document.documentElement.scrollWidth <= innerWidth;"));
            browser.run("document.getElementById('worn3d').scrollIntoView({block: 'nearest'});");
            browser.keep("as-worn");
            turns(browser);
            Path folder = RunningService.root().resolve("contract-tests/target/screens");
            Files.writeString(
                    folder.resolve("worn-" + screen + ".txt"),
                    "settled after ms: " + browser.run("return document.querySelector('.worn3d-inner').dataset.took;")
                            + "\n");
            browser.click("#as-worn");
            assertFalse(browser.find("#worn3d").isDisplayed());
        }
    }

    /** By keys, by mouse, by a finger; two fingers bring it nearer. */
    private static void turns(Browser browser) {
        WebElement canvas = browser.find("#worn3d-canvas");
        String first = seen(browser);
        browser.run("arguments[0].focus();", canvas);
        canvas.sendKeys(Keys.ARROW_LEFT);
        String turned = seen(browser);
        assertNotEquals(first, turned);
        canvas.sendKeys("+");
        assertNotEquals(turned, seen(browser));
        canvas.sendKeys("0");
        assertEquals(first, seen(browser), "as it was");
        browser.actions()
                .moveToElement(canvas)
                .clickAndHold()
                .moveByOffset(40, 0)
                .release()
                .perform();
        String byMouse = seen(browser);
        assertNotEquals(first, byMouse);
        browser.run("const canvas = document.getElementById('worn3d-canvas'); canvas.setPointerCapture = () =>"
                + " undefined; window.touch = (type, id, x, y) => canvas.dispatchEvent(new PointerEvent(type,"
                + " {pointerId: id, pointerType: 'touch', clientX: x, clientY: y, bubbles: true}));"
                + " touch('pointerdown', 11, 100, 100); touch('pointermove', 11, 140, 100);"
                + " touch('pointerup', 11, 140, 100);");
        String byFinger = seen(browser);
        assertNotEquals(byMouse, byFinger);
        browser.run("touch('pointerdown', 11, 100, 100); touch('pointerdown', 12, 150, 100);"
                + " touch('pointermove', 12, 220, 100); touch('pointerup', 11, 100, 100);"
                + " touch('pointerup', 12, 220, 100);");
        assertNotEquals(byFinger, seen(browser));
    }

    @Test
    void followsTheMeasuresTheStiffnessAndTheLanguage() {
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            open(browser);
            String before = browser.text(".worn3d-says");
            browser.type("f-overlay-length", "25");
            browser.await(
                    "the shorter overlay",
                    "return document.querySelector('.worn3d-says').textContent !== arguments[0] &&"
                            + " document.querySelector('.worn3d-inner').dataset.state === 'settled';",
                    before);
            assertTrue(low(browser.text(".worn3d-says")) < low(before) - 5, browser.text(".worn3d-says"));
            browser.fill("worn3d-interfacing", "40");
            assertTrue(browser.text("#worn3d-error").contains("0.5 to 15"), browser.text("#worn3d-error"));
            String said = browser.text(".worn3d-says");
            browser.fill("worn3d-interfacing", "9");
            assertEquals("", browser.text("#worn3d-error"));
            assertEquals("own", browser.value("#worn3d-preset"));
            browser.await(
                    "the stiffer one",
                    "return document.querySelector('.worn3d-says').textContent !== arguments[0] &&"
                            + " document.querySelector('.worn3d-inner').dataset.state === 'settled';",
                    said);
            browser.choose("language", "fr");
            browser.await("it to be there again", STATE);
            assertTrue(
                    browser.text(".worn3d-says").contains("au-dessus du point d’épaule"), browser.text(".worn3d-says"));
            browser.choose("language", "en");
            browser.reload();
            browser.await("it to be open again", STATE);
            assertTrue(browser.text(".worn3d-says").contains("above the shoulder point"));
        }
    }

    private static double low(String says) {
        return Double.parseDouble(says.replaceAll(".*hangs ([0-9.]+) .*", "$1"));
    }

    @Test
    void isPaintedWhereThereIsNoGraphicsCard() {
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            browser.run("const get = HTMLCanvasElement.prototype.getContext;HTMLCanvasElement.prototype.getContext ="
                    + " function (kind, ...more) { return kind.startsWith('webgl') ? null : get.call(this, kind,"
                    + " ...more); };");
            open(browser);
            assertEquals("painted", browser.run("return document.getElementById('worn3d-canvas').dataset.kind;"));
            long colours = (Long) browser.run("const canvas = document.getElementById('worn3d-canvas');const data ="
                    + " new Uint32Array(canvas.getContext('2d').getImageData(0, 0, canvas.width,"
                    + " canvas.height).data.buffer);return new Set(data).size;");
            assertTrue(colours > 50, colours + " colours");
            String first = seen(browser);
            browser.click(".worn3d-turn button");
            assertNotEquals(first, seen(browser));
            browser.keep("as-worn-painted");
        }
    }
}
