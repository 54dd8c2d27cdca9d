package org.capwright.service.http.description;

import io.swagger.v3.oas.models.media.ArraySchema;
import io.swagger.v3.oas.models.media.IntegerSchema;
import io.swagger.v3.oas.models.media.NumberSchema;
import io.swagger.v3.oas.models.media.ObjectSchema;
import io.swagger.v3.oas.models.media.Schema;
import io.swagger.v3.oas.models.media.StringSchema;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.capwright.json.schema.FieldType;
import org.capwright.json.schema.RequestSchema;
import org.capwright.json.schema.SchemaField;
import org.capwright.json.style.SizeRunSchema;
import org.capwright.quantity.Unit;

/** Makes schemas of the shapes by which requests are read. */
final class OpenApiSchemas {

    private static final String FIGURE = "\\d{1,9}(\\.\\d{1,12})?";
    private static final String FRACTION = "(\\d{1,6}(\\s+|-))?\\d{1,4}/\\d{1,4}";
    private static final String TEXT_LENGTH = "^\\s*[+-]?(" + FIGURE + "|" + FRACTION + ")\\s*$";
    private static final String TEXT_EASE = "^\\s*[+-]?(" + FIGURE + "(\\s*%)?|" + FRACTION + ")\\s*$";

    private final Map<String, Schema<?>> schemas = new LinkedHashMap<>();

    private OpenApiSchemas() {}

    /**
     * What may be of more than one type in JSON: a schema with a name, in words, without a type. Not a choice of schemas: programs that generate clients make classes of choices that do not compile where a list is among
     * them, take no value where two branches are texts, and are empty in some of their libraries. Without a type the field takes a number, a text or a list as it stands. It is written out in its place under its name as
     * title, since some of them take a reference for one to a class.
     */
    private Schema<?> named(String name, String meaning, Object example, String pattern) {
        Schema<Object> schema = new Schema<>();
        schema.setDescription(meaning);
        schema.setExample(example);
        schema.setPattern(pattern); // holds for texts alone
        schemas.put(name, schema);
        Schema<Object> here = new Schema<>();
        here.setTitle(name);
        here.setDescription(meaning);
        here.setPattern(pattern);
        return here;
    }

    private Schema<?> length() {
        return named(
                "Length",
                "A length in the unit named by units: a number, or a text such as \"36.5\", \"1/2\" or \"3 1/2\".",
                13.5,
                TEXT_LENGTH);
    }

    private Schema<?> lengthOrNull() {
        return named(
                "LengthOrNull",
                "A length in the unit named by units: a number, or a text such as \"3 1/2\"; null where it is not"
                        + " known.",
                13.5,
                TEXT_LENGTH);
    }

    private Schema<?> ease() {
        return named(
                "Ease",
                "A length in the unit named by units, a number or a text such as \"3 1/2\"; or a share in percent, a"
                        + " text such as \"4%\".",
                "4%",
                TEXT_EASE);
    }

    private Schema<?> increment() {
        return named(
                "Increment",
                "Growth from one size to the next, in the unit named by units: one length for all intervals, a number"
                        + " or a text such as \"1/2\"; or a list of lengths, one for each interval between neighbouring"
                        + " sizes, smallest first.",
                List.of(1.6, 1.6, 1.8, 1.8, 2),
                TEXT_LENGTH);
    }

    private Schema<?> label(int longest) {
        String usual = longest == SizeRunSchema.LONGEST_LABEL ? "SizeName" : "SizeNameTo" + longest;
        return named(
                usual,
                "The name of a size: a text of up to " + longest + " characters; a whole number is read as its digits.",
                "40",
                "^.{1," + longest + "}$");
    }

    private Schema<?> lengthOr(RequestSchema shape) {
        object(shape);
        return named(
                shape.name() + "OrLength",
                shape.meaning()
                        + " One length for all, a number or a text such as \"1/2\"; or an object, see the schema "
                        + shape.name() + ".",
                1,
                TEXT_LENGTH);
    }

    private Schema<?> textOr(int longest, RequestSchema shape) {
        object(shape);
        return named(
                shape.name() + "OrId",
                "An id, a text of up to " + longest + " characters; or an object, see the schema " + shape.name() + ".",
                "women-en-13402-3-bust",
                "^.{1," + longest + "}$");
    }

    static Map<String, Schema<?>> of(RequestSchema shape) {
        OpenApiSchemas made = new OpenApiSchemas();
        made.object(shape);
        return made.schemas;
    }

    static Schema<?> reference(String name) {
        return new Schema<>().$ref("#/components/schemas/" + name);
    }

    private Schema<?> object(RequestSchema shape) {
        if (!schemas.containsKey(shape.name())) {
            ObjectSchema schema = new ObjectSchema();
            schemas.put(shape.name(), schema);
            schema.setDescription(shape.meaning());
            schema.setAdditionalProperties(false);
            for (SchemaField field : shape.fields().values()) {
                schema.addProperty(field.name(), field(field));
                if (field.required()) {
                    schema.addRequiredItem(field.name());
                }
            }
        }
        return reference(shape.name());
    }

    private Schema<?> field(SchemaField field) {
        Schema<?> schema = kind(field.kind());
        if (schema.get$ref() != null) {
            // Beside a reference nothing else counts in OpenAPI 3.0.
            Schema<?> around = new Schema<>();
            around.setAllOf(List.of(schema));
            schema = around;
        }
        schema.setDescription(field.meaning() + range(field.kind()));
        field.example().ifPresent(schema::setExample);
        if (!field.required() && schema.getType() != null) {
            schema.setNullable(true);
            if (schema.getEnum() != null) {
                allowNull(schema);
            }
        }
        return schema;
    }

    /** A null must stand among the words of an enumeration as well (OpenAPI 3.0.3, clarification of nullable). */
    private static <T> void allowNull(Schema<T> schema) {
        schema.addEnumItemObject(null);
    }

    private Schema<?> kind(FieldType kind) {
        if (kind instanceof FieldType.Text text) {
            return new StringSchema().minLength(1).maxLength(text.longest());
        } else if (kind instanceof FieldType.Choice choice) {
            StringSchema schema = new StringSchema();
            schema.setEnum(new ArrayList<>(choice.words()));
            return schema;
        } else if (kind instanceof FieldType.Length) {
            return length();
        } else if (kind instanceof FieldType.Ratio ratio) {
            return new NumberSchema()
                    .minimum(BigDecimal.valueOf(ratio.least()))
                    .maximum(BigDecimal.valueOf(ratio.greatest()));
        } else if (kind instanceof FieldType.Whole whole) {
            return new IntegerSchema()
                    .minimum(BigDecimal.valueOf(whole.least()))
                    .maximum(BigDecimal.valueOf(whole.greatest()));
        } else if (kind instanceof FieldType.Ease) {
            return ease();
        } else if (kind instanceof FieldType.Step) {
            return new StringSchema().pattern("^.*(mm|cm|in)\\s*$");
        } else if (kind instanceof FieldType.Label label) {
            return label(label.longest());
        } else if (kind instanceof FieldType.Labels labels) {
            return new ArraySchema().items(label(labels.longest())).minItems(1).maxItems(labels.most());
        } else if (kind instanceof FieldType.Words some) {
            StringSchema word = new StringSchema();
            word.setEnum(new ArrayList<>(some.words()));
            return new ArraySchema().items(word).maxItems(some.words().size());
        } else if (kind instanceof FieldType.TextList texts) {
            return new ArraySchema()
                    .items(new StringSchema().minLength(1).maxLength(texts.longest()))
                    .maxItems(texts.most());
        } else if (kind instanceof FieldType.Growth) {
            return increment();
        } else if (kind instanceof FieldType.Nested nested) {
            return object(nested.schema());
        } else if (kind instanceof FieldType.PerSize perSize) {
            ObjectSchema schema = new ObjectSchema();
            schema.setMinProperties(1);
            schema.setAdditionalProperties(kind(perSize.count()));
            return schema;
        } else if (kind instanceof FieldType.TextOrNested either) {
            return textOr(either.longest(), either.schema());
        } else if (kind instanceof FieldType.Objects objects) {
            return new ArraySchema().items(object(objects.schema())).minItems(1).maxItems(objects.most());
        } else if (kind instanceof FieldType.Dictionary dictionary) {
            Schema<?> schema = new ObjectSchema();
            schema.setMaxProperties(dictionary.most());
            schema.setAdditionalProperties(new StringSchema().minLength(1).maxLength(dictionary.longestText()));
            return schema;
        } else if (kind instanceof FieldType.Gapped gapped) {
            return new ArraySchema().items(lengthOrNull()).maxItems(gapped.most());
        }
        return lengthOr(((FieldType.LengthOrNested) kind).schema());
    }

    /** The range of a length in each unit: which one holds depends on the request. */
    private static String range(FieldType kind) {
        if (kind instanceof FieldType.Length length) {
            return " From " + inUnits(length.least(), length.greatest()) + ".";
        } else if (kind instanceof FieldType.Ease ease) {
            return " From " + inUnits(ease.length().least(), ease.length().greatest()) + ", or "
                    + Math.round(100 * ease.share().least()) + "% to "
                    + Math.round(100 * ease.share().greatest()) + "%.";
        } else if (kind instanceof FieldType.Growth growth) {
            return " Each from " + inUnits(-growth.greatest(), growth.greatest()) + ".";
        } else if (kind instanceof FieldType.LengthOrNested either) {
            return " From " + inUnits(either.length().least(), either.length().greatest()) + ".";
        }
        return "";
    }

    private static String inUnits(double least, double greatest) {
        List<String> ranges = new ArrayList<>();
        for (Unit unit : Unit.values()) {
            ranges.add(end(unit, least, RoundingMode.CEILING) + " to " + end(unit, greatest, RoundingMode.FLOOR) + " "
                    + unit.symbol());
        }
        return String.join(", ", ranges);
    }

    /** Rounded to the side that is taken. */
    private static String end(Unit unit, double length, RoundingMode inward) {
        BigDecimal end = BigDecimal.valueOf(unit.fromMillimetres(length))
                .setScale(9, RoundingMode.HALF_EVEN)
                .setScale(4, inward)
                .stripTrailingZeros();
        return end.signum() == 0 ? "0" : end.toPlainString();
    }
}
