package org.capwright.service.rules;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.http.HttpServletRequest;
import java.io.IOException;
import org.capwright.service.http.Languages;
import org.capwright.service.http.RequestBodies;
import org.springframework.http.CacheControl;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RestController;

/** Derives grade rules from a size table. */
@RestController
@Tag(name = "Grade rules")
final class RulesController {

    private final RequestBodies bodies;

    RulesController(RequestBodies bodies) {
        this.bodies = bodies;
    }

    /** Derives the rules. */
    @Operation(operationId = "deriveGradeRules", summary = "Derive grade rules from the growth of bodies")
    @PostMapping(path = "/v1/grade-rules", produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<RulesAnswer> create(HttpServletRequest request) throws IOException {
        return ResponseEntity.ok()
                .cacheControl(CacheControl.noStore())
                .body(new RulesReader(bodies.read(request), Languages.of(request)).answer());
    }
}
