package org.capwright.service;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.URL;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Deque;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Properties;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.config.YamlPropertiesFactoryBean;
import org.springframework.core.io.ClassPathResource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * docs/configuration.md is made of application.yml, whose comments tell meaning and range of our settings, and of what Spring Boot's libraries publish about theirs; the test fails where the file is stale, and
 * {@code -Dcapwright.write} writes it.
 */
class ConfigurationReferenceTest {

    private static final Path FILE = Path.of("../docs/configuration.md");
    private static final Path SETTINGS = Path.of("src/main/resources/application.yml");
    private static final Path CODE = Path.of("src/main/java");
    private static final String TAKES = "Takes: ";
    private static final Pattern ASKED = Pattern.compile("\\$\\{(capwright\\.[a-z.-]+)\\}");
    private static final Pattern LINE = Pattern.compile("( *)([a-z-]+):(?: (.*))?");

    /** Those of Spring Boot that an operator is likely to need. */
    private static final List<String> OF_SPRING = List.of(
            "server.address",
            "server.port",
            "server.ssl.bundle",
            "server.forward-headers-strategy",
            "server.servlet.context-path",
            "server.tomcat.threads.max",
            "spring.lifecycle.timeout-per-shutdown-phase",
            "management.server.port",
            "management.server.address",
            "management.opentelemetry.tracing.export.otlp.endpoint",
            "management.tracing.sampling.probability",
            "logging.structured.format.console",
            "logging.file.name");

    private record Setting(String name, String comment) {

        String meaning() {
            return comment.substring(0, comment.indexOf(TAKES)).strip();
        }

        String takes() {
            return comment.substring(comment.indexOf(TAKES) + TAKES.length()).replaceAll("\\.$", "");
        }
    }

    private final Properties defaults = defaults();

    private static Properties defaults() {
        YamlPropertiesFactoryBean yaml = new YamlPropertiesFactoryBean();
        yaml.setResources(new ClassPathResource("application.yml"));
        return Objects.requireNonNull(yaml.getObject());
    }

    /** Every leaf of the section capwright with the comment above it. */
    private static List<Setting> ours() throws IOException {
        List<Setting> found = new ArrayList<>();
        Deque<String> folders = new ArrayDeque<>();
        StringBuilder comment = new StringBuilder();
        boolean within = false;
        for (String line : Files.readAllLines(SETTINGS)) {
            if (line.strip().startsWith("#")) {
                comment.append(line.strip().substring(1));
                continue;
            }
            Matcher parts = LINE.matcher(line);
            if (parts.matches()) {
                int depth = parts.group(1).length() / 2;
                within = depth == 0 ? parts.group(2).equals("capwright") : within;
                while (folders.size() > depth) {
                    folders.removeLast();
                }
                folders.addLast(parts.group(2));
                if (within && parts.group(3) != null) {
                    found.add(new Setting(
                            String.join(".", folders), comment.toString().strip()));
                }
            }
            comment.setLength(0);
        }
        return found;
    }

    @Test
    void everySettingThatTheCodeAsksForIsThereAndNoOther() throws IOException {
        Set<String> asked = new TreeSet<>();
        try (Stream<Path> files = Files.walk(CODE)) {
            for (Path file :
                    files.filter(one -> one.toString().endsWith(".java")).toList()) {
                Matcher names = ASKED.matcher(Files.readString(file));
                while (names.find()) {
                    asked.add(names.group(1));
                }
            }
        }
        assertTrue(asked.size() > 10, asked.toString());
        assertEquals(
                asked,
                ours().stream().map(Setting::name).collect(Collectors.toCollection(TreeSet::new)),
                "application.yml has what the code asks for");
        for (Setting setting : ours()) {
            assertTrue(setting.comment().contains(TAKES), setting.name() + " does not say what it takes");
        }
    }

    @Test
    void theReferenceIsWhatTheCodeSays() throws IOException {
        String made = reference();
        if (System.getProperty("capwright.write") != null) {
            Files.writeString(FILE, made);
        }
        assertEquals(
                Files.exists(FILE) ? Files.readString(FILE) : "",
                made,
                "docs/configuration.md is stale; run this test with -DargLine=-Dcapwright.write");
    }

    private String reference() throws IOException {
        StringBuilder text = new StringBuilder("""
            # Settings

            Made of `application.yml` and of what Spring Boot's libraries say about theirs, by `ConfigurationReferenceTest`, which fails where this file is stale. A setting is given as an argument (`--server.port=8081`), as an
            environment variable in capitals with `_` for `.` and without `-` (`CAPWRIGHT_KEEPBATCHES=P30D`), or in an `application.yml` beside the service. What is wrong with one ends the start, and the log says what would do.
            Durations are written as in ISO 8601 (`PT10S`, `P7D`).

            ## Of the service

            | Setting | Meaning | Takes | Default |
            |---|---|---|---|
            """);
        ours().forEach(one -> row(text, one.name(), one.meaning(), one.takes(), given(one.name(), "")));
        text.append("""

            ## Of Spring Boot

            Every [setting of Spring Boot](https://docs.spring.io/spring-boot/appendix/application-properties/index.html) works as well; these are the likely ones.

            | Setting | Meaning | Takes | Default |
            |---|---|---|---|
            """);
        Map<String, JsonNode> published = published();
        for (String name : OF_SPRING) {
            JsonNode one = published.get(name);
            assertTrue(one != null && !one.has("deprecation"), name + " is no setting of Spring Boot, or not any more");
            row(
                    text,
                    name,
                    one.path("description").asString(""),
                    type(one.path("type").asString("")),
                    given(name, one.path("defaultValue").asString("")));
        }
        return text.toString();
    }

    private static void row(StringBuilder text, String name, String meaning, String takes, String usual) {
        text.append("| `")
                .append(name)
                .append("` | ")
                .append(cell(meaning))
                .append(" | ")
                .append(cell(takes))
                .append(" | ")
                .append(usual.isEmpty() ? "none" : "`" + usual + "`")
                .append(" |\n");
    }

    private static String cell(String text) {
        return text.replace("|", "\\|").replaceAll("\\s+", " ");
    }

    /** Our default, or else Spring Boot's. */
    private String given(String name, String usual) {
        return defaults.getProperty(name, usual);
    }

    private static String type(String name) {
        try {
            Class<?> type = Class.forName(name);
            if (type.isEnum()) {
                return Stream.of(type.getEnumConstants())
                        .map(one -> one.toString().toLowerCase(Locale.ROOT))
                        .collect(Collectors.joining(", "));
            }
        } catch (ClassNotFoundException e) {
            // Its last word says enough.
        }
        return switch (name) {
            case "java.lang.Integer" -> "a whole number";
            case "java.lang.Float", "java.lang.Double" -> "a number";
            case "java.lang.Boolean" -> "true or false";
            case "java.net.InetAddress" -> "an address of this machine, or 0.0.0.0 for all";
            case "java.time.Duration" -> "a duration";
            default -> "a text";
        };
    }

    private static Map<String, JsonNode> published() throws IOException {
        Map<String, JsonNode> found = new TreeMap<>();
        JsonMapper mapper = JsonMapper.shared();
        for (URL url : Collections.list(ConfigurationReferenceTest.class
                .getClassLoader()
                .getResources("META-INF/spring-configuration-metadata.json"))) {
            try (InputStream in = url.openStream()) {
                mapper.readTree(in)
                        .path("properties")
                        .forEach(one -> found.put(one.path("name").asString(""), one));
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
        return found;
    }
}
