package org.capwright.service.orders;

import io.swagger.v3.oas.models.Operation;
import io.swagger.v3.oas.models.media.Content;
import io.swagger.v3.oas.models.media.MediaType;
import io.swagger.v3.oas.models.media.StringSchema;
import io.swagger.v3.oas.models.parameters.RequestBody;
import io.swagger.v3.oas.models.responses.ApiResponse;
import org.capwright.service.http.description.Answers;
import org.capwright.service.http.description.DescribedApi;
import org.capwright.service.http.description.DescribedCall;
import org.capwright.service.http.description.ErrorAnswers;
import org.capwright.service.http.problem.ProblemKind;
import org.springframework.stereotype.Component;

/** Describes {@code POST /v1/order-batches}. A schema of OpenAPI 3.0 speaks of whole bodies, so the lines are texts there, and their schemas stand beside. */
@Component
final class BatchDescription implements DescribedCall {

    @Override
    public void describe(DescribedApi api) {
        api.schema(OrderSchema.BATCH_LINE);
        api.schema(BatchAnswer.class);
        Operation take = api.at("/v1/order-batches").getPost();
        take.setDescription(
                "Lines are read as they come and answered in their order, as soon as nothing more is to be read or"
                        + " work is under way for as many as the service takes at once; whoever sends faster waits. A line"
                        + " that cannot be taken is answered with a problem in its place, and the others are taken all the"
                        + " same. Send the whole batch again after a broken connection, with an idempotencyKey on every"
                        + " line: what was taken is answered as it was. A line has up to 64 kB.");
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
        ErrorAnswers.of(take, ProblemKind.NOT_ACCEPTABLE, ProblemKind.UNSUPPORTED_MEDIA_TYPE, ProblemKind.UNAVAILABLE);
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
