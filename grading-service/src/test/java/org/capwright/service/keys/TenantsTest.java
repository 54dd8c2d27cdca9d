package org.capwright.service.keys;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.capwright.service.KeptService;
import org.capwright.service.http.access.Caller;
import org.capwright.service.http.access.Scope;
import org.capwright.service.store.Databases;
import org.capwright.service.store.Store;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import tools.jackson.databind.JsonNode;

/** Two tenants on one installation. The calls are those of the served description, so that a new one cannot be forgotten. */
@Order(1)
class TenantsTest {

    private static final String OPERATOR = "an operator's secret of some length";

    private static final String SHOP = "https://shop.example";

    private static final String GOWN = """
        {"units":"cm","baseSize":"40","sizes":["38","40"],
         "sleeve":{"bicep":36,"length":60,"capHeight":13.5,"capOutward":1.9,"capInward":1.2},
         "underSleeve":{"wrist":19}}
        """;

    private static final Map<Databases, KeptService> SERVICES = new EnumMap<>(Databases.class);

    @AfterAll
    static void stop() {
        SERVICES.values().forEach(KeptService::stop);
    }

    private static KeptService on(Databases kind) {
        return SERVICES.computeIfAbsent(
                kind,
                database -> KeptService.started(
                        database.empty(),
                        "--capwright.operator-key=" + OPERATOR,
                        "--capwright.origins=https://studio.example, https://Desk.example:8443"));
    }

    /** What a tenant has. */
    private record Tenant(String key, String keyId, String style, String order, String batch, String webhook) {}

    private static JsonNode key(KeptService service, String by, String tenant, String scopes) {
        return made(
                service,
                by,
                "{\"name\":\"desk of " + tenant + "\",\"scopes\":[" + scopes + "],\"tenant\":\"" + tenant + "\"}");
    }

    private static JsonNode made(KeptService service, String by, String key) {
        KeptService.Answer made = send(service, "POST", "/v1/keys", key, by);
        assertEquals(201, made.status(), made.text());
        return made.json();
    }

    private static Tenant tenant(KeptService service, String name) {
        JsonNode made = key(service, OPERATOR, name, "\"read\",\"style\",\"order\",\"admin\"");
        String key = made.get("secret").stringValue();
        String style = "gown-of-" + name;
        assertEquals(201, send(service, "PUT", "/v1/styles/" + style, GOWN, key).status());
        String order = send(service, "POST", "/v1/styles/" + style + "/orders", "{\"size\":\"40\"}", key)
                .json()
                .get("order")
                .get("id")
                .stringValue();
        String batch = service.send(
                        "POST",
                        "/v1/order-batches",
                        "{\"style\":\"" + style + "\",\"size\":\"40\"}",
                        "Authorization",
                        "Bearer " + key,
                        "Content-Type",
                        "application/x-ndjson",
                        "Prefer",
                        "respond-async")
                .json()
                .get("id")
                .stringValue();
        String webhook = send(service, "POST", "/v1/webhooks", "{\"url\":\"https://" + name + ".invalid/\"}", key)
                .json()
                .get("webhook")
                .get("id")
                .stringValue();
        return new Tenant(key, made.get("key").get("id").stringValue(), style, order, batch, webhook);
    }

    private static KeptService.Answer send(KeptService service, String method, String path, String body, String key) {
        return service.send(method, path, body, "Authorization", "Bearer " + key);
    }

    /** A call of the description. */
    private record Call(String method, String template, String scope, boolean publishable) {

        /** The address of what a tenant has. */
        String path(Tenant tenant) {
            String path = template.replace("{revision}", "1")
                    .replace("{format}", "pdf")
                    .replace("{message}", "msg_none");
            return Map.of(
                            "styles",
                            tenant.style(),
                            "orders",
                            tenant.order(),
                            "order-batches",
                            tenant.batch(),
                            "webhooks",
                            tenant.webhook(),
                            "keys",
                            tenant.keyId())
                    .entrySet()
                    .stream()
                    .filter(kind -> template.startsWith("/v1/" + kind.getKey() + "/"))
                    .map(kind -> path.replace("{id}", kind.getValue()))
                    .findFirst()
                    .orElse(path.replace("{id}", "women-en-13402-3-bust"));
        }

        boolean ofATenant() {
            return template.contains("{id}") && !template.startsWith("/v1/size-tables");
        }

        String body() {
            if (method.equals("PUT")) {
                return GOWN;
            } else if (template.endsWith("/orders")) {
                return "{\"size\":\"38\"}";
            } else if (template.endsWith("/states")) {
                return template.startsWith("/v1/order-batches") ? "{\"state\":\"cancelled\"}" : "{\"state\":\"cut\"}";
            }
            return method.equals("POST") && !template.endsWith("/{id}/size-runs") ? "{}" : "";
        }
    }

    private static List<Call> calls(KeptService service) {
        return service.get("/v3/api-docs").json().get("paths").properties().stream()
                .filter(path -> path.getKey().startsWith("/v1/"))
                .flatMap(path -> path.getValue().properties().stream()
                        .map(operation -> new Call(
                                operation.getKey().toUpperCase(Locale.ROOT),
                                path.getKey(),
                                operation.getValue().path("x-scope").asString("none"),
                                operation.getValue().path("x-publishable").asBoolean(false))))
                // Last what makes something of one's own at the same address.
                .sorted(Comparator.comparing(call -> call.method().equals("PUT")))
                .toList();
    }

    @ParameterizedTest
    @EnumSource
    void nobodySeesWhatIsNotTheirs(Databases kind) {
        KeptService service = on(kind);
        Tenant choir = tenant(service, "choir");
        Tenant theatre = tenant(service, "theatre");
        String expired = service.bean(KeyRing.class)
                .make(
                        Caller.OPERATOR,
                        "choir",
                        new KeyRing.Wanted("former desk", Set.of(Scope.values()), Set.of(), Duration.ofSeconds(-1)))
                .text();
        List<Call> calls = calls(service);
        assertTrue(calls.size() >= 25, "found " + calls.size() + " calls");
        Set<String> scopes = new TreeSet<>();
        for (Call call : calls) {
            String path = call.path(choir);
            String name = call.method() + " " + call.template();
            scopes.add(call.scope());
            assertTrue(Scope.find(call.scope()).isPresent(), name + " says which scope it needs");
            KeptService.Answer without = service.send(call.method(), path, call.body());
            assertEquals(401, without.status(), name);
            assertEquals("Bearer realm=\"capwright\"", without.header("WWW-Authenticate"), name);
            for (String wrong : List.of(expired, choir.key() + "x", "cw_0000000000000000_" + "A".repeat(43), "x")) {
                assertEquals(
                        401,
                        send(service, call.method(), path, call.body(), wrong).status(),
                        name);
            }
            if (!call.template().startsWith("/v1/keys")) {
                assertEquals(
                        403,
                        send(service, call.method(), path, call.body(), OPERATOR)
                                .status(),
                        name);
            }
        }
        assertEquals(Set.of("admin", "order", "read", "style"), scopes);
        for (Scope scope : Scope.values()) {
            String others = Set.of(Scope.values()).stream()
                    .filter(other -> other != scope)
                    .map(other -> "\"" + other.word() + "\"")
                    .collect(Collectors.joining(","));
            String lacking =
                    key(service, OPERATOR, "choir", others).get("secret").stringValue();
            calls.stream().filter(call -> call.scope().equals(scope.word())).forEach(call -> {
                KeptService.Answer refused = send(service, call.method(), call.path(choir), call.body(), lacking);
                assertEquals(403, refused.status(), call.toString());
                assertTrue(refused.header("WWW-Authenticate").contains("scope=\"" + scope.word() + "\""));
            });
        }
        String inTheOpen = made(
                        service,
                        OPERATOR,
                        "{\"name\":\"shop form\",\"tenant\":\"choir\",\"origins\":[\"" + SHOP + "\"]}")
                .get("secret")
                .stringValue();
        for (Call call : calls) {
            assertEquals(
                    403,
                    from("https://other.example", service, call, choir, inTheOpen)
                            .status(),
                    call.toString());
            int own = from(SHOP, service, call, choir, inTheOpen).status();
            assertEquals(!call.publishable(), own == 403, own + " " + call);
        }
        List<String> before = seen(service, choir);
        for (Call call : calls) {
            KeptService.Answer foreign = send(service, call.method(), call.path(choir), call.body(), theatre.key());
            if (call.ofATenant() && !call.method().equals("PUT")) {
                assertEquals(404, foreign.status(), call.toString());
            }
            if (call.method().equals("GET") && !call.ofATenant()) {
                assertFalse(foreign.text().contains(choir.order()), call.toString());
                assertFalse(foreign.text().contains(choir.keyId()), call.toString());
                assertFalse(foreign.text().contains("\"id\":\"" + choir.style()), call.toString());
            }
        }
        assertEquals(before, seen(service, choir), "nothing of theirs was changed");
        for (Call call : calls) {
            if (!call.method().equals("DELETE")) {
                int own = send(service, call.method(), call.path(choir), call.body(), choir.key())
                        .status();
                // Of messages there are only such as the tenant does not know the ids of yet.
                boolean there = !call.template().contains("{message}");
                assertFalse(List.of(401, 403, there ? 404 : 500, 500).contains(own), own + " " + call);
            }
        }
    }

    private static KeptService.Answer from(String origin, KeptService service, Call call, Tenant tenant, String key) {
        List<String> headers = new ArrayList<>(List.of("Authorization", "Bearer " + key));
        if (!origin.isEmpty()) {
            headers.addAll(List.of("Origin", origin));
        }
        return service.send(call.method(), call.path(tenant), call.body(), headers.toArray(String[]::new));
    }

    private static List<String> seen(KeptService service, Tenant tenant) {
        return List.of("/v1/styles/" + tenant.style(), "/v1/orders/" + tenant.order(), "/v1/keys", "/v1/orders")
                .stream()
                .map(path -> send(service, "GET", path, "", tenant.key()).text())
                .toList();
    }

    @ParameterizedTest
    @EnumSource
    void keysAreRotatedWithAnOverlapAndEnded(Databases kind) {
        KeptService service = on(kind);
        String admin =
                key(service, OPERATOR, "abbey", "\"admin\"").get("secret").stringValue();
        JsonNode first = key(service, admin, "abbey", "\"read\"");
        String id = first.get("key").get("id").stringValue();
        KeptService.Answer rotated =
                send(service, "POST", "/v1/keys/" + id + "/rotations", "{\"overlapHours\":1}", admin);
        assertEquals(201, rotated.status(), rotated.text());
        String second = rotated.json().get("secret").stringValue();
        for (String good : List.of(first.get("secret").stringValue(), second)) {
            assertEquals(200, send(service, "GET", "/v1/styles", "", good).status());
        }
        String listed = send(service, "GET", "/v1/keys", "", admin).text();
        assertFalse(listed.contains(second.substring(20)), "no secret is shown again");
        assertEquals(3, service.bean(KeyRing.class).list("abbey").size());
        String next = rotated.json().get("key").get("id").stringValue();
        send(service, "POST", "/v1/keys/" + next + "/rotations", "{\"overlapHours\":0}", admin);
        assertEquals(
                401, send(service, "GET", "/v1/styles", "", second).status(), "without an overlap it ends at once");
        assertEquals(204, send(service, "DELETE", "/v1/keys/" + id, "", admin).status());
        assertEquals(
                401,
                send(service, "GET", "/v1/styles", "", first.get("secret").stringValue())
                        .status());
        assertEquals(404, send(service, "DELETE", "/v1/keys/" + id, "", admin).status());
        String trail = send(service, "GET", "/v1/audit", "", admin).text();
        assertTrue(trail.contains("key.rotated") && trail.contains("key.ended"), trail);
    }

    /** What a page of a shop may do, and what is said to its browser (Fetch Standard, sections 3.2.2 and 3.2.3). */
    @ParameterizedTest
    @EnumSource
    void aPublishableKeyTakesOrdersFromItsOriginsAlone(Databases kind) {
        KeptService service = on(kind);
        Tenant tenant = tenant(service, "guild-" + kind.name().toLowerCase(Locale.ROOT));
        String shop = "https://guild-" + kind.name().toLowerCase(Locale.ROOT) + ".example";
        JsonNode made = made(
                service,
                tenant.key(),
                "{\"name\":\"shop form\",\"origins\":[\"" + shop.toUpperCase(Locale.ROOT) + ":443\"]}");
        String key = made.get("secret").stringValue();
        assertTrue(key.startsWith("cwp_"), key);
        assertEquals("[\"" + shop + "\"]", made.get("key").get("origins").toString());
        assertEquals("[\"order\"]", made.get("key").get("scopes").toString());
        String orders = "/v1/styles/" + tenant.style() + "/orders";
        KeptService.Answer asked = service.send(
                "OPTIONS",
                orders,
                "",
                "Origin",
                shop,
                "Access-Control-Request-Method",
                "POST",
                "Access-Control-Request-Headers",
                "authorization");
        assertEquals(shop, asked.header("Access-Control-Allow-Origin"));
        assertEquals(
                Set.of("POST", "OPTIONS"),
                Set.of(asked.header("Access-Control-Allow-Methods").split(",")));
        assertTrue(asked.header("Access-Control-Allow-Headers").contains("Authorization"));
        assertEquals(
                "",
                service.send(
                                "OPTIONS",
                                orders,
                                "",
                                "Origin",
                                "https://other.example",
                                "Access-Control-Request-Method",
                                "POST")
                        .header("Access-Control-Allow-Origin"));
        KeptService.Answer taken =
                service.send("POST", orders, "{\"size\":\"40\"}", "Origin", shop, "Authorization", "Bearer " + key);
        assertEquals(201, taken.status(), taken.text());
        assertEquals(shop, taken.header("Access-Control-Allow-Origin"));
        assertTrue(
                taken.headers().entrySet().stream()
                        .filter(header -> header.getKey().equalsIgnoreCase("Vary"))
                        .anyMatch(header -> header.getValue().contains("Origin")),
                taken.headers().toString());
        KeptService.Answer remade = service.send(
                "POST",
                orders,
                "{\"remakeOf\":\"" + tenant.order() + "\"}",
                "Origin",
                shop,
                "Authorization",
                "Bearer " + key);
        assertEquals(422, remade.status(), "what somebody else was measured by is nobody's in a page");
        String next = send(
                        service,
                        "POST",
                        "/v1/keys/" + made.get("key").get("id").stringValue() + "/rotations",
                        "{\"overlapHours\":0}",
                        tenant.key())
                .json()
                .get("secret")
                .stringValue();
        assertEquals(
                401,
                service.send("POST", orders, "{\"size\":\"40\"}", "Origin", shop, "Authorization", "Bearer " + key)
                        .status());
        assertEquals(
                201,
                service.send("POST", orders, "{\"size\":\"40\"}", "Origin", shop, "Authorization", "Bearer " + next)
                        .status(),
                "the next key is bound to the same origins");
        for (String wrong : List.of("null", shop + ".evil.example", shop.replace("https", "http"), shop + ":444")) {
            assertEquals(
                    403,
                    service.send(
                                    "POST",
                                    orders,
                                    "{\"size\":\"40\"}",
                                    "Origin",
                                    wrong,
                                    "Authorization",
                                    "Bearer " + next)
                            .status(),
                    wrong);
        }
        assertEquals(
                403, send(service, "POST", orders, "{\"size\":\"40\"}", next).status(), "no origin at all");
        for (String origin : List.of("https://studio.example", "https://desk.example:8443")) {
            KeptService.Answer keys = service.send(
                    "OPTIONS", "/v1/keys", "", "Origin", origin, "Access-Control-Request-Method", "DELETE");
            assertEquals(origin, keys.header("Access-Control-Allow-Origin"), "by the setting");
            assertEquals(
                    Set.of("GET", "HEAD", "POST", "OPTIONS"),
                    Set.of(keys.header("Access-Control-Allow-Methods").split(",")),
                    "what is not there is not listed");
        }
    }

    /** Of the secret only a fingerprint is kept. */
    @ParameterizedTest
    @EnumSource
    void noSecretIsInTheDatabase(Databases kind) {
        KeptService service = on(kind);
        String secret = key(service, OPERATOR, "opera", "\"read\"")
                .get("secret")
                .stringValue()
                .substring(20);
        List<String> rows = service.bean(Store.class)
                .transaction(database -> database.sql(
                                "SELECT id || tenant || name || scopes || secret_sha256 FROM api_key WHERE tenant ="
                                        + " 'opera'")
                        .query(String.class)
                        .list());
        assertEquals(1, rows.size());
        assertFalse(rows.get(0).contains(secret));
    }

    @Test
    void whatIsWrongWithAKeyIsNamed() {
        KeptService service = on(Databases.EMBEDDED);
        String admin =
                key(service, OPERATOR, "abbey", "\"admin\"").get("secret").stringValue();
        for (List<String> wrong : List.of(
                List.of(admin, "{\"name\":\"x\",\"scopes\":[]}", "/scopes"),
                List.of(admin, "{\"name\":\"x\",\"scopes\":[\"all\"]}", "/scopes/0"),
                List.of(admin, "{\"name\":\"x\"}", "/scopes"),
                List.of(admin, "{\"name\":\"x\",\"scopes\":[\"read\"],\"origins\":[\"" + SHOP + "\"]}", "/scopes"),
                List.of(admin, "{\"name\":\"x\",\"origins\":[]}", "/origins"),
                List.of(admin, "{\"name\":\"x\",\"origins\":[7]}", "/origins/0"),
                List.of(admin, "{\"name\":\"x\",\"origins\":[\"" + SHOP + "/form\"]}", "/origins"),
                List.of(admin, "{\"name\":\"x\",\"scopes\":[\"read\"],\"tenant\":\"choir\"}", "/tenant"),
                List.of(admin, "{\"name\":\"x\",\"scopes\":[\"read\"],\"days\":0}", "/days"),
                List.of(OPERATOR, "{\"name\":\"x\",\"scopes\":[\"read\"]}", "/tenant"),
                List.of(OPERATOR, "{\"name\":\"x\",\"scopes\":[\"read\"],\"tenant\":\"A b\"}", "/tenant"))) {
            KeptService.Answer refused = send(service, "POST", "/v1/keys", wrong.get(1), wrong.get(0));
            assertEquals(422, refused.status(), wrong.toString());
            assertEquals(
                    wrong.get(2),
                    refused.json().get("violations").get(0).get("field").stringValue());
        }
        assertEquals(400, send(service, "GET", "/v1/keys", "", OPERATOR).status());
        assertEquals(
                400, send(service, "GET", "/v1/keys?tenant=choir", "", admin).status());
        assertEquals(409, KeptService.on(Databases.EMBEDDED).get("/v1/keys").status(), "keys are off there");
        assertThrows(
                IllegalArgumentException.class,
                () -> new KeyRing(service.bean(Store.class), service.bean(Tokens.class), "too short"));
    }
}
