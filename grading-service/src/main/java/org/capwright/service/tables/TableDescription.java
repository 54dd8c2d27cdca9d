package org.capwright.service.tables;

import io.swagger.v3.oas.models.Operation;
import io.swagger.v3.oas.models.PathItem;
import java.util.List;
import java.util.function.Function;
import org.capwright.service.http.description.Bodies;
import org.capwright.service.http.description.DescribedCall;
import org.capwright.service.http.description.ErrorAnswers;
import org.capwright.service.http.problem.ProblemKind;
import org.capwright.service.http.schema.RequestSchema;
import org.springframework.stereotype.Component;

/** Describes the calls about size tables. */
@Component
final class TableDescription implements DescribedCall {

    private final Bodies bodies;

    TableDescription(Bodies bodies) {
        this.bodies = bodies;
    }

    @Override
    public List<RequestSchema> requests() {
        return List.of(TableShape.TABLE);
    }

    @Override
    public List<Class<?>> answers() {
        return List.of(SizeTableAnswer.Listing.class, SizeTableAnswer.class, SizeTableAnswer.Figures.class);
    }

    @Override
    public void describe(Function<String, PathItem> paths) {
        Operation operation = paths.apply("/v1/size-tables").getPost();
        operation.setDescription(
                "Checks a table of your own (units, plausible ranges, growth that must be monotone, dimensions that must exceed one another)"
                        + " and answers it as GET does a published one, or names everything that is wrong with it. Nothing is"
                        + " kept: put the same object into the field sizeTable of a request wherever an id is taken. Bodies are"
                        + " read up to 256 kB.");
        operation.setRequestBody(
                Bodies.json(TableShape.TABLE, "Six sizes of a workshop", bodies.example("example-size-table.json")));
        ErrorAnswers.ofBody(operation);
        operation
                .getResponses()
                .addApiResponse(
                        "400",
                        ErrorAnswers.one(ProblemKind.MALFORMED_BODY)
                                .description(
                                        "The body is no JSON document; line and column say where. Or a parameter is"
                                                + " wrong."));
        ErrorAnswers.of(paths.apply("/v1/size-tables").getGet(), ProblemKind.NOT_ACCEPTABLE);
        for (String path : List.of("/v1/size-tables/{id}", "/v1/size-tables/{id}/figures")) {
            ErrorAnswers.of(
                    paths.apply(path).getGet(),
                    ProblemKind.BAD_REQUEST,
                    ProblemKind.NOT_FOUND,
                    ProblemKind.NOT_ACCEPTABLE);
        }
    }
}
