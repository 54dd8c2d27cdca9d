package org.capwright.service.sizerun;

import io.swagger.v3.oas.models.Operation;
import io.swagger.v3.oas.models.examples.Example;
import io.swagger.v3.oas.models.responses.ApiResponses;
import java.util.LinkedHashMap;
import java.util.Map;
import org.capwright.json.style.SizeRunSchema;
import org.capwright.service.http.description.Answers;
import org.capwright.service.http.description.DescribedApi;
import org.capwright.service.http.description.DescribedCall;
import org.capwright.service.http.description.ErrorAnswers;
import org.capwright.service.http.problem.ProblemKind;
import org.springframework.stereotype.Component;

/** Describes {@code POST /v1/size-runs}. */
@Component
final class SizeRunDescription implements DescribedCall {

    private final DraftedAnswers drafted;

    SizeRunDescription(DraftedAnswers drafted) {
        this.drafted = drafted;
    }

    @Override
    public void describe(DescribedApi api) {
        Operation operation = api.at("/v1/size-runs").getPost();
        operation.setDescription(
                "The Accept header picks the form of the answer; JSON without one. The same request gives the same"
                        + " bytes. Bodies are read up to 256 kB.");
        Map<String, Example> examples = new LinkedHashMap<>();
        examples.put(
                "centimetres",
                new Example()
                        .summary("Under-sleeve and pleated overlay, six sizes")
                        .value(api.example("example-cm.json")));
        examples.put(
                "inches",
                new Example()
                        .summary("Overlay alone, lengths in inches and fractions")
                        .value(api.example("example-in.json")));
        operation.setRequestBody(api.json(SizeRunSchema.REQUEST, examples));
        operation.setResponses(new ApiResponses()
                .addApiResponse(
                        "200",
                        drafted.in(api, "The graded run, in the form that Accept asks for.", SizeRunAnswer.class)));
        ErrorAnswers.ofBody(operation);
        Operation file = api.at("/v1/size-runs/files/{format}").getPost();
        file.setDescription("What POST /v1/size-runs answers in the form that the path names, whatever Accept says.");
        file.setRequestBody(operation.getRequestBody());
        Answers.only(file, "200", drafted.file(file, "The graded run as a file."));
        ErrorAnswers.ofBody(file);
        ErrorAnswers.of(file, ProblemKind.NOT_FOUND);
    }
}
