package org.capwright.contract.page;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import java.io.IOException;
import java.nio.file.Files;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.capwright.contract.RunningService;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** What the service keeps, worked with on the page: the shelf of styles, and the orders of the day. Wearers are invented. */
class ShelfIT {

    /** A desktop, whose pictures the documentation shows; a phone too with {@code -Pthorough}, beside what {@link AccessIT} sees of it. */
    static Stream<Arguments> looks() {
        Stream<Arguments> usual = Stream.of(arguments(Screen.DESKTOP, "light"));
        return Boolean.getBoolean("capwright.thorough")
                ? Stream.concat(usual, Stream.of(arguments(Screen.PHONE, "dark")))
                : usual;
    }

    private static RequestSpecification service() {
        return given().baseUri(RunningService.address()).contentType("application/json");
    }

    private static Browser opened(Screen screen, String scheme) {
        return Browser.open(screen, Map.of("prefers-color-scheme", scheme), RunningService.address() + "/");
    }

    private static void accessible(Browser browser, String where) {
        browser.run("window.scrollTo(0, 0);");
        assertEquals(List.of(), browser.runAsync(AccessIT.AXE), where);
        assertEquals(true, browser.run("return document.documentElement.scrollWidth <= innerWidth;"), where);
    }

    private static void documented(Browser browser, Screen screen, String name) throws IOException {
        if (screen == Screen.DESKTOP) {
            FirstVisitIT.keep(browser, name);
        }
    }

    private static void put(Browser browser, String id, String says) {
        browser.run("const id = document.getElementById('shelf-id'); id.value = arguments[0];", id);
        browser.click("#shelf-put");
        browser.await(says, "return document.querySelector('.shelf-put').textContent.includes(arguments[0]);", says);
    }

    private static String card(String id) {
        return ".shelf-style[data-id=" + id + "] ";
    }

    /** A style goes from the bench to the shelf, is changed, compared with what it was, overtaken by somebody else, and taken off again. */
    @ParameterizedTest
    @MethodSource("looks")
    void aStyleIsPutChangedComparedAndTakenOff(Screen screen, String scheme) throws IOException {
        String id = screen + "-gown";
        try (Browser browser = opened(screen, scheme)) {
            browser.run(AccessIT.axe());
            browser.show("files");
            browser.click("#file-keep");
            browser.task("shelf");
            put(browser, id, "revision 1");
            browser.await("its picture", "return !!document.querySelector(arguments[0]);", card(id) + ".small-picture");
            Response kept = service().get("/v1/styles/" + id);
            assertEquals(14f, kept.<Number>path("overlay.rise").floatValue());
            assertEquals("14%", kept.path("ease.armhole"), "made to measure with the ease that the page names");
            browser.click("[data-task=style]");
            browser.type("f-overlay-rise", "12");
            browser.task("shelf");
            put(browser, id, "revision 2");
            browser.await("the revisions", "return !!document.querySelector(arguments[0]);", card(id) + "h3");
            browser.click(card(id) + ".buttons button:nth-child(2)");
            browser.await(
                    "the revisions", "return !!document.querySelector(arguments[0]);", card(id) + ".shelf-compare");
            browser.click(card(id) + ".shelf-compare");
            browser.await("the changes", "return document.querySelectorAll('.shelf-changes table').length === 2;");
            String entered = (String) browser.run("return document.querySelector('.shelf-changes table').textContent;");
            assertTrue(entered.contains("Rise") && entered.contains("14") && entered.contains("12"), entered);
            List<String> rows = service().get("/v1/styles/" + id + "/changes").path("pointsOfMeasure.code");
            assertEquals(
                    rows.stream().distinct().count(),
                    browser.run("return document.querySelectorAll('.shelf-changes table')[1].tBodies[0].rows.length;"));
            browser.run("document.querySelector(arguments[0]).scrollIntoView();", card(id));
            documented(browser, screen, "11-shelf");
            accessible(browser, "changes");
            browser.keep("shelf-" + scheme);
            overtaken(browser, id);
            browser.click(".shelf-put-kept");
            browser.await("the kept one", "return !!document.querySelector(arguments[0]);", card("choir-gown-sleeve"));
            browser.click(card(id) + ".buttons button");
            browser.await("the bench", "return !document.getElementById('bench').hidden;");
            browser.settle();
            assertEquals("12", browser.value("#f-overlay-rise"));
            browser.task("shelf");
            for (String each : List.of(id, "choir-gown-sleeve")) {
                browser.await(
                        "the style", "return !!document.querySelector(arguments[0]);", card(each) + ".shelf-remove");
                browser.click(card(each) + ".shelf-remove");
                browser.click(card(each) + ".shelf-remove");
                browser.await("the shelf", "return !document.querySelector(arguments[0]);", card(each));
            }
            assertEquals(404, service().get("/v1/styles/" + id).statusCode());
            assertEquals(
                    List.of(),
                    browser.complaints().stream()
                            .filter(each -> !each.contains("412"))
                            .toList());
        }
    }

    /** Somebody else put a revision meanwhile: nothing of theirs is lost unseen. */
    private static void overtaken(Browser browser, String id) {
        String theirs = service().get("/v1/styles/" + id).asString().replace("Choir gown sleeve", "Of a colleague");
        service()
                .header("If-Match", "*")
                .body(theirs)
                .put("/v1/styles/" + id)
                .then()
                .statusCode(200);
        browser.click("#shelf-put");
        browser.await("the question", "return !!document.getElementById('shelf-over');");
        assertTrue(browser.text(".shelf-put .question").contains("Of a colleague"), browser.text(".question"));
        assertEquals(3, service().get("/v1/styles/" + id + "/revisions").<Integer>path("revisions[0].revision"));
        browser.click("#shelf-over");
        browser.await("revision 4", "return document.querySelector('.shelf-put').textContent.includes('revision 4');");
    }

    private static String order(String body) {
        return service()
                .body(body)
                .post("/v1/styles/page-gown/orders")
                .then()
                .statusCode(201)
                .extract()
                .path("order.id");
    }

    private static String row(String id) {
        return ".shop-order[data-order='" + id + "'] ";
    }

    private static void state(Browser browser, String id, String state) {
        browser.await(
                state, "return document.querySelector(arguments[0]).dataset.state === arguments[1];", row(id), state);
        assertEquals(state, service().get("/v1/orders/" + id).path("order.state"));
    }

    /** Questioned orders stand first and say why; they are confirmed, printed and cut, and another is given up. */
    @ParameterizedTest
    @MethodSource("looks")
    void theOrdersOfTheDayAreGoneThrough(Screen screen, String scheme) throws IOException {
        if (service().get("/v1/styles/page-gown").statusCode() == 404) {
            service()
                    .body(Files.readString(RunningService.root().resolve("examples/choir-gown.json")))
                    .put("/v1/styles/page-gown")
                    .then()
                    .statusCode(201);
        }
        String held = order(
                "{\"reference\":\"order " + screen + "\",\"wearer\":{\"bustGirth\":96,\"stature\":168,"
                        + "\"upperArmGirth\":22,\"armLength\":59},\"ease\":{\"bicep\":7,\"wrist\":6,\"length\":1,\"armhole\":\"14%\",\"capEase\":\"4%\"}}");
        String plain = order("{\"size\":\"40\"}");
        try (Browser browser = opened(screen, scheme)) {
            browser.run(AccessIT.axe());
            browser.task("orders");
            browser.await(
                    "the question", "return !!document.querySelector(arguments[0]);", row(held) + ".order-questions");
            assertEquals(
                    "questioned",
                    browser.run("return document.querySelector('.shop-order').dataset.state;"),
                    "those in question come first");
            Response asked = service().get("/v1/orders/" + held);
            String question = browser.text(row(held) + ".order-questions");
            long least = Math.round(asked.<Number>path("questions[0].minimum").doubleValue());
            assertTrue(question.contains("Upper-arm girth: 22 cm") && question.contains(" " + least / 10), question);
            assertTrue(browser.all(row(held) + ".order-file").isEmpty(), "no files before it is confirmed");
            accessible(browser, "questions");
            browser.keep("orders-" + scheme);
            documented(browser, screen, "12-orders");
            browser.click(row(held) + ".order-to.confirmed");
            state(browser, held, "confirmed");
            browser.click(row(held) + ".order-look");
            browser.await("the files", "return !!document.querySelector(arguments[0]);", row(held) + ".order-file");
            browser.click(row(held) + ".order-file[data-format=pdf]");
            assertArrayEquals(
                    service().get("/v1/orders/" + held + "/files/pdf").asByteArray(), browser.downloaded(".pdf"));
            accessible(browser, "files");
            browser.keep("orders-files-" + scheme);
            browser.click(row(held) + ".order-to.cut");
            state(browser, held, "cut");
            browser.click(row(plain) + ".order-to.cancelled");
            assertEquals("taken", service().get("/v1/orders/" + plain).path("order.state"), "it asks first");
            browser.click(row(plain) + ".order-to.cancelled");
            state(browser, plain, "cancelled");
            assertEquals(List.of(), browser.complaints());
        }
    }

    /** A service that keeps nothing says so in both views, and drafts all the same. */
    @Test
    void withoutAStoreThePageSaysSo() {
        RunningService bare = RunningService.started("-Dcapwright.store=off");
        try (Browser browser = Browser.blank(Screen.DESKTOP)) {
            browser.go(bare.url() + "/");
            browser.task("shelf");
            browser.await(
                    "the word", "return document.querySelector('.absent').textContent.includes('keeps nothing');");
            browser.task("orders");
            browser.await(
                    "the word",
                    "return document.querySelector('.orders-find .says').textContent.includes('keeps nothing');");
        } finally {
            bare.stop();
        }
    }
}
