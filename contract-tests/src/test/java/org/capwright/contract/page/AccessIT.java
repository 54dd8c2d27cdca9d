package org.capwright.contract.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import io.restassured.RestAssured;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.capwright.contract.RunningService;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.openqa.selenium.Keys;

/** Who can use the page, and what the page is allowed. */
class AccessIT {

    private static final String[] TABS = {"measures", "spec", "jumps", "findings", "sewing", "cloth", "files"};

    private static final String[] TASKS = {"wearer", "check", "compare", "shelf", "orders"};

    /** WCAG 2.2, levels A and AA, as far as axe-core can tell, and its list of good practice. */
    static final String AXE =
            "const done = arguments[arguments.length - 1];axe.run(document, {resultTypes: ['violations'], selectors:"
                    + " false, runOnly: {type: 'tag', values: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa',"
                    + " 'best-practice']}}).then(result => done(result.violations.map(violation => violation.id + ': ' +"
                    + " violation.nodes.map(node => node.html.slice(0, 120)).join(' | '))));";

    /** Each screen and each colour scheme once; every pair of them with {@code -Pthorough}. */
    static Stream<Arguments> looks() {
        Stream<Arguments> usual = Stream.of(arguments(Screen.DESKTOP, "light"), arguments(Screen.PHONE, "dark"));
        return Boolean.getBoolean("capwright.thorough")
                ? Stream.concat(usual, Stream.of(arguments(Screen.DESKTOP, "dark"), arguments(Screen.PHONE, "light")))
                : usual;
    }

    static String axe() {
        try (InputStream in = AccessIT.class.getResourceAsStream("/axe.min.js")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    @ParameterizedTest
    @MethodSource("looks")
    void axeFindsNoViolationInAnyView(Screen screen, String scheme) {
        try (Browser browser =
                Browser.open(screen, Map.of("prefers-color-scheme", scheme), RunningService.address() + "/")) {
            browser.run(axe());
            for (String tab : TABS) {
                browser.show(tab);
                browser.run("for (const details of document.querySelectorAll('details')) details.open = true;");
                assertEquals(List.of(), browser.runAsync(AXE), tab);
                browser.run("document.querySelector('.layers').open = false;");
                browser.keep(tab + "-" + scheme);
            }
            browser.type("f-sleeve-capHeight", "60");
            browser.await("an error", "return document.querySelector('.problems').textContent !== '';");
            // On a phone the drawing stays in view while the fields slide under it; a target half way under it is small
            // only there.
            browser.run("window.scrollTo(0, 0);");
            assertEquals(List.of(), browser.runAsync(AXE), "with an error");
        }
    }

    @ParameterizedTest
    @MethodSource("looks")
    void axeFindsNoViolationInAnyTask(Screen screen, String scheme) {
        try (Browser browser =
                Browser.open(screen, Map.of("prefers-color-scheme", scheme), RunningService.address() + "/")) {
            browser.run(axe());
            browser.show("files");
            browser.click("#file-keep");
            for (String task : TASKS) {
                browser.task(task);
                assertEquals(List.of(), browser.runAsync(AXE), task + " at first");
                work(browser, task);
                browser.run("for (const details of document.querySelectorAll('#desk details')) details.open = true;"
                        + "window.scrollTo(0, 0);");
                assertEquals(List.of(), browser.runAsync(AXE), task);
                browser.keep(task + "-" + scheme);
            }
        }
    }

    /** Does in a task what it is for, so that its results are there. */
    private static void work(Browser browser, String task) {
        switch (task) {
            case "wearer" -> {
                browser.fill("w-bustGirth", "96");
                browser.fill("w-stature", "168");
                browser.fill("w-upperArmGirth", "36");
                browser.await("the question", "return !!document.querySelector('.doubted');");
                assertEquals(List.of(), browser.runAsync(AXE), "a question");
                browser.find("#w-upperArmGirth-confirm").sendKeys(Keys.SPACE);
                browser.await("the sleeve", "return !!document.querySelector('.plan path.cut');");
            }
            case "check" -> {
                browser.click("#check-own");
                browser.await("the report", "return !!document.querySelector('.verdict');");
            }
            case "shelf" ->
                browser.await("the shelf", "return !!document.querySelector('.shelf-style, .absent:not([hidden])');");
            case "orders" -> browser.await("the orders", "return !!document.querySelector('.order-section');");
            default -> browser.await("both styles", "return !!document.querySelector('.overlaid .outline.second');");
        }
    }

    /** What comes only when it is asked for: lays, the account of derived jumps, the change that clears a stop. */
    @ParameterizedTest
    @CsvSource({"DESKTOP,light", "PHONE,dark"})
    void axeFindsNoViolationInWhatIsAskedFor(Screen screen, String scheme) {
        try (Browser browser =
                Browser.open(screen, Map.of("prefers-color-scheme", scheme), RunningService.address() + "/")) {
            browser.run(axe());
            browser.show("cloth");
            browser.click("#cloth-start");
            browser.await("the lays", "return !!document.querySelector('.lay img')?.complete;");
            browser.run("for (const details of document.querySelectorAll('.dock details')) details.open = true;"
                    + "window.scrollTo(0, 0);");
            assertEquals(List.of(), browser.runAsync(AXE), "lays");
            browser.keep("cloth-lays-" + scheme);
            browser.show("jumps");
            browser.click("#derive-take");
            browser.await("the account", "return !!document.querySelector('.account tbody tr');");
            browser.settle();
            browser.run("window.scrollTo(0, 0);");
            assertEquals(List.of(), browser.runAsync(AXE), "derived jumps");
            browser.find("#f-grade-bicep-1").sendKeys(Keys.chord(Keys.CONTROL, "a"), "0.1");
            browser.settle();
            browser.await("the culprit", "return !!document.getElementById('mend-bicep-1');");
            browser.run("window.scrollTo(0, 0);");
            assertEquals(List.of(), browser.runAsync(AXE), "a culprit");
            browser.show("findings");
            browser.await("the proposal", "return !!document.getElementById('what-if-apply');");
            browser.run("window.scrollTo(0, 0);");
            assertEquals(List.of(), browser.runAsync(AXE), "what-if");
            browser.click("#as-worn");
            browser.await(
                    "the worn sleeve", "return document.querySelector('.worn3d-inner')?.dataset.state === 'settled';");
            browser.run("document.querySelector('.worn3d-about').open = true; window.scrollTo(0, 0);");
            assertEquals(List.of(), browser.runAsync(AXE), "as worn");
            browser.keep("as-worn-" + scheme);
        }
    }

    /** The check must be able to fail. */
    @Test
    void axeNoticesAnInputWithoutAName() {
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            browser.run(axe());
            browser.run("document.querySelector('#panel-spec').append(document.createElement('input'));");
            assertTrue(browser.runAsync(AXE).toString().contains("label"));
        }
    }

    /** WCAG 2.2, success criterion 2.5.8: targets of at least 24 by 24 CSS pixels, those within a line of text excepted. */
    @ParameterizedTest
    @EnumSource(Screen.class)
    void everythingToPressIsLargeEnough(Screen screen) {
        try (Browser browser = Browser.open(screen)) {
            for (String tab : TABS) {
                browser.show(tab);
                assertEquals(List.of(), small(browser), tab);
            }
            for (String task : TASKS) {
                browser.task(task);
                assertEquals(List.of(), small(browser), task);
            }
        }
    }

    private static Object small(Browser browser) {
        return browser.run("return [...document.querySelectorAll('button, select, summary,"
                + " input:not([type=radio]):not([type=checkbox])')].filter(each => each.checkVisibility() &&"
                + " !each.closest('.unseen') && !each.classList.contains('unseen')).filter(each => { const box ="
                + " each.getBoundingClientRect(); return box.width < 24 || box.height < 24; }).map(each =>"
                + " each.outerHTML.slice(0, 100));");
    }

    @Test
    void isWorkedByKeyboardAlone() {
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            browser.actions().sendKeys(Keys.TAB).perform();
            assertEquals("Skip to the drawing", browser.run("return document.activeElement.textContent;"));
            browser.actions().sendKeys(Keys.ENTER).perform();
            assertEquals("sheet", browser.run("return document.activeElement.id;"));
            boolean files = false;
            for (int i = 0; i < 40 && !files; i++) {
                browser.actions().sendKeys(Keys.TAB).perform();
                files = "files".equals(browser.run("return document.activeElement.dataset.tab ?? '';"));
            }
            assertTrue(files, "the files come into reach");
            browser.actions().sendKeys(Keys.ENTER).perform();
            assertTrue(browser.find("#panel-files").isDisplayed());
        }
    }

    @ParameterizedTest
    @EnumSource(Screen.class)
    void speaksFrench(Screen screen) {
        try (Browser browser = Browser.open(screen)) {
            browser.choose("language", "fr");
            browser.show("measures");
            assertEquals("fr", browser.find("html").getDomAttribute("lang"));
            assertEquals("13,5", browser.value("#f-sleeve-capHeight"));
            browser.type("f-sleeve-capHeight", "13,8");
            assertEquals("13,8", browser.spec("capHeight", "40"));
            browser.keep("french");
            browser.run(axe());
            assertEquals(List.of(), browser.runAsync(AXE));
            for (String task : TASKS) {
                browser.task(task);
                browser.keep("french-" + task);
                assertEquals(List.of(), browser.runAsync(AXE), task);
            }
            browser.reload();
            assertEquals("fr", browser.find("html").getDomAttribute("lang"));
        }
    }

    /** On paper there are the drawing and the tables, without anything to press. */
    @Test
    void printsDrawingAndTables() {
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            browser.media("print");
            assertFalse(browser.find(".tabs").isDisplayed());
            assertFalse(browser.find("#measures").isDisplayed());
            assertTrue(browser.find("#panel-spec table").isDisplayed());
            assertTrue(browser.find("#panel-sewing .order").isDisplayed());
            assertTrue(browser.find("g.piece[data-piece=overlay-main]").isDisplayed());
            assertTrue(browser.find("#sheet").getRect().getHeight() > 300, "the drawing has room on paper");
            browser.keep("print");
        }
    }

    /** A task is printed by itself, without the style behind it. */
    @Test
    void printsATaskAlone() {
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            browser.task("compare");
            browser.media("print");
            assertTrue(browser.find("#desk").isDisplayed());
            assertFalse(browser.find("#bench").isDisplayed());
            assertFalse(browser.find(".tasks").isDisplayed());
        }
    }

    @Test
    void keepsToItsOwnServerAndToItsPolicy() {
        String policy = RestAssured.get(RunningService.address() + "/").header("Content-Security-Policy");
        assertTrue(policy.startsWith("default-src 'none'; script-src 'self'; style-src 'self';"), policy);
        assertFalse(policy.contains("unsafe"), policy);
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            for (String tab : TABS) {
                browser.show(tab);
            }
            for (String task : TASKS) {
                browser.task(task);
            }
            browser.click("[data-task=style]");
            browser.input("f-sleeve-bicep").sendKeys(Keys.ARROW_UP);
            browser.settle();
            assertEquals(List.of(), browser.complaints());
            assertEquals(
                    List.of(),
                    browser.run("return performance.getEntriesByType('resource').map(entry => entry.name)"
                            + ".filter(name => !name.startsWith(location.origin) && !name.startsWith('blob:'));"));
            Object refused = browser.runAsync("const done = arguments[arguments.length - 1];"
                    + "document.addEventListener('securitypolicyviolation', event => done(event.effectiveDirective));"
                    + "const element = document.createElement('div'); element.setAttribute('style', 'color: red');"
                    + "document.body.append(element);");
            assertEquals("style-src-attr", refused, "the policy is really in force");
        }
    }

    /** The page of the API's description works under its own policy. */
    @Test
    void theDescriptionOfTheInterfaceIsShown() {
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            browser.complaints();
            browser.visit(RunningService.address() + "/swagger-ui/index.html");
            browser.await("the description", "return !!document.querySelector('.opblock');");
            assertEquals(List.of(), browser.complaints());
        }
    }

    /** What is sent for the first view, compressed. */
    @Test
    void firstLoadIsBelow300Kilobytes() {
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            Number bytes = (Number) browser.run("return [...performance.getEntriesByType('navigation'),"
                    + " ...performance.getEntriesByType('resource')].reduce((sum, entry) => sum +"
                    + " entry.encodedBodySize, 0);");
            assertTrue(bytes.doubleValue() > 1_000 && bytes.doubleValue() < 300_000, bytes + " bytes");
        }
    }
}
