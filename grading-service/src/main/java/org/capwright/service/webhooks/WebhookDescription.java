package org.capwright.service.webhooks;

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

/** Describes the calls about webhooks. */
@Component
final class WebhookDescription implements DescribedCall {

    private static final String ONE = WebhookController.WEBHOOKS + "/{id}";

    @Override
    public void describe(DescribedApi api) {
        Operation make = api.at(WebhookController.WEBHOOKS).getPost();
        make.setDescription("Events are sent by POST as JSON with type, timestamp and data, signed by the headers"
                + " webhook-id, webhook-timestamp and webhook-signature (Standard Webhooks 1.0.0): v1 and the HMAC-SHA256"
                + " of id, timestamp and body with dots between them. data is the order as GET /v1/orders lists it, or the"
                + " batch; no measurements. A receiver answers 2xx within 15 seconds; else the message is sent again after"
                + " 5 seconds, 5 minutes and so on for three days, or until it answers 410. A message may come twice, with"
                + " the same webhook-id. Redirections are not followed, and nothing is sent into private networks.");
        make.setRequestBody(api.json(
                WebhookSchema.WEBHOOK,
                "For a shop's server",
                Map.of("url", "https://shop.example/capwright", "events", List.of("order.taken", "order.questioned"))));
        Answers.only(make, "201", Answers.json("The webhook.", api.schema(WebhookAnswer.Made.class)));
        ErrorAnswers.ofBody(make);
        ErrorAnswers.of(make, ProblemKind.CONFLICT, ProblemKind.UNAVAILABLE);
        Operation list = api.at(WebhookController.WEBHOOKS).getGet();
        Answers.only(list, "200", Answers.json("The webhooks.", api.schema(WebhookAnswer.Listing.class)));
        ErrorAnswers.of(list, ProblemKind.NOT_ACCEPTABLE, ProblemKind.UNAVAILABLE);
        Operation renew = api.at(ONE + "/secrets").getPost();
        renew.setDescription("During the overlap webhook-signature holds a signature by each, with a space between.");
        renew.setRequestBody(api.json(WebhookSchema.RENEWAL, "A day to change over", Map.of("overlapHours", 24)));
        Answers.only(renew, "201", Answers.json("The new secret.", api.schema(WebhookAnswer.Made.class)));
        ErrorAnswers.ofBody(renew);
        ErrorAnswers.of(renew, ProblemKind.NOT_FOUND, ProblemKind.UNAVAILABLE);
        Operation end = api.at(ONE).getDelete();
        Answers.only(end, "204", new ApiResponse().description("Nothing is sent there any more."));
        ErrorAnswers.of(end, ProblemKind.NOT_FOUND, ProblemKind.UNAVAILABLE);
        Operation log = api.at(ONE + "/deliveries").getGet();
        Answers.only(log, "200", Answers.json("The log.", api.schema(WebhookAnswer.Log.class)));
        ErrorAnswers.of(
                log,
                ProblemKind.BAD_REQUEST,
                ProblemKind.NOT_FOUND,
                ProblemKind.NOT_ACCEPTABLE,
                ProblemKind.UNAVAILABLE);
        Operation trial = api.at(ONE + "/deliveries").getPost();
        trial.setDescription("Its type is webhook.trial.");
        sent(api, trial);
        Operation again = api.at(ONE + "/deliveries/{message}/attempts").getPost();
        again.setDescription("It is the same message with the same webhook-id, signed anew.");
        sent(api, again);
        ErrorAnswers.of(again, ProblemKind.CONFLICT);
    }

    private static void sent(DescribedApi api, Operation call) {
        Answers.only(call, "202", Answers.json("It is on its way.", api.schema(WebhookAnswer.Sent.class)));
        ErrorAnswers.of(call, ProblemKind.NOT_FOUND, ProblemKind.NOT_ACCEPTABLE, ProblemKind.UNAVAILABLE);
    }
}
