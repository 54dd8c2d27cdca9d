package org.capwright.json.schema;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.capwright.json.problem.FoundViolations;
import org.capwright.json.problem.RequestPlaces;
import org.capwright.quantity.Unit;
import org.capwright.words.Text;
import tools.jackson.databind.JsonNode;

/**
 * One object of a request, read field by field as its schema declares. Whatever is wrong is gathered and the field then counts as left out, so that one reading
 * finds everything.
 */
public final class RequestObject {

    private final Map<String, JsonNode> values = new HashMap<>();
    private final Map<String, RequestObject> opened = new HashMap<>();
    private final Set<String> complained = new HashSet<>();
    private final RequestSchema schema;
    private final String pointer;
    private final Unit unit;
    private final FoundViolations found;

    /**
     * Opens an object and names fields that the schema does not declare, and those that are missing.
     *
     * @param node the value of the field; anything but an object is a violation
     * @param schema the declared fields
     * @param pointer where the object stands, as a JSON pointer
     * @param unit unit of its lengths
     * @param found gathers what is wrong
     */
    public RequestObject(JsonNode node, RequestSchema schema, String pointer, Unit unit, FoundViolations found) {
        this.schema = schema;
        this.pointer = pointer;
        this.unit = unit;
        this.found = found;
        if (!node.isObject()) {
            found.add(pointer, fields(schema));
            return;
        }
        for (Map.Entry<String, JsonNode> entry : node.properties()) {
            if (!schema.fields().containsKey(entry.getKey())) {
                nameUnknown(entry.getKey());
            } else if (!entry.getValue().isNull()) {
                values.put(entry.getKey(), entry.getValue());
            }
        }
        for (SchemaField field : schema.fields().values()) {
            if (field.required() && !values.containsKey(field.name())) {
                found.add(at(field.name()), missing(field.kind()));
            }
        }
    }

    private void nameUnknown(String name) {
        String shown = Texts.shortened(name);
        found.add(
                pointer + "/" + RequestPlaces.escaped(shown),
                schema.nearest(name)
                        .map(near -> Text.of("is not a known field; did you mean {near}?")
                                .with("near", near))
                        .orElse(Text.of("is not a known field; known here: {fields}")
                                .with("fields", names(schema))));
    }

    private static String names(RequestSchema schema) {
        return String.join(", ", schema.fields().keySet());
    }

    private static Text fields(RequestSchema schema) {
        return Text.of("must be an object with the fields {fields}").with("fields", names(schema));
    }

    private Text missing(FieldType kind) {
        if (kind instanceof FieldType.Choice choice) {
            return Text.of("is missing; one of {words}").with("words", Text.names(choice.words()));
        }
        return kind instanceof FieldType.Length
                ? Text.of("is missing; a length in {unit}").with("unit", unit.symbol())
                : Text.of("is missing");
    }

    /**
     * Where a field stands.
     *
     * @param field a field of this object
     * @return a JSON pointer
     */
    public String at(String field) {
        return pointer + "/" + RequestPlaces.escaped(field);
    }

    /**
     * Whether a field was given a value other than null, right or wrong.
     *
     * @param field a declared field
     * @return true if it was
     */
    public boolean has(String field) {
        schema.field(field);
        return values.containsKey(field);
    }

    /**
     * The value of a field as it came in.
     *
     * @param field a declared field
     * @return the value, unless it was left out or null
     */
    public Optional<JsonNode> raw(String field) {
        schema.field(field);
        return Optional.ofNullable(values.get(field));
    }

    private Optional<Given> given(String field) {
        JsonNode value = values.get(field);
        return value == null ? Optional.empty() : Optional.of(new Given(value, at(field), found));
    }

    private <K extends FieldType> K kind(String field, Class<K> type) {
        return type.cast(schema.field(field).kind());
    }

    /**
     * A text.
     *
     * @param field a field declared as text, or as text or nested
     * @return the text without spaces around it; none if it was left out, is an object or is wrong
     */
    public Optional<String> text(String field) {
        JsonNode value = values.get(field);
        FieldType kind = schema.field(field).kind();
        if (value == null || kind instanceof FieldType.TextOrNested && value.isObject()) {
            return Optional.empty();
        }
        int longest =
                kind instanceof FieldType.TextOrNested either ? either.longest() : ((FieldType.Text) kind).longest();
        return Texts.checked(value, at(field), longest, found);
    }

    /**
     * One of some words.
     *
     * @param field a field declared as a choice
     * @return the word; none if it was left out or is wrong
     */
    public Optional<String> choice(String field) {
        List<String> words = kind(field, FieldType.Choice.class).words();
        return given(field).flatMap(value -> Words.one(value, words));
    }

    /**
     * A list of texts.
     *
     * @param field name of the field
     * @return those that are right, in the order given; empty if left out
     */
    public List<String> texts(String field) {
        FieldType.TextList texts = kind(field, FieldType.TextList.class);
        return given(field).map(value -> Texts.some(value, texts)).orElse(List.of());
    }

    /**
     * A list of some words.
     *
     * @param field a field declared as words
     * @return the words that are right, in the order given; none if it was left out
     */
    public List<String> words(String field) {
        List<String> words = kind(field, FieldType.Words.class).words();
        return given(field).map(value -> Words.some(value, words)).orElse(List.of());
    }

    /**
     * A length.
     *
     * @param field a field declared as a length
     * @return millimetres; none if it was left out or is wrong
     */
    public OptionalDouble length(String field) {
        FieldType kind = schema.field(field).kind();
        FieldType.Length range =
                kind instanceof FieldType.LengthOrNested either ? either.length() : (FieldType.Length) kind;
        return given(field).map(value -> Lengths.within(value, unit, range)).orElse(OptionalDouble.empty());
    }

    /**
     * A plain number.
     *
     * @param field a field declared as a ratio
     * @return the number; none if it was left out or is wrong
     */
    public OptionalDouble ratio(String field) {
        FieldType.Ratio kind = kind(field, FieldType.Ratio.class);
        return given(field).map(value -> Numbers.ratio(value, kind)).orElse(OptionalDouble.empty());
    }

    /**
     * A whole number.
     *
     * @param field a field declared as whole
     * @return the number; none if it was left out or is wrong
     */
    public Optional<Integer> whole(String field) {
        FieldType.Whole kind = kind(field, FieldType.Whole.class);
        return given(field).flatMap(value -> Numbers.whole(value, kind));
    }

    /**
     * A share given as a percentage.
     *
     * @param field a field declared as ease
     * @return the share, 0.04 for {@code "4%"}; none if the field was left out, is a length or is wrong
     */
    public OptionalDouble percentage(String field) {
        FieldType.Ease kind = kind(field, FieldType.Ease.class);
        return given(field).map(value -> Eases.share(value, kind)).orElse(OptionalDouble.empty());
    }

    /**
     * An ease given as a length.
     *
     * @param field a field declared as ease
     * @return millimetres; none if the field was left out, is a percentage or is wrong
     */
    public OptionalDouble easeLength(String field) {
        FieldType.Ease kind = kind(field, FieldType.Ease.class);
        return given(field).map(value -> Eases.length(value, unit, kind)).orElse(OptionalDouble.empty());
    }

    /**
     * A grid for rounding.
     *
     * @param field a field declared as a step
     * @return millimetres; none if it was left out or is wrong
     */
    public OptionalDouble step(String field) {
        FieldType.Step kind = kind(field, FieldType.Step.class);
        return given(field).map(value -> Lengths.step(value, kind)).orElse(OptionalDouble.empty());
    }

    /**
     * The growth of a dimension.
     *
     * @param field a field declared as growth
     * @param intervals number of intervals between neighbouring sizes; negative if it is not known since the sizes are wrong
     * @return millimetres per interval, smallest sizes first; none if the field was left out or is wrong
     */
    public Optional<List<Double>> growth(String field, int intervals) {
        FieldType.Growth kind = kind(field, FieldType.Growth.class);
        return given(field).flatMap(value -> Growths.read(value, unit, kind, intervals));
    }

    /**
     * An object within this one.
     *
     * @param field a field declared as nested, or as a length or nested
     * @return the object; none if it was left out or is a single length
     */
    public Optional<RequestObject> object(String field) {
        JsonNode value = values.get(field);
        FieldType kind = schema.field(field).kind();
        if (value == null || kind instanceof FieldType.LengthOrNested && !value.isObject()) {
            return Optional.empty();
        }
        if (!value.isObject()) {
            if (complained.add(field)) {
                refuse(field, fields(((FieldType.Nested) kind).schema()));
            }
            return Optional.empty();
        }
        RequestSchema inner =
                kind instanceof FieldType.LengthOrNested either ? either.schema() : ((FieldType.Nested) kind).schema();
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
        FieldType.Objects kind = kind(field, FieldType.Objects.class);
        if (value == null) {
            return List.of();
        }
        if (!value.isArray() || value.isEmpty() || value.size() > kind.most()) {
            refuse(
                    field,
                    Text.of("must be a list of 1 to {most} objects with the fields {fields}")
                            .with("most", kind.most())
                            .with("fields", names(kind.schema())));
            return List.of();
        }
        List<RequestObject> objects = new ArrayList<>();
        for (int i = 0; i < value.size(); i++) {
            objects.add(new RequestObject(value.get(i), kind.schema(), at(field) + "/" + i, unit, found));
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
        FieldType.PerSize kind = kind(field, FieldType.PerSize.class);
        return given(field).map(value -> SizeCounts.read(value, kind, sizes)).orElse(Map.of());
    }

    /**
     * Texts by names of the sender's own.
     *
     * @param field a field declared as a dictionary
     * @return the texts that are right, by their names; none if the field was left out or is no object
     */
    public Map<String, String> dictionary(String field) {
        FieldType.Dictionary kind = kind(field, FieldType.Dictionary.class);
        JsonNode value = values.get(field);
        Map<String, String> texts = new LinkedHashMap<>();
        if (value == null) {
            return texts;
        }
        boolean right = value.isObject()
                && value.size() <= kind.most()
                && value.propertyNames().stream()
                        .allMatch(name -> !name.isBlank() && name.length() <= kind.longestName());
        if (!right) {
            refuse(
                    field,
                    Text.of("must be an object of at most {most} texts, each under a name of 1 to {longest} characters")
                            .with("most", kind.most())
                            .with("longest", kind.longestName()));
            return texts;
        }
        value.properties()
                .forEach(entry -> Texts.checked(
                                entry.getValue(),
                                at(field) + "/" + RequestPlaces.escaped(entry.getKey()),
                                kind.longestText(),
                                found)
                        .ifPresent(text -> texts.put(entry.getKey(), text)));
        return texts;
    }

    /**
     * A list of lengths with gaps.
     *
     * @param field a field declared as gapped
     * @return lengths in the unit of the request, empty where a length is null or wrong; none if it was left out or is no such list
     */
    public List<OptionalDouble> gapped(String field) {
        FieldType.Gapped kind = kind(field, FieldType.Gapped.class);
        return given(field).map(value -> Lengths.gapped(value, unit, kind)).orElse(List.of());
    }

    /**
     * Adds a violation of a field.
     *
     * @param field a declared field
     * @param reason what is wrong and what would work
     */
    public void refuse(String field, Text reason) {
        given(field).ifPresentOrElse(value -> value.refuse(reason), () -> found.add(at(field), reason));
    }

    /**
     * Adds a violation of a field.
     *
     * @param field a declared field
     * @param reason what is wrong and what would work
     */
    public void refuse(String field, String reason) {
        refuse(field, Text.of(reason));
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
}
