package org.capwright.json.schema;

import java.util.Optional;
import org.capwright.json.problem.RequestPlaces;
import org.capwright.measure.Dimension;

/**
 * One field of a request.
 *
 * @param name its name
 * @param kind what its value may be
 * @param meaning what it says, whole sentences, with what holds where it is left out
 * @param example a value that works in centimetres, where an example helps
 * @param required whether a request without it is refused
 */
public record SchemaField(String name, FieldType kind, String meaning, Optional<Object> example, boolean required) {

    /**
     * A field that may be left out.
     *
     * @param name its name
     * @param kind what its value may be
     * @param meaning what it says
     * @return the field
     */
    public static SchemaField optional(String name, FieldType kind, String meaning) {
        return new SchemaField(name, kind, meaning, Optional.empty(), false);
    }

    /**
     * A field that must be there.
     *
     * @param name its name
     * @param kind what its value may be
     * @param meaning what it says
     * @return the field
     */
    public static SchemaField required(String name, FieldType kind, String meaning) {
        return new SchemaField(name, kind, meaning, Optional.empty(), true);
    }

    /**
     * A field for a dimension of the sleeve; range and definition are those of the dimension.
     *
     * @param dimension which
     * @param more what there is to say beyond the definition
     * @return the field, which may be left out
     */
    public static SchemaField of(Dimension dimension, String more) {
        return optional(
                RequestPlaces.field(dimension),
                new FieldType.Length(dimension.least(), dimension.greatest()),
                more.isEmpty() ? dimension.definition() : dimension.definition() + " " + more);
    }

    /**
     * The same field, which must be there.
     *
     * @return a required field
     */
    public SchemaField needed() {
        return new SchemaField(name, kind, meaning, example, true);
    }

    /**
     * The same field with an example.
     *
     * @param value a value that works in centimetres
     * @return a field with an example
     */
    public SchemaField example(Object value) {
        return new SchemaField(name, kind, meaning, Optional.of(value), required);
    }
}
