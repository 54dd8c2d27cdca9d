package org.capwright.service.sizerun;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.http.HttpServletRequest;
import java.io.IOException;
import java.util.List;
import org.capwright.lay.Materials;
import org.capwright.service.http.RequestBodies;
import org.capwright.service.http.problem.FoundViolations;
import org.capwright.service.materials.MaterialRequest;
import org.springframework.http.CacheControl;
import org.springframework.http.HttpHeaders;
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
    @PostMapping("/v1/materials")
    ResponseEntity<MaterialAnswer> create(HttpServletRequest request) throws IOException {
        SizeRunService.accepted(request, List.of(MediaType.APPLICATION_JSON));
        SizeRunRequest order = SizeRunReader.read(bodies.read(request));
        SizeRunResult result = SizeRunService.draft(order);
        Materials needs = result.materials().orElseThrow(() -> missing(order));
        return ResponseEntity.ok()
                .contentType(MediaType.APPLICATION_JSON)
                .cacheControl(CacheControl.noStore())
                .header(HttpHeaders.VARY, HttpHeaders.ACCEPT)
                .body(Buying.pictured(needs, new UnitFormat(order.unit())));
    }

    private static RuntimeException missing(SizeRunRequest order) {
        FoundViolations found = new FoundViolations(order.unit());
        found.add(MaterialRequest.POINTER, "is missing; without cloths there is nothing to lay the pieces on");
        found.refuse();
        return new IllegalStateException("a violation was added");
    }
}
