package org.capwright.service.orders;

import io.swagger.v3.oas.models.Operation;
import io.swagger.v3.oas.models.headers.Header;
import io.swagger.v3.oas.models.media.Schema;
import io.swagger.v3.oas.models.media.StringSchema;
import io.swagger.v3.oas.models.parameters.Parameter;
import io.swagger.v3.oas.models.responses.ApiResponse;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.capwright.json.order.OrderSchema;
import org.capwright.service.http.description.Answers;
import org.capwright.service.http.description.DescribedApi;
import org.capwright.service.http.description.DescribedCall;
import org.capwright.service.http.description.ErrorAnswers;
import org.capwright.service.http.problem.ProblemKind;
import org.capwright.service.sizerun.DraftedAnswers;
import org.springframework.stereotype.Component;

/** Describes the calls about orders. */
@Component
final class OrderDescription implements DescribedCall {

    private static final String ORDER = "/v1/orders/{id}";

    private final DraftedAnswers drafted;

    OrderDescription(DraftedAnswers drafted) {
        this.drafted = drafted;
    }

    @Override
    public void describe(DescribedApi api) {
        Schema<?> details = api.schema(OrderAnswer.class);
        Map<?, ?> example = (Map<?, ?>) api.example("answer-order.json");
        take(api, details);
        before(api);
        list(api, example);
        look(api.at(ORDER).getGet(), "The order.", details);
        api.at(ORDER).getGet().getResponses().addApiResponse("200", Answers.json("The order.", details, example));
        change(api, details);
        measurements(api, details);
        files(api.at(ORDER + "/files/{format}").getGet());
    }

    private static void take(DescribedApi api, Schema<?> details) {
        Operation take = api.at("/v1/styles/{id}/orders").getPost();
        take.setDescription(
                "The order pins a revision of the style, and its files are drawn and kept at once: what is fetched"
                        + " later is the same byte for byte, whatever the service has become. Measurements that hardly"
                        + " anybody has hold the order as questioned until it is confirmed, or until they are named in"
                        + " confirmed. With Idempotency-Key the same order sent again is answered as the first time;"
                        + " another body with that key is refused with 422, and one that is still being taken with 409."
                        + " The measurements are kept until they are erased. Bodies are read up to 256 kB.");
        take.setRequestBody(
                api.json(OrderSchema.ORDER, "A choir gown for one singer", api.example("example-order.json")));
        ApiResponse taken =
                Answers.json("The order is taken, or questioned.", details, api.example("answer-order.json"));
        taken.setHeaders(Map.of(
                "Location", new Header().description("Where the order is.").schema(new StringSchema())));
        Answers.only(take, "201", taken);
        ErrorAnswers.ofBody(take);
        ErrorAnswers.of(take, ProblemKind.NOT_FOUND, ProblemKind.CONFLICT, ProblemKind.UNAVAILABLE);
    }

    private static void before(DescribedApi api) {
        Operation asked = api.at("/v1/styles/{id}/order-form").getGet();
        asked.setDescription("The form for shops asks this; so may any form of a shop's own.");
        look(asked, "What to measure.", api.schema(OrderFormAnswer.class));
        ErrorAnswers.of(asked, ProblemKind.CONFLICT);
        Operation tried = api.at("/v1/styles/{id}/order-previews").getPost();
        tried.setDescription(
                "The same body as an order, judged as an order is, for a form that says what is improbable or missing"
                        + " while it is filled in. Nothing is kept or logged. Bodies are read up to 256 kB.");
        tried.setRequestBody(
                api.json(OrderSchema.ORDER, "A choir gown for one singer", api.example("example-order.json")));
        Answers.only(tried, "200", Answers.json("What the order would be.", api.schema(OrderPreview.class)));
        ErrorAnswers.ofBody(tried);
        ErrorAnswers.of(tried, ProblemKind.NOT_FOUND, ProblemKind.CONFLICT, ProblemKind.UNAVAILABLE);
    }

    private static void list(DescribedApi api, Map<?, ?> example) {
        Operation list = api.at("/v1/orders").getGet();
        for (Parameter parameter : list.getParameters()) {
            if (parameter.getName().equals("state")) {
                StringSchema word = new StringSchema();
                word.setEnum(new ArrayList<>(
                        Stream.of(OrderState.values()).map(OrderState::word).toList()));
                parameter.setSchema(word);
            }
        }
        Answers.only(
                list,
                "200",
                Answers.json(
                        "The orders of this page.",
                        api.schema(OrderAnswer.Listing.class),
                        Map.of("orders", List.of(example.get("order")))));
        ErrorAnswers.of(list, ProblemKind.BAD_REQUEST, ProblemKind.NOT_ACCEPTABLE, ProblemKind.UNAVAILABLE);
    }

    private static void look(Operation look, String meaning, Schema<?> schema) {
        Answers.only(look, "200", Answers.json(meaning, schema));
        ErrorAnswers.of(look, ProblemKind.NOT_FOUND, ProblemKind.NOT_ACCEPTABLE, ProblemKind.UNAVAILABLE);
    }

    private static void change(DescribedApi api, Schema<?> details) {
        Operation change = api.at(ORDER + "/states").getPost();
        change.setDescription(
                "taken becomes confirmed, cut or cancelled; questioned becomes confirmed or cancelled; confirmed"
                        + " becomes cut or cancelled. Anything else is a conflict. Who and when are noted. Said twice it"
                        + " is done once.");
        change.setRequestBody(api.json(StateSchema.CHANGE, "Measured again", Map.of("state", "confirmed")));
        Answers.only(change, "200", Answers.json("The order as it is now.", details));
        ErrorAnswers.ofBody(change);
        ErrorAnswers.of(change, ProblemKind.NOT_FOUND, ProblemKind.CONFLICT, ProblemKind.UNAVAILABLE);
    }

    private static void measurements(DescribedApi api, Schema<?> details) {
        Operation show = api.at(ORDER + "/measurements").getGet();
        show.setDescription(
                "For a remake with what it takes from the first order. Looking is noted in the audit trail.");
        look(show, "The body that the order was taken by.", api.schema(OrderSchema.ORDER));
        Operation erase = api.at(ORDER + "/measurements").getDelete();
        erase.setDescription(
                "Measurements, questions and files are gone for good, unless another order has the very same file."
                        + " When, by whom and on which style it was taken and what became of it stays. An order that was"
                        + " not cut yet is cancelled.");
        look(erase, "The order as it is now.", details);
    }

    private void files(Operation file) {
        file.setDescription(
                "The files are svg, dxf, csv, pdf and plt as POST /v1/size-runs draws them, json with everything in"
                        + " figures, and zip with all of them, not compressed. A questioned or cancelled order has none to"
                        + " give.");
        ApiResponse answer = drafted.file(file, "The file as it was drawn.");
        answer.addHeaderObject(
                "ETag", new Header().description("SHA-256 of the bytes.").schema(new StringSchema()));
        answer.addHeaderObject(
                "Repr-Digest",
                new Header().description("SHA-256 of the bytes, RFC 9530.").schema(new StringSchema()));
        Answers.only(file, "200", answer);
        file.getResponses()
                .addApiResponse("304", new ApiResponse().description("The caller has it: the entity tag is the same."));
        ErrorAnswers.of(file, ProblemKind.NOT_FOUND, ProblemKind.CONFLICT, ProblemKind.UNAVAILABLE);
    }
}
