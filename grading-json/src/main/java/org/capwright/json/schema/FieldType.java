package org.capwright.json.schema;

import java.util.List;

/** What the value of a field may be. Lengths are in millimetres here and in the caller's unit in the request. */
public sealed interface FieldType {

    /**
     * Text without control characters.
     *
     * @param longest greatest number of characters
     */
    record Text(int longest) implements FieldType {}

    /**
     * One of some words.
     *
     * @param words the words
     */
    record Choice(List<String> words) implements FieldType {

        /**
         * One of some words.
         *
         * @param words the words
         * @return the kind
         */
        public static Choice of(String... words) {
            return new Choice(List.of(words));
        }
    }

    /**
     * A list of some words, each once.
     *
     * @param words the words
     */
    record Words(List<String> words) implements FieldType {}

    /**
     * A list of texts, each once.
     *
     * @param most greatest number of texts
     * @param longest greatest number of characters of each
     */
    record TextList(int most, int longest) implements FieldType {}

    /**
     * A length: a number, or text such as {@code "3 1/2"}.
     *
     * @param least millimetres
     * @param greatest millimetres
     */
    record Length(double least, double greatest) implements FieldType {}

    /**
     * A plain number.
     *
     * @param least smallest that is taken
     * @param greatest largest that is taken
     */
    record Ratio(double least, double greatest) implements FieldType {}

    /**
     * A whole number.
     *
     * @param least smallest that is taken
     * @param greatest largest that is taken
     */
    record Whole(int least, int greatest) implements FieldType {}

    /**
     * A length, or a percentage such as {@code "4%"}.
     *
     * @param length bounds of a length
     * @param share bounds of a percentage, as fractions
     */
    record Ease(Length length, Ratio share) implements FieldType {}

    /**
     * A grid on which figures are rounded, with its own unit, such as {@code "1/8 in"}.
     *
     * @param least millimetres
     * @param greatest millimetres
     */
    record Step(double least, double greatest) implements FieldType {}

    /**
     * The name of a size: a text, or a whole number that is read as its digits.
     *
     * @param longest greatest number of characters
     */
    record Label(int longest) implements FieldType {}

    /**
     * The names of the sizes, smallest first.
     *
     * @param most greatest number of sizes
     * @param longest greatest number of characters of a name
     */
    record Labels(int most, int longest) implements FieldType {}

    /**
     * The growth of a dimension: one length, or a list of one per interval between neighbouring sizes.
     *
     * @param greatest greatest growth or shrinkage per size, mm
     */
    record Growth(double greatest) implements FieldType {}

    /**
     * An object.
     *
     * @param schema its fields
     */
    record Nested(RequestSchema schema) implements FieldType {}

    /**
     * An object whose fields are named by the sender, each a text.
     *
     * @param most greatest number of fields
     * @param longestName greatest number of characters of a name
     * @param longestText greatest number of characters of a text
     */
    record Dictionary(int most, int longestName, int longestText) implements FieldType {}

    /**
     * A text that names something, or the thing itself.
     *
     * @param longest greatest number of characters of the text
     * @param schema the fields of the object
     */
    record TextOrNested(int longest, RequestSchema schema) implements FieldType {}

    /**
     * A list of objects.
     *
     * @param schema the fields of each
     * @param most greatest number of objects
     */
    record Objects(RequestSchema schema, int most) implements FieldType {}

    /**
     * A list of lengths, with null where one is not known.
     *
     * @param most greatest number of entries
     */
    record Gapped(int most) implements FieldType {}

    /**
     * An object whose fields are names of sizes, each with a whole number.
     *
     * @param count what each number may be
     */
    record PerSize(Whole count) implements FieldType {}

    /**
     * One length that holds for every field of an object, or the object.
     *
     * @param length the bounds of the single length
     * @param schema the fields of the object, lengths all
     */
    record LengthOrNested(Length length, RequestSchema schema) implements FieldType {}
}
