package org.capwright.service.rules;

import io.swagger.v3.oas.models.Operation;
import io.swagger.v3.oas.models.PathItem;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.capwright.service.http.description.Bodies;
import org.capwright.service.http.description.DescribedCall;
import org.capwright.service.http.description.ErrorAnswers;
import org.capwright.service.http.schema.RequestSchema;
import org.springframework.stereotype.Component;

/** Describes {@code POST /v1/grade-rules}. */
@Component
final class RulesDescription implements DescribedCall {

    private final Bodies bodies;

    RulesDescription(Bodies bodies) {
        this.bodies = bodies;
    }

    @Override
    public List<RequestSchema> requests() {
        return List.of(RulesShape.REQUEST);
    }

    @Override
    public List<Class<?>> answers() {
        return List.of(RulesAnswer.class);
    }

    @Override
    public void describe(Function<String, PathItem> paths) {
        Operation operation = paths.apply("/v1/grade-rules").getPost();
        operation.setDescription(
                "For a style without grade rules: bicep, armhole, elbow, wrist and length follow the growth of bodies in a size table"
                        + " and an ease policy, the cap height is fitted so that the cap ease of the base size is kept, rise,"
                        + " gaps and the front half grow in proportion. The growth from the base size is rounded as a whole, so"
                        + " that rounding errors do not add up from size to size. Bodies are read up to 256 kB.");
        operation.setRequestBody(Bodies.json(
                RulesShape.REQUEST,
                "Constant ease, half a centimetre of length per size, whole millimetres",
                Map.of(
                        "sizeRun",
                        bodies.example("example-cm.json"),
                        "sizeTable",
                        "women-en-13402-3-bust",
                        "ease",
                        Map.of("policy", "constant"),
                        "length",
                        Map.of("policy", "stated", "perSize", 0.5),
                        "grid",
                        "1 mm")));
        ErrorAnswers.ofBody(operation);
    }
}
