package org.capwright.service.materials;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.function.DoubleConsumer;
import org.capwright.json.problem.FoundViolations;
import org.capwright.json.style.MaterialRequest;
import org.capwright.json.style.SizeRunReader;
import org.capwright.service.http.Languages;
import org.capwright.service.http.RequestBodies;
import org.capwright.service.sizerun.MaterialAnswer;
import org.capwright.service.sizerun.SizeRunResult;
import org.capwright.service.sizerun.SizeRunService;
import org.springframework.http.CacheControl;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RestController;
import tools.jackson.databind.json.JsonMapper;

/** Tells what to buy for a run, with the lays drawn. */
@RestController
@Tag(name = "Materials")
final class MaterialController {

    private final RequestBodies bodies;
    private final JsonMapper mapper;

    MaterialController(RequestBodies bodies, JsonMapper mapper) {
        this.bodies = bodies;
        this.mapper = mapper;
    }

    /** Lays the pieces of a run on the cloths of its request. */
    @Operation(operationId = "createMaterials", summary = "Lay the pieces of a size run and tell what to buy")
    @PostMapping(path = "/v1/materials", produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<MaterialAnswer> create(HttpServletRequest request) throws IOException {
        return ResponseEntity.ok().cacheControl(CacheControl.noStore()).body(laid(drafted(request), done -> {}));
    }

    /** Lays the pieces and tells meanwhile how far the search is. */
    @Operation(
            operationId = "listenToMaterials",
            summary = "Lay the pieces of a size run, and listen to how far the search is")
    @PostMapping(path = "/v1/materials/events", produces = MediaType.TEXT_EVENT_STREAM_VALUE)
    void listen(HttpServletRequest request, HttpServletResponse response) throws IOException {
        SizeRunResult result = drafted(request);
        response.setContentType(MediaType.TEXT_EVENT_STREAM_VALUE);
        response.setCharacterEncoding(StandardCharsets.UTF_8.name());
        response.setHeader(HttpHeaders.CACHE_CONTROL, CacheControl.noStore().getHeaderValue());
        LayEvents events = new LayEvents(response.getOutputStream(), mapper);
        try {
            events.done(laid(result, events::progress));
        } catch (UncheckedIOException e) {
            throw e.getCause();
        }
    }

    private SizeRunResult drafted(HttpServletRequest request) throws IOException {
        SizeRunResult result =
                SizeRunService.draft(SizeRunReader.read(bodies.read(request)).in(Languages.of(request)));
        if (result.order().materials().isEmpty()) {
            FoundViolations found = new FoundViolations(result.order().unit());
            found.add(MaterialRequest.POINTER, "is missing; without cloths there is nothing to lay the pieces on");
            found.refuse();
        }
        return result;
    }

    private static MaterialAnswer laid(SizeRunResult result, DoubleConsumer progress) {
        return result.toBuy(progress).orElseThrow();
    }
}
