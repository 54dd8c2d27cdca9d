package org.capwright.service.sizerun;

import io.swagger.v3.oas.models.Operation;
import io.swagger.v3.oas.models.headers.Header;
import io.swagger.v3.oas.models.media.Content;
import io.swagger.v3.oas.models.media.MediaType;
import io.swagger.v3.oas.models.media.Schema;
import io.swagger.v3.oas.models.media.StringSchema;
import io.swagger.v3.oas.models.responses.ApiResponse;
import java.util.Comparator;
import java.util.List;
import org.capwright.service.http.description.DescribedApi;
import org.springframework.stereotype.Component;

/** Describes the answer of a call that drafts a run: every form in which it can be had. */
@Component
public final class DraftedAnswers {

    private final List<SizeRunFormat> renderings;

    DraftedAnswers(List<SizeRunFormat> renderings) {
        this.renderings = renderings;
    }

    /**
     * Says what a call answers whose path names the format. The file is a string of bytes whatever it is, so that programs generated from the description hand it out as a file.
     *
     * @param call a call with a parameter format
     * @param description what is answered, in words
     * @return the description of the answer
     */
    public ApiResponse file(Operation call, String description) {
        Content content = new Content();
        // The first type is the one for which most generators make the answer's class.
        renderings.stream()
                .sorted(Comparator.comparing(form -> form.extension().equals("json")))
                .forEach(form -> content.addMediaType(
                        form.mediaType().toString(),
                        new MediaType()
                                .schema(
                                        form.extension().equals("json")
                                                ? new Schema<>().description(form.meaning())
                                                : new StringSchema()
                                                        .format("binary")
                                                        .description(form.meaning()))));
        StringSchema formats = new StringSchema();
        formats.setEnum(renderings.stream().map(SizeRunFormat::extension).toList());
        call.getParameters().stream()
                .filter(parameter -> parameter.getName().equals("format"))
                .forEach(parameter -> parameter.setSchema(formats));
        return named(new ApiResponse().description(description).content(content));
    }

    /**
     * One answer in every form.
     *
     * @param api the description
     * @param description what it is, in words
     * @param answer what is answered as JSON
     * @return the description of the answer
     */
    public ApiResponse in(DescribedApi api, String description, Class<?> answer) {
        Content content = new Content();
        for (SizeRunFormat rendering : renderings) {
            String type = rendering.mediaType().toString();
            boolean binary =
                    rendering.extension().equals("pdf") || rendering.extension().equals("zip");
            Schema<?> schema = type.equals("application/json")
                    ? api.schema(answer)
                    : new StringSchema().format(binary ? "binary" : null).description(rendering.meaning());
            content.addMediaType(type, new MediaType().schema(schema));
        }
        return named(new ApiResponse().description(description).content(content));
    }

    private static ApiResponse named(ApiResponse answer) {
        return answer.addHeaderObject(
                "Content-Disposition",
                new Header().description("Names the file.").schema(new StringSchema()));
    }
}
