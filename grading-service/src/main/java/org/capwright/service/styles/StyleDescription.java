package org.capwright.service.styles;

import io.swagger.v3.oas.models.Operation;
import io.swagger.v3.oas.models.headers.Header;
import io.swagger.v3.oas.models.media.Content;
import io.swagger.v3.oas.models.media.MediaType;
import io.swagger.v3.oas.models.media.Schema;
import io.swagger.v3.oas.models.media.StringSchema;
import io.swagger.v3.oas.models.responses.ApiResponse;
import java.util.List;
import java.util.Map;
import org.capwright.service.http.description.Answers;
import org.capwright.service.http.description.DescribedApi;
import org.capwright.service.http.description.DescribedCall;
import org.capwright.service.http.description.ErrorAnswers;
import org.capwright.service.http.problem.ProblemKind;
import org.capwright.service.sizerun.DraftedAnswers;
import org.capwright.service.sizerun.SizeRunAnswer;
import org.springframework.stereotype.Component;

/** Describes the calls about styles. */
@Component
final class StyleDescription implements DescribedCall {

    private static final String JSON = "application/json";
    private static final String STYLES = "/v1/styles";
    private static final String STYLE = "/v1/styles/{id}";
    private static final String COLLECTION = "/v1/style-collection";

    private final DraftedAnswers drafted;

    StyleDescription(DraftedAnswers drafted) {
        this.drafted = drafted;
    }

    @Override
    public void describe(DescribedApi api) {
        list(api);
        put(api);
        show(api);
        compare(api);
        draft(api);
        collection(api);
    }

    private static void list(DescribedApi api) {
        Operation list = api.at(STYLES).getGet();
        Answers.only(
                list,
                "200",
                Answers.json(
                        "The styles of this page.",
                        api.schema(StyleAnswer.Listing.class),
                        Map.of("styles", List.of(api.example("answer-style.json")))));
        ErrorAnswers.of(list, ProblemKind.BAD_REQUEST, ProblemKind.NOT_ACCEPTABLE, ProblemKind.UNAVAILABLE);
        Operation revisions = api.at(STYLE + "/revisions").getGet();
        Answers.only(
                revisions, "200", Answers.json("The revisions of this page.", api.schema(StyleAnswer.Revisions.class)));
        ErrorAnswers.of(
                revisions,
                ProblemKind.BAD_REQUEST,
                ProblemKind.NOT_FOUND,
                ProblemKind.NOT_ACCEPTABLE,
                ProblemKind.UNAVAILABLE);
    }

    private static void put(DescribedApi api) {
        Object example = api.example("answer-style.json");
        Operation put = api.at(STYLE).getPut();
        put.setDescription(
                "The body is that of POST /v1/size-runs, and may have the ease of POST /v1/made-to-measure beside it."
                        + " Every size is drafted before it is kept, so what is kept can be cut. A changed body is the"
                        + " next revision; the same body makes none. If-Match must name the revision that is changed, so"
                        + " that nobody's change is lost. A style in the archive comes back. Bodies are read up to 256"
                        + " kB.");
        put.setRequestBody(api.json(StyleSchema.STYLE, "A choir gown in six sizes", api.example("example-cm.json")));
        put.getParameters().stream()
                .filter(parameter -> parameter.getName().equals("id"))
                .forEach(parameter -> parameter.setSchema(new StringSchema().pattern(StyleId.PATTERN)));
        Schema<?> entry = api.schema(StyleAnswer.class);
        Answers.only(put, "201", tagged(Answers.json("The first revision is kept.", entry, example)));
        put.getResponses()
                .addApiResponse(
                        "200",
                        tagged(Answers.json("The next revision is kept, or nothing was changed.", entry, example)));
        ErrorAnswers.ofBody(put);
        ErrorAnswers.of(
                put, ProblemKind.PRECONDITION_FAILED, ProblemKind.PRECONDITION_REQUIRED, ProblemKind.UNAVAILABLE);
        Operation delete = api.at(STYLE).getDelete();
        delete.setDescription("A style that orders pin goes into the archive: it is listed no more and takes no more"
                + " orders, and its files can be had for ever. Any other is gone with its revisions.");
        Answers.only(delete, "200", Answers.json("Orders pin the style; it is archived.", entry));
        delete.getResponses().addApiResponse("204", new ApiResponse().description("The style is deleted."));
        ErrorAnswers.of(
                delete,
                ProblemKind.NOT_FOUND,
                ProblemKind.NOT_ACCEPTABLE,
                ProblemKind.PRECONDITION_FAILED,
                ProblemKind.UNAVAILABLE);
    }

    private static void show(DescribedApi api) {
        for (Operation show : new Operation[] {
            api.at(STYLE).getGet(), api.at(STYLE + "/revisions/{revision}").getGet()
        }) {
            Answers.only(
                    show,
                    "200",
                    tagged(Answers.json(
                            "The body as it was put.", api.schema(StyleSchema.STYLE), api.example("example-cm.json"))));
            show.getResponses()
                    .addApiResponse(
                            "304", new ApiResponse().description("The caller has it: the entity tag is the same."));
            ErrorAnswers.of(
                    show,
                    ProblemKind.BAD_REQUEST,
                    ProblemKind.NOT_FOUND,
                    ProblemKind.NOT_ACCEPTABLE,
                    ProblemKind.UNAVAILABLE);
        }
    }

    private static void compare(DescribedApi api) {
        Operation changes = api.at(STYLE + "/changes").getGet();
        changes.setDescription(
                "Which fields differ, and, as both revisions are drafted, what that does to every point of"
                        + " measure in every size.");
        Answers.only(changes, "200", Answers.json("What differs.", api.schema(StyleChanges.class)));
        ErrorAnswers.of(
                changes,
                ProblemKind.BAD_REQUEST,
                ProblemKind.NOT_FOUND,
                ProblemKind.NOT_ACCEPTABLE,
                ProblemKind.INVALID_REQUEST,
                ProblemKind.UNAVAILABLE);
    }

    private void draft(DescribedApi api) {
        Operation run = api.at(STYLE + "/size-runs").getPost();
        run.setDescription(
                "What POST /v1/size-runs answers to the body of the style. The Accept header picks the form; JSON"
                        + " without one. No body is read.");
        Answers.only(
                run, "200", drafted.in(api, "The graded run, in the form that Accept asks for.", SizeRunAnswer.class));
        ErrorAnswers.of(
                run,
                ProblemKind.BAD_REQUEST,
                ProblemKind.NOT_FOUND,
                ProblemKind.NOT_ACCEPTABLE,
                ProblemKind.INVALID_REQUEST,
                ProblemKind.UNAVAILABLE);
        Operation file = api.at(STYLE + "/size-runs/files/{format}").getPost();
        file.setDescription(
                "What POST /v1/styles/{id}/size-runs answers in the form that the path names, whatever Accept"
                        + " says. No body is read.");
        Answers.only(file, "200", drafted.file(file, "The graded run as a file."));
        ErrorAnswers.of(
                file,
                ProblemKind.BAD_REQUEST,
                ProblemKind.NOT_FOUND,
                ProblemKind.INVALID_REQUEST,
                ProblemKind.UNAVAILABLE);
    }

    private static void collection(DescribedApi api) {
        Schema<?> document = api.schema(StyleCollection.class);
        api.same(StyleCollection.KeptRevision.class, "style", StyleSchema.STYLE);
        Operation export = api.at(COLLECTION).getGet();
        Answers.only(export, "200", Answers.json("Every style, those in the archive too.", document));
        ErrorAnswers.of(export, ProblemKind.NOT_ACCEPTABLE, ProblemKind.UNAVAILABLE);
        Operation load = api.at(COLLECTION).getPost();
        load.setDescription(
                "Takes what GET answers. Styles that are here with the same revisions are left alone, or carried on;"
                        + " one that is here with others is a conflict, and then nothing is taken. Bodies are read up to 8"
                        + " MB.");
        load.setRequestBody(new io.swagger.v3.oas.models.parameters.RequestBody()
                .required(true)
                .content(new Content().addMediaType(JSON, new MediaType().schema(document))));
        Answers.only(load, "200", Answers.json("What was taken.", api.schema(StyleAnswer.Imported.class)));
        ErrorAnswers.ofBody(load);
        ErrorAnswers.of(load, ProblemKind.CONFLICT, ProblemKind.UNAVAILABLE);
    }

    private static ApiResponse tagged(ApiResponse answer) {
        answer.setHeaders(Map.of(
                "ETag",
                new Header()
                        .description("Number and fingerprint of the revision, for If-Match and If-None-Match.")
                        .schema(new StringSchema())));
        return answer;
    }
}
