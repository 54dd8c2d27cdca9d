package org.capwright.contract.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
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
import org.junit.jupiter.params.provider.ArgumentsSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.openqa.selenium.Keys;

/** Who can use the page, and what the page is allowed. */
class AccessIT {

    private static final String[] TABS = {"measures", "spec", "jumps", "findings", "sewing", "cloth", "files"};

    private static final String[] TASKS = {"wearer", "check", "compare", "shelf", "orders"};

    /** The tasks that wait for figures before they show something. */
    private static final List<String> ASKING = List.of("wearer", "check");

    /**
     * WCAG 2.2, levels A and AA, as far as axe-core can tell, and its list of good practice. The rules and what they look at are handed to it as it is run.
     */
    static final String AXE = "const done = arguments[arguments.length - 1];axe.run(document, {resultTypes:"
            + " ['violations'], selectors: false, preload: false, runOnly: {type: 'tag', values: ['wcag2a', 'wcag2aa',"
            + " 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']}}).then(result => done(result.violations.map(violation"
            + " => violation.id + ': ' + violation.nodes.map(node => node.html.slice(0, 120)).join(' | '))));";

    /** The same, but for the drawing, which is looked at once and stays as it is from view to view: its lines are taken off meanwhile, for axe goes through them even where it is to leave them out. */
    private static final String BESIDE_THE_DRAWING = besideTheDrawing("{exclude: [['.cloth svg']]}");

    private static String besideTheDrawing(String context) {
        return "const drawing = document.querySelector('.cloth svg'); const lines = [...drawing.childNodes];"
                + " drawing.replaceChildren();"
                + AXE.replace("(document,", "(" + context + ",")
                        .replace("result => ", "result => drawing.append(...lines) ?? ");
    }

    /** Each screen, each language and each scheme of colours once; every combination of them with {@code -Pthorough}. */
    static Stream<Arguments> visitors() {
        if (!Boolean.getBoolean("capwright.thorough")) {
            return Stream.of(arguments(Screen.DESKTOP, "en", "light"), arguments(Screen.PHONE, "fr", "dark"));
        }
        return Stream.of(Screen.values())
                .flatMap(screen -> Stream.of("en", "fr")
                        .flatMap(language ->
                                Stream.of("light", "dark").map(scheme -> arguments(screen, language, scheme))));
    }

    static String axe() {
        try (InputStream in = AccessIT.class.getResourceAsStream("/axe.min.js")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    private static void look(Browser browser, String view) {
        look(browser, view, BESIDE_THE_DRAWING);
    }

    /** Looks at the panel alone that a view has changed; at everything again with {@code -Pthorough}. */
    private static void lookAtPanel(Browser browser, String panel, String view) {
        boolean thorough = Boolean.getBoolean("capwright.thorough");
        look(browser, view, thorough ? BESIDE_THE_DRAWING : besideTheDrawing("'#panel-" + panel + "'"));
    }

    private static void look(Browser browser, String view, String rules) {
        // On a phone the drawing stays in view while the fields slide under it; a target half way under it is small
        // only there.
        browser.run("window.scrollTo(0, 0);");
        assertEquals(List.of(), browser.runAsync(rules), view);
    }

    private static void open(Browser browser, String within) {
        browser.run(
                "for (const details of document.querySelectorAll(arguments[0] + ' details')) details.open = true;",
                within);
    }

    /** One visit through every view and task, with what comes only when it is asked for: lays, derived jumps, a culprit and its cure, the sleeve as worn, errors and results. */
    @ParameterizedTest
    @MethodSource("visitors")
    void axeFindsNoViolationInAnyView(Screen screen, String language, String scheme) {
        try (Browser browser =
                Browser.open(screen, Map.of("prefers-color-scheme", scheme), RunningService.address() + "/")) {
            browser.run(axe());
            browser.choose("language", language);
            browser.show(TABS[0]);
            look(browser, "at first", AXE);
            for (String tab : TABS) {
                browser.show(tab);
                assertEquals(List.of(), small(browser), tab);
                open(browser, "#page");
                if (tab.equals(TABS[0])) {
                    look(browser, tab);
                } else {
                    lookAtPanel(browser, tab, tab);
                }
                browser.run("document.querySelector('.layers').open = false;");
            }
            browser.click("#file-keep");
            browser.type("f-sleeve-capHeight", "60");
            browser.await("an error", "return document.querySelector('.problems').textContent !== '';");
            look(browser, "with an error");
            browser.type("f-sleeve-capHeight", "13,5");
            asked(browser);
            for (String task : TASKS) {
                browser.task(task);
                assertEquals(List.of(), small(browser), task);
                if (ASKING.contains(task)) {
                    look(browser, task + " at first");
                }
                work(browser, task);
                open(browser, "#desk");
                look(browser, task);
            }
        }
    }

    private static void asked(Browser browser) {
        browser.show("cloth");
        browser.click("#cloth-start");
        browser.await("the lays", "return !!document.querySelector('.lay img')?.complete;");
        open(browser, ".dock");
        lookAtPanel(browser, "cloth", "lays");
        browser.show("jumps");
        browser.click("#derive-take");
        browser.await("the account", "return !!document.querySelector('.account tbody tr');");
        browser.settle();
        lookAtPanel(browser, "jumps", "derived jumps");
        browser.find("#f-grade-bicep-1").sendKeys(Keys.chord(Keys.CONTROL, "a"), "0,1");
        browser.settle();
        browser.await("the culprit", "return !!document.getElementById('mend-bicep-1');");
        look(browser, "a culprit");
        browser.show("findings");
        browser.await("the proposal", "return !!document.getElementById('what-if-apply');");
        lookAtPanel(browser, "findings", "what-if");
        browser.click("#as-worn");
        browser.await(
                "the worn sleeve", "return document.querySelector('.worn3d-inner')?.dataset.state === 'settled';");
        browser.run("document.querySelector('.worn3d-about').open = true;");
        look(browser, "as worn");
        browser.click("#as-worn");
    }

    /** Does in a task what it is for, so that its results are there. */
    private static void work(Browser browser, String task) {
        switch (task) {
            case "wearer" -> {
                browser.fill("w-bustGirth", "96");
                browser.fill("w-stature", "168");
                browser.fill("w-upperArmGirth", "36");
                browser.await("the question", "return !!document.querySelector('.doubted');");
                look(browser, "a question");
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

    /** The check must be able to fail. */
    @Test
    void axeNoticesAnInputWithoutAName() {
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            browser.run(axe());
            browser.run("document.querySelector('#panel-spec').append(document.createElement('input'));");
            assertTrue(browser.runAsync(AXE).toString().contains("label"));
            assertTrue(browser.runAsync(besideTheDrawing("'#panel-spec'"))
                    .toString()
                    .contains("label"));
            assertTrue(browser.find(".cloth svg path.cut").isDisplayed(), "the drawing is there again");
        }
    }

    /** What is smaller than 24 by 24 CSS pixels, those within a line of text excepted: WCAG 2.2, success criterion 2.5.8. */
    private static Object small(Browser browser) {
        return browser.run("return [...document.querySelectorAll('button, select, summary,"
                + " input:not([type=radio]):not([type=checkbox])')].filter(each => each.checkVisibility() &&"
                + " !each.closest('.unseen') && !each.classList.contains('unseen')).filter(each => { const box ="
                + " each.getBoundingClientRect(); return box.width < 24 || box.height < 24; }).map(each =>"
                + " each.outerHTML.slice(0, 100));");
    }

    /** From the first look to the pattern on paper without a pointer: a style of one's own, a measure, a jump, the sleeve as worn, the PDF. Every stop on the way is seen. */
    @Test
    void theFirstVisitIsMadeByKeyboardAlone() throws IOException {
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            browser.actions().sendKeys(Keys.TAB).perform();
            assertEquals("Skip to the drawing", browser.run("return document.activeElement.textContent;"));
            browser.actions().sendKeys(Keys.ENTER).perform();
            assertEquals("sheet", browser.run("return document.activeElement.id;"));
            press(browser, "document.activeElement.id === 'begin'", Keys.ENTER);
            browser.await("the questions", "return document.activeElement.id === 'start-name';");
            keys(browser, "Feast day gown");
            browser.await("the tables", "return document.getElementById('start-table').options.length > 1;");
            stop(browser, "document.activeElement.id === 'start-table'");
            keys(browser, "Women by EN 13402-3 bust");
            press(browser, "document.activeElement.name === 'start-height'", Keys.ARROW_RIGHT);
            assertEquals("high", browser.run("return document.querySelector('[name=start-height]:checked').value;"));
            press(browser, "document.activeElement.id === 'start-make'", Keys.ENTER);
            browser.await("the style", "return !document.getElementById('start');");
            browser.settle();
            assertEquals("Feast day gown", browser.text(".style-name"));
            String before = browser.cutLine("overlay-main", "40");
            press(browser, "document.activeElement.id === 'f-overlay-rise'", Keys.ARROW_UP);
            browser.settle();
            assertNotEquals(before, browser.cutLine("overlay-main", "40"), "the overlay follows");
            press(browser, "document.activeElement.id === 'as-worn'", Keys.SPACE);
            browser.await(
                    "the worn sleeve", "return document.querySelector('.worn3d-inner')?.dataset.state === 'settled';");
            press(browser, "document.activeElement.dataset.tab === 'jumps'", Keys.ENTER);
            stop(browser, "document.activeElement.id === 'f-grade-bicep'");
            keys(browser, Keys.chord(Keys.CONTROL, "a") + "1.6");
            browser.settle();
            press(browser, "document.activeElement.dataset.tab === 'files'", Keys.ENTER);
            press(browser, "document.activeElement.dataset.kind === 'application/pdf'", Keys.ENTER);
            assertTrue(new String(browser.downloaded(".pdf"), StandardCharsets.ISO_8859_1).startsWith("%PDF-"));
        }
    }

    private static void keys(Browser browser, CharSequence keys) {
        browser.actions().sendKeys(keys).perform();
    }

    private static void press(Browser browser, String condition, Keys key) {
        stop(browser, condition);
        keys(browser, key);
    }

    /** Goes on by the tab key, round the page if need be. What has the focus shows it, and is not hidden under anything (WCAG 2.2, 2.4.7 and 2.4.11). */
    private static void stop(Browser browser, String condition) {
        for (int i = 0; i < 250; i++) {
            keys(browser, Keys.TAB);
            Object found = browser.run(UNSEEN_FOCUS.replace("FOUND", condition));
            if ("found".equals(found)) {
                return;
            }
            assertEquals("", found, "the focus is seen");
        }
        throw new AssertionError("the keyboard does not reach: " + condition);
    }

    private static final String UNSEEN_FOCUS = "const at = document.activeElement; if (at === document.body) return"
            + " '';const label = at.matches('[type=radio], [type=checkbox]') ? document.querySelector('label[for=' +"
            + " CSS.escape(at.id) + ']') : null; const knob = at.matches('.handle') ? at.querySelector('.reach') :"
            + " null;const seen = [at, at.parentElement, label, knob].filter(each => each).some(each => { const style ="
            + " getComputedStyle(each); return style.outlineStyle !== 'none' && parseFloat(style.outlineWidth) > 0 ||"
            + " style.boxShadow !== 'none' || each === knob && style.stroke !== 'none'; }); const box = (label ??"
            + " at).getBoundingClientRect();const inside = box.bottom > 0 && box.right > 0 && box.top < innerHeight &&"
            + " box.left < innerWidth;return !seen || !inside ? at.outerHTML.slice(0, 150) : FOUND ? 'found' : '';";

    @ParameterizedTest
    @ArgumentsSource(ScreenSample.class)
    void speaksFrench(Screen screen) {
        try (Browser browser = Browser.open(screen)) {
            browser.choose("language", "fr");
            browser.show("measures");
            assertEquals("fr", browser.find("html").getDomAttribute("lang"));
            assertEquals("13,5", browser.value("#f-sleeve-capHeight"));
            browser.type("f-sleeve-capHeight", "13,8");
            assertEquals("13,8", browser.spec("capHeight", "40"));
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
