package org.capwright.service.keys;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.http.HttpServletRequest;
import java.io.IOException;
import java.time.Duration;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.capwright.json.problem.FoundViolations;
import org.capwright.json.schema.RequestObject;
import org.capwright.quantity.Unit;
import org.capwright.service.http.RequestBodies;
import org.capwright.service.http.access.Caller;
import org.capwright.service.http.access.Needs;
import org.capwright.service.http.access.Origins;
import org.capwright.service.http.access.Scope;
import org.capwright.service.http.problem.Problem;
import org.capwright.service.http.problem.ProblemException;
import org.capwright.service.http.problem.ProblemKind;
import org.capwright.service.http.problem.WrongParameter;
import org.capwright.words.Text;
import org.springframework.http.CacheControl;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.DeleteMapping;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

/** Makes, lists, rotates and ends keys. */
@RestController
@Tag(name = "Keys")
final class KeyController {

    private static final String ID = "Id of the key.";
    private static final String TENANT = "For the operator: whose keys. Left out by everybody else.";
    private static final String TENANT_RULE =
            "must be 1 to 64 of the characters a to z, 0 to 9 and hyphen, a letter or digit first";

    private final KeyRing ring;
    private final RequestBodies bodies;

    KeyController(KeyRing ring, RequestBodies bodies) {
        this.ring = ring;
        this.bodies = bodies;
    }

    /** Makes a key. */
    @Operation(operationId = "createKey", summary = "Make a key")
    @Needs(value = Scope.ADMIN, operator = true)
    @PostMapping(path = "/v1/keys", produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<KeyAnswer.Made> make(HttpServletRequest request) throws IOException {
        open();
        FoundViolations found = new FoundViolations(Unit.MILLIMETRE);
        RequestObject body = new RequestObject(bodies.read(request), KeySchema.KEY, "", Unit.MILLIMETRE, found);
        Optional<String> name = body.text("name");
        Set<Scope> scopes = body.words("scopes").stream()
                .flatMap(word -> Scope.find(word).stream())
                .collect(Collectors.toCollection(() -> EnumSet.noneOf(Scope.class)));
        Set<String> origins = origins(body);
        if (body.has("origins") && body.has("scopes")) {
            body.refuse("scopes", "has no use beside origins: a publishable key takes orders alone");
        } else if (!body.has("origins") && scopes.isEmpty() && found.isEmpty()) {
            body.refuse("scopes", "must name one scope or more");
        }
        int days = body.whole("days").orElse(KeySchema.USUAL_DAYS);
        Caller caller = Caller.of(request);
        Optional<String> asked = body.text("tenant");
        if (caller.equals(Caller.OPERATOR)) {
            if (asked.filter(KeyRing::isTenant).isEmpty() && !found.names("/tenant")) {
                body.refuse("tenant", TENANT_RULE);
            }
        } else if (asked.filter(tenant -> !tenant.equals(caller.tenant())).isPresent()) {
            body.refuse("tenant", "must be left out; the key is one of your own tenant");
        }
        found.refuse();
        return made(ring.make(
                caller,
                asked.orElse(caller.tenant()),
                new KeyRing.Wanted(
                        name.orElseThrow(),
                        origins.isEmpty() ? scopes : EnumSet.of(Scope.ORDER),
                        origins,
                        Duration.ofDays(days))));
    }

    private static Set<String> origins(RequestObject body) {
        Set<String> origins = new TreeSet<>();
        for (String text : body.texts("origins")) {
            Origins.normal(text)
                    .ifPresentOrElse(
                            origins::add,
                            () -> body.refuse(
                                    "origins",
                                    Text.of("must be origins of web pages such as https://shop.example, without a path;"
                                                    + " {origin} is not one")
                                            .with("origin", text)));
        }
        if (body.has("origins") && origins.isEmpty()) {
            body.refuse("origins", "must name one origin or more");
        }
        return origins;
    }

    private static ResponseEntity<KeyAnswer.Made> made(KeyRing.Made made) {
        return ResponseEntity.status(HttpStatus.CREATED)
                .cacheControl(CacheControl.noStore())
                .body(new KeyAnswer.Made(made.text(), KeyAnswer.of(made.key())));
    }

    /** Lists keys. */
    @Operation(operationId = "listKeys", summary = "List the keys that have not expired")
    @Needs(value = Scope.ADMIN, operator = true)
    @GetMapping(path = "/v1/keys", produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<KeyAnswer.Listing> list(
            HttpServletRequest request,
            @Parameter(description = TENANT) @RequestParam(name = "tenant", defaultValue = "") String tenant) {
        open();
        return ResponseEntity.ok()
                .cacheControl(CacheControl.noStore())
                .body(new KeyAnswer.Listing(ring.list(tenant(request, tenant)).stream()
                        .map(KeyAnswer::of)
                        .toList()));
    }

    /** Makes a key that follows another. */
    @Operation(operationId = "rotateKey", summary = "Make a key that follows another, which stays good for a while")
    @Needs(value = Scope.ADMIN, operator = true)
    @PostMapping(path = "/v1/keys/{id}/rotations", produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<KeyAnswer.Made> rotate(
            HttpServletRequest request,
            @Parameter(description = ID, example = "3f9a0c7718b2d4e5") @PathVariable("id") String id,
            @Parameter(description = TENANT) @RequestParam(name = "tenant", defaultValue = "") String tenant)
            throws IOException {
        open();
        FoundViolations found = new FoundViolations(Unit.MILLIMETRE);
        int hours = new RequestObject(bodies.read(request), KeySchema.ROTATION, "", Unit.MILLIMETRE, found)
                .whole("overlapHours")
                .orElse(KeySchema.USUAL_HOURS);
        found.refuse();
        return made(ring.rotate(Caller.of(request), tenant(request, tenant), id, Duration.ofHours(hours)));
    }

    /** Ends a key at once. */
    @Operation(operationId = "endKey", summary = "End a key at once")
    @Needs(value = Scope.ADMIN, operator = true)
    @DeleteMapping(path = "/v1/keys/{id}")
    ResponseEntity<Void> end(
            HttpServletRequest request,
            @Parameter(description = ID, example = "3f9a0c7718b2d4e5") @PathVariable("id") String id,
            @Parameter(description = TENANT) @RequestParam(name = "tenant", defaultValue = "") String tenant) {
        open();
        ring.end(Caller.of(request), tenant(request, tenant), id);
        return ResponseEntity.noContent().build();
    }

    private static String tenant(HttpServletRequest request, String asked) {
        Caller caller = Caller.of(request);
        if (!caller.equals(Caller.OPERATOR)) {
            if (!asked.isEmpty() && !asked.equals(caller.tenant())) {
                throw WrongParameter.of("tenant", "must be left out; only the operator may name one", asked);
            }
            return caller.tenant();
        }
        if (!KeyRing.isTenant(asked)) {
            throw WrongParameter.of("tenant", TENANT_RULE, asked);
        }
        return asked;
    }

    private void open() {
        if (!ring.closed()) {
            throw new ProblemException(Problem.of(
                    ProblemKind.CONFLICT,
                    "Keys are off: the setting capwright.operator-key turns them on. Until then the service answers"
                            + " this machine alone, without keys."));
        }
    }
}
