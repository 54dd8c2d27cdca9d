package org.capwright.service.http;

import com.fasterxml.jackson.annotation.JsonPropertyOrder;
import org.capwright.json.StrictJson;
import org.capwright.words.Text;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.http.ProblemDetail;
import org.springframework.http.converter.json.ProblemDetailJacksonMixin;
import tools.jackson.core.JsonParser;
import tools.jackson.databind.DeserializationContext;
import tools.jackson.databind.deser.std.StdDeserializer;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.module.SimpleModule;
import tools.jackson.databind.ser.std.ToStringSerializer;

/** The one mapper between JSON and objects. */
@Configuration(proxyBeanMethods = false)
public class JsonMapping {

    // Spring makes it.
    JsonMapping() {}

    /**
     * A mapper that reads strictly and writes what is there.
     *
     * @return the mapper, safe for many threads
     */
    public static JsonMapper mapper() {
        return StrictJson.mapper()
                .addMixIn(ProblemDetail.class, ProblemInOrder.class)
                .addModule(new SimpleModule()
                        .addSerializer(Text.class, ToStringSerializer.instance)
                        .addSerializer(new FiguresWriter<>(double[].class))
                        .addSerializer(new FiguresWriter<>(double[][].class))
                        .addSerializer(new FiguresWriter<>(double[][][].class))
                        .addDeserializer(Text.class, new SaidText()))
                .build();
    }

    /** What was said once, and is kept. */
    private static final class SaidText extends StdDeserializer<Text> {

        SaidText() {
            super(Text.class);
        }

        @Override
        public Text deserialize(JsonParser parser, DeserializationContext context) {
            return Text.name(parser.getString());
        }
    }

    /** Members in the order of RFC 9457, section 3.1, then our own. */
    @JsonPropertyOrder({"type", "title", "status", "detail", "instance"})
    private interface ProblemInOrder extends ProblemDetailJacksonMixin {}

    /**
     * The mapper for Spring.
     *
     * @return the mapper
     */
    @Bean
    JsonMapper jsonMapper() {
        return mapper();
    }
}
