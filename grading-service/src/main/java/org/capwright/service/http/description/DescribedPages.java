package org.capwright.service.http.description;

import io.swagger.v3.oas.models.Operation;
import io.swagger.v3.oas.models.media.IntegerSchema;
import io.swagger.v3.oas.models.media.Schema;
import io.swagger.v3.oas.models.media.StringSchema;
import io.swagger.v3.oas.models.parameters.Parameter;
import io.swagger.v3.oas.models.parameters.QueryParameter;
import java.math.BigDecimal;
import java.util.stream.Stream;
import org.capwright.service.http.PageAsked;
import org.springdoc.core.customizers.OperationCustomizer;
import org.springdoc.core.utils.SpringDocUtils;
import org.springframework.core.MethodParameter;
import org.springframework.stereotype.Component;
import org.springframework.web.method.HandlerMethod;

/** Describes how to ask for a part of a list, the same way in every call that lists. */
@Component
final class DescribedPages implements OperationCustomizer {

    private static final Schema<?> LIMIT = new IntegerSchema()
            .format(null)
            ._default(Integer.valueOf(PageAsked.USUAL))
            .minimum(BigDecimal.ONE)
            .maximum(BigDecimal.valueOf(PageAsked.MOST));

    DescribedPages() {
        SpringDocUtils.getConfig().addRequestWrapperToIgnore(PageAsked.class);
    }

    @Override
    public Operation customize(Operation operation, HandlerMethod handler) {
        if (Stream.of(handler.getMethodParameters())
                .map(MethodParameter::getParameterType)
                .anyMatch(PageAsked.class::equals)) {
            operation.addParametersItem(parameter(PageAsked.LIMIT, "The most entries of the answer.", LIMIT));
            operation.addParametersItem(parameter(
                    PageAsked.CURSOR,
                    "What next said in the answer before; empty for the first page.",
                    new StringSchema()._default("")));
        }
        return operation;
    }

    private static Parameter parameter(String name, String description, Schema<?> schema) {
        return new QueryParameter()
                .name(name)
                .description(description)
                .required(false)
                .schema(schema);
    }
}
