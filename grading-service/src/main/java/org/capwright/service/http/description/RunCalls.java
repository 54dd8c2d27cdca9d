package org.capwright.service.http.description;

import io.swagger.v3.oas.models.Operation;
import io.swagger.v3.oas.models.examples.Example;
import io.swagger.v3.oas.models.headers.Header;
import io.swagger.v3.oas.models.media.Content;
import io.swagger.v3.oas.models.media.MediaType;
import io.swagger.v3.oas.models.media.Schema;
import io.swagger.v3.oas.models.media.StringSchema;
import io.swagger.v3.oas.models.responses.ApiResponse;
import io.swagger.v3.oas.models.responses.ApiResponses;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.capwright.service.madetomeasure.MeasureShape;
import org.capwright.service.sizerun.SizeRunFormat;
import org.capwright.service.sizerun.SizeRunShape;

/** Calls that draft a run. */
final class RunCalls {

    private final List<SizeRunFormat> renderings;
    private final Bodies bodies;

    RunCalls(List<SizeRunFormat> renderings, Bodies bodies) {
        this.renderings = renderings;
        this.bodies = bodies;
    }

    void sizeRuns(Operation operation) {
        operation.setDescription(
                "The Accept header picks the form of the answer; JSON without one. The same request gives the same"
                        + " bytes. Bodies are read up to 256 kB.");
        Map<String, Example> examples = new LinkedHashMap<>();
        examples.put(
                "centimetres",
                new Example()
                        .summary("Under-sleeve and pleated overlay, six sizes")
                        .value(bodies.example("example-cm.json")));
        examples.put(
                "inches",
                new Example()
                        .summary("Overlay alone, lengths in inches and fractions")
                        .value(bodies.example("example-in.json")));
        operation.setRequestBody(Bodies.json(SizeRunShape.REQUEST, examples));
        operation.setResponses(new ApiResponses()
                .addApiResponse(
                        "200", drafted("The graded run, in the form that Accept asks for.", SizeRunShape.ANSWER)));
        ErrorAnswers.ofBody(operation);
    }

    void materials(Operation operation) {
        operation.setDescription(
                "Takes the body of a size run that has materials, and lays the pieces on the cloths it names."
                        + " Bodies are read up to 256 kB.");
        operation.setRequestBody(
                Bodies.json(SizeRunShape.REQUEST, "Cloth for two singers", bodies.example("example-materials.json")));
        operation.setResponses(new ApiResponses()
                .addApiResponse(
                        "200",
                        new ApiResponse()
                                .description("What to buy, with a picture of every lay.")
                                .content(new Content()
                                        .addMediaType(
                                                "application/json",
                                                new MediaType()
                                                        .schema(ShapeSchemas.reference(
                                                                AnswerSchemas.name(SizeRunShape.MATERIALS)))))));
        ErrorAnswers.ofBody(operation);
    }

    void madeToMeasure(Operation operation) {
        operation.setDescription(
                "The call that a made-to-order shop makes for every order. The sleeve is the wearer's measurements plus ease, and the"
                        + " cap is fitted to the armhole. Measurements that hardly anybody has are questioned until they are"
                        + " named in confirmed, missing ones are estimated and marked, see estimates. Nothing about the wearer"
                        + " is stored or logged. The Accept header picks the form of the answer; JSON without one."
                        + " Bodies are read up to 256 kB.");
        operation.setRequestBody(Bodies.json(
                MeasureShape.REQUEST,
                "A choir gown for one singer; wrist and armscye are estimated",
                bodies.example("example-made-to-measure.json")));
        operation.setResponses(new ApiResponses()
                .addApiResponse(
                        "200",
                        drafted("The sleeve set, in the form that Accept asks for.", MeasureShape.ANSWER)
                                .addHeaderObject(
                                        "Capwright-Estimated",
                                        new Header()
                                                .description(
                                                        "Names of the measurements that were estimated, where any were; JSON has"
                                                                + " the estimates with their intervals.")
                                                .schema(new StringSchema()))));
        ErrorAnswers.ofBody(operation);
    }

    private ApiResponse drafted(String description, Class<?> answer) {
        Content content = new Content();
        for (SizeRunFormat rendering : renderings) {
            String type = rendering.mediaType().toString();
            boolean binary =
                    rendering.extension().equals("pdf") || rendering.extension().equals("zip");
            Schema<?> schema = type.equals("application/json")
                    ? ShapeSchemas.reference(AnswerSchemas.name(answer))
                    : new StringSchema().format(binary ? "binary" : null).description(rendering.meaning());
            content.addMediaType(type, new MediaType().schema(schema));
        }
        return new ApiResponse()
                .description(description)
                .content(content)
                .addHeaderObject(
                        "Content-Disposition",
                        new Header()
                                .description("A file name made of style and revision.")
                                .schema(new StringSchema()));
    }
}
