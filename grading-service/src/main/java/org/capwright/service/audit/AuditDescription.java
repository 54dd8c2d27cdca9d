package org.capwright.service.audit;

import io.swagger.v3.oas.models.Operation;
import org.capwright.service.http.description.Answers;
import org.capwright.service.http.description.DescribedApi;
import org.capwright.service.http.description.DescribedCall;
import org.capwright.service.http.description.ErrorAnswers;
import org.capwright.service.http.problem.ProblemKind;
import org.springframework.stereotype.Component;

/** Describes {@code GET /v1/audit}. */
@Component
final class AuditDescription implements DescribedCall {

    @Override
    public void describe(DescribedApi api) {
        Operation list = api.at("/v1/audit").getGet();
        Answers.only(list, "200", Answers.json("The entries of this page.", api.schema(AuditAnswer.class)));
        ErrorAnswers.of(list, ProblemKind.BAD_REQUEST, ProblemKind.NOT_ACCEPTABLE, ProblemKind.UNAVAILABLE);
    }
}
