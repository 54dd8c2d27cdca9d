package org.capwright.contract;

import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/**
 * Spec tables as sewing rooms of ten countries make them, clean and with one fault each, written by a program that shares nothing with this project but the names of points of measure in its answers
 * ({@code write_sheets.py}; words and layouts are common practice, from memory; figures invented). What is read is compared with what was written, figure by figure. A sample by default; {@code -Pthorough} sends all and
 * leaves the table in {@code target/sheet-corpus.txt}, as docs/checks/README.md has it.
 */
class SheetCorpusIT {

    private static final boolean THOROUGH = Boolean.getBoolean("capwright.thorough");
    private static final String EVERY = THOROUGH ? "1" : "13";
    private static final ObjectMapper JSON = new ObjectMapper();

    /** Written figures are rounded to four decimals of their unit, mm. */
    private static final double SAME = 0.06;

    private static final class Count {
        private int sheets;
        private int right;

        String share() {
            double[] bounds = wilson(right, sheets);
            return String.format(
                    Locale.ROOT,
                    "%d of %d (95 %% interval %.1f to %.1f %%)",
                    right,
                    sheets,
                    100 * bounds[0],
                    100 * bounds[1]);
        }
    }

    /** Wilson, Probable inference, the law of succession, and statistical inference, J. Am. Stat. Assoc. 22 (1927) 209-212; 95 %. */
    private static double[] wilson(int hits, int all) {
        double z = 1.959964;
        double p = (double) hits / all;
        double middle = p + z * z / (2 * all);
        double spread = z * Math.sqrt(p * (1 - p) / all + z * z / (4.0 * all * all));
        double scale = 1 + z * z / all;
        return new double[] {Math.max(0, (middle - spread) / scale), Math.min(1, (middle + spread) / scale)};
    }

    @Test
    void sheetsOfOtherHandsAreReadAndJudged() throws IOException, InterruptedException {
        String script = Path.of("src", "test", "resources", "write_sheets.py").toString();
        List<String> lines =
                Tool.run("python3", List.of("python3", script, EVERY)).lines().toList();
        Map<String, Count> named = new TreeMap<>();
        Count clean = new Count();
        Count found = new Count();
        Count all = new Count();
        List<String> missed = new ArrayList<>();
        List<String> alarms = new ArrayList<>();
        List<String> wrong = new ArrayList<>();
        HttpClient client = HttpClient.newHttpClient();
        for (String line : lines) {
            JsonNode sheet = JSON.readTree(line);
            String id = sheet.path("id").asText();
            HttpResponse<String> response = client.send(request(sheet), HttpResponse.BodyHandlers.ofString());
            JsonNode answer = JSON.readTree(response.body());
            boolean read = response.statusCode() == 200;
            List<JsonNode> findings = new ArrayList<>();
            answer.path("findings").forEach(finding -> {
                if (!finding.path("severity").asText().equals("info")) {
                    findings.add(finding);
                }
            });
            String told = read ? findings.toString() : response.statusCode() + " " + response.body();
            if (read) {
                wrong.addAll(wrongInSilence(sheet, answer, findings));
            }
            if (sheet.path("kind").asText().equals("clean")
                    || expected(sheet).path("codes").isEmpty()) {
                clean.sheets++;
                boolean silent = read && findings.isEmpty();
                clean.right += silent ? 1 : 0;
                if (!silent) {
                    alarms.add(id + ": " + told);
                }
            } else {
                boolean right = findings.stream().anyMatch(finding -> names(sheet, finding));
                for (Count count :
                        List.of(all, named.computeIfAbsent(sheet.path("kind").asText(), k -> new Count()))) {
                    count.sheets++;
                    count.right += right ? 1 : 0;
                }
                found.sheets++;
                found.right += !read || !findings.isEmpty() ? 1 : 0;
                if (!right) {
                    missed.add(id + ": " + told);
                }
            }
        }
        StringBuilder text = new StringBuilder();
        named.forEach((kind, count) ->
                text.append(kind).append(": named ").append(count.share()).append('\n'));
        text.append("all faults: found ")
                .append(found.share())
                .append(", named ")
                .append(all.share())
                .append('\n');
        text.append("clean sheets without alarm: ").append(clean.share()).append('\n');
        text.append("figures read wrong in silence: ").append(wrong.size()).append('\n');
        Files.createDirectories(Path.of("target"));
        Files.writeString(
                Path.of("target", "sheet-corpus.txt"),
                text + String.join("\n", missed) + "\n" + String.join("\n", alarms) + "\n" + String.join("\n", wrong));
        assertTrue(clean.sheets >= (THOROUGH ? 60 : 10) && all.sheets >= (THOROUGH ? 300 : 30), text::toString);
        assertTrue(wrong.isEmpty(), () -> text + wrong.toString());
        assertTrue(all.right >= 0.98 * all.sheets, () -> text + String.join("\n", missed));
        assertTrue(alarms.size() <= 0.01 * clean.sheets, () -> text + String.join("\n", alarms));
    }

    private static HttpRequest request(JsonNode sheet) {
        StringBuilder query = new StringBuilder("?units=mm");
        sheet.path("query")
                .properties()
                .forEach(entry -> query.append('&')
                        .append(entry.getKey())
                        .append('=')
                        .append(URLEncoder.encode(entry.getValue().asText(), StandardCharsets.UTF_8)));
        return HttpRequest.newBuilder(URI.create(RunningService.address() + "/v1/checks" + query))
                .header("Content-Type", sheet.path("type").asText())
                .header("Accept", "application/json")
                .POST(HttpRequest.BodyPublishers.ofByteArray(
                        Base64.getDecoder().decode(sheet.path("body").asText())))
                .build();
    }

    private static JsonNode expected(JsonNode sheet) {
        return sheet.path("expected").path(0);
    }

    private static boolean contains(JsonNode list, String word) {
        for (JsonNode each : list) {
            if (each.asText().equals(word)) {
                return true;
            }
        }
        return false;
    }

    private static boolean names(JsonNode sheet, JsonNode finding) {
        JsonNode expected = expected(sheet);
        String measure = finding.path("dimension").asText();
        boolean subject = contains(expected.path("measures"), measure)
                || measure.toLowerCase(Locale.ROOT).contains("size") && contains(expected.path("measures"), "size");
        boolean sizes = expected.path("sizes").isEmpty();
        for (JsonNode at : expected.path("sizes")) {
            sizes |= contains(
                            finding.path("sizes"),
                            sheet.path("labels").path(at.asInt()).asText())
                    || contains(
                            finding.path("sizes"),
                            sheet.path("sizes").path(at.asInt()).asText());
        }
        return contains(expected.path("codes"), finding.path("check").asText()) && subject && sizes;
    }

    /** Figures that were read otherwise than they were written, although no question was put and nothing was left unread. */
    private static List<String> wrongInSilence(JsonNode sheet, JsonNode answer, List<JsonNode> findings) {
        List<String> wrong = new ArrayList<>();
        boolean asked = findings.stream()
                .anyMatch(finding -> List.of("open-question", "not-read")
                        .contains(finding.path("check").asText()));
        List<String> labels = new ArrayList<>();
        answer.path("sizes").forEach(size -> labels.add(size.asText()));
        Map<String, JsonNode> rows = new TreeMap<>();
        answer.path("figures").forEach(row -> rows.put(row.path("measure").asText(), row.path("values")));
        sheet.path("figures").properties().forEach(row -> {
            int i = 0;
            for (Map.Entry<String, JsonNode> figure : row.getValue().properties()) {
                int at = Math.max(
                        labels.indexOf(sheet.path("labels").path(i++).asText()), labels.indexOf(figure.getKey()));
                JsonNode read = rows.containsKey(row.getKey()) && at >= 0
                        ? rows.get(row.getKey()).path(at)
                        : JSON.missingNode();
                boolean same = figure.getValue().isNull()
                        ? !read.isNumber()
                        : read.isNumber()
                                && Math.abs(read.asDouble() - figure.getValue().asDouble()) <= SAME;
                if (!same && !asked) {
                    wrong.add(sheet.path("id").asText() + ": " + row.getKey() + " of " + figure.getKey() + " written "
                            + figure.getValue() + ", read " + read);
                }
            }
        });
        return wrong;
    }
}
