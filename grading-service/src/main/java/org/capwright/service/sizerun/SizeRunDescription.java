package org.capwright.service.sizerun;

import io.swagger.v3.oas.models.Operation;
import io.swagger.v3.oas.models.PathItem;
import io.swagger.v3.oas.models.examples.Example;
import io.swagger.v3.oas.models.responses.ApiResponses;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.capwright.service.http.description.Bodies;
import org.capwright.service.http.description.DescribedCall;
import org.capwright.service.http.description.ErrorAnswers;
import org.capwright.service.http.schema.RequestSchema;
import org.springframework.stereotype.Component;

/** Describes {@code POST /v1/size-runs}. */
@Component
final class SizeRunDescription implements DescribedCall {

    private final Bodies bodies;
    private final DraftedAnswers drafted;

    SizeRunDescription(Bodies bodies, DraftedAnswers drafted) {
        this.bodies = bodies;
        this.drafted = drafted;
    }

    @Override
    public List<RequestSchema> requests() {
        return List.of(SizeRunShape.REQUEST);
    }

    @Override
    public List<Class<?>> answers() {
        return List.of(SizeRunAnswer.class);
    }

    @Override
    public void describe(Function<String, PathItem> paths) {
        Operation operation = paths.apply("/v1/size-runs").getPost();
        operation.setDescription(
                "The Accept header picks the form of the answer; JSON without one. The same request gives the same"
                        + " bytes. Bodies are read up to 256 kB.");
        Map<String, Example> examples = new LinkedHashMap<>();
        examples.put(
                "centimetres",
                new Example()
                        .summary("Under-sleeve and pleated overlay, six sizes")
                        .value(bodies.example("example-cm.json")));
        examples.put(
                "inches",
                new Example()
                        .summary("Overlay alone, lengths in inches and fractions")
                        .value(bodies.example("example-in.json")));
        operation.setRequestBody(Bodies.json(SizeRunShape.REQUEST, examples));
        operation.setResponses(new ApiResponses()
                .addApiResponse(
                        "200", drafted.in("The graded run, in the form that Accept asks for.", SizeRunAnswer.class)));
        ErrorAnswers.ofBody(operation);
    }
}
