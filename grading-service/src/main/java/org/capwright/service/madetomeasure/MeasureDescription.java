package org.capwright.service.madetomeasure;

import io.swagger.v3.oas.models.Operation;
import io.swagger.v3.oas.models.headers.Header;
import io.swagger.v3.oas.models.media.StringSchema;
import io.swagger.v3.oas.models.responses.ApiResponse;
import org.capwright.json.madetomeasure.MeasureSchema;
import org.capwright.service.http.description.Answers;
import org.capwright.service.http.description.DescribedApi;
import org.capwright.service.http.description.DescribedCall;
import org.capwright.service.http.description.ErrorAnswers;
import org.capwright.service.http.problem.ProblemKind;
import org.capwright.service.sizerun.DraftedAnswers;
import org.springframework.stereotype.Component;

/** Describes {@code POST /v1/made-to-measure}. */
@Component
final class MeasureDescription implements DescribedCall {

    private final DraftedAnswers drafted;

    MeasureDescription(DraftedAnswers drafted) {
        this.drafted = drafted;
    }

    @Override
    public void describe(DescribedApi api) {
        Operation operation = api.at("/v1/made-to-measure").getPost();
        operation.setDescription(
                "The call that a made-to-order shop makes for every order. The sleeve is the wearer's measurements"
                        + " plus ease, and the cap is fitted to the armhole. Measurements that do not go together are"
                        + " questioned until they are named in confirmed: those to take again are named, each with the"
                        + " range that the others let expect. Missing ones are estimated and marked, see estimates. A"
                        + " sleeve that the arm hardly passes, or not at all, is drafted and said to be so, see the"
                        + " findings of the run. Nothing about the wearer is stored or logged. The Accept header picks the"
                        + " form of the answer; JSON without one. Bodies are read up to 256 kB.");
        operation.setRequestBody(api.json(
                MeasureSchema.REQUEST,
                "A choir gown for one singer; wrist and armscye are estimated",
                api.example("example-made-to-measure.json")));
        Answers.only(
                operation,
                "200",
                headed(drafted.in(api, "The sleeve set, in the form that Accept asks for.", MeasureAnswer.class)));
        ErrorAnswers.ofBody(operation);
        Operation file = api.at("/v1/made-to-measure/files/{format}").getPost();
        file.setDescription(
                "What POST /v1/made-to-measure answers in the form that the path names, whatever Accept says.");
        file.setRequestBody(operation.getRequestBody());
        Answers.only(file, "200", headed(drafted.file(file, "The sleeve set as a file.")));
        ErrorAnswers.ofBody(file);
        ErrorAnswers.of(file, ProblemKind.NOT_FOUND);
    }

    private static ApiResponse headed(ApiResponse answer) {
        return answer.addHeaderObject(
                        "Capwright-Estimated",
                        new Header()
                                .description("Names of the measurements that were estimated, where any were; JSON has"
                                        + " the estimates with their intervals.")
                                .schema(new StringSchema()))
                .addHeaderObject(
                        "Capwright-Findings",
                        new Header()
                                .description("Codes of the findings of caution or stop, where there are any, such as a"
                                        + " sleeve narrower than the arm; JSON has them whole.")
                                .schema(new StringSchema()));
    }
}
