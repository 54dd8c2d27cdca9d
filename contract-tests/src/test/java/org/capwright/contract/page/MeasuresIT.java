package org.capwright.contract.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.restassured.RestAssured;
import io.restassured.path.json.JsonPath;
import java.util.Map;
import org.capwright.contract.RunningService;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;
import org.junit.jupiter.params.provider.CsvSource;
import org.openqa.selenium.Keys;

/** Measures: entered, stepped, refused, undone, kept and linked. */
class MeasuresIT {

    @ParameterizedTest
    @ArgumentsSource(ScreenSample.class)
    void opensWithTheDemoSleeveInAllSizes(Screen screen) {
        try (Browser browser = Browser.open(screen)) {
            assertEquals(
                    6, browser.all("g.piece[data-piece=under-sleeve] > g.size").size());
            assertEquals("36", browser.spec("bicep", "40"));
            browser.keep("opened");
            assertTrue(
                    (Boolean) browser.run("return document.documentElement.scrollWidth <= innerWidth;"),
                    "nothing hangs out at the side");
        }
    }

    /** What the page says beforehand is what the description says. A refusal names the part of it that works in the style. */
    @ParameterizedTest
    @CsvSource({
        "/sleeve/bicep, Sleeve",
        "/sleeve/capHeight, Sleeve",
        "/overlay/rise, Overlay",
        "/underSleeve/wrist, UnderSleeve"
    })
    void saysTheRangesOfTheService(String place, String schema) {
        JsonPath ranges =
                RestAssured.get(RunningService.address() + "/page/ranges.json").jsonPath();
        double least = ranges.getDouble("'" + place + "'.least");
        double greatest = ranges.getDouble("'" + place + "'.greatest");
        String field = place.substring(place.lastIndexOf('/') + 1);
        String described = RestAssured.get(RunningService.address() + "/v3/api-docs")
                .jsonPath()
                .getString("components.schemas." + schema + ".properties." + field + ".description");
        assertTrue(described.contains("rom " + Math.round(least) + " to " + Math.round(greatest) + " mm"), described);
        String body = RestAssured.get(RunningService.address() + "/examples/choir-gown.json")
                .asString()
                .replaceFirst("\"" + field + "\": *[0-9.]+", "\"" + field + "\": 9999");
        JsonPath problem = RestAssured.given()
                .contentType("application/json")
                .body(body)
                .post(RunningService.address() + "/v1/size-runs")
                .then()
                .statusCode(422)
                .extract()
                .jsonPath();
        String violation = "violations.find { it.field == '" + place + "' }";
        assertTrue(10 * problem.getDouble(violation + ".minimum") >= least, problem::prettify);
        assertTrue(10 * problem.getDouble(violation + ".maximum") <= greatest, problem::prettify);
    }

    @ParameterizedTest
    @ArgumentsSource(ScreenSample.class)
    void changesByTheArrowKeysAndTheDrawingFollows(Screen screen) {
        try (Browser browser = Browser.open(screen)) {
            String before = browser.cutLine("under-sleeve", "40");
            browser.input("f-sleeve-bicep").sendKeys(Keys.ARROW_UP);
            browser.settle();
            assertEquals("36.5", browser.value("#f-sleeve-bicep"));
            assertEquals("36.5", browser.spec("bicep", "40"));
            assertNotEquals(before, browser.cutLine("under-sleeve", "40"));
            browser.keep("changed");
        }
    }

    @ParameterizedTest
    @ArgumentsSource(ScreenSample.class)
    void changesByTheButtonsBesideAMeasure(Screen screen) {
        try (Browser browser = Browser.open(screen)) {
            browser.input("f-sleeve-bicep");
            browser.click("[data-path='/sleeve/bicep'] .step:last-child");
            browser.settle();
            assertEquals("36.5", browser.spec("bicep", "40"));
        }
    }

    @ParameterizedTest
    @ArgumentsSource(ScreenSample.class)
    void saysWhatIsWrongBesideTheFieldAndKeepsTheLastDrawing(Screen screen) {
        try (Browser browser = Browser.open(screen)) {
            String before = browser.cutLine("under-sleeve", "40");
            browser.input("f-sleeve-capHeight").sendKeys(Keys.chord(Keys.CONTROL, "a"), "60");
            browser.await(
                    "an error",
                    "return document.getElementById('f-sleeve-capHeight-error').textContent.includes(' cm');");
            assertEquals("true", browser.find("#f-sleeve-capHeight").getDomAttribute("aria-invalid"));
            assertEquals(before, browser.cutLine("under-sleeve", "40"));
            assertTrue(browser.text(".problems").contains("Cap height"));
            browser.keep("refused");
            browser.find("#f-sleeve-capHeight").sendKeys(Keys.chord(Keys.CONTROL, "z"));
            browser.await("the error to go", "return document.querySelector('.problems').textContent === '';");
            assertEquals("13.5", browser.value("#f-sleeve-capHeight"));
        }
    }

    @Test
    void saysAtOnceThatAWordIsNoNumber() {
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            browser.input("f-sleeve-bicep").sendKeys(Keys.chord(Keys.CONTROL, "a"), "wide");
            assertTrue(browser.text("#f-sleeve-bicep-error").contains("not a number"));
            assertEquals("36", browser.spec("bicep", "40"));
        }
    }

    /** 1 in = 25.4 mm (international yard and pound agreement of 1959): 36 cm are 14.173 in, nearest 14 3/16. */
    @ParameterizedTest
    @ArgumentsSource(ScreenSample.class)
    void showsInchesAsFractionsAndComesBackExactly(Screen screen) {
        try (Browser browser = Browser.open(screen)) {
            String before = browser.cutLine("under-sleeve", "40");
            browser.click("label[for=units-in]");
            browser.settle();
            assertEquals("14 3/16", browser.value("#f-sleeve-bicep"));
            assertEquals(before, browser.cutLine("under-sleeve", "40"), "the same sleeve in another unit");
            browser.show("spec");
            browser.keep("inches");
            browser.type("f-sleeve-bicep", "14 1/2");
            assertEquals("14 1/2", browser.spec("bicep", "40"));
            browser.click("label[for=units-cm]");
            browser.settle();
            assertEquals("36.83", browser.value("#f-sleeve-bicep"));
            assertEquals("45", browser.value("#f-sleeve-armhole"));
        }
    }

    @ParameterizedTest
    @ArgumentsSource(ScreenSample.class)
    void undoesAndRedoesByKeyAndByButton(Screen screen) {
        try (Browser browser = Browser.open(screen)) {
            browser.type("f-sleeve-bicep", "38");
            browser.type("f-sleeve-armhole", "46");
            browser.input("f-sleeve-length").sendKeys(Keys.chord(Keys.CONTROL, "z"));
            browser.settle();
            assertEquals("45", browser.value("#f-sleeve-armhole"));
            browser.click(".history button:first-child");
            browser.settle();
            assertEquals("36", browser.spec("bicep", "40"));
            browser.click(".history button:last-child");
            browser.settle();
            assertEquals("38", browser.spec("bicep", "40"));
            assertTrue(browser.find(".history button:last-child").isEnabled());
        }
    }

    @Test
    void aLinkShowsTheSameSleeveInAnotherBrowser() {
        String link;
        String line;
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            browser.type("f-overlay-rise", "11");
            browser.click(".chip[data-chip='36']");
            line = browser.cutLine("overlay-main", "46");
            browser.await("the address", "return location.hash.startsWith('#s=');");
            browser.runAsync("setTimeout(arguments[arguments.length - 1], 700);");
            link = browser.address();
        }
        try (Browser other = Browser.open(Screen.DESKTOP, Map.of(), link)) {
            assertEquals("11", other.value("#f-overlay-rise"));
            assertEquals(line, other.cutLine("overlay-main", "46"));
            assertEquals("false", other.find(".chip[data-chip='36']").getDomAttribute("aria-pressed"));
        }
    }

    @Test
    void isStillThereWhenTheBareAddressIsOpenedAgain() {
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            browser.type("f-overlay-rise", "12");
            browser.runAsync("setTimeout(arguments[arguments.length - 1], 700);");
            browser.run("history.replaceState(null, '', location.pathname);");
            browser.reload();
            assertEquals("12", browser.value("#f-overlay-rise"));
        }
    }

    @ParameterizedTest
    @ArgumentsSource(ScreenSample.class)
    void letsTheCapHeightFollowFromTheEase(Screen screen) {
        try (Browser browser = Browser.open(screen)) {
            browser.input("a-follows-capHeight").sendKeys(Keys.SPACE);
            browser.settle();
            assertTrue(browser.all("#f-sleeve-capHeight").isEmpty());
            browser.type("f-sleeve-capEase", "4%");
            assertEquals("1.8", browser.spec("capEase", "40"), "4 % of an armhole of 45 cm");
        }
    }

    @ParameterizedTest
    @ArgumentsSource(ScreenSample.class)
    void takesTheOverlayAwayAndGivesItBack(Screen screen) {
        try (Browser browser = Browser.open(screen)) {
            browser.input("s-overlay").sendKeys(Keys.SPACE);
            browser.settle();
            browser.await("one piece", "return document.querySelectorAll('g.piece').length === 1;");
            browser.input("s-overlay").sendKeys(Keys.SPACE);
            browser.settle();
            browser.await("four pieces", "return document.querySelectorAll('g.piece').length === 4;");
        }
    }

    @Test
    void changesTheSizesAndKeepsTheJumpsOfThoseThatStay() {
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            browser.type("f-sizes", "38 40 42" + Keys.TAB);
            browser.await(
                    "three sizes",
                    "return document.querySelectorAll('g.piece[data-piece=under-sleeve] > g.size').length === 3;");
            browser.settle();
            assertEquals("34.7", browser.spec("bicep", "38"));
        }
    }
}
