package org.capwright.service.sizerun;

import io.swagger.v3.oas.models.headers.Header;
import io.swagger.v3.oas.models.media.Content;
import io.swagger.v3.oas.models.media.MediaType;
import io.swagger.v3.oas.models.media.Schema;
import io.swagger.v3.oas.models.media.StringSchema;
import io.swagger.v3.oas.models.responses.ApiResponse;
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
