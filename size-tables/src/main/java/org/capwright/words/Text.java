package org.capwright.words;

import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * Words for people. A text is written in English where it is meant, with a name in braces for each part that changes; a {@link Language} says it. Texts are immutable, and equal where they say the
 * same. {@code toString} is the English.
 */
public sealed interface Text permits Text.Sentence, Text.Name, Text.Figures, Text.Joined, Text.Whole {

    /** The number in a name. */
    Pattern NUMBER = Pattern.compile("\\d+");

    /**
     * A text as it is written in the catalogues.
     *
     * @param english the text in English; a part that changes is a word in braces, for example {@code size {size}}
     * @return the text, its parts still open
     */
    static Text of(String english) {
        return new Sentence(english, Map.of());
    }

    /**
     * Words of somebody else, such as the name of a style or of a size: the same in every language.
     *
     * @param words as they are
     * @return a text
     */
    static Text name(String words) {
        return new Name(words);
    }

    /**
     * Figures, with their unit or without: the decimal sign is that of the language.
     *
     * @param figures with a decimal point, for example {@code 12.5 cm}
     * @return a text
     */
    static Text figures(String figures) {
        return new Figures(figures);
    }

    /**
     * A name with a number in it, such as {@code pleat 3 fold line}. The catalogues have it as {@code pleat {n} fold line}.
     *
     * @param name in English, with one number or without
     * @return a text
     */
    static Text numbered(String name) {
        Matcher number = NUMBER.matcher(name);
        return number.find()
                ? of(name.substring(0, number.start()) + "{n}" + name.substring(number.end()))
                        .with("n", number.group())
                : of(name);
    }

    /**
     * Texts one after the other.
     *
     * @param texts what is said
     * @param between what stands between them, the same in every language
     * @return a text
     */
    static Text joined(List<Text> texts, String between) {
        return new Joined(List.copyOf(texts), between);
    }

    /**
     * Names one after the other, separated by commas.
     *
     * @param names for example of sizes
     * @return a text
     */
    static Text names(List<String> names) {
        return new Name(String.join(", ", names));
    }

    /**
     * The same text with a part filled in.
     *
     * @param part name of the part, as it stands in the braces
     * @param words what is said there
     * @return a text
     * @throws IllegalArgumentException if it is a text that has no parts
     */
    default Text with(String part, Text words) {
        throw new IllegalArgumentException("this text has no parts: " + this);
    }

    /**
     * The same text with a name filled in.
     *
     * @param part name of the part, as it stands in the braces
     * @param name what is said there, the same in every language
     * @return a text
     */
    default Text with(String part, String name) {
        return with(part, name(name));
    }

    /**
     * The same text with a whole number filled in.
     *
     * @param part name of the part, as it stands in the braces
     * @param number what is said there
     * @return a text
     */
    default Text with(String part, long number) {
        return with(part, name(Long.toString(number)));
    }

    /**
     * The text as a sentence of its own.
     *
     * @return with a capital letter at its start and a full stop at its end
     */
    default Text sentence() {
        return new Whole(this);
    }

    /**
     * The text in a language.
     *
     * @param language that of the reader
     * @return in English where the catalogue does not have it
     */
    String in(Language language);

    /**
     * A text of the catalogues.
     *
     * @param english the key of the catalogues
     * @param parts what is said where
     */
    record Sentence(String english, Map<String, Text> parts) implements Text {

        @Override
        public Text with(String part, Text words) {
            if (parts.isEmpty()) {
                return new Sentence(english, Map.of(part, words));
            }
            if (parts.isEmpty()) {
                return new Sentence(english, Map.of(part, words));
            }
            Map<String, Text> more = new HashMap<>(parts);
            more.put(part, Objects.requireNonNull(words));
            return new Sentence(english, Collections.unmodifiableMap(more));
        }

        @Override
        public String in(Language language) {
            String written = language.written(english);
            if (parts.isEmpty()) {
                return written;
            }
            StringBuilder said = new StringBuilder(written.length() + 16);
            int told = 0;
            for (int open = written.indexOf('{'); open >= 0; open = written.indexOf('{', open + 1)) {
                int close = written.indexOf('}', open);
                Text part = close < 0 ? null : parts.get(written.substring(open + 1, close));
                if (part != null) {
                    said.append(written, told, open).append(part.in(language));
                    told = close + 1;
                }
            }
            return said.append(written, told, written.length()).toString();
        }

        @Override
        public String toString() {
            return in(Language.ENGLISH);
        }
    }

    /**
     * Words that are the same in every language.
     *
     * @param words as they are
     */
    record Name(String words) implements Text {

        @Override
        public String in(Language language) {
            return words;
        }

        @Override
        public String toString() {
            return words;
        }
    }

    /**
     * Figures in the writing of the language.
     *
     * @param figures with a decimal point
     */
    record Figures(String figures) implements Text {

        @Override
        public String in(Language language) {
            return language.figures(figures);
        }

        @Override
        public String toString() {
            return figures;
        }
    }

    /**
     * Texts one after the other.
     *
     * @param texts what is said
     * @param between what stands between them
     */
    record Joined(List<Text> texts, String between) implements Text {

        @Override
        public String in(Language language) {
            return texts.stream().map(text -> text.in(language)).collect(Collectors.joining(between));
        }

        @Override
        public String toString() {
            return in(Language.ENGLISH);
        }
    }

    /**
     * A text as a sentence of its own.
     *
     * @param text what is said
     */
    record Whole(Text text) implements Text {

        @Override
        public String in(Language language) {
            String said = text.in(language);
            if (said.isEmpty()) {
                return said;
            }
            int first = said.offsetByCodePoints(0, 1);
            return said.substring(0, first).toUpperCase(Locale.ROOT)
                    + said.substring(first)
                    + (said.endsWith(".") ? "" : ".");
        }

        @Override
        public String toString() {
            return in(Language.ENGLISH);
        }
    }
}
