package org.capwright.json.schema;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * An object of a request: its name in the API description and its fields. Guaranteed to be immutable.
 *
 * @param name name of the schema
 * @param meaning what the object describes
 * @param fields fields in the order of the description
 */
public record RequestSchema(String name, String meaning, Map<String, SchemaField> fields) {

    /**
     * An object of a request.
     *
     * @param name name of the schema
     * @param meaning what the object describes
     * @param fields its fields
     * @return the shape
     */
    public static RequestSchema of(String name, String meaning, List<SchemaField> fields) {
        Map<String, SchemaField> byName = new LinkedHashMap<>();
        for (SchemaField field : fields) {
            byName.put(field.name(), field);
        }
        return new RequestSchema(name, meaning, java.util.Collections.unmodifiableMap(byName));
    }

    /**
     * A field of the object.
     *
     * @param field name of a field that is declared
     * @return the field
     * @throws IllegalArgumentException if it is not declared
     */
    public SchemaField field(String field) {
        SchemaField found = fields.get(field);
        if (found == null) {
            throw new IllegalArgumentException(name + " declares no field " + field);
        }
        return found;
    }

    /**
     * The declared name nearest to a name that is not declared, if one is near enough to be meant.
     *
     * @param unknown name that a caller wrote
     * @return the name that was probably meant
     */
    public Optional<String> nearest(String unknown) {
        return NearestWord.to(unknown, fields.keySet());
    }
}
