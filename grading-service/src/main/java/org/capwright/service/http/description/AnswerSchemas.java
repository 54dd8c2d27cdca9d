package org.capwright.service.http.description;

import com.fasterxml.jackson.annotation.JsonProperty;
import io.swagger.v3.core.converter.AnnotatedType;
import io.swagger.v3.core.converter.ModelConverters;
import io.swagger.v3.core.converter.ResolvedSchema;
import io.swagger.v3.oas.models.media.Schema;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Schemas of the records that are answered. Every component that is no Optional is always there, so it is required. */
final class AnswerSchemas {

    private AnswerSchemas() {}

    static void require(Class<?> answer, Map<String, Schema<?>> schemas) {
        Set<Class<?>> records = new LinkedHashSet<>();
        collect(answer, records);
        for (Class<?> type : records) {
            Schema<?> schema = schemas.get(name(type));
            if (schema == null) {
                continue;
            }
            for (RecordComponent component : type.getRecordComponents()) {
                String name = name(component);
                if (component.getType() != Optional.class
                        && (schema.getRequired() == null
                                || !schema.getRequired().contains(name))) {
                    schema.addRequiredItem(name);
                }
            }
        }
    }

    /** A component may be written under another name, where its own would be a word of the language. */
    private static String name(RecordComponent component) {
        JsonProperty written = component.getAccessor().getAnnotation(JsonProperty.class);
        return written == null ? component.getName() : written.value();
    }

    static void add(Class<?> answer, Map<String, Schema<?>> schemas) {
        ResolvedSchema resolved = ModelConverters.getInstance(false)
                .resolveAsResolvedSchema(new AnnotatedType(answer).resolveAsRef(true));
        resolved.referencedSchemas.forEach((name, schema) -> schemas.putIfAbsent(name, schema));
    }

    static String name(Class<?> type) {
        io.swagger.v3.oas.annotations.media.Schema schema =
                type.getAnnotation(io.swagger.v3.oas.annotations.media.Schema.class);
        return schema == null || schema.name().isEmpty() ? type.getSimpleName() : schema.name();
    }

    private static void collect(Type type, Set<Class<?>> records) {
        if (type instanceof ParameterizedType parameterized) {
            for (Type argument : parameterized.getActualTypeArguments()) {
                collect(argument, records);
            }
        } else if (type instanceof Class<?> plain && plain.isRecord() && records.add(plain)) {
            for (RecordComponent component : plain.getRecordComponents()) {
                collect(component.getGenericType(), records);
            }
        }
    }
}
