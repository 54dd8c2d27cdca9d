package org.capwright.service.sizerun;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.http.HttpServletRequest;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.capwright.measure.InvalidMeasuresException;
import org.capwright.service.RequestBodies;
import org.capwright.service.problem.FoundViolations;
import org.capwright.service.problem.Problem;
import org.capwright.service.problem.ProblemException;
import org.capwright.service.problem.ProblemKind;
import org.springframework.http.CacheControl;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RestController;
import tools.jackson.databind.JsonNode;

/** Drafts and grades a style over a size run. */
@RestController
@Tag(name = "Size runs")
final class SizeRunController {

    private final RequestBodies bodies;
    private final Map<MediaType, Rendering> renderings = new LinkedHashMap<>();

    SizeRunController(RequestBodies bodies, List<Rendering> renderings) {
        this.bodies = bodies;
        for (Rendering rendering : renderings) {
            this.renderings.put(rendering.contentType(), rendering);
        }
    }

    /** Drafts a run and answers in the media type that the caller likes best. */
    @Operation(operationId = "createSizeRun", summary = "Draft a structured sleeve and grade it over a size run")
    @PostMapping("/v1/size-runs")
    ResponseEntity<byte[]> create(HttpServletRequest request) throws IOException {
        Rendering rendering = rendering(request);
        JsonNode body = bodies.read(request);
        SizeRunOrder order = SizeRunReader.read(body);
        byte[] answer = answer(order, rendering);
        return ResponseEntity.ok()
                .contentType(rendering.contentType())
                .cacheControl(CacheControl.noStore())
                .header(HttpHeaders.VARY, HttpHeaders.ACCEPT)
                .header(HttpHeaders.CONTENT_DISPOSITION, FileNames.disposition(order, rendering.extension()))
                .body(answer);
    }

    private static byte[] answer(SizeRunOrder order, Rendering rendering) throws IOException {
        try {
            return rendering.render(SizeRunResult.of(order));
        } catch (InvalidMeasuresException e) {
            FoundViolations found = new FoundViolations(order.unit());
            found.addAll(FieldPlaces.placed(e.violations(), order));
            found.refuse();
            throw e;
        }
    }

    private Rendering rendering(HttpServletRequest request) {
        List<String> headers = new ArrayList<>(Collections.list(request.getHeaders(HttpHeaders.ACCEPT)));
        MediaType type = Negotiation.pick(String.join(",", headers), renderings.keySet())
                .orElseThrow(() -> new ProblemException(Problem.of(
                        ProblemKind.NOT_ACCEPTABLE,
                        "None of the media types asked for by Accept can be made; there are "
                                + String.join(
                                        ", ",
                                        renderings.values().stream()
                                                .map(rendering ->
                                                        rendering.mediaType().toString())
                                                .toList())
                                + ".")));
        Rendering rendering = renderings.get(type);
        if (rendering == null) {
            throw new IllegalStateException("no rendering for " + type);
        }
        return rendering;
    }
}
