package org.capwright.service.openapi;

import io.swagger.v3.oas.models.Components;
import io.swagger.v3.oas.models.OpenAPI;
import io.swagger.v3.oas.models.Operation;
import io.swagger.v3.oas.models.PathItem;
import io.swagger.v3.oas.models.examples.Example;
import io.swagger.v3.oas.models.headers.Header;
import io.swagger.v3.oas.models.info.Info;
import io.swagger.v3.oas.models.info.License;
import io.swagger.v3.oas.models.media.ArraySchema;
import io.swagger.v3.oas.models.media.Content;
import io.swagger.v3.oas.models.media.Encoding;
import io.swagger.v3.oas.models.media.MediaType;
import io.swagger.v3.oas.models.media.ObjectSchema;
import io.swagger.v3.oas.models.media.Schema;
import io.swagger.v3.oas.models.media.StringSchema;
import io.swagger.v3.oas.models.parameters.RequestBody;
import io.swagger.v3.oas.models.responses.ApiResponse;
import io.swagger.v3.oas.models.responses.ApiResponses;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.capwright.check.foreign.OutlineReader;
import org.capwright.service.check.CheckShape;
import org.capwright.service.measure.MeasureShape;
import org.capwright.service.problem.FieldViolation;
import org.capwright.service.problem.Problem;
import org.capwright.service.problem.ProblemKind;
import org.capwright.service.rules.RulesShape;
import org.capwright.service.shape.Shape;
import org.capwright.service.sizerun.Rendering;
import org.capwright.service.sizerun.SizeRunShape;
import org.capwright.service.tables.TableShape;
import org.springdoc.core.customizers.OpenApiCustomizer;
import org.springframework.stereotype.Component;
import tools.jackson.databind.json.JsonMapper;

/** Completes the API description: request schemas, every media type, every error. */
@Component
final class ApiDescription implements OpenApiCustomizer {

    private static final String PROBLEM_JSON = "application/problem+json";
    private static final Shape REQUEST = SizeRunShape.REQUEST;

    private final List<Rendering> renderings;
    private final JsonMapper mapper;

    ApiDescription(List<Rendering> renderings, JsonMapper mapper) {
        this.renderings = renderings;
        this.mapper = mapper;
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
        ShapeSchemas.of(REQUEST).forEach(schemas::put);
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
            sizeRuns(item.getPost());
        } else if (path.equals("/v1/materials")) {
            materials(item.getPost());
        } else if (path.equals("/v1/made-to-measure")) {
            madeToMeasure(item.getPost());
        } else if (path.equals("/v1/checks")) {
            checks(item.getPost());
        } else if (path.equals("/v1/grade-rules")) {
            gradeRules(item.getPost());
        } else if (path.equals("/v1/size-tables/{id}")) {
            errors(item.getGet(), ProblemKind.BAD_REQUEST, ProblemKind.NOT_FOUND, ProblemKind.NOT_ACCEPTABLE);
        } else if (path.equals("/v1/size-tables")) {
            errors(item.getGet(), ProblemKind.NOT_ACCEPTABLE);
            ownTable(item.getPost());
        }
    }

    private void gradeRules(Operation operation) {
        operation.setDescription(
                "For a style without grade rules: bicep, armhole, elbow, wrist and length follow the growth of bodies in a size table"
                        + " and an ease policy, the cap height is fitted so that the cap ease of the base size is kept, rise,"
                        + " gaps and the front half grow in proportion. The growth from the base size is rounded as a whole, so"
                        + " that rounding errors do not add up from size to size. Bodies are read up to 256 kB.");
        MediaType json = new MediaType().schema(ShapeSchemas.reference(RulesShape.REQUEST.name()));
        json.addExamples(
                "centimetres",
                new Example()
                        .summary("Constant ease, half a centimetre of length per size, whole millimetres")
                        .value(Map.of(
                                "sizeRun",
                                example("example-cm.json"),
                                "sizeTable",
                                "women-en-13402-3-bust",
                                "ease",
                                Map.of("policy", "constant"),
                                "length",
                                Map.of("policy", "stated", "perSize", 0.5),
                                "grid",
                                "1 mm")));
        operation.setRequestBody(
                new RequestBody().required(true).content(new Content().addMediaType("application/json", json)));
        bodyErrors(operation);
    }

    private void ownTable(Operation operation) {
        operation.setDescription(
                "Checks a table of your own (units, plausible ranges, growth that must be monotone, dimensions that must exceed one another)"
                        + " and answers it as GET does a published one, or names everything that is wrong with it. Nothing is"
                        + " kept: put the same object into the field sizeTable of a request wherever an id is taken. Bodies are"
                        + " read up to 256 kB.");
        MediaType json = new MediaType().schema(ShapeSchemas.reference(TableShape.TABLE.name()));
        json.addExamples(
                "centimetres",
                new Example().summary("Six sizes of a workshop").value(example("example-size-table.json")));
        operation.setRequestBody(
                new RequestBody().required(true).content(new Content().addMediaType("application/json", json)));
        bodyErrors(operation);
        operation
                .getResponses()
                .addApiResponse(
                        "400",
                        error(ProblemKind.MALFORMED_BODY)
                                .description(
                                        "The body is no JSON document; line and column say where. Or a parameter is"
                                                + " wrong."));
    }

    private void sizeRuns(Operation operation) {
        operation.setDescription(
                "The Accept header picks the form of the answer; JSON without one. The same request gives the same"
                        + " bytes. Bodies are read up to 256 kB.");
        MediaType json = new MediaType().schema(ShapeSchemas.reference(REQUEST.name()));
        json.addExamples(
                "centimetres",
                new Example()
                        .summary("Under-sleeve and pleated overlay, six sizes")
                        .value(example("example-cm.json")));
        json.addExamples(
                "inches",
                new Example()
                        .summary("Overlay alone, lengths in inches and fractions")
                        .value(example("example-in.json")));
        operation.setRequestBody(
                new RequestBody().required(true).content(new Content().addMediaType("application/json", json)));
        operation.setResponses(new ApiResponses()
                .addApiResponse(
                        "200", drafted("The graded run, in the form that Accept asks for.", SizeRunShape.ANSWER)));
        bodyErrors(operation);
    }

    private void materials(Operation operation) {
        operation.setDescription(
                "Takes the body of a size run that has materials, and lays the pieces on the cloths it names."
                        + " Bodies are read up to 256 kB.");
        MediaType json = new MediaType().schema(ShapeSchemas.reference(REQUEST.name()));
        json.addExamples(
                "centimetres", new Example().summary("Cloth for two singers").value(example("example-materials.json")));
        operation.setRequestBody(
                new RequestBody().required(true).content(new Content().addMediaType("application/json", json)));
        operation.setResponses(new ApiResponses()
                .addApiResponse(
                        "200",
                        new ApiResponse()
                                .description("What to buy, with a picture of every lay.")
                                .content(new Content()
                                        .addMediaType(
                                                "application/json",
                                                new MediaType()
                                                        .schema(ShapeSchemas.reference(
                                                                AnswerSchemas.name(SizeRunShape.MATERIALS)))))));
        bodyErrors(operation);
    }

    private void madeToMeasure(Operation operation) {
        operation.setDescription(
                "The call that a made-to-order shop makes for every order. The sleeve is the wearer's measurements plus ease, and the"
                        + " cap is fitted to the armhole. Measurements that hardly anybody has are questioned until they are"
                        + " named in confirmed, missing ones are estimated and marked, see estimates. Nothing about the wearer"
                        + " is stored or logged. The Accept header picks the form of the answer; JSON without one."
                        + " Bodies are read up to 256 kB.");
        MediaType json = new MediaType().schema(ShapeSchemas.reference(MeasureShape.REQUEST.name()));
        json.addExamples(
                "centimetres",
                new Example()
                        .summary("A choir gown for one singer; wrist and armscye are estimated")
                        .value(example("example-made-to-measure.json")));
        operation.setRequestBody(
                new RequestBody().required(true).content(new Content().addMediaType("application/json", json)));
        operation.setResponses(new ApiResponses()
                .addApiResponse(
                        "200",
                        drafted("The sleeve set, in the form that Accept asks for.", MeasureShape.ANSWER)
                                .addHeaderObject(
                                        "Capwright-Estimated",
                                        new Header()
                                                .description(
                                                        "Names of the measurements that were estimated, where any were; JSON has"
                                                                + " the estimates with their intervals.")
                                                .schema(new StringSchema()))));
        bodyErrors(operation);
    }

    private void checks(Operation operation) {
        operation.setDescription(
                "Checks a size run, a spec table or outlines of a style drawn elsewhere, jump by jump. The Accept header picks"
                        + " the form of the answer; JSON without one. JSON bodies are read up to 256 kB, spec tables up to"
                        + " 4 MB, outlines up to 24 MB in all. Outlines of one size per file are sent as a form; the name of a"
                        + " file then names the size where the drawing does not. Files are read in memory and kept nowhere.");
        MediaType json = new MediaType().schema(ShapeSchemas.reference(CheckShape.REQUEST.name()));
        json.addExamples(
                "centimetres",
                new Example()
                        .summary("A size run with a limit of the label")
                        .value(Map.of(
                                "sizeRun",
                                example("example-cm.json"),
                                "thresholds",
                                Map.of("unevenCaution", 0.3),
                                "sizeTable",
                                "women-en-13402-3-bust")));
        operation.setRequestBody(new RequestBody()
                .required(true)
                .content(new Content()
                        .addMediaType("application/json", json)
                        .addMediaType(
                                "text/csv",
                                new MediaType()
                                        .schema(new StringSchema()
                                                .description("A spec table; comma, semicolon or tab, sizes across or"
                                                        + " down.")))
                        .addMediaType(
                                "image/vnd.dxf",
                                new MediaType()
                                        .schema(new StringSchema()
                                                .format("binary")
                                                .description("Outlines of all sizes in one DXF file.")))
                        .addMediaType("multipart/form-data", files())));
        operation.setResponses(new ApiResponses()
                .addApiResponse(
                        "200",
                        new ApiResponse()
                                .description("What was found, in the form that Accept asks for.")
                                .content(found())));
        bodyErrors(operation);
        operation
                .getResponses()
                .addApiResponse(
                        "400",
                        error(ProblemKind.MALFORMED_BODY)
                                .description("The body cannot be read; line says where. Or a parameter is wrong."));
        operation
                .getResponses()
                .addApiResponse(
                        "413",
                        error(ProblemKind.BODY_TOO_LARGE)
                                .description("The body is larger than what is read of its type."));
        operation
                .getResponses()
                .addApiResponse(
                        "415",
                        error(ProblemKind.UNSUPPORTED_MEDIA_TYPE)
                                .description("The body is of another type than these."));
    }

    private static Content found() {
        return new Content()
                .addMediaType(
                        "application/json",
                        new MediaType().schema(ShapeSchemas.reference(AnswerSchemas.name(CheckShape.ANSWER))))
                .addMediaType(
                        "text/csv",
                        new MediaType()
                                .schema(new StringSchema()
                                        .description("RFC 4180: a header line, then one line per finding.")))
                .addMediaType(
                        "image/svg+xml",
                        new MediaType()
                                .schema(new StringSchema()
                                        .description(
                                                "The jumps beside those of the body, or the nest with its crossings"
                                                        + " marked; legible in black and white.")))
                .addMediaType(
                        "application/pdf",
                        new MediaType()
                                .schema(
                                        new StringSchema()
                                                .format("binary")
                                                .description(
                                                        "A report on A4: jumps drawn beside those of the body, every finding"
                                                                + " with its source and remedy, table of jumps, what-if, coverage.")));
    }

    private static MediaType files() {
        Schema<?> form = new ObjectSchema();
        form.addProperty(
                CheckShape.PARTS.get(0),
                new ArraySchema()
                        .items(new StringSchema().format("binary"))
                        .minItems(1)
                        .maxItems(OutlineReader.MOST_FILES)
                        .description("One spec table as CSV, or outlines as DXF: one file, or one per size. The part is"
                                + " repeated for every file."));
        form.addProperty(CheckShape.PARTS.get(1), ShapeSchemas.reference(CheckShape.UPLOAD.name()));
        form.addRequiredItem(CheckShape.PARTS.get(0));
        return new MediaType()
                .schema(form)
                .addEncoding(
                        CheckShape.PARTS.get(1),
                        new Encoding().contentType(org.springframework.http.MediaType.APPLICATION_JSON_VALUE))
                .addEncoding(
                        CheckShape.PARTS.get(0),
                        new Encoding().contentType("text/csv, image/vnd.dxf, application/octet-stream"));
    }

    private ApiResponse drafted(String description, Class<?> answer) {
        Content content = new Content();
        for (Rendering rendering : renderings) {
            String type = rendering.mediaType().toString();
            boolean binary =
                    rendering.extension().equals("pdf") || rendering.extension().equals("zip");
            Schema<?> schema = type.equals("application/json")
                    ? ShapeSchemas.reference(AnswerSchemas.name(answer))
                    : new StringSchema().format(binary ? "binary" : null).description(rendering.meaning());
            content.addMediaType(type, new MediaType().schema(schema));
        }
        return new ApiResponse()
                .description(description)
                .content(content)
                .addHeaderObject(
                        "Content-Disposition",
                        new Header()
                                .description("A file name made of style and revision.")
                                .schema(new StringSchema()));
    }

    private static void bodyErrors(Operation operation) {
        errors(
                operation,
                ProblemKind.MALFORMED_BODY,
                ProblemKind.NOT_ACCEPTABLE,
                ProblemKind.BODY_TOO_LARGE,
                ProblemKind.UNSUPPORTED_MEDIA_TYPE,
                ProblemKind.INVALID_REQUEST);
    }

    private static void errors(Operation operation, ProblemKind... kinds) {
        for (ProblemKind kind : kinds) {
            operation.getResponses().addApiResponse(Integer.toString(kind.status()), error(kind));
        }
        operation.getResponses().addApiResponse("500", error(ProblemKind.INTERNAL_ERROR));
    }

    private static ApiResponse error(ProblemKind kind) {
        String meaning = switch (kind) {
            case MALFORMED_BODY -> "The body is no JSON document; line and column say where.";
            case BAD_REQUEST -> "A parameter is wrong.";
            case NOT_FOUND -> "There is nothing of this name.";
            case METHOD_NOT_ALLOWED -> "The address does not answer to this method.";
            case NOT_ACCEPTABLE -> "None of the media types asked for can be made.";
            case BODY_TOO_LARGE -> "The body is larger than 256 kB.";
            case UNSUPPORTED_MEDIA_TYPE -> "The body is not sent as application/json in UTF-8.";
            case INVALID_REQUEST ->
                "Fields are wrong, or no sleeve can be drafted from them; violations names every one with what would"
                        + " work.";
            case INTERNAL_ERROR -> "The service is at fault.";
        };
        return new ApiResponse()
                .description(meaning)
                .content(new Content()
                        .addMediaType(
                                PROBLEM_JSON,
                                new MediaType().schema(ShapeSchemas.reference(AnswerSchemas.name(Problem.class)))));
    }

    private Object example(String name) {
        try (InputStream in = ApiDescription.class.getResourceAsStream(name)) {
            if (in == null) {
                throw new IllegalStateException("no example " + name);
            }
            return mapper.readValue(new String(in.readAllBytes(), StandardCharsets.UTF_8), Map.class);
        } catch (IOException e) {
            throw new IllegalStateException("unreadable example " + name, e);
        }
    }
}
