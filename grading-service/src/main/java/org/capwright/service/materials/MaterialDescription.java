package org.capwright.service.materials;

import io.swagger.v3.oas.models.Operation;
import io.swagger.v3.oas.models.media.Content;
import io.swagger.v3.oas.models.media.MediaType;
import io.swagger.v3.oas.models.parameters.RequestBody;
import io.swagger.v3.oas.models.responses.ApiResponse;
import io.swagger.v3.oas.models.responses.ApiResponses;
import org.capwright.json.style.SizeRunSchema;
import org.capwright.service.http.description.Answers;
import org.capwright.service.http.description.DescribedApi;
import org.capwright.service.http.description.DescribedCall;
import org.capwright.service.http.description.ErrorAnswers;
import org.capwright.service.sizerun.MaterialAnswer;
import org.springframework.stereotype.Component;

/** Describes {@code POST /v1/materials} and the events of it. */
@Component
final class MaterialDescription implements DescribedCall {

    @Override
    public void describe(DescribedApi api) {
        Operation operation = api.at("/v1/materials").getPost();
        operation.setDescription(
                "Takes the body of a size run that has materials, and lays the pieces on the cloths it names."
                        + " Bodies are read up to 256 kB.");
        operation.setRequestBody(
                api.json(SizeRunSchema.REQUEST, "Cloth for two singers", api.example("example-materials.json")));
        operation.setResponses(new ApiResponses()
                .addApiResponse(
                        "200",
                        new ApiResponse()
                                .description("What to buy, with a picture of every lay.")
                                .content(new Content()
                                        .addMediaType(
                                                "application/json",
                                                new MediaType().schema(api.schema(MaterialAnswer.class))))));
        ErrorAnswers.ofBody(operation);
        listen(api, operation.getRequestBody());
    }

    private static void listen(DescribedApi api, RequestBody body) {
        Operation listen = api.at("/v1/materials/events").getPost();
        listen.setDescription(
                "Takes the same body. Server-sent events: progress with the share that is done, 0 to 1, whenever that"
                        + " is a percent more; then done, with the answer of POST /v1/materials. Who closes the"
                        + " connection ends the search.");
        listen.setRequestBody(body);
        Answers.only(listen, "200", Answers.events("Events; the data of the last as the schema Materials says."));
        ErrorAnswers.ofBody(listen);
    }
}
