package org.capwright.tables;

/**
 * One thing wrong with an input.
 *
 * @param field the field as a JSON pointer such as {@code /rows/0/values/2}, or the plain name of an argument
 * @param value the value given, as text
 * @param allowed what would be right, as text with unit
 */
public record Violation(String field, String value, String allowed) {

    @Override
    public String toString() {
        return field + ": " + value + " (allowed: " + allowed + ")";
    }
}
