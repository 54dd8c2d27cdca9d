package org.capwright.service.sizerun;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.http.HttpServletRequest;
import java.io.IOException;
import org.capwright.json.style.SizeRunReader;
import org.capwright.json.style.SizeRunRequest;
import org.capwright.service.http.Languages;
import org.capwright.service.http.RequestBodies;
import org.capwright.words.Language;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RestController;
import tools.jackson.databind.JsonNode;

/** Drafts and grades a style over a size run. */
@RestController
@Tag(name = "Size runs")
final class SizeRunController {

    private final RequestBodies bodies;
    private final SizeRunService drafting;
    private final FinishedRuns finished;

    SizeRunController(RequestBodies bodies, SizeRunService drafting, FinishedRuns finished) {
        this.bodies = bodies;
        this.drafting = drafting;
        this.finished = finished;
    }

    /** Drafts a run and answers in the media type that the caller likes best. */
    @Operation(operationId = "createSizeRun", summary = "Draft a structured sleeve and grade it over a size run")
    @PostMapping("/v1/size-runs")
    ResponseEntity<byte[]> create(HttpServletRequest request) throws IOException {
        return drafted(request, drafting.accepted(request));
    }

    /** Drafts a run and answers with a file, whatever Accept says. */
    @Operation(operationId = "createSizeRunFile", summary = "Draft a structured sleeve and fetch one file of it")
    @PostMapping("/v1/size-runs/files/{format}")
    ResponseEntity<byte[]> file(
            HttpServletRequest request,
            @Parameter(description = "The end of the file's name.", example = "pdf") @PathVariable("format")
                    String format)
            throws IOException {
        return drafted(request, drafting.named(format));
    }

    private ResponseEntity<byte[]> drafted(HttpServletRequest request, SizeRunFormat rendering) throws IOException {
        byte[] sent = bodies.bytes(request, RequestBodies.MOST_BYTES);
        JsonNode body = bodies.parse(sent);
        Language language = Languages.of(request);
        return finished.answer(new FinishedRuns.Asked(body, sent.length, rendering.extension(), language), () -> {
            SizeRunRequest order = SizeRunReader.read(body).in(language);
            return SizeRunService.response(
                    order, rendering, SizeRunService.written(SizeRunService.draft(order, rendering), rendering));
        });
    }
}
