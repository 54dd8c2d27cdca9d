package org.capwright.service.styles;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.http.HttpServletRequest;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.capwright.service.http.PageAsked;
import org.capwright.service.http.RequestBodies;
import org.capwright.service.http.access.Caller;
import org.capwright.service.http.access.Needs;
import org.capwright.service.http.access.Scope;
import org.capwright.service.store.Store;
import org.springframework.http.CacheControl;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RestController;
import tools.jackson.databind.json.JsonMapper;

/** Hands out all styles as one document, and takes such a document in. */
@RestController
@Tag(name = "Styles")
final class StyleCollectionController {

    /** Hundreds of styles with their revisions. */
    static final int MOST_BYTES = 8 * 1024 * 1024;

    private final Store store;
    private final RequestBodies bodies;
    private final JsonMapper mapper;

    StyleCollectionController(Store store, RequestBodies bodies, JsonMapper mapper) {
        this.store = store;
        this.bodies = bodies;
        this.mapper = mapper;
    }

    /** Exports. */
    @Operation(operationId = "exportStyles", summary = "Export every style with every revision as one document")
    @Needs(Scope.READ)
    @GetMapping(path = "/v1/style-collection", produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<StyleCollection> export(HttpServletRequest request) {
        List<StyleCollection.Kept> kept =
                store.transaction(database -> all(new StyleShelf(database, Caller.of(request))));
        return ResponseEntity.ok().cacheControl(CacheControl.noStore()).body(new StyleCollection(kept));
    }

    private List<StyleCollection.Kept> all(StyleShelf shelf) {
        List<StyleCollection.Kept> kept = new ArrayList<>();
        List<StyleRevision> page = shelf.list("", true, PageAsked.MOST);
        while (!page.isEmpty()) {
            page.forEach(style -> kept.add(whole(shelf, style)));
            page = shelf.list(page.get(page.size() - 1).id(), true, PageAsked.MOST);
        }
        return kept;
    }

    private StyleCollection.Kept whole(StyleShelf shelf, StyleRevision latest) {
        List<StyleCollection.KeptRevision> revisions = IntStream.rangeClosed(1, latest.revision())
                .mapToObj(number -> shelf.get(latest.id(), Optional.of(number)))
                .map(revision -> new StyleCollection.KeptRevision(
                        revision.revision(), revision.madeAt(), revision.madeBy(), mapper.readTree(revision.body())))
                .toList();
        return new StyleCollection.Kept(latest.id(), latest.archived(), revisions);
    }

    /** Imports: all of the document, or nothing of it. */
    @Operation(operationId = "importStyles", summary = "Import a document of styles, all of it or nothing")
    @Needs(Scope.STYLE)
    @PostMapping(path = "/v1/style-collection", produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<StyleAnswer.Imported> load(HttpServletRequest request) throws IOException {
        List<List<StyleRevision>> styles = StyleImport.read(bodies.parse(bodies.bytes(request, MOST_BYTES)));
        int revisions = store.transaction(database -> {
            StyleShelf shelf = new StyleShelf(database, Caller.of(request));
            return styles.stream().mapToInt(shelf::restore).sum();
        });
        return ResponseEntity.ok()
                .cacheControl(CacheControl.noStore())
                .body(new StyleAnswer.Imported(styles.size(), revisions));
    }
}
