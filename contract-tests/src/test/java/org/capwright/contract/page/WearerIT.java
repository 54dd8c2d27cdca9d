package org.capwright.contract.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.restassured.RestAssured;
import io.restassured.path.json.JsonPath;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.capwright.contract.RunningService;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;
import org.junit.jupiter.params.provider.CsvSource;
import org.openqa.selenium.Keys;

/** One wearer: measurements in, a sleeve out, and nothing of them kept. */
class WearerIT {

    private static Browser open(Screen screen) {
        Browser browser = Browser.open(screen);
        browser.task("wearer");
        return browser;
    }

    private static void measure(Browser browser, String dimension, String value) {
        browser.fill("w-" + dimension, value);
    }

    private static void sleeveIsThere(Browser browser) {
        browser.await("the sleeve", "return !!document.querySelector('.plan g.piece path.cut');");
    }

    private static JsonPath asked(String wearer) {
        return JsonPath.from(RestAssured.given()
                .contentType("application/json")
                .body(
                        "{\"units\":\"cm\",\"sizeTable\":\"women-en-13402-3-bust\",\"wearer\":" + wearer
                                + ",\"underSleeve\":{},\"sleeve\":{\"capOutward\":1.9,\"capInward\":1.2},"
                                + "\"ease\":{\"bicep\":7,\"armhole\":\"14%\",\"capEase\":\"4%\",\"length\":1,\"elbow\":\"15%\",\"wrist\":6}}")
                .post(RunningService.address() + "/v1/made-to-measure")
                .asString());
    }

    @ParameterizedTest
    @ArgumentsSource(ScreenSample.class)
    void draftsForOneWearerAndSaysWhatWasEstimated(Screen screen) {
        JsonPath answer = asked("{\"bustGirth\":96,\"stature\":168,\"upperArmGirth\":31.5,\"armLength\":59}");
        String size = answer.getString("nearestSize.size");
        assertEquals(
                size,
                RestAssured.get(RunningService.address() + "/v1/size-tables/women-en-13402-3-bust")
                        .path("labels.'42'"));
        double wrist = answer.getDouble("estimates.find { it.dimension == 'wristGirth' }.value");
        try (Browser browser = open(screen)) {
            measure(browser, "bustGirth", "96");
            measure(browser, "stature", "168");
            measure(browser, "upperArmGirth", "31.5");
            measure(browser, "armLength", "59");
            sleeveIsThere(browser);
            browser.await(
                    "the nearest size",
                    "return !document.querySelector('.wearer').classList.contains('asking')"
                            + " && document.querySelector('.fitted-words').textContent.includes(arguments[0]);",
                    "Nearest size: 42 (" + size + ")");
            // The nearest size may be known before the last of the measurements was sent.
            browser.await(
                    "the estimate from all measurements",
                    "return Math.abs(Number(document.querySelector('#w-wristGirth').placeholder.replace('≈ ', ''))"
                            + " - arguments[0]) < 0.005;",
                    wrist);
            assertTrue(browser.text("[data-measure=wristGirth]").contains("Estimated"), "marked as an estimate");
            assertEquals(
                    answer.getList("departures").size(),
                    browser.all(".fitted-words table")
                            .get(0)
                            .findElements(org.openqa.selenium.By.cssSelector("tbody tr"))
                            .size());
            if (screen == Screen.DESKTOP) {
                worn(browser);
            }
            browser.run("window.scrollTo(0, 0);");
            browser.keep("wearer");
        }
    }

    /** The sleeve is seen on the arm that was measured. */
    private static void worn(Browser browser) {
        String settled = "return document.querySelector('.fitted-worn .worn3d-inner')?.dataset.state === 'settled';";
        browser.click("#wearer-worn");
        browser.await("the worn sleeve", settled);
        assertTrue(((String) browser.run("return document.querySelector('.fitted-worn').textContent;"))
                .contains("built from the measurements of this wearer"));
        String before =
                (String) browser.run("return document.querySelector('.fitted-worn .worn3d-inner').dataset.top;");
        assertTrue(Double.parseDouble(before) > 0, "the overlay stands above the shoulder point, metres: " + before);
        browser.keep("wearer-worn");
    }

    /** 36 cm of upper arm beside 96 cm of bust lies outside what the survey would let pass. */
    @ParameterizedTest
    @ArgumentsSource(ScreenSample.class)
    void questionsWhatIsUnusualUntilItIsConfirmed(Screen screen) {
        try (Browser browser = open(screen)) {
            measure(browser, "bustGirth", "96");
            measure(browser, "stature", "168");
            measure(browser, "upperArmGirth", "36");
            browser.await("the question", "return !!document.querySelector('[data-measure=upperArmGirth].doubted');");
            assertTrue(browser.text("[data-measure=upperArmGirth]").contains("Measure again"));
            assertTrue(browser.all(".plan g.piece").isEmpty(), "nothing is drawn while something is in doubt");
            browser.find("#w-upperArmGirth-confirm").sendKeys(Keys.SPACE);
            sleeveIsThere(browser);
            assertFalse(browser.find("[data-measure=upperArmGirth]")
                    .getDomAttribute("class")
                    .contains("doubted"));
        }
    }

    /** Digits exchanged, 69 for 96: the page names the one measurement to take again, in the reader's language, and what the others let expect; put right, all go together. */
    @ParameterizedTest
    @CsvSource({
        "en, Measure this one again, Bust girth, How the measurements go together, Beyond everybody surveyed",
        "fr, Reprenez celle-ci, Tour de poitrine, Comment les mesures vont ensemble, Au-delà de toutes les personnes"
                + " mesurées"
    })
    void namesTheMeasurementToTakeAgain(String language, String again, String name, String together, String beyond) {
        try (Browser browser = open(Screen.DESKTOP)) {
            browser.choose("language", language);
            browser.task("wearer");
            measure(browser, "bustGirth", "69");
            measure(browser, "stature", "168");
            measure(browser, "upperArmGirth", "31.5");
            measure(browser, "elbowGirth", "26");
            browser.await(
                    "the question",
                    "return document.querySelector('.fitted-head').textContent.includes(arguments[0]);",
                    again);
            assertTrue(browser.text(".fitted-head").contains(name), browser.text(".fitted-head"));
            assertEquals(1, browser.all(".card.doubted").size(), "it alone is marked");
            assertEquals(1, browser.all("[data-measure=bustGirth].doubted").size());
            String expected = browser.text("[data-measure=bustGirth] .card-says");
            Matcher range =
                    Pattern.compile("(\\d+[.,]?\\d*) (?:to|à) (\\d+[.,]?\\d*)").matcher(expected);
            assertTrue(range.find(), expected);
            assertTrue(Double.parseDouble(range.group(1).replace(',', '.')) < 96, expected);
            assertTrue(Double.parseDouble(range.group(2).replace(',', '.')) > 96, expected);
            measure(browser, "bustGirth", "96");
            sleeveIsThere(browser);
            browser.await(
                    "the measurements beside one another",
                    "return document.querySelector('.fitted-words').textContent.includes(arguments[0]);",
                    together);
            assertEquals(4, browser.all(".judged tbody tr").size());
            assertEquals(0, browser.all(".extrapolated").size());
            measure(browser, "bustGirth", "128");
            measure(browser, "upperArmGirth", "44");
            measure(browser, "elbowGirth", "31");
            browser.await(
                    "that nobody so large was surveyed",
                    "return (document.querySelector('.extrapolated')?.textContent ?? '').includes(arguments[0]);",
                    beyond);
            browser.fill("w-ease-bicep", "-20%");
            browser.await("that the arm does not pass", "return !!document.querySelector('.fit .finding.stop');");
        }
    }

    @Test
    void keepsNothingOfTheWearer() {
        try (Browser browser = open(Screen.DESKTOP)) {
            measure(browser, "bustGirth", "97.31");
            measure(browser, "stature", "168");
            sleeveIsThere(browser);
            browser.find("#units-mm").sendKeys(Keys.SPACE);
            browser.await("millimetres", "return document.getElementById('w-bustGirth').value === '973.1';");
            browser.await("what is kept", "return Object.values(localStorage).some(text => text.includes('\"mm\"'));");
            Object kept = browser.runAsync(
                    "const done = arguments[arguments.length - 1];import('/page/common/address.js').then(each =>"
                            + " each.decode(location.hash)).then(state => done(JSON.stringify(state) +"
                            + " JSON.stringify({...localStorage, ...sessionStorage})));");
            assertTrue(kept.toString().contains("\"task\":\"wearer\""), kept.toString());
            for (String secret : List.of("973", "97.31", "1680", "bustGirth", "stature\"")) {
                assertFalse(kept.toString().contains(secret), secret + " is in " + kept);
            }
            browser.reload();
            browser.await("the form", "return !!document.getElementById('w-bustGirth');");
            assertEquals("", browser.value("#w-bustGirth"));
        }
    }

    @Test
    void takesAwayTheSleeveOfTheWearer() throws Exception {
        try (Browser browser = open(Screen.DESKTOP)) {
            measure(browser, "bustGirth", "96");
            measure(browser, "stature", "168");
            sleeveIsThere(browser);
            browser.choose("wearer-paper", "letter");
            browser.click("#desk [data-kind='application/pdf']");
            String pdf = new String(browser.downloaded(".pdf"), StandardCharsets.ISO_8859_1);
            assertTrue(pdf.startsWith("%PDF-") && pdf.contains("612"), "a letter sheet is 612 points wide");
        }
    }

    @Test
    void isFilledInByKeyboardAlone() {
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            browser.tabTo("document.activeElement.dataset.task === 'wearer'");
            browser.actions().sendKeys(Keys.ENTER).perform();
            browser.await("the form", "return !!document.getElementById('w-bustGirth');");
            browser.tabTo("document.activeElement.id === 'w-bustGirth'");
            browser.actions().sendKeys("96", Keys.TAB, "168").perform();
            sleeveIsThere(browser);
            browser.actions().sendKeys(Keys.ARROW_UP).perform();
            assertEquals("168.5", browser.value("#w-stature"));
            browser.tabTo("document.activeElement.dataset.kind === 'image/svg+xml' &&"
                    + " !!document.activeElement.closest('#desk')");
        }
    }

    /** Every measurement that the service takes has a field and a drawing of its own. */
    @Test
    void drawsHowEachMeasurementIsTaken() {
        List<String> taken = JsonPath.from(RestAssured.get(RunningService.address() + "/v3/api-docs")
                        .asString())
                .getMap("components.schemas.Wearer.properties")
                .keySet()
                .stream()
                .map(Object::toString)
                .toList();
        assertTrue(taken.size() > 10, taken.toString());
        try (Browser browser = open(Screen.DESKTOP)) {
            for (String dimension : taken) {
                assertEquals(1, browser.all("#w-" + dimension).size(), dimension);
                assertEquals(
                        1,
                        browser.all("[data-measure=" + dimension + "] [data-figure=" + dimension + "] .tape")
                                .size(),
                        dimension);
            }
        }
    }
}
