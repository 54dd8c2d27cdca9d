package org.capwright.contract.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.restassured.RestAssured;
import io.restassured.path.json.JsonPath;
import java.util.List;
import org.capwright.contract.RunningService;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.openqa.selenium.Keys;

/** Jumps, the tables, findings, and what the sewing room sees. */
class GradeIT {

    private static void growth(Browser browser) {
        browser.show("spec");
        browser.click("label[for=spec-growth]");
    }

    @ParameterizedTest
    @EnumSource(Screen.class)
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
    @EnumSource(Screen.class)
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

    /** The jumps taken are the increments that the service publishes for the table, to the nearest millimetre. */
    @ParameterizedTest
    @EnumSource(Screen.class)
    void takesTheJumpsOfAPublishedTable(Screen screen) {
        JsonPath table = RestAssured.get(RunningService.address() + "/v1/size-tables/women-en-13402-3-bust")
                .jsonPath();
        List<Float> increments =
                table.getList("rows.find { it.dimension == 'upperArmGirth' }.increments.growth", Float.class);
        int first = table.getList("sizes").indexOf(table.getString("labels.'36'"));
        try (Browser browser = Browser.open(screen)) {
            browser.show("jumps");
            browser.await("the table", "return !!document.getElementById('derive-take');");
            browser.click("#derive-take");
            browser.settle();
            growth(browser);
            String[] sizes = {"36", "38", "40", "42", "44", "46"};
            for (int i = 0; i < 5; i++) {
                double shown = Double.parseDouble(
                        browser.spec("bicep", sizes[i] + "–" + sizes[i + 1]).substring(1));
                assertEquals(Math.round(increments.get(first + i)) / 10.0, shown, 1e-9);
            }
            browser.show("jumps");
            browser.run("document.querySelector('.chart').scrollIntoView({block: 'end'});");
            browser.keep("published");
        }
    }

    @ParameterizedTest
    @EnumSource(Screen.class)
    void aFindingLightsUpItsPlaceAndItsRow(Screen screen) {
        try (Browser browser = Browser.open(screen)) {
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
    @EnumSource(Screen.class)
    void aRowOfTheSpecTableShowsWhereItIsMeasured(Screen screen) {
        try (Browser browser = Browser.open(screen)) {
            browser.show("spec");
            browser.keep("spec");
            browser.find("[data-code=capHeight]").sendKeys(Keys.ENTER);
            assertFalse(browser.all("g.piece[data-piece=under-sleeve] g.guide").isEmpty());
            assertEquals("true", browser.find("[data-code=capHeight]").getDomAttribute("aria-pressed"));
        }
    }

    /** As many creases as the style has pleats; knife pleats lay one fold each. */
    @ParameterizedTest
    @EnumSource(Screen.class)
    void showsThePleatsFoldedAndTheOrderOfSewing(Screen screen) {
        try (Browser browser = Browser.open(screen)) {
            browser.show("sewing");
            assertEquals(8, browser.all(".folded-view .tick").size());
            assertFalse(browser.all("#panel-sewing .order li").isEmpty());
            browser.keep("sewing");
        }
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
}
