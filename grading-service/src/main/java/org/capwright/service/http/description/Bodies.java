package org.capwright.service.http.description;

import io.swagger.v3.oas.models.examples.Example;
import io.swagger.v3.oas.models.media.Content;
import io.swagger.v3.oas.models.media.MediaType;
import io.swagger.v3.oas.models.parameters.RequestBody;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import org.capwright.service.http.schema.RequestSchema;
import tools.jackson.databind.json.JsonMapper;

/** Bodies of requests with their examples. */
final class Bodies {

    private final JsonMapper mapper;

    Bodies(JsonMapper mapper) {
        this.mapper = mapper;
    }

    /** A body in JSON with one example, in centimetres. */
    static RequestBody json(RequestSchema shape, String summary, Object example) {
        return json(shape, Map.of("centimetres", new Example().summary(summary).value(example)));
    }

    /** A body in JSON with named examples. */
    static RequestBody json(RequestSchema shape, Map<String, Example> examples) {
        MediaType json = new MediaType().schema(ShapeSchemas.reference(shape.name()));
        json.setExamples(examples);
        return new RequestBody().required(true).content(new Content().addMediaType("application/json", json));
    }

    /** An example kept beside this class. */
    Object example(String name) {
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
