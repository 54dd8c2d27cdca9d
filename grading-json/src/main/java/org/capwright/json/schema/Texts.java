package org.capwright.json.schema;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.capwright.json.problem.FoundViolations;
import org.capwright.words.Text;
import tools.jackson.databind.JsonNode;

/** Checks texts and shows values in errors. */
final class Texts {

    private static final int SHOWN = 60;

    private Texts() {}

    static Optional<String> checked(JsonNode value, String where, int longest, FoundViolations found) {
        if (value.isString()) {
            String text = value.stringValue().strip();
            if (!text.isEmpty() && text.codePointCount(0, text.length()) <= longest && printable(text)) {
                return Optional.of(text);
            }
        }
        new Given(value, where, found)
                .refuse(Text.of("must be a text of 1 to {most} characters without control characters")
                        .with("most", longest));
        return Optional.empty();
    }

    private static boolean printable(String text) {
        for (int i = 0; i < text.length(); i = text.offsetByCodePoints(i, 1)) {
            if (!printable(text.codePointAt(i))) {
                return false;
            }
        }
        return true;
    }

    /** Those that are right, in the order given. */
    static List<String> some(Given given, FieldType.TextList texts) {
        JsonNode value = given.node();
        if (!value.isArray() || value.size() > texts.most()) {
            given.refuse(
                    Text.of("must be a list of up to {most} texts, each once").with("most", texts.most()));
            return List.of();
        }
        List<String> right = new ArrayList<>();
        for (int i = 0; i < value.size(); i++) {
            Given text = given.item(i);
            Texts.checked(text.node(), text.where(), texts.longest(), text.found())
                    .ifPresent(one -> {
                        if (right.contains(one)) {
                            text.refuse("is listed twice");
                        } else {
                            right.add(one);
                        }
                    });
        }
        return right;
    }

    /** No control characters, no halves of surrogate pairs, nothing that XML 1.0 cannot hold, no line separators. */
    private static boolean printable(int character) {
        return switch (Character.getType(character)) {
            case Character.CONTROL,
                    Character.SURROGATE,
                    Character.LINE_SEPARATOR,
                    Character.PARAGRAPH_SEPARATOR,
                    Character.UNASSIGNED -> false;
            // Overrides of the writing direction would make a label read as something else.
            default -> !(character >= 0x202A && character <= 0x202E || character >= 0x2066 && character <= 0x2069);
        };
    }

    static Optional<Object> shown(JsonNode value) {
        if (value.isString()) {
            return Optional.of(shortened(value.stringValue()));
        }
        if (value.isBoolean()) {
            return Optional.of(value.booleanValue());
        }
        if (value.isNumber() && Double.isFinite(value.asDouble())) {
            return Optional.of(
                    value.isIntegralNumber() && value.canConvertToLong() ? value.longValue() : value.asDouble());
        }
        return Optional.empty();
    }

    static String shortened(String text) {
        if (text.length() <= SHOWN) {
            return text;
        }
        int end = Character.isHighSurrogate(text.charAt(SHOWN - 1)) ? SHOWN - 1 : SHOWN;
        return text.substring(0, end) + "…";
    }
}
