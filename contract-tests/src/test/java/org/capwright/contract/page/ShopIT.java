package org.capwright.contract.page;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.restassured.response.Response;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.util.List;
import java.util.zip.GZIPOutputStream;
import org.capwright.contract.RunningService;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;

/** The example shop with the form in it: another origin, a service with keys, a publishable one in the open. Wearers are invented. */
class ShopIT {

    private static final String OPERATOR = "an operator's secret of some length";

    private static final String EASE = "\"ease\":{\"bicep\":7,\"elbow\":\"15%\",\"wrist\":6,\"length\":1,"
            + "\"armhole\":\"14%\",\"capEase\":\"4%\"},";

    private static RunningService service;
    private static ExampleShop shop;
    private static String desk;

    @BeforeAll
    static void openTheShop() throws IOException {
        service = RunningService.started("-Dcapwright.operator-key=" + OPERATOR);
        shop = new ExampleShop();
        desk = key(OPERATOR, "{\"tenant\":\"choir\",\"name\":\"desk\",\"scopes\":[\"read\",\"style\",\"order\"]}");
        String admin = key(OPERATOR, "{\"tenant\":\"choir\",\"name\":\"admin\",\"scopes\":[\"admin\"]}");
        String gown = Files.readString(RunningService.root().resolve("examples/choir-gown.json"));
        with(desk)
                .body(gown.replaceFirst("\\{", "{" + EASE))
                .put("/v1/styles/choir-gown")
                .then()
                .statusCode(201);
        shop.open(service.url(), key(admin, "{\"name\":\"shop form\",\"origins\":[\"" + shop.origin() + "\"]}"));
    }

    @AfterAll
    static void closeTheShop() {
        shop.close();
        service.stop();
    }

    private static io.restassured.specification.RequestSpecification with(String key) {
        return given().baseUri(service.url()).contentType("application/json").header("Authorization", "Bearer " + key);
    }

    private static String key(String by, String body) {
        return with(by).body(body)
                .post("/v1/keys")
                .then()
                .statusCode(201)
                .extract()
                .path("secret");
    }

    private static Browser visited(Screen screen, String scheme) {
        Browser browser = Browser.blank(screen);
        browser.scheme(scheme);
        browser.visit(shop.origin() + "/");
        browser.await("the form", "return !!" + inForm("form") + ";");
        return browser;
    }

    /** What is in the element lies in a tree of its own. */
    private static String inForm(String selector) {
        return "document.querySelector('sleeve-measure')?.shadowRoot?.querySelector('" + selector + "')";
    }

    private static String text(Browser browser, String selector) {
        return (String) browser.run("return " + inForm(selector) + "?.textContent ?? '';");
    }

    private static String focused() {
        return "(document.activeElement.shadowRoot?.activeElement ?? document.activeElement).id";
    }

    private static void type(Browser browser, CharSequence... keys) {
        browser.actions().sendKeys(keys).perform();
    }

    private static void measure(Browser browser, String dimension, String value) {
        browser.tabTo(focused() + " === '" + dimension + "'");
        type(browser, value);
    }

    private static void replace(Browser browser, String dimension, String value) {
        ((WebElement) browser.run("return " + inForm("#" + dimension) + ";"))
                .sendKeys(Keys.chord(Keys.CONTROL, "a"), value);
    }

    private static void sketched(Browser browser) {
        browser.await(
                "the sketch",
                "return !!" + inForm(".room:not(.behind) svg.worn") + " && !!" + inForm(".status") + ".textContent;");
    }

    private static void accessible(Browser browser, String where) {
        browser.run("window.scrollTo(0, 0);");
        assertEquals(List.of(), browser.runAsync(AccessIT.AXE), where);
    }

    /** From the first visit to an order in the workroom, by keyboard alone. */
    @Test
    void theFirstOrderIsPlacedByKeyboardAlone() {
        try (Browser browser = visited(Screen.DESKTOP, "light")) {
            browser.run(AccessIT.axe());
            accessible(browser, "empty");
            browser.run("window.scrollTo(0, 0);");
            measure(browser, "upperArmGirth", "31.43219");
            measure(browser, "armLength", "59");
            measure(browser, "elbowGirth", "10 1/4 in");
            measure(browser, "bustGirth", "96");
            measure(browser, "stature", "168");
            sketched(browser);
            browser.await("the estimate", "return " + inForm("#wristGirth") + ".placeholder.startsWith('≈');");
            assertTrue(text(browser, "#wristGirth-says").contains("Not measured: about"), "marked as an estimate");
            assertEquals("These measurements go together.", text(browser, ".status"));
            accessible(browser, "measured");
            browser.keep("shop-form");
            browser.tabTo(focused() + " === '' && document.activeElement.shadowRoot?.activeElement?.type === 'submit'");
            type(browser, Keys.ENTER);
            browser.await("the order", "return document.querySelectorAll('#basket li').length === 1;");
            assertEquals("title", browser.run("return " + focused() + ";"), "and is told where to read on");
            assertTrue(text(browser, "#title").startsWith("Thank you, your order is taken"), text(browser, "#title"));
            accessible(browser, "ordered");
            String basket = browser.text("#basket li");
            Response orders = with(desk).get("/v1/orders");
            orders.then().statusCode(200);
            String id = orders.path("orders[0].id");
            assertTrue(basket.contains(id) && basket.contains("taken"), basket);
            Response measured = with(desk).get("/v1/orders/" + id + "/measurements");
            assertEquals(31.43219, measured.<Number>path("wearer.upperArmGirth").doubleValue(), 1e-4);
            assertEquals(
                    10.25 * 2.54, measured.<Number>path("wearer.elbowGirth").doubleValue(), 1e-6, "inches");
            assertEquals(200, with(desk).get("/v1/orders/" + id + "/files/pdf").statusCode());
            assertEquals(
                    0L,
                    browser.run("return localStorage.length + sessionStorage.length + document.cookie.length;"),
                    "nothing of a body is kept in the browser");
            assertFalse(service.logged().contains("43219"), "nor logged by the service");
            assertEquals(List.of(), browser.complaints());
        }
    }

    /** On a phone, in French and in the dark: slips are named at their field, and what is improbable holds the order. */
    @Test
    void aSlipOfTheTapeIsToldAndHoldsTheOrder() {
        try (Browser browser = visited(Screen.PHONE, "dark")) {
            browser.run(AccessIT.axe());
            browser.run("document.querySelector('sleeve-measure').setAttribute('lang', 'fr');");
            browser.await(
                    "French", "return " + inForm("#title") + "?.textContent.startsWith('Mesures pour') === true;");
            assertEquals("Tour de bras", text(browser, "label[for=upperArmGirth]"));
            assertEquals(
                    true,
                    browser.run("return document.documentElement.scrollWidth <= innerWidth;"),
                    "nothing beside the screen");
            browser.run("window.scrollTo(0, 0);");
            measure(browser, "upperArmGirth", "32O");
            measure(browser, "bustGirth", "9,6");
            type(browser, Keys.TAB);
            assertEquals("true", browser.run("return " + inForm("#upperArmGirth") + ".getAttribute('aria-invalid');"));
            assertTrue(text(browser, "#upperArmGirth-says").contains("pas une longueur"), "no length");
            assertTrue(text(browser, "#bustGirth-says").contains("de 40 à 200 cm"), text(browser, "#bustGirth-says"));
            accessible(browser, "slips");
            browser.run(inForm("form") + ".requestSubmit();");
            assertEquals("upperArmGirth", browser.run("return " + focused() + ";"), "what is wrong is gone to");
            replace(browser, "upperArmGirth", "22");
            replace(browser, "bustGirth", "96");
            sketched(browser);
            browser.await(
                    "the question", "return " + inForm("#upperArmGirth-says") + ".className.includes('doubtful');");
            assertTrue(text(browser, "#upperArmGirth-says").contains("Reprenez"), text(browser, "#upperArmGirth-says"));
            accessible(browser, "a question");
            browser.keep("shop-form-question");
            browser.run(inForm("form") + ".requestSubmit();");
            browser.await("the order", "return document.querySelectorAll('#basket li').length === 1;");
            assertTrue(text(browser, "#title").contains("Tour de bras"), text(browser, "#title"));
            assertTrue(browser.text("#basket li").contains("questioned"), browser.text("#basket li"));
            String id = with(desk).get("/v1/orders?state=questioned").path("orders[0].id");
            assertEquals(
                    409,
                    with(desk).get("/v1/orders/" + id + "/files/pdf").statusCode(),
                    "not cut before it is confirmed");
        }
    }

    /** The key of the shop stands in the open: it is of no use to pages of other origins, nor for anything but orders. */
    @Test
    void aFormWithAKeyOfAnotherShopSaysThatItIsShut() throws IOException {
        String admin = key(OPERATOR, "{\"tenant\":\"choir\",\"name\":\"second\",\"scopes\":[\"admin\"]}");
        String foreign = key(admin, "{\"name\":\"other shop\",\"origins\":[\"https://other.example\"]}");
        try (Browser browser = visited(Screen.DESKTOP, "light")) {
            browser.run("document.querySelector('sleeve-measure').setAttribute('key', arguments[0]);", foreign);
            browser.await("the refusal", "return !!" + inForm("[role=alert]") + ";");
            assertTrue(text(browser, "[role=alert]").contains("not set up"), text(browser, "[role=alert]"));
        }
    }

    /** Where keys are on, the page asks for one, keeps it in the tab alone, and shows the tenant's own. */
    @Test
    void theWorkroomSignsInOnThePage() {
        try (Browser browser = Browser.blank(Screen.DESKTOP)) {
            browser.visit(service.url() + "/");
            browser.await("the request for a key", "return document.querySelector('.sign-in')?.hidden === false;");
            browser.run(AccessIT.axe());
            accessible(browser, "sign in");
            browser.find("#key").sendKeys("cw_wrong", Keys.ENTER);
            browser.await("the refusal", "return document.querySelector('.sign-in .error').textContent !== '';");
            browser.find("#key").sendKeys(desk, Keys.ENTER);
            browser.settle();
            browser.task("shelf");
            browser.await("the shelf", "return !!document.querySelector('.shelf-style[data-id=choir-gown]');");
            browser.reload();
            assertEquals(false, browser.run("return !document.querySelector('.sign-in').hidden;"), "still signed in");
            assertEquals(
                    false,
                    browser.run("return JSON.stringify(localStorage).includes(arguments[0]);", desk),
                    "the tab alone");
            browser.click("#sign");
            browser.await("the request for a key", "return document.querySelector('.sign-in')?.hidden === false;");
            assertEquals(0L, browser.run("return sessionStorage['capwright.key']?.length ?? 0;"));
        }
    }

    /** One file at a stable address, for pages of any origin, small. */
    @Test
    void theScriptIsOneSmallFile() throws IOException {
        Response script = given().baseUri(service.url()).get("/form/sleeve-measure.js");
        assertEquals("*", script.header("Access-Control-Allow-Origin"));
        assertTrue(script.contentType().startsWith("text/javascript"), script.contentType());
        ByteArrayOutputStream zipped = new ByteArrayOutputStream();
        try (GZIPOutputStream gzip = new GZIPOutputStream(zipped)) {
            gzip.write(script.asByteArray());
        }
        assertTrue(zipped.size() > 5_000 && zipped.size() < 40_000, zipped.size() + " bytes");
        assertFalse(script.asString().contains("import "), "nothing is fetched with it");
        assertNotEquals(null, script.header("ETag"));
        assertEquals(
                304,
                given().baseUri(service.url())
                        .header("If-None-Match", script.header("ETag"))
                        .get("/form/sleeve-measure.js")
                        .statusCode());
    }
}
