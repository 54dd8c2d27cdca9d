package org.capwright.service.rules;

import io.swagger.v3.oas.models.Operation;
import java.util.Map;
import org.capwright.service.http.description.DescribedApi;
import org.capwright.service.http.description.DescribedCall;
import org.capwright.service.http.description.ErrorAnswers;
import org.springframework.stereotype.Component;

/** Describes {@code POST /v1/grade-rules}. */
@Component
final class RulesDescription implements DescribedCall {

    @Override
    public void describe(DescribedApi api) {
        api.schema(RulesAnswer.class);
        Operation operation = api.at("/v1/grade-rules").getPost();
        operation.setDescription(
                "For a style without grade rules: bicep, armhole, elbow, wrist and length follow the growth of bodies"
                        + " in a size table and an ease policy, the cap height is fitted so that the cap ease of the base"
                        + " size is kept, rise, gaps and the front half grow in proportion. The growth from the base size"
                        + " is rounded as a whole, so that rounding errors do not add up from size to size. Bodies are"
                        + " read up to 256 kB.");
        operation.setRequestBody(api.json(
                RulesSchema.REQUEST,
                "Constant ease, half a centimetre of length per size, whole millimetres",
                Map.of(
                        "sizeRun",
                        api.example("example-cm.json"),
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
