package org.capwright.contract.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** No figure on the screen passes for newer than it is, and a service that comes back is asked again. */
class AgeIT {

    private static final String AGE = "return document.getElementById('page').dataset.age;";

    @Test
    void figuresOfTheLastSleeveSaySoDuringAnError() {
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            browser.type("f-sleeve-capHeight", "60");
            browser.await("the error", "return document.querySelector('.problems').textContent !== '';");
            assertEquals("outdated", browser.run(AGE));
            assertTrue(browser.find(".age-words").isDisplayed());
            browser.keep("outdated");
            browser.type("f-sleeve-capHeight", "13");
            browser.await("figures", "return document.getElementById('page').dataset.age === '';");
        }
    }

    /** The figures of the answer come late; those of the sleeve before are not read beside the new drawing. */
    @Test
    void figuresBehindTheDrawingAreNotShown() {
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            browser.run("const real = fetch; window.fetch = async (path, options) => {"
                    + " if (String(path).endsWith('size-runs') && options?.headers?.Accept === 'application/json')"
                    + " await new Promise(done => setTimeout(done, 1500));"
                    + " return real(path, options); };"
                    + "window.seen = []; new MutationObserver(() => seen.push(document.getElementById('page').dataset.age))"
                    + ".observe(document.getElementById('page'), {attributes: true, attributeFilter: ['data-age']});");
            browser.type("f-sleeve-bicep", "37");
            assertEquals("behind,", browser.run("return seen.join(',');"));
        }
    }

    @Test
    void asksAgainOnceTheServiceIsBack() {
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            browser.run("window.real = fetch; window.fetch = () => Promise.reject(new TypeError('Failed to fetch'));");
            browser.type("f-sleeve-bicep", "37");
            browser.await(
                    "the error", "return document.querySelector('.problems').textContent.includes('not answer');");
            browser.task("wearer");
            assertTrue(browser.find("#w-bustGirth").isDisplayed(), "the other tasks are there");
            browser.task("check");
            browser.click("[data-task=style]");
            browser.run("window.fetch = window.real;");
            browser.await("the new sleeve", "return document.querySelector('.problems').textContent === '';");
            browser.settle();
            assertEquals("37", browser.spec("bicep", "40"));
        }
    }
}
