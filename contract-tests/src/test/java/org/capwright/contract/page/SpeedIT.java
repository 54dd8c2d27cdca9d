package org.capwright.contract.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import org.capwright.contract.RunningService;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.Keys;

/** How long a change takes until it is on the screen, compared with a load of the page in the same browser; both are written down beside the pictures. */
class SpeedIT {

    /** A change takes about a third of a load. One that drafts, fetches or draws things twice takes longer than a load. */
    @Test
    void aChangeIsOnTheScreenSoonerThanALoad() throws Exception {
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            List<Number> loads = new ArrayList<>();
            List<Number> interactive = new ArrayList<>();
            for (int i = 0; i < 7; i++) {
                browser.reload();
                loads.add(mark(browser, "drawn"));
                interactive.add(mark(browser, "interactive"));
            }
            var input = browser.input("f-sleeve-bicep");
            for (int i = 0; i < 21; i++) {
                input.sendKeys(i % 2 == 0 ? Keys.ARROW_UP : Keys.ARROW_DOWN);
                browser.settle();
            }
            @SuppressWarnings("unchecked")
            List<Number> changes = (List<Number>) browser.run(
                    "return performance.getEntriesByName('change-on-screen').slice(1).map(entry => entry.duration);");
            assertEquals(21, changes.size());
            String words = "medians, ms: change on the screen " + Math.round(median(changes)) + ", load until usable "
                    + Math.round(median(interactive)) + ", until drawn " + Math.round(median(loads));
            var folder = RunningService.root().resolve("contract-tests/target/screens");
            Files.createDirectories(folder);
            Files.writeString(folder.resolve("speed.txt"), words + "\n");
            assertTrue(median(changes) < median(loads), words);
        }
    }

    private static Number mark(Browser browser, String name) {
        return (Number) browser.run("return performance.getEntriesByName(arguments[0])[0].startTime;", name);
    }

    private static double median(List<Number> values) {
        return values.stream().mapToDouble(Number::doubleValue).sorted().toArray()[values.size() / 2];
    }
}
