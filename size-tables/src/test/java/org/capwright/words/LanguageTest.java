package org.capwright.words;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Texts with parts, said in English and in what a catalogue has. */
class LanguageTest {

    private static final Language FRENCH = Language.find("fr-CH").orElseThrow();

    /** The choices of RFC 4647, section 3.4, lookup, and of RFC 9110, section 12.5.4. */
    @Test
    void theReaderGetsWhatIsLikedBest() {
        assertEquals(Language.ENGLISH, Language.all().get(0));
        assertEquals("fr", Language.accepted("fr").tag());
        assertEquals("fr", Language.accepted("da, fr-CA;q=0.8, en;q=0.7").tag());
        assertEquals("en", Language.accepted("en-gb;q=0.9, fr;q=0.8").tag());
        assertEquals("en", Language.accepted("fr;q=0, en").tag());
        for (String odd : List.of("", "*", "xx", ";;;", "fr;q=two", "-", "\u0000")) {
            assertEquals("en", Language.accepted(odd).tag(), odd);
        }
    }

    @Test
    void partsAreSaidInTheLanguageOfTheWhole() {
        Text length = Text.figures("12.5 cm");
        Text text = Text.of("{first} and {second}").with("first", length).with("second", Text.of("cap height"));
        assertEquals("12.5 cm and cap height", text.toString());
        assertEquals("12,5 cm et hauteur de tête", text.in(FRENCH));
        assertEquals("Hauteur de tête.", Text.of("cap height").sentence().in(FRENCH));
        assertEquals("pli 3, pliure", Text.numbered("pleat 3 fold line").in(FRENCH));
    }

    /** Names of others are no texts: braces and dots in them stay. */
    @Test
    void namesStayAsTheyAre() {
        Text text = Text.of("Size {size}").with("size", "{size} 1.5 $1 \\");
        assertEquals("Taille {size} 1.5 $1 \\", text.in(FRENCH));
        assertThrows(
                IllegalArgumentException.class, () -> Text.name("Choir gown").with("size", "40"));
    }

    @Test
    void whatNoCatalogueHasIsSaidInEnglish() {
        assertEquals("a text that nobody has heard of", FRENCH.say("a text that nobody has heard of"));
    }

    @Test
    void aCatalogueIsReadLineByLine() throws Exception {
        String file = """
            # a comment
            msgid ""
            msgstr "Language: xx\\n"

            msgid "say \\"it\\""
            msgstr ""
            "dis-"
            "le"

            msgid "not yet"
            msgstr ""
            """;
        Map<String, String> texts = Catalogue.read(new ByteArrayInputStream(file.getBytes(StandardCharsets.UTF_8)));
        assertEquals(Map.of("say \"it\"", "dis-le"), texts);
        assertTrue(FRENCH.texts().size() > 600);
    }
}
