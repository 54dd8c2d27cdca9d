package org.capwright.words;

import java.text.DecimalFormatSymbols;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * A language that people are spoken to in. English is the language that the texts are written in; every other one is a catalogue, a file {@code xx.po} beside this class, {@code xx} its code by
 * ISO 639-1. One file more is one language more. Immutable and thread-safe.
 */
public final class Language {

    /** The language that the texts are written in. */
    public static final Language ENGLISH = new Language(Locale.ENGLISH, Map.of());

    private final Locale locale;
    private final Map<String, String> catalogue;
    private final char decimal;

    private Language(Locale locale, Map<String, String> catalogue) {
        this.locale = locale;
        this.catalogue = catalogue;
        this.decimal = DecimalFormatSymbols.getInstance(locale).getDecimalSeparator();
    }

    /** Read once, when the first language other than English is asked for. */
    private static final class Known {

        private static final List<Language> ALL = read();

        private static List<Language> read() {
            List<Language> all = new ArrayList<>();
            all.add(ENGLISH);
            for (String code : Locale.getISOLanguages()) {
                Catalogue.find(code)
                        .ifPresent(texts -> all.add(new Language(
                                new Locale.Builder().setLanguage(code).build(), texts)));
            }
            return List.copyOf(all);
        }
    }

    /**
     * The languages that there are.
     *
     * @return English first
     */
    public static List<Language> all() {
        return Known.ALL;
    }

    /**
     * A language by its tag.
     *
     * @param tag for example {@code fr}, or {@code fr-CH}; the language alone counts
     * @return empty if there is no catalogue of it
     */
    public static Optional<Language> find(String tag) {
        String code = Locale.forLanguageTag(tag).getLanguage();
        return all().stream().filter(language -> language.tag().equals(code)).findFirst();
    }

    /**
     * The language that a reader likes best of those there are (RFC 4647, lookup).
     *
     * @param wanted value of the header {@code Accept-Language} (RFC 9110); blank or not to be read: anything
     * @return English where none of the wanted ones is there
     */
    public static Language accepted(String wanted) {
        if (wanted.isBlank()) {
            return ENGLISH;
        }
        try {
            Locale best = Locale.lookup(
                    Locale.LanguageRange.parse(wanted),
                    all().stream().map(Language::locale).toList());
            return best == null ? ENGLISH : find(best.getLanguage()).orElse(ENGLISH);
        } catch (IllegalArgumentException | IndexOutOfBoundsException e) {
            return ENGLISH;
        }
    }

    /**
     * The language's own tag.
     *
     * @return for example {@code fr} (BCP 47)
     */
    public String tag() {
        return locale.getLanguage();
    }

    /**
     * The language as the platform knows it.
     *
     * @return without a country
     */
    public Locale locale() {
        return locale;
    }

    /**
     * A text without parts that change, in this language.
     *
     * @param english the text in English
     * @return in English where the catalogue does not have it
     */
    public String say(String english) {
        return written(english);
    }

    /**
     * Figures in the writing of this language.
     *
     * @param figures with a decimal point, for example {@code 12.5 cm}
     * @return with the decimal sign of the language
     */
    public String figures(String figures) {
        return decimal == '.' ? figures : figures.replaceAll("(?<=\\d)\\.(?=\\d)", String.valueOf(decimal));
    }

    /**
     * The texts of the catalogue, by their English.
     *
     * @return empty for English itself
     */
    public Set<String> texts() {
        return catalogue.keySet();
    }

    String written(String english) {
        return catalogue.getOrDefault(english, english);
    }

    @Override
    public String toString() {
        return tag();
    }
}
