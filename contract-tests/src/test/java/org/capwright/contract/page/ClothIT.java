package org.capwright.contract.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.restassured.RestAssured;
import io.restassured.path.json.JsonPath;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.util.regex.Pattern;
import org.capwright.contract.RunningService;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;
import org.openqa.selenium.Keys;

/** What to buy, the lays, and the sheets of paper. */
class ClothIT {

    private static Browser open(Screen screen) {
        Browser browser = Browser.open(screen);
        browser.show("cloth");
        return browser;
    }

    private static void lays(Browser browser) {
        browser.await(
                "the lays",
                "const img = document.querySelector('.lay img');"
                        + "return !!img && img.complete && img.naturalWidth > 100 && document.querySelector('.cloth-wait').hidden"
                        + " && !document.querySelector('.lays').classList.contains('stale');");
    }

    private static JsonPath reckoned(String materials) throws IOException {
        String style = Files.readString(RunningService.root().resolve("examples/choir-gown.json"));
        String body = style.substring(0, style.lastIndexOf('}')) + ",\"materials\":" + materials + "}";
        return JsonPath.from(RestAssured.given()
                .contentType("application/json")
                .body(body)
                .post(RunningService.address() + "/v1/materials")
                .asString());
    }

    private static String bought(Browser browser, int row) {
        return (String) browser.run(
                "return document.querySelectorAll('.buy-table tbody tr')[arguments[0]].querySelector('strong').textContent;",
                row);
    }

    @ParameterizedTest
    @ArgumentsSource(ScreenSample.class)
    void tellsWhatToBuyAndDrawsTheLay(Screen screen) throws IOException {
        JsonPath asked = reckoned(
                "{\"fabrics\":[{\"material\":\"main\",\"width\":150,\"shrinkageLengthwise\":0.03,\"waste\":0.05}]}");
        try (Browser browser = open(screen)) {
            browser.click("#cloth-start");
            lays(browser);
            browser.fill("f-materials-fabrics-0-width", "150");
            browser.await(
                    "the wider cloth",
                    "return document.querySelectorAll('.buy-table tbody tr')[0].children[2].textContent === '150';");
            lays(browser);
            assertEquals(asked.getDouble("cloths[0].length"), Double.parseDouble(bought(browser, 0)), 1e-9);
            String first = browser.find(".lay img").getDomAttribute("src");
            browser.click(".buy-table tbody tr:nth-child(2) .rowname");
            lays(browser);
            assertFalse(first.equals(browser.find(".lay img").getDomAttribute("src")), "another lay is drawn");
            browser.run("document.querySelector('.lay').scrollIntoView({block: 'end'});");
            browser.keep("lay");
        }
    }

    /** One lay per cloth for the whole order, as the service reckons it. */
    @Test
    void ordersAreLaidTogetherAndChangesCanBeUndone() throws IOException {
        try (Browser browser = open(Screen.DESKTOP)) {
            browser.find("#cloth-start").sendKeys(Keys.ENTER);
            lays(browser);
            int each = browser.all(".buy-table tbody tr").size();
            assertEquals(6 * 3, each, "six sizes, three materials");
            browser.fill("f-materials-order-38", "2");
            browser.fill("f-materials-order-40", "3");
            // The first of the two orders may have been laid by itself already.
            browser.await(
                    "one lay of both",
                    "const name = document.querySelector('.buy-table tbody tr .rowname');"
                            + " return document.querySelectorAll('.buy-table tbody tr').length === 3 && name.textContent.trim() === '2 × 38, 3 × 40';");
            lays(browser);
            JsonPath asked = reckoned(
                    "{\"fabrics\":[{\"material\":\"main\",\"width\":140,\"shrinkageLengthwise\":0.03,\"waste\":0.05}],"
                            + "\"order\":{\"38\":2,\"40\":3}}");
            assertEquals(asked.getDouble("cloths[0].length"), Double.parseDouble(bought(browser, 0)), 1e-9);
            browser.click(".fabric:nth-child(3) > button");
            browser.await("two cloths", "return document.querySelectorAll('.buy-table tbody tr').length === 2;");
            browser.actions()
                    .keyDown(Keys.CONTROL)
                    .sendKeys("z")
                    .keyUp(Keys.CONTROL)
                    .perform();
            browser.await("three again", "return document.querySelectorAll('.buy-table tbody tr').length === 3;");
        }
    }

    @Test
    void aLongSearchCanBeCalledOff() {
        try (Browser browser = open(Screen.DESKTOP)) {
            browser.click("#cloth-start");
            lays(browser);
            browser.choose("f-materials-effort", "thorough");
            browser.fill("f-materials-order-38", "400");
            browser.await("the search", "return !document.querySelector('.cloth-wait').hidden;");
            browser.await(
                    "how far it is",
                    "const bar = document.querySelector('.cloth-wait progress'); return bar.value > 0 && bar.value < 1;");
            browser.run("document.getElementById('cloth-cancel').click();");
            browser.await(
                    "the end", "return document.querySelector('#panel-cloth .says').textContent === 'Cancelled.';");
            browser.run("return new Promise(done => setTimeout(done, 600));");
            assertFalse(browser.find(".cloth-wait").isDisplayed(), "nothing asks for it again");
            browser.show("spec");
            browser.show("cloth");
            browser.await("the search again", "return !document.querySelector('.cloth-wait').hidden;");
        }
    }

    @Test
    void namesTheFieldThatIsWrong() {
        try (Browser browser = open(Screen.DESKTOP)) {
            browser.click("#cloth-start");
            lays(browser);
            browser.fill("f-materials-fabrics-0-width", "2");
            browser.await(
                    "what is wrong",
                    "return /Cloth 1, Width: Out of range: 2 cm/.test(document.querySelector('#panel-cloth .says').textContent);");
        }
    }

    /** The number said beforehand is the number of page objects of the PDF (ISO 32000-1, 7.7.3.3). */
    @ParameterizedTest
    @ArgumentsSource(ScreenSample.class)
    void tellsTheNumberOfPagesBeforehand(Screen screen) throws IOException {
        try (Browser browser = Browser.open(screen)) {
            browser.show("files");
            browser.choose("paper", "a3");
            browser.await(
                    "the pages", "return /^\\d+ pages?$/.test(document.querySelector('.file-pages').textContent);");
            browser.choose("printed", "base");
            browser.await(
                    "the pages anew",
                    "return /^\\d+ pages?$/.test(document.querySelector('.file-pages').textContent);");
            int said = Integer.parseInt(browser.text(".file-pages").replaceAll("\\D", ""));
            browser.click("[data-kind='application/pdf']");
            String pdf = new String(browser.downloaded(".pdf"), StandardCharsets.ISO_8859_1);
            long pages = Pattern.compile("/Type\\s*/Page(?![a-zA-Z])")
                    .matcher(pdf)
                    .results()
                    .count();
            assertTrue(pages > 0);
            assertEquals(pages, said);
        }
    }
}
