package org.capwright.service.http.description;

import io.swagger.v3.oas.models.Components;
import io.swagger.v3.oas.models.OpenAPI;
import io.swagger.v3.oas.models.info.Info;
import io.swagger.v3.oas.models.info.License;
import io.swagger.v3.oas.models.media.Schema;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.capwright.json.problem.FieldViolation;
import org.capwright.service.http.problem.Problem;
import org.springdoc.core.customizers.OpenApiCustomizer;
import org.springframework.stereotype.Component;
import tools.jackson.databind.json.JsonMapper;

/** Completes the API description: request schemas, every media type, every error. */
@Component
final class ApiDescription implements OpenApiCustomizer {

    private final List<DescribedCall> calls;
    private final DescribedAccess access;
    private final JsonMapper mapper;

    ApiDescription(List<DescribedCall> calls, DescribedAccess access, JsonMapper mapper) {
        this.calls = calls;
        this.access = access;
        this.mapper = mapper;
    }

    @Override
    public void customise(OpenAPI api) {
        api.setInfo(new Info()
                .title("Capwright")
                .version("1")
                .license(new License().name("Apache-2.0"))
                .description("Drafts structured sleeves (an under-sleeve and a raised, pleated overlay), grades"
                        + " them over a size run, and writes nests, blocks and spec tables. Lengths are in"
                        + " the unit that the request names; errors are problem documents (RFC 9457) that"
                        + " name every wrong field and what would work. Words for people are in the language that"
                        + " Accept-Language asks for, English or French."));
        if (api.getComponents() == null) {
            api.setComponents(new Components());
        }
        DescribedApi described = new DescribedApi(api, mapper);
        described.schema(Problem.class);
        calls.forEach(call -> call.describe(described));
        Map<String, Schema<?>> schemas = described.schemas();
        anyValue(schemas);
        sameGrade(schemas);
        api.getComponents().setSchemas(new TreeMap<>());
        schemas.forEach(api.getComponents()::addSchemas);
        access.complete(api);
    }

    /** The value given may be of any type: a schema without one. */
    private static void anyValue(Map<String, Schema<?>> schemas) {
        Schema<?> violation = schemas.get(AnswerSchemas.name(FieldViolation.class));
        if (violation != null) {
            Schema<Object> any = new Schema<>();
            any.setDescription(
                    "The value given, or that follows from what was given: a number, a text or true or false.");
            any.setExample(0.5);
            violation.getProperties().put("value", any);
        }
    }

    /** A grade that is answered is a grade that can be asked for. */
    private static void sameGrade(Map<String, Schema<?>> schemas) {
        for (String name : List.of("WhatIf", "GradeRules")) {
            Schema<?> answer = schemas.get(name);
            if (answer != null) {
                Schema<Object> grade = new Schema<>();
                grade.setAllOf(List.of(OpenApiSchemas.reference("Grade")));
                grade.setDescription("The whole field grade, to be put into the request as it stands.");
                answer.getProperties().put("grade", grade);
            }
        }
    }
}
