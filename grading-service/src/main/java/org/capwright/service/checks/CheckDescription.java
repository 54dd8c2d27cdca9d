package org.capwright.service.checks;

import io.swagger.v3.oas.models.Operation;
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
import java.util.Map;
import org.capwright.gradeimport.OutlineReader;
import org.capwright.service.http.description.Answers;
import org.capwright.service.http.description.DescribedApi;
import org.capwright.service.http.description.DescribedCall;
import org.capwright.service.http.description.ErrorAnswers;
import org.capwright.service.http.problem.ProblemKind;
import org.springframework.stereotype.Component;

/** Describes {@code POST /v1/checks}. */
@Component
final class CheckDescription implements DescribedCall {

    @Override
    public void describe(DescribedApi api) {
        Operation operation = api.at("/v1/checks").getPost();
        operation.setDescription(
                "Checks a size run, a spec table or outlines of a style drawn elsewhere, jump by jump. The Accept"
                        + " header picks the form of the answer; JSON without one. JSON bodies are read up to 256 kB, spec"
                        + " tables up to 4 MB, outlines up to 24 MB in all. Outlines of one size per file are sent as a"
                        + " form; the name of a file then names the size where the drawing does not. Files are read in"
                        + " memory and kept nowhere.");
        operation.setRequestBody(api.json(
                CheckSchema.REQUEST,
                "A size run with a limit of the label",
                Map.of(
                        "sizeRun",
                        api.example("example-cm.json"),
                        "thresholds",
                        Map.of("unevenCaution", 0.3),
                        "sizeTable",
                        "women-en-13402-3-bust")));
        operation
                .getRequestBody()
                .getContent()
                .addMediaType(
                        "text/csv",
                        new MediaType()
                                .schema(new StringSchema()
                                        .description(
                                                "A spec table; comma, semicolon or tab, sizes across or" + " down.")))
                .addMediaType(
                        ForeignBodies.XLSX.toString(),
                        new MediaType()
                                .schema(new StringSchema()
                                        .format("binary")
                                        .description("A spec table in a workbook (.xlsx): the first sheet that names"
                                                + " points of measure.")))
                .addMediaType(
                        "image/vnd.dxf",
                        new MediaType()
                                .schema(new StringSchema()
                                        .format("binary")
                                        .description("Outlines of all sizes in one DXF file.")))
                // Without its parts: a program that is generated makes one method of this path, for JSON.
                .addMediaType(
                        "multipart/form-data",
                        new MediaType()
                                .schema(new ObjectSchema()
                                        .description("The form that POST /v1/checks/uploads describes.")));
        operation.setResponses(new ApiResponses()
                .addApiResponse(
                        "200",
                        new ApiResponse()
                                .description("What was found, in the form that Accept asks for.")
                                .content(found(api))));
        ErrorAnswers.ofBody(operation);
        operation
                .getResponses()
                .addApiResponse(
                        "400",
                        ErrorAnswers.one(ProblemKind.MALFORMED_BODY)
                                .description("The body cannot be read; line says where. Or a parameter is wrong."));
        operation
                .getResponses()
                .addApiResponse(
                        "413",
                        ErrorAnswers.one(ProblemKind.BODY_TOO_LARGE)
                                .description("The body is larger than what is read of its type."));
        operation
                .getResponses()
                .addApiResponse(
                        "415",
                        ErrorAnswers.one(ProblemKind.UNSUPPORTED_MEDIA_TYPE)
                                .description("The body is of another type than these."));
        upload(api);
    }

    /** The form by itself: a program that is generated from a description makes one method of a path, for one type of body. */
    private static void upload(DescribedApi api) {
        Operation upload = api.at("/v1/checks/uploads").getPost();
        upload.setDescription(
                "The form of POST /v1/checks at an address of its own. Files are read in memory up to 24 MB in"
                        + " all and kept nowhere.");
        upload.setRequestBody(new RequestBody()
                .required(true)
                .content(new Content().addMediaType("multipart/form-data", files(api))));
        Answers.only(
                upload,
                "200",
                new ApiResponse()
                        .description("What was found, in the form that Accept asks for.")
                        .content(found(api)));
        ErrorAnswers.ofBody(upload);
        ErrorAnswers.of(upload, ProblemKind.BAD_REQUEST);
    }

    private static Content found(DescribedApi api) {
        return new Content()
                .addMediaType("application/json", new MediaType().schema(api.schema(CheckAnswer.class)))
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
                                .schema(new StringSchema()
                                        .format("binary")
                                        .description("A report on A4: jumps drawn beside those of the body, every"
                                                + " finding with its source and remedy, table of jumps,"
                                                + " what-if, coverage.")));
    }

    private static MediaType files(DescribedApi api) {
        Schema<?> form = new ObjectSchema();
        form.addProperty(
                Uploads.FILE,
                new ArraySchema()
                        .items(new StringSchema().format("binary"))
                        .minItems(1)
                        .maxItems(OutlineReader.MOST_FILES)
                        .description(
                                "One spec table as CSV or .xlsx, or outlines as DXF: one file, or one per size. The part is"
                                        + " repeated for every file."));
        form.addProperty(Uploads.REQUEST, api.schema(CheckSchema.UPLOAD));
        form.addRequiredItem(Uploads.FILE);
        return new MediaType()
                .schema(api.schema("CheckForm", form))
                .addEncoding(
                        Uploads.REQUEST,
                        new Encoding().contentType(org.springframework.http.MediaType.APPLICATION_JSON_VALUE))
                .addEncoding(
                        Uploads.FILE,
                        new Encoding()
                                .contentType("text/csv, " + ForeignBodies.XLSX
                                        + ", image/vnd.dxf, application/octet-stream"));
    }
}
