package org.capwright.service.orders;

import io.swagger.v3.oas.models.Operation;
import io.swagger.v3.oas.models.headers.Header;
import io.swagger.v3.oas.models.media.Content;
import io.swagger.v3.oas.models.media.MediaType;
import io.swagger.v3.oas.models.media.Schema;
import io.swagger.v3.oas.models.media.StringSchema;
import io.swagger.v3.oas.models.parameters.RequestBody;
import io.swagger.v3.oas.models.responses.ApiResponse;
import java.util.Map;
import org.capwright.json.order.OrderSchema;
import org.capwright.service.http.description.Answers;
import org.capwright.service.http.description.DescribedApi;
import org.capwright.service.http.description.DescribedCall;
import org.capwright.service.http.description.ErrorAnswers;
import org.capwright.service.http.problem.ProblemKind;
import org.springframework.stereotype.Component;

/** Describes {@code POST /v1/order-batches}. A schema of OpenAPI 3.0 speaks of whole bodies, so the lines are texts there, and their schemas stand beside. */
@Component
final class BatchDescription implements DescribedCall {

    private static final String JOB = BatchJobController.BATCHES + "/{id}";

    @Override
    public void describe(DescribedApi api) {
        api.schema(OrderSchema.BATCH_LINE);
        api.schema(BatchAnswer.class);
        Schema<?> job = api.schema(BatchJobAnswer.class);
        take(api.at(BatchJobController.BATCHES).getPost(), job);
        list(api);
        show(api.at(JOB).getGet(), job);
        listen(api.at(JOB + "/events").getGet());
        results(api.at(JOB + "/results").getGet());
        cancel(api, job);
    }

    private static void list(DescribedApi api) {
        Operation list = api.at(BatchJobController.BATCHES).getGet();
        Answers.only(list, "200", Answers.json("The jobs of this page.", api.schema(BatchJobAnswer.Listing.class)));
        ErrorAnswers.of(list, ProblemKind.BAD_REQUEST, ProblemKind.NOT_ACCEPTABLE, ProblemKind.UNAVAILABLE);
    }

    private static void show(Operation show, Schema<?> job) {
        Answers.only(show, "200", Answers.json("The job.", job));
        ErrorAnswers.of(show, ProblemKind.NOT_FOUND, ProblemKind.NOT_ACCEPTABLE, ProblemKind.UNAVAILABLE);
    }

    private static void listen(Operation listen) {
        listen.setDescription(
                "Server-sent events: progress at once and whenever more is answered, then done or cancelled, and the"
                        + " end. The data of each is the job as GET /v1/order-batches/{id} answers it.");
        Answers.only(listen, "200", Answers.events("Events, their data as the schema BatchJob says."));
        ErrorAnswers.of(listen, ProblemKind.NOT_FOUND, ProblemKind.NOT_ACCEPTABLE, ProblemKind.UNAVAILABLE);
    }

    private static void results(Operation results) {
        results.setDescription(
                "In the order of the lines. While the job runs, lines that are not answered yet are left out. They can"
                        + " be fetched for as long as the setting capwright.keep-batches says.");
        Answers.only(
                results,
                "200",
                new ApiResponse()
                        .description("One line for each order that is answered.")
                        .content(lines("BatchAnswer", """
                            {"line":1,"status":201,"order":"5b1f0a52-6a0e-4e39-9a55-0f3b1e3a7c11","state":"taken"}
                            """)));
        ErrorAnswers.of(results, ProblemKind.NOT_FOUND, ProblemKind.NOT_ACCEPTABLE, ProblemKind.UNAVAILABLE);
    }

    private static void cancel(DescribedApi api, Schema<?> job) {
        Operation cancel = api.at(JOB + "/states").getPost();
        cancel.setDescription("What was taken stays. A batch that is done cannot be cancelled any more.");
        cancel.setRequestBody(api.json(StateSchema.BATCH_CHANGE, "Called off", Map.of("state", "cancelled")));
        Answers.only(cancel, "200", Answers.json("The job as it is now.", job));
        ErrorAnswers.ofBody(cancel);
        ErrorAnswers.of(cancel, ProblemKind.NOT_FOUND, ProblemKind.CONFLICT, ProblemKind.UNAVAILABLE);
    }

    private static void take(Operation take, Schema<?> job) {
        take.setDescription(
                "Lines are read as they come and answered in their order, as soon as nothing more is to be read or"
                        + " work is under way for as many as the service takes at once; whoever sends faster waits. A line"
                        + " that cannot be taken is answered with a problem in its place, and the others are taken all the"
                        + " same. Send the whole batch again after a broken connection, with an idempotencyKey on every"
                        + " line: what was taken is answered as it was. A line has up to 64 kB. With Prefer: respond-async"
                        + " (RFC 7240) the lines are put down and taken as a job, by whichever copy of the service has a"
                        + " hand free; it goes on after a crash, and no order is lost or taken twice.");
        take.setRequestBody(new RequestBody().required(true).content(lines("BatchOrder", """
            {"style":"choir-gown","size":"40","idempotencyKey":"shop-1207"}
            {"style":"choir-gown","size":"42","idempotencyKey":"shop-1208"}
            """)));
        Answers.only(
                take,
                "200",
                new ApiResponse().description("One line for each order.").content(lines("BatchAnswer", """
                    {"line":1,"status":201,"order":"5b1f0a52-6a0e-4e39-9a55-0f3b1e3a7c11","state":"taken"}
                    {"line":2,"status":201,"order":"0d9f5c1e-58f2-4b68-8f0e-7be0a8c8a1d4","state":"taken"}
                    """)));
        ApiResponse begun = Answers.json("The job that takes the orders.", job);
        begun.setHeaders(Map.of(
                "Location",
                new Header().description("Where the job is.").schema(new StringSchema()),
                "Preference-Applied",
                new Header().description("respond-async").schema(new StringSchema())));
        take.getResponses().addApiResponse("202", begun);
        ErrorAnswers.of(
                take,
                ProblemKind.BAD_REQUEST,
                ProblemKind.NOT_ACCEPTABLE,
                ProblemKind.UNSUPPORTED_MEDIA_TYPE,
                ProblemKind.INVALID_REQUEST,
                ProblemKind.UNAVAILABLE);
    }

    private static Content lines(String schema, String example) {
        return new Content()
                .addMediaType(
                        BatchController.LINES.toString(),
                        new MediaType()
                                .schema(new StringSchema()
                                        .description("JSON by line, each as the schema " + schema + " says."))
                                .example(example));
    }
}
