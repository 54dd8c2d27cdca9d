package org.capwright.service.words;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.capwright.FileFormat;
import org.capwright.check.CheckedMeasure;
import org.capwright.check.Severity;
import org.capwright.check.Threshold;
import org.capwright.exchange.PrintedName;
import org.capwright.measure.Dimension;
import org.capwright.pattern.Material;
import org.capwright.pattern.NotchKind;
import org.capwright.pattern.PieceKind;
import org.capwright.service.http.problem.ProblemKind;
import org.capwright.tables.BodyDimension;
import org.capwright.words.Language;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every catalogue has every text that the sources of all modules say, no other, with the same parts; and what it has is written as the language is written. */
class CatalogueTest {

    private static final Pattern PART = Pattern.compile("\\{(\\w+)}");

    private static WrittenTexts written;

    @BeforeAll
    static void read() throws Exception {
        written = WrittenTexts.read();
    }

    static Stream<Language> languages() {
        return Language.all().stream().filter(language -> !language.equals(Language.ENGLISH));
    }

    /** Words that are said by the name of something: of a piece, a material, a point of measure, a limit, a file. */
    private static Set<String> named() {
        Set<String> named = new TreeSet<>();
        for (PieceKind kind : PieceKind.values()) {
            named.add(kind.words());
        }
        Stream.of(Material.values()).map(Material::words).forEach(named::add);
        Stream.of(Dimension.values()).forEach(dimension -> {
            named.add(dimension.definition());
            named.add(dimension.gradeName());
            named.add(PrintedName.capital(dimension.gradeName()));
        });
        Stream.of(CheckedMeasure.values())
                .map(CheckedMeasure::code)
                .forEach(code -> named.addAll(List.of(code, PrintedName.of(code), PrintedName.capital(code))));
        Stream.of(BodyDimension.values())
                .map(BodyDimension::id)
                .forEach(id -> named.addAll(List.of(id, PrintedName.of(id), PrintedName.capital(id))));
        Stream.of(Threshold.values()).map(Threshold::source).forEach(named::add);
        Stream.of(FileFormat.values()).map(FileFormat::meaning).forEach(named::add);
        Stream.of(ProblemKind.values()).map(ProblemKind::title).forEach(named::add);
        Stream.of(Severity.values()).map(Severity::name).forEach(named::add);
        Stream.of(NotchKind.values())
                .map(kind -> kind.name().toLowerCase(Locale.ROOT).replace('_', ' ') + " notch")
                .forEach(named::add);
        return named;
    }

    private static Map<String, String> wanted() {
        Map<String, String> wanted = new TreeMap<>();
        wanted.putAll(written.said);
        named().forEach(text -> wanted.putIfAbsent(text, "a name"));
        return wanted;
    }

    @Test
    void severalHundredTextsAreSaidInTheSources() {
        assertTrue(wanted().size() > 600, wanted().size() + " texts");
        assertTrue(languages().anyMatch(language -> language.tag().equals("fr")));
    }

    @ParameterizedTest
    @MethodSource("languages")
    void everyTextIsTranslated(Language language) {
        Map<String, String> missing = new TreeMap<>(wanted());
        missing.keySet().removeAll(language.texts());
        assertEquals(Map.of(), missing, "said in the sources, but not in the catalogue " + language);
    }

    /** What is put together of pieces of sentences can be said in one language only. */
    @Test
    void noTextIsPutTogetherOfPieces() {
        List<String> composed = new ArrayList<>();
        written.composed.forEach((text, place) -> {
            // A count as it was given, and words that are chosen, not put together.
            boolean known =
                    place.matches("DraftCheck.java|Coverage.java|PieceDrawing.java") || text.contains("? tight :");
            if (!known) {
                composed.add(place + ": " + text);
            }
        });
        assertEquals(List.of(), composed);
    }

    @ParameterizedTest
    @MethodSource("languages")
    void nothingIsTranslatedThatNobodySays(Language language) {
        Set<String> said = new TreeSet<>(written.constants.keySet());
        said.addAll(named());
        written.constants.keySet().stream()
                .filter(text -> text.matches("[a-z]+(?:[A-Z][a-z]+)*"))
                .forEach(code -> said.addAll(List.of(PrintedName.of(code), PrintedName.capital(code))));
        for (String line : List.of("pleat {n} fold line", "pleat {n} placement line")) {
            said.add(line);
            said.add("drill hole, " + line);
        }
        said.add(Dimension.ARMHOLE.definition() + " Given, not drafted here.");
        said.addAll(List.of(
                "lining to overlay", "drill hole, dart", "taken", "questioned", "confirmed", "cut", "cancelled"));
        Set<String> unused = new TreeSet<>(language.texts());
        unused.removeAll(said);
        assertEquals(Set.of(), unused, "in the catalogue " + language + ", but said by nobody");
    }

    @ParameterizedTest
    @MethodSource("languages")
    void textsHaveTheSameParts(Language language) {
        for (String text : language.texts()) {
            assertEquals(parts(text), parts(language.say(text)), text);
        }
    }

    private static Set<String> parts(String text) {
        return PART.matcher(text).results().map(found -> found.group(1)).collect(Collectors.toCollection(TreeSet::new));
    }

    /** A no-break space before ; : ? ! » and after «, and no typewriter apostrophe between letters: Imprimerie nationale, Lexique des règles typographiques, 2002, from memory. */
    @Test
    void frenchIsWrittenAsFrenchIsPrinted() {
        Language french = Language.find("fr").orElseThrow();
        Pattern wrong = Pattern.compile("[^\\u00a0]»|«[^\\u00a0]|(?<=\\p{L}) [;:?!]|[\\p{L})»}] [;?!]|\\p{L}'\\p{L}");
        for (String text : french.texts()) {
            String said = french.say(text);
            Matcher found = wrong.matcher(said);
            assertTrue(!found.find(), said);
        }
    }

    /** The catalogue is a PO file as gettext reads it (GNU gettext, msgfmt). */
    @ParameterizedTest
    @MethodSource("languages")
    void gettextReadsTheCatalogue(Language language) throws Exception {
        Path file = Path.of("../size-tables/src/main/resources/org/capwright/words/" + language + ".po");
        Process check = new ProcessBuilder("msgfmt", "--check", "--statistics", "-o", "/dev/null", file.toString())
                .redirectErrorStream(true)
                .start();
        String told = new String(check.getInputStream().readAllBytes(), java.nio.charset.StandardCharsets.UTF_8);
        assertEquals(0, check.waitFor(), told);
        assertTrue(told.contains(language.texts().size() + " translated messages"), told);
        assertTrue(!told.contains("fuzzy") && !told.contains("untranslated"), told);
    }
}
