package org.capwright.batch;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import java.util.zip.GZIPOutputStream;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.SparkSession;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * The packaged job on real files: by {@code spark-submit}, in a process that has Spark alone and is given our jars, and then once more in a session of its own. The table is read by Spark, the errors as text.
 */
class CutBatchIT {

    private static final JsonMapper MAPPER = JsonMapper.builder().build();

    /** What a cluster does not have. */
    private static final List<String> OURS = List.of(
            "size-tables",
            "grading-",
            "jackson-databind-3",
            "jackson-core-3",
            "pdfbox",
            "fontbox",
            "commons-csv",
            "jspecify",
            "junit-");

    /** Small enough that the plain file is read by several tasks. */
    private static final String SPLIT = "1500";

    @TempDir
    Path folder;

    @Test
    void everyLineIsCutOrToldOf() throws Exception {
        List<String> plain = new ArrayList<>();
        for (int i = 1; i <= 16; i++) {
            plain.add(i % 3 == 0 ? Orders.size(i, "38") : Orders.wearer(i));
        }
        plain.set(4, "{\"style\":\"choir-gown\",\"reference\":\"order 5\",");
        plain.set(10, Orders.questioned(11));
        plain.set(13, "{\"wearer\":{\"bustGirth\":" + Orders.SECRET + "}}");
        List<String> packed = List.of(Orders.wearer(101), Orders.size(102, "52"), Orders.size(103, "40"));
        Path orders = Files.createDirectory(folder.resolve("orders"));
        Files.write(orders.resolve("a.ndjson"), plain);
        try (OutputStream out = new GZIPOutputStream(Files.newOutputStream(orders.resolve("b.ndjson.gz")))) {
            out.write(Orders.bytes(String.join("\r\n", packed)));
        }
        Path result = folder.resolve("result");
        String log = submitted(orders, result);

        assertEquals(
                MAPPER.readTree("{\"lines\":19,\"cut\":15,\"notCut\":4,\"formats\":[\"pdf\",\"csv\"]}"),
                without(MAPPER.readTree(Files.readAllBytes(result.resolve("summary.json"))), "engine"));
        String errors = errors(result);
        assertEquals(
                List.of("a.ndjson 5 ", "a.ndjson 11 order 11", "a.ndjson 14 ", "b.ndjson.gz 2 order 102"),
                errors.lines()
                        .map(MAPPER::readTree)
                        .map(error -> error.get("input").stringValue() + " " + error.get("line") + " "
                                + error.get("reference").stringValue())
                        .toList());
        assertTrue(
                errors.lines()
                        .allMatch(
                                error -> !MAPPER.readTree(error).get("problems").isEmpty()),
                errors);
        for (String measured : List.of(Orders.SECRET, Orders.WRIST)) {
            assertFalse(errors.contains(measured), errors);
            assertFalse(log.contains(measured), "a measurement is in the log");
        }
        assertTrue(log.contains("\"lines\":19"), log);

        try (SparkSession spark = SparkSession.builder()
                .master("local[2]")
                .config("spark.ui.enabled", "false")
                .config("spark.driver.bindAddress", "127.0.0.1")
                .config("spark.driver.host", "127.0.0.1")
                .getOrCreate()) {
            List<Row> rows = table(spark, result);
            holdsWhatIsCut(rows, plain);
            Set<String> before = told(rows);

            // Again, with larger parts: the same rows in the place of the first ones.
            BatchSummary again = CutBatch.run(
                    spark, BatchArguments.of(options(orders, result, "1000000").toArray(String[]::new)));
            assertEquals(15, again.cut());
            assertEquals(before, told(table(spark, result)));
            assertEquals(errors, errors(result));

            // What cannot begin leaves what is there.
            Path nothing = folder.resolve("nothing");
            Files.createDirectory(nothing);
            Files.writeString(nothing.resolve("mine.txt"), "of somebody else");
            assertThrows(
                    IllegalArgumentException.class,
                    () -> CutBatch.run(
                            spark,
                            BatchArguments.of(options(orders, nothing, SPLIT).toArray(String[]::new))));
            assertTrue(Files.exists(nothing.resolve("mine.txt")));
        }
    }

    private static void holdsWhatIsCut(List<Row> rows, List<String> plain) throws IOException {
        assertEquals(30, rows.size());
        OrderCutter cutter = new OrderCutter(Orders.styles(), List.of("pdf", "csv"));
        for (Row row : rows) {
            byte[] content = row.getAs("content");
            assertEquals(new CutFile("", content).sha256(), row.getAs("sha256"));
            assertEquals(content.length, row.<Integer>getAs("bytes"));
            if (row.getAs("input").equals("a.ndjson")) {
                Outcome.Cut cut =
                        (Outcome.Cut) cutter.cut(Orders.bytes(plain.get((int) (row.<Long>getAs("line") - 1))));
                assertEquals(cut.reference(), row.getAs("reference"));
                assertArrayEquals(
                        cut.files()
                                .get(row.getAs("format").equals("pdf") ? 0 : 1)
                                .content(),
                        content);
            }
        }
    }

    private static List<Row> table(SparkSession spark, Path result) {
        return spark.read()
                .parquet(result.resolve("orders").toString())
                .where("outcome = 'cut'")
                .collectAsList();
    }

    private static Set<String> told(List<Row> rows) {
        Set<String> told = new TreeSet<>();
        rows.forEach(row -> told.add(row.getAs("input") + " " + row.getAs("line") + " " + row.getAs("format") + " "
                + row.getAs("reference") + " " + row.getAs("sha256")));
        assertEquals(rows.size(), told.size());
        return told;
    }

    private static JsonNode without(JsonNode node, String field) {
        ((tools.jackson.databind.node.ObjectNode) node).remove(field);
        return node;
    }

    private static String errors(Path result) throws IOException {
        try (Stream<Path> parts = Files.list(result.resolve("errors"))) {
            List<Path> texts =
                    parts.filter(part -> part.toString().endsWith(".txt")).toList();
            assertEquals(1, texts.size());
            return Files.readString(texts.get(0));
        }
    }

    private static List<String> options(Path orders, Path result, String split) {
        return List.of(
                "--styles",
                Orders.style().toString(),
                "--orders",
                orders.toString(),
                "--output",
                result.toString(),
                "--formats",
                "pdf,csv",
                "--split-bytes",
                split);
    }

    /** Runs the job as docs/batch.md says; the process has Spark, and our jars by the option jars alone. */
    private static String submitted(Path orders, Path result) throws Exception {
        Path target = Path.of("target").toAbsolutePath();
        String jars;
        try (Stream<Path> files = Files.list(target.resolve("jars"))) {
            jars = files.map(Path::toString).collect(Collectors.joining(","));
        }
        String spark = Arrays.stream(
                        System.getProperty("surefire.test.class.path", System.getProperty("java.class.path"))
                                .split(File.pathSeparator))
                .filter(entry -> entry.endsWith(".jar"))
                .filter(entry -> OURS.stream()
                        .noneMatch(
                                name -> Path.of(entry).getFileName().toString().startsWith(name)))
                .collect(Collectors.joining(File.pathSeparator));
        List<String> command = new ArrayList<>();
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        command.addAll(List.of(System.getProperty("capwright.spark.opens").split(" ")));
        command.addAll(List.of("-XX:TieredStopAtLevel=1", "-Xmx700m", "-cp", spark));
        command.addAll(List.of("org.apache.spark.deploy.SparkSubmit", "--master", "local[2]"));
        command.addAll(List.of("--class", CutBatch.class.getName(), "--jars", jars));
        for (String setting : List.of("ui.enabled=false", "driver.bindAddress=127.0.0.1", "driver.host=127.0.0.1")) {
            command.addAll(List.of("--conf", "spark." + setting));
        }
        try (Stream<Path> files = Files.list(target)) {
            command.add(files.filter(
                            file -> file.getFileName().toString().matches("grading-batch-[0-9.]+(-SNAPSHOT)?\\.jar"))
                    .findFirst()
                    .orElseThrow()
                    .toString());
        }
        command.addAll(options(orders, result, SPLIT));
        Path log = Files.createTempFile("spark", ".log");
        ProcessBuilder process =
                new ProcessBuilder(command).redirectErrorStream(true).redirectOutput(log.toFile());
        process.environment().put("SPARK_LOCAL_IP", "127.0.0.1");
        int ended = process.start().waitFor();
        assertEquals(0, ended, Files.readString(log));
        return Files.readString(log);
    }
}
