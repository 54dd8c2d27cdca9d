package org.capwright.service.materials;

import io.swagger.v3.oas.models.Operation;
import io.swagger.v3.oas.models.media.Content;
import io.swagger.v3.oas.models.media.MediaType;
import io.swagger.v3.oas.models.responses.ApiResponse;
import io.swagger.v3.oas.models.responses.ApiResponses;
import org.capwright.json.style.SizeRunSchema;
import org.capwright.service.http.description.DescribedApi;
import org.capwright.service.http.description.DescribedCall;
import org.capwright.service.http.description.ErrorAnswers;
import org.capwright.service.sizerun.MaterialAnswer;
import org.springframework.stereotype.Component;

/** Describes {@code POST /v1/materials}. */
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
    }
}
