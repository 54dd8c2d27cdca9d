package org.capwright.service.shape;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.capwright.measure.Quantity;
import org.capwright.measure.Unit;
import org.capwright.measure.Violation;
import org.capwright.service.problem.FoundViolations;
import tools.jackson.databind.JsonNode;

/**
 * One object of a request, read field by field as its shape declares. Whatever is wrong is gathered and the field then counts as left out, so that one reading
 * finds everything.
 */
public final class RequestObject {

    private static final double GREATEST_NUMBER = 1e9;

    private final Map<String, JsonNode> values = new HashMap<>();
    private final Map<String, RequestObject> opened = new HashMap<>();
    private final Set<String> complained = new HashSet<>();
    private final Shape shape;
    private final String pointer;
    private final Unit unit;
    private final FoundViolations found;

    /**
     * Opens an object and names fields that the shape does not declare, and those that are missing.
     *
     * @param node the value of the field; anything but an object is a violation
     * @param shape the declared fields
     * @param pointer where the object stands, as a JSON pointer
     * @param unit unit of its lengths
     * @param found gathers what is wrong
     */
    public RequestObject(JsonNode node, Shape shape, String pointer, Unit unit, FoundViolations found) {
        this.shape = shape;
        this.pointer = pointer;
        this.unit = unit;
        this.found = found;
        if (!node.isObject()) {
            found.add(pointer, "must be an object with the fields " + names(shape));
            return;
        }
        for (Map.Entry<String, JsonNode> entry : node.properties()) {
            if (!shape.fields().containsKey(entry.getKey())) {
                nameUnknown(entry.getKey());
            } else if (!entry.getValue().isNull()) {
                values.put(entry.getKey(), entry.getValue());
            }
        }
        for (Field field : shape.fields().values()) {
            if (field.required() && !values.containsKey(field.name())) {
                found.add(at(field.name()), "is missing" + wanted(field.kind()));
            }
        }
    }

    private void nameUnknown(String name) {
        String shown = Texts.shortened(name);
        found.add(
                pointer + "/" + Texts.escaped(shown),
                "is not a known field; "
                        + shape.nearest(name)
                                .map(near -> "did you mean " + near + "?")
                                .orElse("known here: " + names(shape)));
    }

    private static String names(Shape shape) {
        return String.join(", ", shape.fields().keySet());
    }

    private String wanted(Kind kind) {
        if (kind instanceof Kind.Choice choice) {
            return "; one of " + String.join(", ", choice.words());
        }
        return kind instanceof Kind.Length ? "; a length in " + unit.symbol() : "";
    }

    /**
     * Where a field stands.
     *
     * @param field a field of this object
     * @return a JSON pointer
     */
    public String at(String field) {
        return pointer + "/" + Texts.escaped(field);
    }

    /**
     * Whether a field was given a value other than null, right or wrong.
     *
     * @param field a declared field
     * @return true if it was
     */
    public boolean has(String field) {
        shape.field(field);
        return values.containsKey(field);
    }

    /**
     * The value of a field as it came in.
     *
     * @param field a declared field
     * @return the value, unless it was left out or null
     */
    public Optional<JsonNode> raw(String field) {
        shape.field(field);
        return Optional.ofNullable(values.get(field));
    }

    private <K extends Kind> K kind(String field, Class<K> type) {
        return type.cast(shape.field(field).kind());
    }

    /**
     * A text.
     *
     * @param field a field declared as text, or as text or nested
     * @return the text without spaces around it; none if it was left out, is an object or is wrong
     */
    public Optional<String> text(String field) {
        JsonNode value = values.get(field);
        Kind kind = shape.field(field).kind();
        if (value == null || kind instanceof Kind.TextOrNested && value.isObject()) {
            return Optional.empty();
        }
        int longest = kind instanceof Kind.TextOrNested either ? either.longest() : ((Kind.Text) kind).longest();
        return Texts.checked(value, at(field), longest, found);
    }

    /**
     * One of some words.
     *
     * @param field a field declared as a choice
     * @return the word; none if it was left out or is wrong
     */
    public Optional<String> choice(String field) {
        JsonNode value = values.get(field);
        List<String> words = kind(field, Kind.Choice.class).words();
        if (value == null) {
            return Optional.empty();
        }
        if (value.isString() && words.contains(value.stringValue())) {
            return Optional.of(value.stringValue());
        }
        String near = value.isString()
                ? NearestWord.to(value.stringValue(), words)
                        .map(word -> "; did you mean " + word + "?")
                        .orElse("")
                : "";
        add(field, value, "must be one of " + String.join(", ", words) + near);
        return Optional.empty();
    }

    /**
     * A list of some words.
     *
     * @param field a field declared as words
     * @return the words that are right, in the order given; none if it was left out
     */
    public List<String> words(String field) {
        JsonNode value = values.get(field);
        List<String> words = kind(field, Kind.Words.class).words();
        if (value == null) {
            return List.of();
        }
        if (!value.isArray() || value.size() > words.size()) {
            add(field, value, "must be a list of some of " + String.join(", ", words) + ", each once");
            return List.of();
        }
        List<String> right = new ArrayList<>();
        for (int i = 0; i < value.size(); i++) {
            JsonNode word = value.get(i);
            String where = at(field) + "/" + i;
            if (!word.isString() || !words.contains(word.stringValue())) {
                found.add(where, "must be one of " + String.join(", ", words));
            } else if (right.contains(word.stringValue())) {
                found.add(where, "is listed twice", word.stringValue());
            } else {
                right.add(word.stringValue());
            }
        }
        return right;
    }

    /**
     * A length.
     *
     * @param field a field declared as a length
     * @return millimetres; none if it was left out or is wrong
     */
    public OptionalDouble length(String field) {
        Kind kind = shape.field(field).kind();
        JsonNode value = values.get(field);
        Kind.Length range = kind instanceof Kind.LengthOrNested either ? either.length() : (Kind.Length) kind;
        return value == null ? OptionalDouble.empty() : length(value, at(field), range);
    }

    private OptionalDouble length(JsonNode value, String where, Kind.Length range) {
        OptionalDouble length = Lengths.read(value, where, unit, found);
        if (length.isPresent()
                && !(length.getAsDouble() >= range.least() && length.getAsDouble() <= range.greatest())) {
            found.add(Violation.lengthOutside(
                    where, "out of range", length.getAsDouble(), range.least(), range.greatest()));
            return OptionalDouble.empty();
        }
        return length;
    }

    /**
     * A plain number.
     *
     * @param field a field declared as a ratio
     * @return the number; none if it was left out or is wrong
     */
    public OptionalDouble ratio(String field) {
        JsonNode value = values.get(field);
        Kind.Ratio kind = kind(field, Kind.Ratio.class);
        if (value == null) {
            return OptionalDouble.empty();
        }
        if (!value.isNumber() || !(Math.abs(value.asDouble()) <= GREATEST_NUMBER)) {
            add(field, value, "must be a number from " + kind.least() + " to " + kind.greatest());
            return OptionalDouble.empty();
        }
        return within(at(field), Quantity.RATIO, value.asDouble(), kind.least(), kind.greatest());
    }

    /**
     * A whole number.
     *
     * @param field a field declared as whole
     * @return the number; none if it was left out or is wrong
     */
    public Optional<Integer> whole(String field) {
        JsonNode value = values.get(field);
        Kind.Whole kind = kind(field, Kind.Whole.class);
        if (value == null) {
            return Optional.empty();
        }
        return whole(value, at(field), kind);
    }

    private Optional<Integer> whole(JsonNode value, String where, Kind.Whole kind) {
        if (!value.isNumber()
                || !(Math.abs(value.asDouble()) <= GREATEST_NUMBER)
                || value.asDouble() != Math.rint(value.asDouble())) {
            add(where, value, "must be a whole number from " + kind.least() + " to " + kind.greatest(), found);
            return Optional.empty();
        }
        OptionalDouble number = within(where, Quantity.COUNT, value.asDouble(), kind.least(), kind.greatest());
        return number.isPresent() ? Optional.of((int) number.getAsDouble()) : Optional.empty();
    }

    private OptionalDouble within(String where, Quantity quantity, double value, double least, double greatest) {
        if (value >= least && value <= greatest) {
            return OptionalDouble.of(value);
        }
        found.add(new Violation(
                where,
                "out of range",
                quantity,
                OptionalDouble.of(value),
                OptionalDouble.of(least),
                OptionalDouble.of(greatest)));
        return OptionalDouble.empty();
    }

    /**
     * A share given as a percentage.
     *
     * @param field a field declared as ease
     * @return the share, 0.04 for {@code "4%"}; none if the field was left out, is a length or is wrong
     */
    public OptionalDouble percentage(String field) {
        JsonNode value = values.get(field);
        Kind.Ratio range = kind(field, Kind.Ease.class).share();
        if (value == null || !isPercentage(value)) {
            return OptionalDouble.empty();
        }
        String number = value.stringValue().strip();
        number = number.substring(0, number.length() - 1).strip();
        if (!Lengths.DECIMAL.matcher(number).matches()) {
            add(field, value, "must be a length, or a percentage such as 4%");
            return OptionalDouble.empty();
        }
        double share = Double.parseDouble(number) / 100;
        if (share < range.least() || share > range.greatest()) {
            found.add(
                    at(field),
                    String.format(
                            Locale.ROOT,
                            "out of range: %s; %.0f%% to %.0f%% would work",
                            Texts.shortened(value.stringValue()),
                            100 * range.least(),
                            100 * range.greatest()),
                    Texts.shortened(value.stringValue()));
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(share);
    }

    /**
     * An ease given as a length.
     *
     * @param field a field declared as ease
     * @return millimetres; none if the field was left out, is a percentage or is wrong
     */
    public OptionalDouble easeLength(String field) {
        JsonNode value = values.get(field);
        Kind.Length range = kind(field, Kind.Ease.class).length();
        return value == null || isPercentage(value) ? OptionalDouble.empty() : length(value, at(field), range);
    }

    private static boolean isPercentage(JsonNode value) {
        return value.isString() && value.stringValue().strip().endsWith("%");
    }

    /**
     * A grid for rounding.
     *
     * @param field a field declared as a step
     * @return millimetres; none if it was left out or is wrong
     */
    public OptionalDouble step(String field) {
        JsonNode value = values.get(field);
        Kind.Step range = kind(field, Kind.Step.class);
        if (value == null) {
            return OptionalDouble.empty();
        }
        String text = value.isString() ? value.stringValue().strip() : "";
        for (Unit stepUnit : Unit.values()) {
            if (text.endsWith(stepUnit.symbol())) {
                try {
                    double step = stepUnit.parse(text.substring(0, text.length() - 2));
                    if (step >= range.least() && step <= range.greatest()) {
                        return OptionalDouble.of(step);
                    }
                    found.add(
                            Violation.lengthOutside(at(field), "out of range", step, range.least(), range.greatest()));
                    return OptionalDouble.empty();
                } catch (NumberFormatException e) {
                    break;
                }
            }
        }
        add(field, value, "must be a text of a number and a unit, such as \"1 mm\", \"0.5 cm\" or \"1/8 in\"");
        return OptionalDouble.empty();
    }

    /**
     * The growth of a dimension.
     *
     * @param field a field declared as growth
     * @param intervals number of intervals between neighbouring sizes; negative if it is not known since the sizes are wrong
     * @return millimetres per interval, smallest sizes first; none if the field was left out or is wrong
     */
    public Optional<List<Double>> growth(String field, int intervals) {
        JsonNode value = values.get(field);
        double greatest = kind(field, Kind.Growth.class).greatest();
        Kind.Length range = new Kind.Length(-greatest, greatest);
        if (value == null) {
            return Optional.empty();
        }
        List<Double> increments = new ArrayList<>();
        if (!value.isArray()) {
            OptionalDouble one = length(value, at(field), range);
            for (int i = 0; i < intervals && one.isPresent(); i++) {
                increments.add(one.getAsDouble());
            }
            return one.isPresent() ? Optional.of(increments) : Optional.empty();
        }
        if (intervals >= 0 && value.size() != intervals) {
            found.add(new Violation(
                    at(field),
                    "a list needs one increment for each of the " + intervals + " intervals between neighbouring sizes"
                            + "; number of increments",
                    Quantity.COUNT,
                    OptionalDouble.of(value.size()),
                    OptionalDouble.of(intervals),
                    OptionalDouble.of(intervals)));
            return Optional.empty();
        }
        for (int i = 0; i < value.size(); i++) {
            length(value.get(i), at(field) + "/" + i, range).ifPresent(increments::add);
        }
        return increments.size() == value.size() ? Optional.of(increments) : Optional.empty();
    }

    /**
     * An object within this one.
     *
     * @param field a field declared as nested, or as a length or nested
     * @return the object; none if it was left out or is a single length
     */
    public Optional<RequestObject> object(String field) {
        JsonNode value = values.get(field);
        Kind kind = shape.field(field).kind();
        if (value == null || kind instanceof Kind.LengthOrNested && !value.isObject()) {
            return Optional.empty();
        }
        if (!value.isObject()) {
            if (complained.add(field)) {
                add(field, value, "must be an object with the fields " + names(((Kind.Nested) kind).shape()));
            }
            return Optional.empty();
        }
        Shape inner = kind instanceof Kind.LengthOrNested either ? either.shape() : ((Kind.Nested) kind).shape();
        // Opened once, or its unknown fields would be named twice.
        return Optional.of(
                opened.computeIfAbsent(field, name -> new RequestObject(value, inner, at(name), unit, found)));
    }

    /**
     * The objects of a list.
     *
     * @param field a field declared as objects
     * @return the objects; none if it was left out or is no such list
     */
    public List<RequestObject> objects(String field) {
        JsonNode value = values.get(field);
        Kind.Objects kind = kind(field, Kind.Objects.class);
        if (value == null) {
            return List.of();
        }
        if (!value.isArray() || value.isEmpty() || value.size() > kind.most()) {
            add(
                    field,
                    value,
                    "must be a list of 1 to " + kind.most() + " objects with the fields " + names(kind.shape()));
            return List.of();
        }
        List<RequestObject> objects = new ArrayList<>();
        for (int i = 0; i < value.size(); i++) {
            objects.add(new RequestObject(value.get(i), kind.shape(), at(field) + "/" + i, unit, found));
        }
        return objects;
    }

    /**
     * A whole number for each of some sizes.
     *
     * @param field a field declared as numbers per size
     * @param sizes names of the sizes there are
     * @return the numbers that are right, in the order of the sizes; none if the field was left out or is wrong
     */
    public Map<String, Integer> perSize(String field, List<String> sizes) {
        JsonNode value = values.get(field);
        Kind.Whole kind = kind(field, Kind.PerSize.class).count();
        Map<String, Integer> right = new LinkedHashMap<>();
        if (value == null) {
            return right;
        }
        if (!value.isObject() || value.isEmpty()) {
            add(field, value, "must be an object with a whole number per size, such as {\"40\": 2}");
            return right;
        }
        for (Map.Entry<String, JsonNode> entry : value.properties()) {
            if (!sizes.contains(entry.getKey())) {
                found.add(
                        at(field) + "/" + Texts.escaped(Texts.shortened(entry.getKey())),
                        "must be one of the sizes " + String.join(", ", sizes));
            }
        }
        for (String size : sizes) {
            JsonNode number = value.get(size);
            if (number != null && !number.isNull()) {
                whole(number, at(field) + "/" + Texts.escaped(size), kind).ifPresent(count -> right.put(size, count));
            }
        }
        return right;
    }

    /**
     * A list of lengths with gaps.
     *
     * @param field a field declared as gapped
     * @return lengths in the unit of the request, empty where a length is null or wrong; none if it was left out or is no such list
     */
    public List<OptionalDouble> gapped(String field) {
        JsonNode value = values.get(field);
        Kind.Gapped kind = kind(field, Kind.Gapped.class);
        if (value == null) {
            return List.of();
        }
        if (!value.isArray() || value.size() > kind.most()) {
            add(
                    field,
                    value,
                    "must be a list of no more than " + kind.most() + " lengths, null where one is not known");
            return List.of();
        }
        List<OptionalDouble> lengths = new ArrayList<>();
        for (int i = 0; i < value.size(); i++) {
            lengths.add(asGiven(value.get(i), at(field) + "/" + i));
        }
        return lengths;
    }

    /** A number is kept as it is, off the noise of a conversion to millimetres and back. */
    private OptionalDouble asGiven(JsonNode value, String where) {
        if (value.isNull()) {
            return OptionalDouble.empty();
        }
        OptionalDouble length = Lengths.read(value, where, unit, found);
        if (length.isEmpty()) {
            return length;
        }
        return OptionalDouble.of(value.isNumber() ? value.asDouble() : unit.fromMillimetres(length.getAsDouble()));
    }

    /**
     * Adds a violation of a field.
     *
     * @param field a declared field
     * @param reason what is wrong and what would work
     */
    public void refuse(String field, String reason) {
        JsonNode value = values.get(field);
        if (value == null) {
            found.add(at(field), reason);
        } else {
            add(field, value, reason);
        }
    }

    /**
     * Adds a violation of a field that may lie deeper.
     *
     * @param below where the field stands below this object, as a JSON pointer
     * @param reason what is wrong and what would work
     */
    public void refuseAt(String below, String reason) {
        found.add(pointer + below, reason);
    }

    private void add(String field, JsonNode value, String reason) {
        add(at(field), value, reason, found);
    }

    private static void add(String where, JsonNode value, String reason, FoundViolations found) {
        Texts.shown(value).ifPresentOrElse(shown -> found.add(where, reason, shown), () -> found.add(where, reason));
    }
}
