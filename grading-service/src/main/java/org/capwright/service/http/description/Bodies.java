package org.capwright.service.http.description;

import io.swagger.v3.oas.models.examples.Example;
import io.swagger.v3.oas.models.media.Content;
import io.swagger.v3.oas.models.media.MediaType;
import io.swagger.v3.oas.models.media.Schema;
import io.swagger.v3.oas.models.parameters.RequestBody;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import org.capwright.service.http.schema.RequestSchema;
import org.springframework.stereotype.Component;
import tools.jackson.databind.json.JsonMapper;

/** Bodies of requests with their examples, and of answers. */
@Component
public final class Bodies {

    private final JsonMapper mapper;

    Bodies(JsonMapper mapper) {
        this.mapper = mapper;
    }

    /**
     * A body in JSON with one example, in centimetres.
     *
     * @param shape what is read
     * @param summary the example in words
     * @param example the example
     * @return the body of a request
     */
    public static RequestBody json(RequestSchema shape, String summary, Object example) {
        return json(shape, Map.of("centimetres", new Example().summary(summary).value(example)));
    }

    /**
     * A body in JSON with named examples.
     *
     * @param shape what is read
     * @param examples by name
     * @return the body of a request
     */
    public static RequestBody json(RequestSchema shape, Map<String, Example> examples) {
        MediaType json = new MediaType().schema(ShapeSchemas.reference(shape.name()));
        json.setExamples(examples);
        return new RequestBody().required(true).content(new Content().addMediaType("application/json", json));
    }

    /**
     * The schema of a body that is answered.
     *
     * @param answer one of {@link DescribedCall#answers}
     * @return a reference to its schema
     */
    public static Schema<?> schema(Class<?> answer) {
        return ShapeSchemas.reference(AnswerSchemas.name(answer));
    }

    /**
     * The schema of a body that is read.
     *
     * @param request one of {@link DescribedCall#requests}
     * @return a reference to its schema
     */
    public static Schema<?> schema(RequestSchema request) {
        return ShapeSchemas.reference(request.name());
    }

    /**
     * An answer in JSON.
     *
     * @param answer one of {@link DescribedCall#answers}
     * @return the content of a response
     */
    public static Content answer(Class<?> answer) {
        return new Content().addMediaType("application/json", new MediaType().schema(schema(answer)));
    }

    /**
     * An example kept beside this class.
     *
     * @param name name of the file
     * @return the example as maps, lists and values
     */
    public Object example(String name) {
        try (InputStream in = Bodies.class.getResourceAsStream(name)) {
            if (in == null) {
                throw new IllegalStateException("no example " + name);
            }
            return mapper.readValue(new String(in.readAllBytes(), StandardCharsets.UTF_8), Map.class);
        } catch (IOException e) {
            throw new IllegalStateException("unreadable example " + name, e);
        }
    }
}
