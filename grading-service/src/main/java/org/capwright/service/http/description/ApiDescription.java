package org.capwright.service.http.description;

import io.swagger.v3.oas.models.Components;
import io.swagger.v3.oas.models.OpenAPI;
import io.swagger.v3.oas.models.PathItem;
import io.swagger.v3.oas.models.info.Info;
import io.swagger.v3.oas.models.info.License;
import io.swagger.v3.oas.models.media.Schema;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.capwright.service.checks.CheckShape;
import org.capwright.service.http.problem.FieldViolation;
import org.capwright.service.http.problem.Problem;
import org.capwright.service.http.problem.ProblemKind;
import org.capwright.service.madetomeasure.MeasureShape;
import org.capwright.service.rules.RulesShape;
import org.capwright.service.sizerun.SizeRunFormat;
import org.capwright.service.sizerun.SizeRunShape;
import org.capwright.service.tables.TableShape;
import org.springdoc.core.customizers.OpenApiCustomizer;
import org.springframework.stereotype.Component;
import tools.jackson.databind.json.JsonMapper;

/** Completes the API description: request schemas, every media type, every error. */
@Component
final class ApiDescription implements OpenApiCustomizer {

    private final RunCalls runs;
    private final GradeCalls grades;

    ApiDescription(List<SizeRunFormat> renderings, JsonMapper mapper) {
        Bodies bodies = new Bodies(mapper);
        this.runs = new RunCalls(renderings, bodies);
        this.grades = new GradeCalls(bodies);
    }

    @Override
    public void customise(OpenAPI api) {
        api.setInfo(
                new Info()
                        .title("Capwright")
                        .version("1")
                        .license(new License().name("Apache-2.0"))
                        .description(
                                "Drafts structured sleeves (an under-sleeve and a raised, pleated overlay), grades them over a size"
                                        + " run, and writes nests, blocks and spec tables. Lengths are in the unit that the request names;"
                                        + " errors are problem documents (RFC 9457) that name every wrong field and what would work."));
        api.setServers(null);
        if (api.getComponents() == null) {
            api.setComponents(new Components());
        }
        Map<String, Schema<?>> schemas = new TreeMap<>();
        ShapeSchemas.of(SizeRunShape.REQUEST).forEach(schemas::put);
        ShapeSchemas.of(MeasureShape.REQUEST).forEach(schemas::put);
        ShapeSchemas.of(CheckShape.REQUEST).forEach(schemas::put);
        ShapeSchemas.of(CheckShape.UPLOAD).forEach(schemas::put);
        ShapeSchemas.of(TableShape.TABLE).forEach(schemas::put);
        ShapeSchemas.of(RulesShape.REQUEST).forEach(schemas::put);
        List<Class<?>> answers = List.of(
                SizeRunShape.ANSWER,
                SizeRunShape.MATERIALS,
                MeasureShape.ANSWER,
                CheckShape.ANSWER,
                RulesShape.ANSWER,
                org.capwright.service.tables.AnswerTypes.LISTING,
                org.capwright.service.tables.AnswerTypes.TABLE,
                org.capwright.service.tables.AnswerTypes.FIGURES,
                Problem.class);
        for (Class<?> answer : answers) {
            AnswerSchemas.add(answer, schemas);
            AnswerSchemas.require(answer, schemas);
        }
        anyValue(schemas);
        sameGrade(schemas);
        api.getComponents().setSchemas(new TreeMap<>());
        schemas.forEach(api.getComponents()::addSchemas);
        api.getPaths().forEach((path, item) -> describe(path, item));
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
                grade.setAllOf(List.of(ShapeSchemas.reference("Grade")));
                grade.setDescription("The whole field grade, to be put into the request as it stands.");
                answer.getProperties().put("grade", grade);
            }
        }
    }

    private void describe(String path, PathItem item) {
        if (path.equals("/v1/size-runs")) {
            runs.sizeRuns(item.getPost());
        } else if (path.equals("/v1/materials")) {
            runs.materials(item.getPost());
        } else if (path.equals("/v1/made-to-measure")) {
            runs.madeToMeasure(item.getPost());
        } else if (path.equals("/v1/checks")) {
            grades.checks(item.getPost());
        } else if (path.equals("/v1/grade-rules")) {
            grades.gradeRules(item.getPost());
        } else if (path.equals("/v1/size-tables/{id}") || path.equals("/v1/size-tables/{id}/figures")) {
            ErrorAnswers.of(item.getGet(), ProblemKind.BAD_REQUEST, ProblemKind.NOT_FOUND, ProblemKind.NOT_ACCEPTABLE);
        } else if (path.equals("/v1/size-tables")) {
            ErrorAnswers.of(item.getGet(), ProblemKind.NOT_ACCEPTABLE);
            grades.ownTable(item.getPost());
        }
    }
}
