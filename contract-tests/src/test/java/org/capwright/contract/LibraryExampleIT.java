package org.capwright.contract;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.tools.ToolProvider;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The example of the library does what the README says of it: compiled against the library alone, it writes what the service answers. */
class LibraryExampleIT {

    private static final Path EXAMPLE = RunningService.root().resolve("examples/library");
    private static final Path SOURCE = EXAMPLE.resolve("src/main/java/ChoirGown.java");

    /** What the library brings with it, and nothing of the service. */
    private static final List<String> LIBRARY = List.of(
            "grading-core",
            "size-tables",
            "commons-csv",
            "commons-io",
            "commons-codec",
            "commons-logging",
            "commons-math3",
            "jts-core",
            "pdfbox",
            "fontbox");

    @TempDir
    static Path folder;

    private static String printed;

    @BeforeAll
    static void compileAndRun() throws Exception {
        String classPath = Arrays.stream(
                        System.getProperty("surefire.test.class.path", System.getProperty("java.class.path"))
                                .split(File.pathSeparator))
                .filter(entry -> LIBRARY.stream().anyMatch(entry::contains))
                .collect(Collectors.joining(File.pathSeparator));
        int compiled = ToolProvider.getSystemJavaCompiler()
                .run(null, null, null, "-proc:none", "-cp", classPath, "-d", folder.toString(), SOURCE.toString());
        assertEquals(0, compiled);
        Process run = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-cp",
                        folder + File.pathSeparator + classPath,
                        "ChoirGown")
                .directory(folder.toFile())
                .redirectErrorStream(true)
                .start();
        printed = new String(run.getInputStream().readAllBytes(), java.nio.charset.StandardCharsets.UTF_8);
        assertEquals(0, run.waitFor(), printed);
    }

    private static byte[] answered(String mediaType) {
        return given().baseUri(RunningService.address())
                .contentType("application/json")
                .accept(mediaType)
                .body(Requests.choirGown())
                .post("/v1/size-runs")
                .then()
                .statusCode(200)
                .extract()
                .asByteArray();
    }

    @Test
    void theNestIsThatOfTheServiceByteForByte() throws IOException {
        assertArrayEquals(answered("image/vnd.dxf"), Files.readAllBytes(folder.resolve("gown.dxf")));
        assertArrayEquals(answered("image/svg+xml"), Files.readAllBytes(folder.resolve("gown.svg")));
    }

    @Test
    void theSpecTableIsThatOfTheService() {
        String table = new String(answered("text/csv"), java.nio.charset.StandardCharsets.UTF_8);
        assertTrue(printed.startsWith(table), printed);
    }

    /** A statement ends with a semicolon; those within a line's chain of calls there are none. */
    @Test
    void itTakesTwelveStatementsAtMost() throws IOException {
        long statements = body().chars().filter(c -> c == ';').count();
        assertTrue(statements <= 12, statements + " statements");
    }

    @Test
    void theReadmeShowsItsCode() throws IOException {
        String readme = Files.readString(RunningService.root().resolve("README.md"));
        assertTrue(readme.contains("```java\n" + body() + "\n```"), body());
    }

    @Test
    void itsProjectNamesTheVersionThatIsBuilt() throws Exception {
        assertEquals(version(RunningService.root().resolve("pom.xml"), 0), version(EXAMPLE.resolve("pom.xml"), 1));
    }

    private static String version(Path pom, int position) throws Exception {
        return DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(pom.toFile())
                .getElementsByTagName("version")
                .item(position)
                .getTextContent();
    }

    /** The lines of main, set back to the margin. */
    private static String body() throws IOException {
        List<String> lines = Files.readAllLines(SOURCE);
        int begin = 1
                + lines.indexOf(lines.stream()
                        .filter(line -> line.contains("void main("))
                        .findFirst()
                        .orElseThrow());
        try (Stream<String> body = lines.subList(begin, lines.lastIndexOf("    }")).stream()) {
            return body.map(line -> line.isEmpty() ? line : line.substring(8)).collect(Collectors.joining("\n"));
        }
    }
}
