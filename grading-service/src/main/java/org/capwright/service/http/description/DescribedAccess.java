package org.capwright.service.http.description;

import io.swagger.v3.oas.models.OpenAPI;
import io.swagger.v3.oas.models.Operation;
import io.swagger.v3.oas.models.security.SecurityRequirement;
import io.swagger.v3.oas.models.security.SecurityScheme;
import org.capwright.service.http.access.Access;
import org.capwright.service.http.access.Allowance;
import org.capwright.service.http.access.Doorkeeper;
import org.capwright.service.http.problem.ProblemKind;
import org.springdoc.core.customizers.OperationCustomizer;
import org.springframework.stereotype.Component;
import org.springframework.web.method.HandlerMethod;

/** Says which key each call needs, where keys are on. The scope is an extension: OpenAPI 3.0 has none for bearer keys. */
@Component
final class DescribedAccess implements OperationCustomizer {

    static final String SCOPE = "x-scope";

    private static final String PUBLISHABLE = "x-publishable";
    private static final String SCHEME = "key";

    private final Doorkeeper doorkeeper;
    private final Allowance allowance;

    DescribedAccess(Doorkeeper doorkeeper, Allowance allowance) {
        this.doorkeeper = doorkeeper;
        this.allowance = allowance;
    }

    @Override
    public Operation customize(Operation operation, HandlerMethod handler) {
        if (doorkeeper.closed()) {
            operation.addExtension(SCOPE, Access.of(handler).scope().word());
            if (Access.of(handler).publishable()) {
                operation.addExtension(PUBLISHABLE, true);
            }
        }
        return operation;
    }

    /** Completes a description whose operations are described. */
    void complete(OpenAPI api) {
        if (!doorkeeper.closed()) {
            return;
        }
        api.getComponents()
                .addSecuritySchemes(
                        SCHEME,
                        new SecurityScheme()
                                .type(SecurityScheme.Type.HTTP)
                                .scheme("bearer")
                                .description("A key of POST /v1/keys. x-scope says which scope a call needs."));
        api.getPaths().values().stream()
                .flatMap(path -> path.readOperations().stream())
                .filter(operation -> operation.getExtensions() != null
                        && operation.getExtensions().containsKey(SCOPE))
                .forEach(operation -> {
                    operation.addSecurityItem(new SecurityRequirement().addList(SCHEME));
                    ErrorAnswers.of(operation, ProblemKind.UNAUTHORIZED, ProblemKind.FORBIDDEN);
                    if (allowance.isLimited()) {
                        ErrorAnswers.of(operation, ProblemKind.TOO_MANY_REQUESTS);
                    }
                });
    }
}
