package org.capwright.contract;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The commands that the documents show do what they say: each is run as it stands, by a shell, in a folder that has only the examples. */
class DocumentedCommandsIT {

    /** How a file of each kind begins (RFC 8259, ISO 32000-1 7.5.2, PKWARE APPNOTE 4.3.7, DXF reference); a CSV by its first column. */
    private static final Map<String, String> BEGINNINGS = Map.of(
            "pdf",
            "%PDF-",
            "zip",
            "PK\u0003\u0004",
            "svg",
            "<svg",
            "json",
            "{",
            "dxf",
            "SECTION",
            "csv",
            "style,",
            "ndjson",
            "{\"");

    /** What a reader is told to save under a name. */
    private static final Pattern SAVED = Pattern.compile("Save as `(\\S+)`:\n\n```\\w+\n(.*?)\n```", Pattern.DOTALL);

    private static final Pattern SHELL = Pattern.compile("```sh\n(.*?)\n```", Pattern.DOTALL);

    @TempDir
    Path folder;

    @Test
    void theReadme() throws Exception {
        Map<String, String> files = run("README.md");
        assertEquals(List.of("gown.pdf"), List.copyOf(files.keySet()));
    }

    @Test
    void thePageOfTheService() throws Exception {
        Map<String, String> files = run("docs/service.md");
        assertEquals(
                List.of(
                        "batch.ndjson",
                        "cut.json",
                        "events.txt",
                        "gown.csv",
                        "gown.dxf",
                        "gown.json",
                        "gown.pdf",
                        "gown.svg",
                        "gown.zip",
                        "job.json",
                        "kept.json",
                        "kept.pdf",
                        "order.json",
                        "order.pdf",
                        "problem.json",
                        "report.pdf",
                        "results.ndjson",
                        "robe.pdf",
                        "sleeve.zip"),
                List.copyOf(files.keySet()));
        assertTrue(files.get("problem.json").contains("/sleeve/bicep"), files.get("problem.json"));
        assertTrue(files.get("gown.json").contains("\"specTable\""), files.get("gown.json"));
        assertTrue(files.get("cut.json").contains("\"state\":\"cut\""), files.get("cut.json"));
        assertEquals(2, files.get("results.ndjson").split("\"status\":201").length - 1, files.get("results.ndjson"));
        assertTrue(files.get("kept.json").contains("\"revision\":1"), files.get("kept.json"));
        assertTrue(files.get("events.txt").startsWith("event:"), files.get("events.txt"));
    }

    /** Everything that the reader writes, sends and runs, in the order of the page. */
    @Test
    void theFirstOrder() throws Exception {
        Map<String, String> files = run("docs/first-order.md");
        assertEquals(
                List.of(
                        "form.json",
                        "gown.json",
                        "order-1207.pdf",
                        "order-1208.pdf",
                        "order.json",
                        "questioned.txt",
                        "shop.mjs",
                        "style.json",
                        "taken.txt"),
                List.copyOf(files.keySet()));
        assertTrue(files.get("style.json").contains("\"revision\":1"), files.get("style.json"));
        assertTrue(files.get("form.json").contains("\"upperArmGirth\""), files.get("form.json"));
        assertTrue(files.get("order.json").contains("\"state\":\"taken\""), files.get("order.json"));
        assertTrue(files.get("taken.txt").contains("order-1208 is taken"), files.get("taken.txt"));
        assertTrue(
                files.get("questioned.txt").contains("Measure again: /wearer/upperArmGirth"),
                files.get("questioned.txt"));
    }

    /** Links to files and folders lead somewhere. */
    @Test
    void theLinks() throws IOException {
        for (String document : List.of(
                "README.md",
                "DEVELOPERS.md",
                "docs/service.md",
                "docs/first-order.md",
                "docs/batch.md",
                "docs/page.md",
                "docs/checks/README.md")) {
            Path file = RunningService.root().resolve(document);
            Pattern.compile("\\]\\(([^)#:]+)\\)")
                    .matcher(Files.readString(file))
                    .results()
                    .map(link -> file.resolveSibling(link.group(1)))
                    .forEach(target -> assertTrue(Files.exists(target), document + " leads to " + target));
        }
    }

    /** Runs the shell commands that call the service; gives the files that they leave. */
    private Map<String, String> run(String document) throws Exception {
        Files.createSymbolicLink(
                folder.resolve("examples"), RunningService.root().resolve("examples"));
        String page = Files.readString(RunningService.root().resolve(document))
                .replace("http://localhost:8080", RunningService.address());
        for (MatchResult saved : SAVED.matcher(page).results().toList()) {
            Files.writeString(folder.resolve(saved.group(1)), saved.group(2));
        }
        String commands = SHELL.matcher(page)
                .results()
                .map(block -> block.group(1))
                .filter(block -> block.contains("curl") || block.contains("node "))
                .collect(Collectors.joining("\n"));
        Process shell = new ProcessBuilder("sh", "-eu", "-c", commands)
                .directory(folder.toFile())
                .redirectErrorStream(true)
                .start();
        String output = new String(shell.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertEquals(0, shell.waitFor(), output);
        Map<String, String> written = new TreeMap<>();
        try (Stream<Path> files = Files.list(folder)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                String name = file.getFileName().toString();
                String text = Files.readString(file, StandardCharsets.ISO_8859_1);
                String beginning = BEGINNINGS.get(name.substring(name.lastIndexOf('.') + 1));
                if (beginning != null) {
                    assertTrue(
                            text.contains(beginning) && text.indexOf(beginning) < 100,
                            name + " begins with " + text.substring(0, Math.min(text.length(), 20)));
                }
                written.put(name, text);
            }
        }
        return written;
    }
}
