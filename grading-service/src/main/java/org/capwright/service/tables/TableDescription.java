package org.capwright.service.tables;

import io.swagger.v3.oas.models.Operation;
import io.swagger.v3.oas.models.responses.ApiResponse;
import java.util.List;
import org.capwright.json.tables.TableSchema;
import org.capwright.service.http.description.DescribedApi;
import org.capwright.service.http.description.DescribedCall;
import org.capwright.service.http.description.ErrorAnswers;
import org.capwright.service.http.problem.ProblemKind;
import org.springframework.stereotype.Component;

/** Describes the calls about size tables. */
@Component
final class TableDescription implements DescribedCall {

    @Override
    public void describe(DescribedApi api) {
        api.schema(SizeTableAnswer.Listing.class);
        api.schema(SizeTableAnswer.class);
        api.schema(SizeTableAnswer.Figures.class);
        Operation operation = api.at("/v1/size-tables").getPost();
        operation.setDescription(
                "Checks a table of your own (units, plausible ranges, growth that must be monotone, dimensions that"
                        + " must exceed one another) and answers it as GET does a published one, or names everything that"
                        + " is wrong with it. Nothing is kept: put the same object into the field sizeTable of a request"
                        + " wherever an id is taken. Bodies are read up to 256 kB.");
        operation.setRequestBody(
                api.json(TableSchema.TABLE, "Six sizes of a workshop", api.example("example-size-table.json")));
        ErrorAnswers.ofBody(operation);
        operation
                .getResponses()
                .addApiResponse(
                        "400",
                        ErrorAnswers.one(ProblemKind.MALFORMED_BODY)
                                .description(
                                        "The body is not a JSON document; line and column say where. Or a parameter is"
                                                + " wrong."));
        ErrorAnswers.of(api.at("/v1/size-tables").getGet(), ProblemKind.NOT_ACCEPTABLE);
        for (String path : List.of("/v1/size-tables", "/v1/size-tables/{id}", "/v1/size-tables/{id}/figures")) {
            api.at(path)
                    .getGet()
                    .getResponses()
                    .addApiResponse(
                            "304", new ApiResponse().description("The caller has it: the entity tag is the same."));
        }
        for (String path : List.of("/v1/size-tables/{id}", "/v1/size-tables/{id}/figures")) {
            ErrorAnswers.of(
                    api.at(path).getGet(), ProblemKind.BAD_REQUEST, ProblemKind.NOT_FOUND, ProblemKind.NOT_ACCEPTABLE);
        }
    }
}
