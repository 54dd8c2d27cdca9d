package org.capwright.contract;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.restassured.response.Response;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Words come in the language that Accept-Language asks for (RFC 9110, section 12.5.4); figures, codes and the bytes of English stay as they are. */
class LanguageIT {

    /** Words that no French sentence has. */
    private static final Pattern ENGLISH =
            Pattern.compile("(?i)\\b(the|of|and|with|which|than|must|should|sleeve|seam|pleats?|size|from)\\b");

    @TempDir
    Path folder;

    private static Response run(String wanted, String accept) {
        return given().baseUri(RunningService.address())
                .contentType("application/json")
                .header("Accept-Language", wanted)
                .accept(accept)
                .body(Requests.choirGown())
                .post("/v1/size-runs");
    }

    @Test
    void answersSayTheirLanguageAndThatItWasChosen() {
        Response french = run("fr-CH, fr;q=0.9, en;q=0.8", "application/json");
        assertEquals("fr", french.header("Content-Language"));
        String vary = String.join(",", french.headers().getValues("Vary")).toLowerCase(Locale.ROOT);
        assertTrue(List.of(vary.split(", ?")).containsAll(List.of("accept", "accept-language")), vary);
        Response english = run("de, en;q=0.5", "application/json");
        assertEquals("en", english.header("Content-Language"));
        assertEquals("en", run("xx", "application/json").header("Content-Language"));
        assertEquals("en", run("not a language at all;q=x", "application/json").header("Content-Language"));
        assertNotEquals(english.header("ETag"), french.header("ETag"));
        assertEquals(english.header("ETag"), run("en-GB", "application/json").header("ETag"));
    }

    /** Names of fields, codes and figures are the same; sentences for people are French. */
    @Test
    void onlyWordsForPeopleChange() {
        Response french = run("fr", "application/json");
        Response english = run("en", "application/json");
        assertEquals(codes(english.as(Map.class)), codes(french.as(Map.class)));
        List<String> sentences = new ArrayList<>(french.path("workroom.sewingOrder"));
        sentences.addAll(french.path("cautions"));
        sentences.addAll(french.path("specTable.rows.name"));
        sentences.addAll(french.path("specTable.rows.definition"));
        sentences.addAll(french.path("findings.message"));
        sentences.addAll(french.path("findings.remedy"));
        sentences.addAll(french.path("workroom.seams.name"));
        sentences.addAll(french.<List<List<String>>>path("sizes[0].pieces.label").stream()
                .flatMap(List::stream)
                .filter(line -> !line.startsWith("Choir gown"))
                .toList());
        assertTrue(sentences.size() > 60, sentences.toString());
        for (String sentence : sentences) {
            assertFalse(ENGLISH.matcher(sentence).find(), sentence);
        }
        assertTrue(sentences.stream().anyMatch(sentence -> sentence.contains("Bâtissez")), sentences.toString());
    }

    /** All that is no word for people: numbers and codes, by their places. */
    private static String codes(Map<?, ?> answer) {
        StringBuilder codes = new StringBuilder();
        codes(answer, "", codes);
        return codes.toString();
    }

    private static void codes(Object value, String place, StringBuilder into) {
        if (value instanceof Map<?, ?> object) {
            object.forEach((name, inner) -> codes(inner, place + "/" + name, into));
        } else if (value instanceof List<?> list) {
            list.forEach(inner -> codes(inner, place, into));
        } else if (!place.matches(
                ".*/(label|name|words|definition|toleranceSource|message|remedy|source|sewingOrder|cautions)")) {
            into.append(place).append('=').append(value).append('\n');
        }
    }

    @Test
    void problemsAreFrenchWithTheSameFieldsAndBounds() {
        String wrong = Requests.choirGown()
                .replaceFirst("\"rise\": ?[0-9.]+", "\"rise\": -3")
                .replaceFirst("\"hem\"", "\"hemm\"");
        Response english = given().baseUri(RunningService.address())
                .contentType("application/json")
                .body(wrong)
                .post("/v1/size-runs");
        Response french = given().baseUri(RunningService.address())
                .contentType("application/json")
                .header("Accept-Language", "fr")
                .body(wrong)
                .post("/v1/size-runs");
        assertEquals(422, french.statusCode());
        assertEquals(english.<List<String>>path("violations.field"), french.path("violations.field"));
        assertEquals(english.<List<Object>>path("violations.minimum"), french.path("violations.minimum"));
        assertEquals(english.<String>path("type"), french.path("type"));
        assertEquals("Demande non valable", french.path("title"));
        for (String reason : french.<List<String>>path("violations.reason")) {
            assertFalse(ENGLISH.matcher(reason.replaceAll("connus ici.*", "")).find(), reason);
        }
    }

    private static Response check(String type, String body) {
        return given().baseUri(RunningService.address())
                .contentType(type)
                .header("Accept-Language", "fr")
                .body(body.getBytes(StandardCharsets.UTF_8))
                .post("/v1/checks");
    }

    /** How a sheet of other hands was read, what only its sender knows, and why one cannot be read. */
    @Test
    void whatIsSaidOfOtherHandsFilesIsFrench() {
        Response sheet = check(
                "text/csv;charset=UTF-8",
                "Mesures (cm);36;38*;40;Remarque;Colonne vide\nLargeur de bras;17,3;17,9;18,5;ok;\n"
                        + "Longueur de manche;59;59,5;60;;\nEmmanchure;43;44,5;46;;\nTour de col;38;39;40;;\n");
        assertEquals(200, sheet.statusCode(), sheet.asString());
        List<String> said = new ArrayList<>(sheet.path("traces.words"));
        said.addAll(sheet.path("findings.message"));
        said.addAll(sheet.path("findings.remedy"));
        said.addAll(sheet.<List<List<String>>>path("unread.proposals.why").stream()
                .flatMap(List::stream)
                .toList());
        assertEquals("Tableau de mesures", sheet.path("name"));
        assertTrue(said.stream().anyMatch(words -> words.contains("moitié")), said.toString());
        for (String broken : List.of(
                "Mesures;36\nLargeur de bras;33\n",
                "Mesures (cm);36;36\nLargeur de bras;33;34\n",
                "\"Mesures",
                "Col;1;2\nPied;3;4\n")) {
            said.add(check("text/csv;charset=UTF-8", broken).path("detail"));
        }
        for (String broken : List.of("0\nSECTION\n", "nothing", "0\nEOF\n")) {
            said.add(check("image/vnd.dxf", broken).path("detail"));
        }
        assertTrue(said.size() > 15, said.toString());
        for (String words : said) {
            // Fields, and the words of a file itself, stay as they are.
            assertFalse(
                    ENGLISH.matcher(words.replaceAll("\\{[^}]*}|«[^»]*»", "")).find(), words);
        }
    }

    @Test
    void aStyleWithoutANameIsCalledASleeve() {
        String nameless = Requests.choirGown().replaceFirst("\"name\": ?\"[^\"]*\",", "");
        Response french = given().baseUri(RunningService.address())
                .contentType("application/json")
                .header("Accept-Language", "fr")
                .body(nameless)
                .post("/v1/size-runs");
        assertEquals("Manche", french.path("name"));
    }

    @Test
    void sheetsAreFrenchForTheOneWhoPrintsThem() throws Exception {
        Path sheets = Files.write(
                folder.resolve("gown.pdf"), run("fr", "application/pdf").asByteArray());
        String text = Tool.run("poppler-utils", List.of("pdftotext", "-layout", sheets.toString(), "-"));
        for (String words : List.of(
                "Ordre de montage",
                "Liste de coupe",
                "Précautions",
                "Tableau de mesures",
                "couper 2",
                "Taille",
                "droit fil",
                "0,5")) {
            assertTrue(text.contains(words), words + " in\n" + text);
        }
        assertFalse(
                Pattern.compile("\\b(the|Cutting|sleeves?|Size|lining|seam)\\b")
                        .matcher(text.replace("Choir gown sleeve", ""))
                        .find(),
                text);
        String drawing = run("fr", "image/svg+xml").asString();
        assertTrue(
                drawing.contains("xml:lang=\"fr\"") && drawing.contains("<title>droit fil</title>"),
                drawing.substring(0, 900));
        String archive = contents(run("fr", "application/zip").asByteArray());
        assertTrue(archive.contains("Le tableau de mesures"), archive);
        assertFalse(
                ENGLISH.matcher(archive.replaceAll("choir-gown-sleeve\\S*", "")).find(), archive);
        assertEquals(
                run("en", "image/vnd.dxf").asString(),
                run("fr", "image/vnd.dxf").asString(),
                "what programs read");
    }

    private static String contents(byte[] archive) throws Exception {
        try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(archive))) {
            for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
                if (entry.getName().equals("contents.txt")) {
                    return new String(zip.readAllBytes(), StandardCharsets.UTF_8);
                }
            }
        }
        throw new AssertionError("no contents.txt");
    }

    /** An order is drawn in the language of who ordered, whoever fetches its files later. */
    @Test
    void anOrderKeepsTheLanguageItWasOrderedIn() {
        given().baseUri(RunningService.address())
                .contentType("application/json")
                .body(Requests.choirGown())
                .put("/v1/styles/gown-of-two-languages")
                .then()
                .statusCode(201);
        String id = given().baseUri(RunningService.address())
                .contentType("application/json")
                .header("Accept-Language", "fr")
                .body("{\"size\":\"40\"}")
                .post("/v1/styles/gown-of-two-languages/orders")
                .then()
                .statusCode(201)
                .extract()
                .path("order.id");
        for (String reader : List.of("fr", "en")) {
            String drawing = given().baseUri(RunningService.address())
                    .header("Accept-Language", reader)
                    .get("/v1/orders/" + id + "/files/svg")
                    .asString();
            assertTrue(drawing.contains("Taille 40"), drawing.substring(0, 900));
        }
        String remake = given().baseUri(RunningService.address())
                .contentType("application/json")
                .body("{\"remakeOf\":\"" + id + "\"}")
                .post("/v1/styles/gown-of-two-languages/orders")
                .then()
                .statusCode(201)
                .extract()
                .path("order.id");
        assertTrue(given().baseUri(RunningService.address())
                .get("/v1/orders/" + remake + "/files/svg")
                .asString()
                .contains("Taille 40"));
    }
}
