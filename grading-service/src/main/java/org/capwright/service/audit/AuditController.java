package org.capwright.service.audit;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.http.HttpServletRequest;
import java.util.List;
import java.util.Optional;
import org.capwright.service.http.PageAsked;
import org.capwright.service.http.access.Caller;
import org.capwright.service.http.access.Needs;
import org.capwright.service.http.access.Scope;
import org.capwright.service.store.AuditTrail;
import org.capwright.service.store.Store;
import org.springframework.http.CacheControl;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RestController;

/** Shows the audit trail. */
@RestController
@Tag(name = "Audit")
final class AuditController {

    private final Store store;

    AuditController(Store store) {
        this.store = store;
    }

    /** Lists entries. */
    @Operation(operationId = "listAuditTrail", summary = "List what was done with styles, orders and keys")
    @Needs(Scope.ADMIN)
    @GetMapping(path = "/v1/audit", produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<AuditAnswer> list(HttpServletRequest request, PageAsked page) {
        Optional<Long> before = page.after().map(AuditController::number);
        List<AuditTrail.Entry> found = store.transaction(
                database -> AuditTrail.list(database, Caller.of(request).tenant(), before, page.limit() + 1));
        return ResponseEntity.ok()
                .cacheControl(CacheControl.noStore())
                .body(new AuditAnswer(
                        page.shown(found).stream().map(AuditAnswer.Entry::of).toList(),
                        page.next(found, entry -> Long.toString(entry.number()))));
    }

    private static long number(String place) {
        try {
            return Long.parseLong(place);
        } catch (NumberFormatException e) {
            throw PageAsked.wrongCursor(place);
        }
    }
}
