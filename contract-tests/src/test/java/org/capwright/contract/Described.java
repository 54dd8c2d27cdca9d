package org.capwright.contract;

import static io.restassured.RestAssured.given;

import com.atlassian.oai.validator.OpenApiInteractionValidator;
import com.atlassian.oai.validator.report.LevelResolver;
import com.atlassian.oai.validator.report.ValidationReport;
import com.atlassian.oai.validator.restassured.OpenApiValidationFilter;
import io.restassured.RestAssured;
import io.restassured.config.JsonConfig;
import io.restassured.path.json.JsonPath;
import io.restassured.path.json.config.JsonPathConfig;

/** Holds requests and answers against the description that the service serves. */
final class Described {

    private Described() {}

    static OpenApiValidationFilter filter() {
        // Decimal figures are compared at 1e-9: as doubles, not as the floats that JsonPath reads by default.
        JsonPath.config = new JsonPathConfig(JsonPathConfig.NumberReturnType.DOUBLE);
        RestAssured.config = RestAssured.config()
                .jsonConfig(JsonConfig.jsonConfig().numberReturnType(JsonPathConfig.NumberReturnType.DOUBLE));
        String description =
                given().get(RunningService.address() + "/v3/api-docs").asString();
        return new OpenApiValidationFilter(OpenApiInteractionValidator.createForInlineApiSpecification(description)
                .build());
    }

    /** For forms, whose parts the filter does not see: only the answer is compared with the description. */
    static OpenApiValidationFilter answers() {
        filter();
        String description =
                given().get(RunningService.address() + "/v3/api-docs").asString();
        return new OpenApiValidationFilter(OpenApiInteractionValidator.createForInlineApiSpecification(description)
                .withLevelResolver(LevelResolver.create()
                        .withLevel("validation.request.body.missing", ValidationReport.Level.IGNORE)
                        .build())
                .build());
    }
}
