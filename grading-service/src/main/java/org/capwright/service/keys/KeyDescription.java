package org.capwright.service.keys;

import io.swagger.v3.oas.models.Operation;
import io.swagger.v3.oas.models.responses.ApiResponse;
import java.util.List;
import java.util.Map;
import org.capwright.service.http.description.Answers;
import org.capwright.service.http.description.DescribedApi;
import org.capwright.service.http.description.DescribedCall;
import org.capwright.service.http.description.ErrorAnswers;
import org.capwright.service.http.problem.ProblemKind;
import org.springframework.stereotype.Component;

/** Describes the calls about keys. */
@Component
final class KeyDescription implements DescribedCall {

    private static final String KEYS = "/v1/keys";

    @Override
    public void describe(DescribedApi api) {
        Operation make = api.at(KEYS).getPost();
        make.setDescription("The operator makes the first key of a tenant, with the secret of the setting"
                + " capwright.operator-key; whoever has a key with the scope admin makes others of the same tenant. The"
                + " secret is answered this once. A key with origins is publishable: it may stand in the open in the pages"
                + " of these origins, which take orders with it and do nothing else; x-publishable marks the calls that it"
                + " is good for.");
        make.setRequestBody(api.json(
                KeySchema.KEY,
                "For the front desk",
                Map.of("name", "front desk", "scopes", List.of("read", "order"), "days", 365)));
        Answers.only(make, "201", Answers.json("The key.", api.schema(KeyAnswer.Made.class)));
        ErrorAnswers.ofBody(make);
        ErrorAnswers.of(make, ProblemKind.CONFLICT, ProblemKind.UNAVAILABLE);
        Operation list = api.at(KEYS).getGet();
        Answers.only(list, "200", Answers.json("The keys.", api.schema(KeyAnswer.Listing.class)));
        ErrorAnswers.of(
                list,
                ProblemKind.BAD_REQUEST,
                ProblemKind.NOT_ACCEPTABLE,
                ProblemKind.CONFLICT,
                ProblemKind.UNAVAILABLE);
        Operation rotate = api.at(KEYS + "/{id}/rotations").getPost();
        rotate.setDescription(
                "The new key has the name, the scopes and the life of the old one, which expires after the overlap.");
        rotate.setRequestBody(api.json(KeySchema.ROTATION, "A day to change over", Map.of("overlapHours", 24)));
        Answers.only(rotate, "201", Answers.json("The new key.", api.schema(KeyAnswer.Made.class)));
        ErrorAnswers.ofBody(rotate);
        ErrorAnswers.of(rotate, ProblemKind.NOT_FOUND, ProblemKind.CONFLICT, ProblemKind.UNAVAILABLE);
        Operation end = api.at(KEYS + "/{id}").getDelete();
        Answers.only(end, "204", new ApiResponse().description("The key is good for nothing any more."));
        ErrorAnswers.of(
                end, ProblemKind.BAD_REQUEST, ProblemKind.NOT_FOUND, ProblemKind.CONFLICT, ProblemKind.UNAVAILABLE);
    }
}
