package org.capwright.batch;

import java.util.List;
import java.util.regex.Pattern;
import org.capwright.json.problem.FieldViolation;
import org.capwright.tables.BodyDimension;

/**
 * What is wrong with one field of an order, without a figure: what was measured, and what the other measurements let expect, are personal data and stay in the orders themselves.
 *
 * @param field where it stands, as a JSON pointer; empty for the whole order
 * @param reason what is wrong, in English
 */
public record Refusal(String field, String reason) {

    private static final Pattern FIGURE = Pattern.compile("\\d+(?:[.,/]\\d+)*");
    private static final String WEARER = "/wearer/";
    private static final String BLANK = "…";

    static List<Refusal> of(List<FieldViolation> violations) {
        return violations.stream()
                .map(violation -> new Refusal(
                        place(violation.field()),
                        FIGURE.matcher(violation.reason().toString()).replaceAll(BLANK)))
                .toList();
    }

    /** What the sender calls a field that is not known may be a measurement as well. */
    private static String place(String field) {
        return field.startsWith(WEARER)
                        && BodyDimension.find(field.substring(WEARER.length())).isEmpty()
                ? "/wearer"
                : FIGURE.matcher(field).replaceAll(BLANK);
    }
}
