package org.capwright.contract.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

/** What a change moved is lit in the table; what a measure is stands beside it as a picture. */
class MovedIT {

    @Test
    void theRowsThatMovedTellWhatTheyWere() {
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            assertTrue(browser.all("tr.moved").isEmpty(), "nothing has moved yet");
            browser.type("f-overlay-length", "38");
            assertEquals(
                    "48 → 52",
                    browser.run("return document.querySelector('tr.moved:has([data-code=overlayTotalLength])"
                            + " .moved-from').textContent;"));
            assertTrue(browser.all("tr.moved [data-code=bicep]").isEmpty(), "the bicep is as it was");
            assertTrue(
                    (Boolean) browser.run("const row = document.querySelector('tr.moved').getBoundingClientRect();"
                            + "const dock = document.querySelector('.dock').getBoundingClientRect();"
                            + "return row.top >= dock.top && row.bottom <= dock.bottom + 1;"),
                    "it is in sight");
            browser.keep("moved");
        }
    }

    @Test
    void aMeasureIsShownByAPicture() {
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            for (String field :
                    List.of("f-overlay-rise", "f-overlay-join", "f-overlay-frontGap", "f-sleeve-capInward")) {
                browser.input(field);
                assertFalse(
                        browser.all(".note .field-picture .measured, .note .field-picture .measured-point")
                                .isEmpty(),
                        field);
            }
        }
    }
}
