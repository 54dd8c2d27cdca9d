package org.capwright.contract.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.restassured.RestAssured;
import io.restassured.path.json.JsonPath;
import java.io.IOException;
import java.nio.file.Files;
import java.util.List;
import org.capwright.contract.RunningService;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;
import org.openqa.selenium.Keys;

/** Jumps, the tables, findings, and what the sewing room sees. */
class GradeIT {

    private static void growth(Browser browser) {
        browser.show("spec");
        browser.click("label[for=spec-growth]");
    }

    @ParameterizedTest
    @ArgumentsSource(ScreenSample.class)
    void aJumpBreaksAtASize(Screen screen) {
        try (Browser browser = Browser.open(screen)) {
            browser.show("jumps");
            browser.find("#f-grade-bicep-4").sendKeys(Keys.chord(Keys.CONTROL, "a"), "1.6");
            browser.settle();
            assertEquals("", browser.value("#f-grade-bicep"), "no longer one jump for all");
            browser.keep("jumps");
            growth(browser);
            assertEquals("+1.3", browser.spec("bicep", "42–44"));
            assertEquals("+1.6", browser.spec("bicep", "44–46"));
            browser.show("jumps");
            browser.find("#f-grade-bicep").sendKeys("1.4");
            browser.settle();
            growth(browser);
            assertEquals("+1.4", browser.spec("bicep", "44–46"));
        }
    }

    @ParameterizedTest
    @ArgumentsSource(ScreenSample.class)
    void gradesOneMoreDimensionAndOneLess(Screen screen) {
        try (Browser browser = Browser.open(screen)) {
            browser.show("jumps");
            browser.choose("grade-add", "frontGap");
            browser.click(".adding button");
            browser.settle();
            browser.find("#f-grade-frontGap").sendKeys(Keys.ARROW_UP);
            browser.settle();
            assertEquals("0.1", browser.value("#f-grade-frontGap-0"));
            browser.click(".jump-row[data-grade=frontGap] button");
            browser.settle();
            assertTrue(browser.all("#f-grade-frontGap").isEmpty());
        }
    }

    /** The jumps taken are those that the service derives from the table. */
    @ParameterizedTest
    @ArgumentsSource(ScreenSample.class)
    void derivesTheJumpsFromAPublishedTable(Screen screen) throws IOException {
        String style = Files.readString(RunningService.root().resolve("examples/choir-gown.json"));
        JsonPath rules = RestAssured.given()
                .contentType("application/json")
                .body("{\"sizeRun\":" + style
                        + ",\"ease\":{\"policy\":\"growing\",\"perSize\":0.2},\"grid\":\"0.25 cm\"}")
                .post(RunningService.address() + "/v1/grade-rules")
                .then()
                .statusCode(200)
                .extract()
                .jsonPath();
        List<Double> bicep = rules.getList("derivations.find { it.dimension == 'bicep' }.rounded", Double.class);
        try (Browser browser = Browser.open(screen)) {
            browser.show("jumps");
            browser.await("the form", "return !!document.getElementById('derive-take');");
            browser.choose("derive-policy", "growing");
            browser.fill("derive-ease", "0.2");
            browser.choose("derive-grid", "1");
            browser.find("#derive-take").sendKeys(Keys.ENTER);
            browser.await("the account", "return !!document.querySelector('.account tbody tr');");
            browser.settle();
            assertEquals(
                    rules.getList("derivations").size(),
                    browser.all(".account tbody tr").size());
            browser.run("document.querySelector('.account').scrollIntoView({block: 'center'});");
            browser.keep("derived");
            growth(browser);
            String[] sizes = {"36", "38", "40", "42", "44", "46"};
            for (int i = 0; i < 5; i++) {
                double shown = Double.parseDouble(
                        browser.spec("bicep", sizes[i] + "–" + sizes[i + 1]).substring(1));
                assertEquals(bicep.get(i + 1) - bicep.get(i), shown, 0.005);
            }
            browser.actions()
                    .keyDown(Keys.CONTROL)
                    .sendKeys("z")
                    .keyUp(Keys.CONTROL)
                    .perform();
            browser.settle();
            assertEquals("+1.3", browser.spec("bicep", "36–38"), "one step back");
            browser.show("jumps");
            browser.run("document.querySelector('.chart').scrollIntoView({block: 'end'});");
            browser.keep("published");
        }
    }

    /** A bicep that hardly grows from 38 to 40 is a stop; the change proposed clears it, and can be undone. */
    @ParameterizedTest
    @ArgumentsSource(ScreenSample.class)
    void appliesTheChangeThatClearsAStop(Screen screen) {
        try (Browser browser = Browser.open(screen)) {
            browser.show("jumps");
            browser.find("#f-grade-bicep-1").sendKeys(Keys.chord(Keys.CONTROL, "a"), "0.1");
            browser.settle();
            browser.show("findings");
            browser.await("the proposal", "return !!document.getElementById('what-if-apply');");
            assertFalse(browser.all(".finding.stop").isEmpty());
            browser.run("window.scrollTo(0, 0);");
            browser.keep("what-if");
            browser.find("#what-if-apply").sendKeys(Keys.ENTER);
            browser.settle();
            assertTrue(browser.all(".finding.stop").isEmpty(), "nothing to stop at");
            browser.actions()
                    .keyDown(Keys.CONTROL)
                    .sendKeys("z")
                    .keyUp(Keys.CONTROL)
                    .perform();
            browser.settle();
            assertFalse(browser.all(".finding.stop").isEmpty(), "back again");
        }
    }

    @ParameterizedTest
    @ArgumentsSource(ScreenSample.class)
    void aFindingLightsUpItsPlaceAndItsRow(Screen screen) {
        try (Browser browser = Browser.found(screen)) {
            browser.show("findings");
            browser.keep("findings");
            assertTrue(browser.all("g.guide").isEmpty());
            browser.click(".finding.caution .finding-button");
            assertFalse(browser.all("g.guide path").isEmpty());
            assertFalse(browser.all("#panel-spec tr.lit").isEmpty());
            browser.keep("lit");
            browser.find(".finding.caution .finding-button").sendKeys(Keys.ENTER);
            assertTrue(browser.all("g.guide").isEmpty());
        }
    }

    @ParameterizedTest
    @ArgumentsSource(ScreenSample.class)
    void aRowOfTheSpecTableShowsWhereItIsMeasured(Screen screen) {
        try (Browser browser = Browser.found(screen)) {
            browser.show("spec");
            browser.keep("spec");
            browser.find("[data-code=capHeight]").sendKeys(Keys.ENTER);
            assertFalse(browser.all("g.piece[data-piece=under-sleeve] g.guide").isEmpty());
            assertEquals("true", browser.find("[data-code=capHeight]").getDomAttribute("aria-pressed"));
            browser.find("[data-code=capHeight]").sendKeys(Keys.ENTER);
        }
    }

    /** As many creases as the style has pleats; knife pleats lay one fold each. */
    @ParameterizedTest
    @ArgumentsSource(ScreenSample.class)
    void showsThePleatsFoldedAndTheOrderOfSewing(Screen screen) {
        try (Browser browser = Browser.found(screen)) {
            browser.show("sewing");
            assertEquals(8, browser.all(".folded-view .tick").size());
            assertFalse(browser.all("#panel-sewing .order li").isEmpty());
            browser.keep("sewing");
        }
    }

    /** The sketch has the proportions of the style: its lengths are those of the spec table, its folds those of the pleats. */
    @ParameterizedTest
    @ArgumentsSource(ScreenSample.class)
    void sketchesHowItIsWorn(Screen screen) {
        try (Browser browser = Browser.open(screen)) {
            browser.show("sewing");
            assertEquals(8, browser.all(".worn-fold").size());
            double top = worn(browser, "top");
            assertEquals(340, worn(browser, "overlay"), 0.5, "34 cm of overlay");
            assertEquals(600, worn(browser, "sleeve"), 0.5, "60 cm of sleeve");
            browser.run("document.querySelector('.worn-view').scrollIntoView({block: 'center'});");
            browser.keep("worn");
            browser.type("f-overlay-rise", "18");
            browser.show("sewing");
            assertTrue(worn(browser, "top") < top - 5, "a higher rise stands higher");
        }
    }

    private static double worn(Browser browser, String what) {
        String script = switch (what) {
            case "overlay" -> "return document.querySelectorAll('.worn-measure')[0].getBBox().height;";
            case "sleeve" -> "return document.querySelectorAll('.worn-measure')[1].getBBox().height;";
            default -> "return document.querySelector('.worn-overlay').getBBox().y;";
        };
        return ((Number) browser.run(script)).doubleValue();
    }

    @Test
    void saysWhereTheBadJumpIs() {
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            browser.show("jumps");
            browser.find("#f-grade-wrist").sendKeys(Keys.chord(Keys.CONTROL, "a"), "25");
            browser.await("an error", "return document.querySelector('.problems').textContent !== '';");
            assertFalse(browser.text("#f-grade-wrist-error").isEmpty());
        }
    }

    /** A front of its own grows with the whole: the run stays as fit to be cut as it was, and both can be graded at once. */
    @Test
    void aFrontOfItsOwnGrowsWithTheWhole() {
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            browser.input("s-halves").click();
            browser.settle();
            assertTrue(browser.all(".finding.stop").isEmpty(), "nothing to stop at");
            browser.show("jumps");
            assertEquals("0.64", browser.value("#f-grade-frontWidth"), "49 % of 1.3");
            browser.click("[data-grade=frontWidth] .square");
            assertFalse(browser.all("#grade-add option[value=frontWidth]").isEmpty(), "can be added again");
        }
    }

    @Test
    void aRunOfOneSizeNeedsNoJumps() {
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            browser.show("jumps");
            browser.find("#f-grade-bicep-1").sendKeys(Keys.chord(Keys.CONTROL, "a"), "1.6");
            browser.settle();
            browser.input("f-sizes").sendKeys(Keys.chord(Keys.CONTROL, "a"), "40", Keys.TAB);
            browser.settle();
            browser.await("no complaint", "return document.querySelector('.problems').textContent === '';");
            assertEquals("36", browser.spec("bicep", "40"));
        }
    }

    /** The outline hangs from the ends of the seam, front and back, and stands out as far down as the raised line reaches. */
    @Test
    void theSketchShowsGapsAndJoinAndEndsWithACapAlone() {
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            browser.show("sewing");
            String before = sides(browser);
            browser.type("f-overlay-frontGap", "2");
            String front = sides(browser);
            assertNotEquals(before.split("[|]")[1], front.split("[|]")[1], "the front hangs lower");
            assertEquals(before.split("[|]")[0], front.split("[|]")[0], "the back as before");
            browser.type("f-overlay-join", "0.6");
            assertNotEquals(front.split("[|]")[0], sides(browser).split("[|]")[0], "the crown is shorter");
            browser.input("s-overlay").click();
            browser.settle();
            browser.input("s-under").click();
            browser.settle();
            assertEquals(
                    true,
                    browser.run("const sleeves = [...document.querySelectorAll('.worn-sleeve')];"
                            + "return sleeves.length === 1 && sleeves[0].getBBox().height < 250;"),
                    "a cap alone, no long sleeve below it");
        }
    }

    private static String sides(Browser browser) {
        return (String) browser.run("return [...document.querySelectorAll('.worn-overlay path')].map(each =>"
                + " each.getAttribute('d')).join('|');");
    }

    @Test
    void theHeadingsOfATableStay() {
        try (Browser browser = Browser.found(Screen.DESKTOP)) {
            browser.show("spec");
            browser.run("document.querySelector('.dock').scrollTop = 300;");
            assertTrue((Boolean) browser.run("const dock = document.querySelector('.dock').getBoundingClientRect();"
                    + "const head = document.querySelector('#panel-spec thead th').getBoundingClientRect();"
                    + "return document.querySelector('.dock').scrollTop > 100 && head.top >= dock.top - 1;"));
        }
    }
}
