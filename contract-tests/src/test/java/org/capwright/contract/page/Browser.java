package org.capwright.contract.page;

import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.capwright.contract.RunningService;
import org.openqa.selenium.By;
import org.openqa.selenium.ElementClickInterceptedException;
import org.openqa.selenium.JavascriptException;
import org.openqa.selenium.JavascriptExecutor;
import org.openqa.selenium.Keys;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.ScriptTimeoutException;
import org.openqa.selenium.StaleElementReferenceException;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.WindowType;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.interactions.Actions;
import org.openqa.selenium.logging.LogType;

/** Debian's Chromium without a window, with a profile of its own for these tests, on the page of the running service. A missing browser fails the tests: test.sh installs it. */
final class Browser implements AutoCloseable {

    /** One browser for each kind of screen; tests run one after another. */
    private static final Map<Screen, Browser> RUNNING = new EnumMap<>(Screen.class);

    private static final Duration PATIENCE = Duration.ofSeconds(60);

    /** Looks whether a script returns true until it does. */
    private static final String LOOKS = "const given = [...arguments]; const done = given.pop();"
            + " const met = function () { SCRIPT };"
            + " const look = () => { try { met(...given) === true ? done(true) : setTimeout(look, 20); }"
            + " catch (problem) { done(String(problem)); } };"
            + " look();";

    /** All that a page can keep; what it fetched stays in the browser's cache, which asks the service whether it is still so. */
    private static final String KEPT = "cookies,local_storage,indexeddb,cache_storage,service_workers";

    private final Path profile;
    private final ChromeDriver driver;
    private final Screen screen;

    /** Whether the page stands as it was opened, for the next test to find it so. */
    private boolean asFound;

    private Browser(Screen screen) {
        this.screen = screen;
        try {
            this.profile = Files.createTempDirectory("capwright-browser");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        ChromeOptions options = new ChromeOptions();
        options.setBinary(RunningService.root()
                .resolve("contract-tests/src/test/browser/headless-shell")
                .toFile());
        options.addArguments(
                "--no-sandbox",
                "--disable-gpu",
                "--enable-unsafe-swiftshader",
                "--disable-quic",
                "--no-first-run",
                "--disable-background-networking",
                "--disable-component-update",
                "--disable-sync",
                "--lang=en",
                "--user-data-dir=" + profile.resolve("profile"));
        // For tabs opened later; the first is told below.
        options.setExperimentalOption(
                "prefs", Map.of("download.default_directory", downloads().toString()));
        ChromeDriverService service = new ChromeDriverService.Builder()
                .usingDriverExecutable(new File("/usr/bin/chromedriver"))
                .build();
        this.driver = new ChromeDriver(service, options);
        driver.manage().timeouts().scriptTimeout(PATIENCE);
        driver.executeCdpCommand(
                "Browser.setDownloadBehavior",
                Map.of("behavior", "allow", "downloadPath", downloads().toString()));
        room(screen.width(), screen.height());
        Runtime.getRuntime().addShutdownHook(new Thread(this::quit));
    }

    /** The page in a browser that has seen nothing of it yet, with the drawing and the tables there. */
    static Browser open(Screen screen) {
        return open(screen, Map.of(), RunningService.address() + "/");
    }

    /** The page as a test before found it and left it again, which saves a load; for tests that leave it so in their turn. */
    static Browser found(Screen screen) {
        Browser browser = RUNNING.get(screen);
        if (browser == null || !browser.asFound) {
            browser = open(screen);
            browser.asFound = true;
        }
        return browser;
    }

    /** The same with media features, for example {@code prefers-color-scheme}, at an address. */
    static Browser open(Screen screen, Map<String, String> media, String address) {
        Browser browser = RUNNING.computeIfAbsent(screen, Browser::new);
        browser.empty();
        browser.room(screen.width(), screen.height());
        browser.driver.executeCdpCommand(
                "Emulation.setEmulatedMedia",
                Map.of(
                        "media",
                        "",
                        "features",
                        media.entrySet().stream()
                                .map(entry -> Map.of("name", entry.getKey(), "value", entry.getValue()))
                                .toList()));
        browser.go(address);
        return browser;
    }

    /** A browser that has seen nothing yet, with nothing open; for pages that are not the service's own. */
    static Browser blank(Screen screen) {
        Browser browser = RUNNING.computeIfAbsent(screen, Browser::new);
        browser.empty();
        browser.room(screen.width(), screen.height());
        return browser;
    }

    /** Takes on light or dark. */
    void scheme(String scheme) {
        driver.executeCdpCommand(
                "Emulation.setEmulatedMedia",
                Map.of("media", "", "features", List.of(Map.of("name", "prefers-color-scheme", "value", scheme))));
    }

    /** Forgets all that was kept and downloaded: as good as new, and much quicker than starting anew. */
    private void empty() {
        if (asFound) {
            // The page keeps its work when it is left, so it is left first.
            driver.get("about:blank");
            asFound = false;
        }
        driver.executeCdpCommand(
                "Storage.clearDataForOrigin", Map.of("origin", RunningService.address(), "storageTypes", KEPT));
        complaints();
        remove(downloads());
    }

    Path downloads() {
        return profile.resolve("downloads");
    }

    void go(String address) {
        driver.get(address);
        settle();
    }

    /** Goes to an address that is not the page. */
    void visit(String address) {
        driver.get(address);
    }

    /** Another room for the page, until {@link #open} puts it back; a page magnified to 200 % has half the room each way. */
    void room(int width, int height) {
        driver.executeCdpCommand(
                "Emulation.setDeviceMetricsOverride",
                Map.of("width", width, "height", height, "deviceScaleFactor", 1, "mobile", false));
    }

    /** Does something in a second tab of the same browser, and comes back to the first. */
    void inAnotherTab(String address, Runnable work) {
        String first = driver.getWindowHandle();
        driver.switchTo().newWindow(WindowType.TAB);
        room(screen.width(), screen.height());
        try {
            go(address);
            work.run();
        } finally {
            driver.close();
            driver.switchTo().window(first);
        }
    }

    /** Takes on another medium, for example {@code print}. */
    void media(String medium) {
        driver.executeCdpCommand("Emulation.setEmulatedMedia", Map.of("media", medium));
    }

    void reload() {
        driver.navigate().refresh();
        settle();
    }

    /** Waits until drawing and tables show what was asked for last. */
    void settle() {
        await(
                "the page to settle",
                "const page = document.getElementById('page');"
                        + "return !!page && !page.classList.contains('busy') && !!document.querySelector('.cloth svg')"
                        + " && !!document.querySelector('#panel-spec tbody tr');");
    }

    /** Waits until a script returns true. The page itself looks again and again, which takes less than to ask it from here; where it is left meanwhile, the next one is asked. */
    void await(String what, String script, Object... arguments) {
        long end = System.nanoTime() + PATIENCE.toNanos();
        Object found = "not asked";
        while (!Boolean.TRUE.equals(found)) {
            if (System.nanoTime() > end) {
                throw new AssertionError(
                        "waited in vain for " + what + ": " + found + "; the browser says " + complaints());
            }
            try {
                found = runAsync(LOOKS.replace("SCRIPT", script), arguments);
            } catch (JavascriptException left) {
                found = left.getMessage();
                pause();
            } catch (ScriptTimeoutException late) {
                found = late.getMessage();
            }
        }
    }

    private static void pause() {
        try {
            Thread.sleep(25);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }

    Object run(String script, Object... arguments) {
        return ((JavascriptExecutor) driver).executeScript(script, arguments);
    }

    Object runAsync(String script, Object... arguments) {
        return ((JavascriptExecutor) driver).executeAsyncScript(script, arguments);
    }

    WebElement find(String selector) {
        return driver.findElement(By.cssSelector(selector));
    }

    List<WebElement> all(String selector) {
        return driver.findElements(By.cssSelector(selector));
    }

    String text(String selector) {
        return find(selector).getText();
    }

    String value(String selector) {
        return find(selector).getDomProperty("value");
    }

    String address() {
        return driver.getCurrentUrl();
    }

    Actions actions() {
        return new Actions(driver);
    }

    /** Shows a view; on the phone the measures are one of them. */
    void show(String tab) {
        if (tab.equals("measures") && screen == Screen.DESKTOP) {
            return;
        }
        click(".tab[data-tab=" + tab + "]");
    }

    /** Goes to one of the tasks beside the style. */
    void task(String task) {
        click("[data-task=" + task + "]");
        await("the task", "return document.getElementById('desk').dataset.desk === arguments[0];", task);
    }

    /** Replaces what stands in an input that is seen, key by key. */
    void fill(String id, String text) {
        WebElement input = find("#" + id);
        run("arguments[0].scrollIntoView({block: 'center'}); arguments[0].focus({preventScroll: true});", input);
        input.sendKeys(Keys.chord(Keys.CONTROL, "a"), text);
    }

    /** Presses the tab key until a condition on the focused element holds. */
    void tabTo(String condition) {
        for (int i = 0; i < 150; i++) {
            actions().sendKeys(Keys.TAB).perform();
            if (Boolean.TRUE.equals(run("return " + condition + ";"))) {
                return;
            }
        }
        throw new AssertionError("the keyboard does not reach: " + condition);
    }

    /** The bytes of the first file downloaded whose name ends so. */
    byte[] downloaded(String end) throws IOException {
        long until = System.nanoTime() + PATIENCE.toNanos();
        while (System.nanoTime() < until) {
            if (Files.isDirectory(downloads())) {
                try (var files = Files.list(downloads())) {
                    List<Path> all = files.toList();
                    // The browser first makes an empty file of the name, and puts the whole one in its place at the
                    // end.
                    boolean whole =
                            all.stream().noneMatch(file -> file.toString().endsWith(".crdownload"));
                    List<Path> found = all.stream()
                            .filter(file -> whole && file.toString().endsWith(end))
                            .toList();
                    byte[] bytes = found.isEmpty() ? new byte[0] : Files.readAllBytes(found.get(0));
                    if (bytes.length > 0) {
                        return bytes;
                    }
                }
            }
            pause();
        }
        throw new AssertionError("no file " + end + " came");
    }

    /** Opens the group of measures that holds an input, and goes to it by keyboard focus. */
    WebElement input(String id) {
        show("measures");
        run("document.getElementById(arguments[0]).closest('details').open = true;", id);
        WebElement input = find("#" + id);
        run("arguments[0].scrollIntoView({block: 'end'}); arguments[0].focus({preventScroll: true});", input);
        return input;
    }

    /** Replaces what stands in an input, key by key, and waits for the answer. */
    void type(String id, String text) {
        WebElement input = input(id);
        input.sendKeys(Keys.chord(Keys.CONTROL, "a"), text);
        settle();
    }

    void click(String selector) {
        for (int tries = 1; ; tries++) {
            WebElement element = find(selector);
            try {
                run("arguments[0].scrollIntoView({block: 'center'});", element);
                element.click();
                return;
            } catch (ElementClickInterceptedException | StaleElementReferenceException e) {
                // An answer that came between moved or redrew what is clicked, as it would under a finger.
                if (tries == 4) {
                    throw e;
                }
                settle();
            }
        }
    }

    void choose(String selectId, String value) {
        new org.openqa.selenium.support.ui.Select(find("#" + selectId)).selectByValue(value);
        settle();
    }

    /** A figure of the spec table. */
    String spec(String code, String size) {
        return (String) run(
                "const heads = [...document.querySelectorAll('#panel-spec thead th')].map(th => th.textContent);const"
                        + " row = document.querySelector('#panel-spec [data-code=' + arguments[0] +"
                        + " ']').closest('tr');return row.children[heads.indexOf(arguments[1])].textContent;",
                code,
                size);
    }

    /** The path of the cut line of a piece in a size. */
    String cutLine(String piece, String size) {
        return (String) run(
                "return document.querySelector('g.piece[data-piece=' + arguments[0] + '] g.size[data-size=\"' +"
                        + " arguments[1] + '\"] > path.cut').getAttribute('d');",
                piece,
                size);
    }

    /** What the browser complains about in its console: errors of scripts, refusals by the security policy. */
    List<String> complaints() {
        return driver.manage().logs().get(LogType.BROWSER).getAll().stream()
                .map(entry -> entry.getLevel() + " " + entry.getMessage())
                .toList();
    }

    /** What is seen, as a PNG. */
    byte[] picture() {
        return driver.getScreenshotAs(OutputType.BYTES);
    }

    /** One part of the page alone, as a PNG. */
    byte[] picture(String css) {
        return driver.findElement(By.cssSelector(css)).getScreenshotAs(OutputType.BYTES);
    }

    /** Keeps a picture of what is seen. */
    void keep(String name) {
        try {
            Path folder = RunningService.root().resolve("contract-tests/target/screens");
            Files.createDirectories(folder);
            Files.write(folder.resolve(name + "-" + screen + ".png"), picture());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Ends a test; the browser stays for the next. */
    @Override
    public void close() {
        if (!asFound) {
            driver.get("about:blank");
        }
    }

    private void quit() {
        driver.quit();
        remove(profile);
    }

    private static void remove(Path folder) {
        if (!Files.exists(folder)) {
            return;
        }
        try (var files = Files.walk(folder)) {
            files.sorted(Comparator.reverseOrder()).map(Path::toFile).forEach(File::delete);
        } catch (IOException | UncheckedIOException e) {
            // The browser may still be removing files of its own; the system's folder for such files is emptied anyway.
        }
    }
}
