package org.capwright.service.http.description;

import io.swagger.v3.oas.models.OpenAPI;
import io.swagger.v3.oas.models.PathItem;
import io.swagger.v3.oas.models.examples.Example;
import io.swagger.v3.oas.models.media.Content;
import io.swagger.v3.oas.models.media.MediaType;
import io.swagger.v3.oas.models.media.Schema;
import io.swagger.v3.oas.models.parameters.RequestBody;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import org.capwright.json.schema.RequestSchema;
import tools.jackson.databind.json.JsonMapper;

/** The API description in the making. What a call refers to is described by that. */
public final class DescribedApi {

    private final OpenAPI api;
    private final JsonMapper mapper;

    /** By name, in the order of names. */
    private final Map<String, Schema<?>> schemas = new TreeMap<>();

    DescribedApi(OpenAPI api, JsonMapper mapper) {
        this.api = api;
        this.mapper = mapper;
    }

    Map<String, Schema<?>> schemas() {
        return schemas;
    }

    /**
     * What there is at an address.
     *
     * @param path an address of the service
     * @return its operations
     */
    public PathItem at(String path) {
        return Objects.requireNonNull(api.getPaths().get(path), path);
    }

    /**
     * A body in JSON with one example, in centimetres.
     *
     * @param request what is read
     * @param summary the example in words
     * @param example the example
     * @return the body of a request
     */
    public RequestBody json(RequestSchema request, String summary, Object example) {
        return json(
                request, Map.of("centimetres", new Example().summary(summary).value(example)));
    }

    /**
     * A body in JSON with named examples.
     *
     * @param request what is read
     * @param examples by name
     * @return the body of a request
     */
    public RequestBody json(RequestSchema request, Map<String, Example> examples) {
        MediaType json = new MediaType().schema(schema(request));
        json.setExamples(examples);
        return new RequestBody().required(true).content(new Content().addMediaType("application/json", json));
    }

    /**
     * The schema of a body that is read.
     *
     * @param request what is read
     * @return a reference to its schema
     */
    public Schema<?> schema(RequestSchema request) {
        schemas.putAll(OpenApiSchemas.of(request));
        return OpenApiSchemas.reference(request.name());
    }

    /**
     * The schema of a body that is answered.
     *
     * @param answer a record
     * @return a reference to its schema
     */
    public Schema<?> schema(Class<?> answer) {
        AnswerSchemas.add(answer, schemas);
        AnswerSchemas.require(answer, schemas);
        return OpenApiSchemas.reference(AnswerSchemas.name(answer));
    }

    /**
     * A schema under a name of its own: one without is named by each program that reads the description, or not at all.
     *
     * @param name its name
     * @param schema the schema
     * @return a reference to it
     */
    public Schema<?> schema(String name, Schema<?> schema) {
        schemas.put(name, schema);
        return OpenApiSchemas.reference(name);
    }

    /**
     * Says that a member of an answer is what a request takes.
     *
     * @param answer a record whose schema is described
     * @param member one of its components
     * @param request the shape of the member
     */
    public void same(Class<?> answer, String member, RequestSchema request) {
        Schema<?> schema = Objects.requireNonNull(schemas.get(AnswerSchemas.name(answer)));
        Schema<Object> as = new Schema<>();
        as.setAllOf(List.of(schema(request)));
        as.setDescription(request.meaning());
        schema.getProperties().put(member, as);
    }

    /**
     * An example kept beside this class.
     *
     * @param name name of the file
     * @return the example as maps, lists and values
     */
    public Object example(String name) {
        try (InputStream in = DescribedApi.class.getResourceAsStream(name)) {
            if (in == null) {
                throw new IllegalStateException("no example " + name);
            }
            return mapper.readValue(new String(in.readAllBytes(), StandardCharsets.UTF_8), Map.class);
        } catch (IOException e) {
            throw new IllegalStateException("unreadable example " + name, e);
        }
    }
}
