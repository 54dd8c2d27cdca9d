package org.capwright.service.materials;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.http.HttpServletRequest;
import java.io.IOException;
import org.capwright.json.problem.FoundViolations;
import org.capwright.json.style.MaterialRequest;
import org.capwright.json.style.SizeRunReader;
import org.capwright.json.style.SizeRunRequest;
import org.capwright.service.http.Languages;
import org.capwright.service.http.RequestBodies;
import org.capwright.service.sizerun.MaterialAnswer;
import org.capwright.service.sizerun.SizeRunResult;
import org.capwright.service.sizerun.SizeRunService;
import org.springframework.http.CacheControl;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RestController;

/** Tells what to buy for a run, with the lays drawn. */
@RestController
@Tag(name = "Materials")
final class MaterialController {

    private final RequestBodies bodies;

    MaterialController(RequestBodies bodies) {
        this.bodies = bodies;
    }

    /** Lays the pieces of a run on the cloths of its request. */
    @Operation(operationId = "createMaterials", summary = "Lay the pieces of a size run and tell what to buy")
    @PostMapping(path = "/v1/materials", produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<MaterialAnswer> create(HttpServletRequest request) throws IOException {
        SizeRunResult result =
                SizeRunService.draft(SizeRunReader.read(bodies.read(request)).in(Languages.of(request)));
        return ResponseEntity.ok()
                .cacheControl(CacheControl.noStore())
                .body(result.toBuy().orElseThrow(() -> missing(result.order())));
    }

    private static RuntimeException missing(SizeRunRequest order) {
        FoundViolations found = new FoundViolations(order.unit());
        found.add(MaterialRequest.POINTER, "is missing; without cloths there is nothing to lay the pieces on");
        found.refuse();
        return new IllegalStateException("a violation was added");
    }
}
