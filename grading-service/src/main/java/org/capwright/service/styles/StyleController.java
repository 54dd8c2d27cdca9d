package org.capwright.service.styles;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.http.HttpServletRequest;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.capwright.json.order.StyleDocument;
import org.capwright.json.style.SizeRunReader;
import org.capwright.json.style.SizeRunRequest;
import org.capwright.service.http.Languages;
import org.capwright.service.http.PageAsked;
import org.capwright.service.http.RequestBodies;
import org.capwright.service.http.access.Caller;
import org.capwright.service.http.access.Needs;
import org.capwright.service.http.access.Scope;
import org.capwright.service.http.problem.WrongParameter;
import org.capwright.service.sizerun.SizeRunFormat;
import org.capwright.service.sizerun.SizeRunResult;
import org.capwright.service.sizerun.SizeRunService;
import org.capwright.service.store.Store;
import org.springframework.http.CacheControl;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.DeleteMapping;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.PutMapping;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Keeps styles and drafts from them. */
@RestController
@Tag(name = "Styles")
final class StyleController {

    private static final String ID = "Id of the style.";

    private final Store store;
    private final RequestBodies bodies;
    private final SizeRunService drafting;
    private final JsonMapper mapper;

    StyleController(Store store, RequestBodies bodies, SizeRunService drafting, JsonMapper mapper) {
        this.store = store;
        this.bodies = bodies;
        this.drafting = drafting;
        this.mapper = mapper;
    }

    /** Lists styles. */
    @Operation(operationId = "listStyles", summary = "List the styles")
    @Needs(Scope.READ)
    @GetMapping(path = "/v1/styles", produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<StyleAnswer.Listing> list(
            HttpServletRequest request,
            @Parameter(description = "true to list those in the archive as well.")
                    @RequestParam(name = "archived", defaultValue = "false")
                    boolean archived,
            PageAsked page) {
        List<StyleRevision> found = store.transaction(database ->
                new StyleShelf(database, Caller.of(request)).list(page.after().orElse(""), archived, page.limit() + 1));
        return answered(new StyleAnswer.Listing(
                page.shown(found).stream().map(StyleAnswer::of).toList(), page.next(found, StyleRevision::id)));
    }

    /** Keeps a style, or the next revision of it. */
    @Operation(operationId = "putStyle", summary = "Keep a style, or the next revision of it")
    @Needs(Scope.STYLE)
    @PutMapping(path = "/v1/styles/{id}", produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<StyleAnswer> put(
            HttpServletRequest request,
            @Parameter(description = ID, example = "choir-gown") @PathVariable("id") String id,
            @Parameter(description = "Entity tag of the revision that is changed; needed once there is one.")
                    @RequestHeader(name = HttpHeaders.IF_MATCH, required = false)
                    Optional<String> match,
            @Parameter(description = "* to make a style only where there is none.")
                    @RequestHeader(name = HttpHeaders.IF_NONE_MATCH, required = false)
                    Optional<String> noneMatch)
            throws IOException {
        StyleId.checked(id);
        JsonNode tree = bodies.read(request);
        SizeRunRequest checked = StyleCheck.drafted(tree);
        StyleShelf.Kept kept = store.transaction(database -> new StyleShelf(database, Caller.of(request))
                .put(id, checked.title().style(), tree.toString(), Condition.of(match, noneMatch)));
        return ResponseEntity.status(kept.fresh() ? HttpStatus.CREATED : HttpStatus.OK)
                .cacheControl(CacheControl.noStore())
                .eTag(kept.revision().entityTag())
                .body(StyleAnswer.of(kept.revision()));
    }

    /** Shows the body of a style. */
    @Operation(operationId = "getStyle", summary = "Show the latest revision of a style, as it was put")
    @Needs(Scope.READ)
    @GetMapping(path = "/v1/styles/{id}", produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<byte[]> get(
            HttpServletRequest request,
            @Parameter(description = ID, example = "choir-gown") @PathVariable("id") String id,
            @Parameter(description = "Entity tag that the caller has; answered 304 while it is the latest.")
                    @RequestHeader(name = HttpHeaders.IF_NONE_MATCH, required = false)
                    Optional<String> noneMatch) {
        return body(revision(request, id, Optional.empty()), noneMatch);
    }

    /** Takes a style off the shelf. */
    @Operation(operationId = "deleteStyle", summary = "Delete a style, or archive it where orders pin it")
    @Needs(Scope.STYLE)
    @DeleteMapping(path = "/v1/styles/{id}", produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<StyleAnswer> delete(
            HttpServletRequest request,
            @Parameter(description = ID, example = "choir-gown") @PathVariable("id") String id,
            @Parameter(description = "Entity tag that the style must have; it may be left out.")
                    @RequestHeader(name = HttpHeaders.IF_MATCH, required = false)
                    Optional<String> match) {
        Optional<StyleRevision> archived = store.alone(database ->
                new StyleShelf(database, Caller.of(request)).remove(id, Condition.of(match, Optional.empty())));
        return archived.map(revision -> answered(StyleAnswer.of(revision)))
                .orElseGet(() -> ResponseEntity.noContent().build());
    }

    /** Lists the revisions of a style. */
    @Operation(operationId = "listStyleRevisions", summary = "List the revisions of a style")
    @Needs(Scope.READ)
    @GetMapping(path = "/v1/styles/{id}/revisions", produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<StyleAnswer.Revisions> revisions(
            HttpServletRequest request,
            @Parameter(description = ID, example = "choir-gown") @PathVariable("id") String id,
            PageAsked page) {
        int before = page.after().map(StyleController::number).orElse(Integer.MAX_VALUE);
        List<StyleRevision> found = store.transaction(
                database -> new StyleShelf(database, Caller.of(request)).revisions(id, before, page.limit() + 1));
        return answered(new StyleAnswer.Revisions(
                page.shown(found).stream().map(StyleAnswer::of).toList(),
                page.next(found, revision -> Integer.toString(revision.revision()))));
    }

    private static int number(String place) {
        try {
            return Integer.parseInt(place);
        } catch (NumberFormatException e) {
            throw PageAsked.wrongCursor(place);
        }
    }

    /** Shows the body of a revision. */
    @Operation(operationId = "getStyleRevision", summary = "Show a revision of a style, as it was put")
    @Needs(Scope.READ)
    @GetMapping(path = "/v1/styles/{id}/revisions/{revision}", produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<byte[]> getRevision(
            HttpServletRequest request,
            @Parameter(description = ID, example = "choir-gown") @PathVariable("id") String id,
            @Parameter(description = "Number of the revision.", example = "1") @PathVariable("revision") int revision,
            @Parameter(description = "Entity tag that the caller has; a revision never changes.")
                    @RequestHeader(name = HttpHeaders.IF_NONE_MATCH, required = false)
                    Optional<String> noneMatch) {
        return body(revision(request, id, Optional.of(revision)), noneMatch);
    }

    /** Compares two revisions. */
    @Operation(operationId = "compareStyleRevisions", summary = "Tell what changed between two revisions of a style")
    @Needs(Scope.READ)
    @GetMapping(path = "/v1/styles/{id}/changes", produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<StyleChanges> changes(
            HttpServletRequest request,
            @Parameter(description = ID, example = "choir-gown") @PathVariable("id") String id,
            @Parameter(description = "Number of the revision before; the one before the other if left out.")
                    @RequestParam(name = "from", required = false)
                    Optional<Integer> from,
            @Parameter(description = "Number of the revision after; the latest if left out.")
                    @RequestParam(name = "to", required = false)
                    Optional<Integer> to) {
        StyleRevision after = revision(request, id, to);
        if (from.isEmpty() && after.revision() == 1) {
            throw WrongParameter.of("to", "must be 2 or more where from is left out; nothing is before 1", "1");
        }
        StyleRevision before = revision(request, id, Optional.of(from.orElse(after.revision() - 1)));
        JsonNode old = mapper.readTree(before.body());
        JsonNode young = mapper.readTree(after.body());
        SizeRunRequest order = StyleCheck.drafted(young);
        return answered(new StyleChanges(
                id,
                before.revision(),
                after.revision(),
                order.unit().symbol(),
                StyleComparison.fields(old, young),
                StyleComparison.measures(
                        SizeRunService.draft(StyleCheck.drafted(old)).specTable(),
                        SizeRunService.draft(order).specTable(),
                        order.unit())));
    }

    /** Drafts a kept style. */
    @Operation(operationId = "createStyleSizeRun", summary = "Draft a kept style over its size run")
    @Needs(Scope.READ)
    @PostMapping("/v1/styles/{id}/size-runs")
    ResponseEntity<byte[]> sizeRun(
            HttpServletRequest request,
            @Parameter(description = ID, example = "choir-gown") @PathVariable("id") String id,
            @Parameter(description = "Number of the revision; the latest if left out.")
                    @RequestParam(name = "revision", required = false)
                    Optional<Integer> number)
            throws IOException {
        return drafted(request, id, number, drafting.accepted(request));
    }

    /** Drafts a kept style and answers with a file, whatever Accept says. */
    @Operation(operationId = "createStyleSizeRunFile", summary = "Draft a kept style and fetch one file of it")
    @Needs(Scope.READ)
    @PostMapping("/v1/styles/{id}/size-runs/files/{format}")
    ResponseEntity<byte[]> file(
            HttpServletRequest request,
            @Parameter(description = ID, example = "choir-gown") @PathVariable("id") String id,
            @Parameter(description = "The end of the file's name.", example = "pdf") @PathVariable("format")
                    String format,
            @Parameter(description = "Number of the revision; the latest if left out.")
                    @RequestParam(name = "revision", required = false)
                    Optional<Integer> number)
            throws IOException {
        return drafted(request, id, number, drafting.named(format));
    }

    private ResponseEntity<byte[]> drafted(
            HttpServletRequest request, String id, Optional<Integer> number, SizeRunFormat rendering)
            throws IOException {
        StyleRevision kept = revision(request, id, number);
        SizeRunRequest order = SizeRunReader.read(
                        StyleDocument.of(mapper.readTree(kept.body())).sizeRun(kept.revision()))
                .in(Languages.of(request));
        SizeRunResult result = SizeRunService.draft(order, rendering);
        return SizeRunService.response(order, rendering, SizeRunService.written(result, rendering));
    }

    private StyleRevision revision(HttpServletRequest request, String id, Optional<Integer> number) {
        return store.transaction(database -> new StyleShelf(database, Caller.of(request)).get(id, number));
    }

    private static <T> ResponseEntity<T> answered(T answer) {
        return ResponseEntity.ok().cacheControl(CacheControl.noStore()).body(answer);
    }

    private static ResponseEntity<byte[]> body(StyleRevision revision, Optional<String> noneMatch) {
        String tag = revision.entityTag();
        if (Condition.of(Optional.empty(), noneMatch).unchanged(tag)) {
            return ResponseEntity.status(HttpStatus.NOT_MODIFIED).eTag(tag).build();
        }
        return ResponseEntity.ok()
                .contentType(MediaType.APPLICATION_JSON)
                .cacheControl(CacheControl.noCache().cachePrivate())
                .eTag(tag)
                .lastModified(revision.madeAt())
                .body(revision.body().getBytes(StandardCharsets.UTF_8));
    }
}
