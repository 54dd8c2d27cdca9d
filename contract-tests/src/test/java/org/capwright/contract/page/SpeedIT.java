package org.capwright.contract.page;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Files;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.capwright.contract.RunningService;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.Keys;

/** Measures, without judging, how long a change takes until it is on the screen; kept beside the pictures. */
class SpeedIT {

    @Test
    void writesDownHowLongAChangeTakes() throws Exception {
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            var input = browser.input("f-sleeve-bicep");
            for (int i = 0; i < 40; i++) {
                input.sendKeys(i % 2 == 0 ? Keys.ARROW_UP : Keys.ARROW_DOWN);
                browser.settle();
            }
            @SuppressWarnings("unchecked")
            List<Number> all = (List<Number>) browser.run(
                    "return performance.getEntriesByName('change-on-screen').slice(1).map(entry => entry.duration);");
            assertEquals(40, all.size());
            double median =
                    all.stream().mapToDouble(Number::doubleValue).sorted().toArray()[20];
            var folder = RunningService.root().resolve("contract-tests/target/screens");
            Files.createDirectories(folder);
            String words = "median of 40 changes, ms: " + Math.round(median);
            System.out.println(words);
            Files.writeString(folder.resolve("change-on-screen.txt"), words + "\n");
        }
    }

    /** From the start of the navigation until the fields can be used, and until the first drawing is there. */
    @Test
    void writesDownHowLongTheFirstLoadTakes() throws Exception {
        try (Browser browser = Browser.open(Screen.DESKTOP)) {
            List<Double> interactive = new ArrayList<>();
            List<Double> drawn = new ArrayList<>();
            for (int i = 0; i < 9; i++) {
                browser.reload();
                interactive.add(mark(browser, "interactive"));
                drawn.add(mark(browser, "drawn"));
            }
            Collections.sort(interactive);
            Collections.sort(drawn);
            var folder = RunningService.root().resolve("contract-tests/target/screens");
            Files.createDirectories(folder);
            String words = "median of 9 loads, ms: interactive " + Math.round(interactive.get(4)) + ", drawn "
                    + Math.round(drawn.get(4));
            System.out.println(words);
            Files.writeString(folder.resolve("first-load.txt"), words + "\n");
        }
    }

    private static double mark(Browser browser, String name) {
        return ((Number) browser.run("return performance.getEntriesByName(arguments[0])[0].startTime;", name))
                .doubleValue();
    }
}
