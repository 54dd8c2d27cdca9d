package org.capwright.service.materials;

import io.swagger.v3.oas.models.Operation;
import io.swagger.v3.oas.models.PathItem;
import io.swagger.v3.oas.models.responses.ApiResponse;
import io.swagger.v3.oas.models.responses.ApiResponses;
import java.util.List;
import java.util.function.Function;
import org.capwright.service.http.description.Bodies;
import org.capwright.service.http.description.DescribedCall;
import org.capwright.service.http.description.ErrorAnswers;
import org.capwright.service.http.schema.RequestSchema;
import org.capwright.service.sizerun.MaterialAnswer;
import org.capwright.service.sizerun.SizeRunShape;
import org.springframework.stereotype.Component;

/** Describes {@code POST /v1/materials}. */
@Component
final class MaterialDescription implements DescribedCall {

    private final Bodies bodies;

    MaterialDescription(Bodies bodies) {
        this.bodies = bodies;
    }

    @Override
    public List<RequestSchema> requests() {
        return List.of(SizeRunShape.REQUEST);
    }

    @Override
    public List<Class<?>> answers() {
        return List.of(MaterialAnswer.class);
    }

    @Override
    public void describe(Function<String, PathItem> paths) {
        Operation operation = paths.apply("/v1/materials").getPost();
        operation.setDescription(
                "Takes the body of a size run that has materials, and lays the pieces on the cloths it names."
                        + " Bodies are read up to 256 kB.");
        operation.setRequestBody(
                Bodies.json(SizeRunShape.REQUEST, "Cloth for two singers", bodies.example("example-materials.json")));
        operation.setResponses(new ApiResponses()
                .addApiResponse(
                        "200",
                        new ApiResponse()
                                .description("What to buy, with a picture of every lay.")
                                .content(Bodies.answer(MaterialAnswer.class))));
        ErrorAnswers.ofBody(operation);
    }
}
