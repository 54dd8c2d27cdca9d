package org.capwright.service;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.capwright.service.http.JsonMapping;
import org.capwright.service.store.Databases;
import org.springframework.boot.SpringApplication;
import org.springframework.boot.web.server.context.WebServerApplicationContext;
import org.springframework.context.ConfigurableApplicationContext;
import tools.jackson.databind.JsonNode;

/** The whole service on a store of each kind, started once for all tests. */
public final class KeptService {

    private static final HttpClient CLIENT = HttpClient.newHttpClient();
    private static final Map<Databases, KeptService> STARTED = new EnumMap<>(Databases.class);

    /** Copies that are to notice soon that another is dead. */
    private static final String SIGNS = "--capwright.sign-of-life=PT1S";

    private final ConfigurableApplicationContext context;
    private final String store;
    private final int port;

    private KeptService(ConfigurableApplicationContext context, String store) {
        this.context = context;
        this.store = store;
        this.port = ((WebServerApplicationContext) context).getWebServer().getPort();
    }

    /** The service on a kind of database, with whatever other tests have put there: every test uses ids of its own. */
    public static synchronized KeptService on(Databases kind) {
        return STARTED.computeIfAbsent(kind, database -> started(database.empty(), SIGNS));
    }

    /** A service of one's own. */
    public static KeptService started(String store, String... settings) {
        List<String> arguments = new ArrayList<>(List.of("--server.port=0", "--capwright.store=" + store));
        arguments.addAll(List.of(settings));
        return new KeptService(SpringApplication.run(CapwrightService.class, arguments.toArray(String[]::new)), store);
    }

    /** Another copy on the same database. */
    public KeptService copy() {
        return started(store, SIGNS);
    }

    /** The setting of its store. */
    public String store() {
        return store;
    }

    /** Ends it, as a user does. */
    public void stop() {
        context.close();
    }

    /** Where it listens. */
    public int port() {
        return port;
    }

    /** A part of it. */
    public <T> T bean(Class<T> type) {
        return context.getBean(type);
    }

    /** Whether it has a part of that type. */
    public boolean has(Class<?> type) {
        return context.getBeanNamesForType(type).length > 0;
    }

    /** An answer. */
    public record Answer(int status, Map<String, List<String>> headers, byte[] body) {

        /** The body as text. */
        public String text() {
            return new String(body, StandardCharsets.UTF_8);
        }

        /** The body as JSON. */
        public JsonNode json() {
            return JsonMapping.mapper().readTree(body);
        }

        /** The first value of a header, or nothing. */
        public String header(String name) {
            return headers.entrySet().stream()
                    .filter(entry -> entry.getKey().equalsIgnoreCase(name))
                    .map(entry -> entry.getValue().get(0))
                    .findFirst()
                    .orElse("");
        }
    }

    /** Sends a request; headers are names and values in turn. An empty body is none. */
    public Answer send(String method, String path, String body, String... headers) {
        HttpRequest.Builder request = HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + path))
                .method(
                        method,
                        body.isEmpty()
                                ? HttpRequest.BodyPublishers.noBody()
                                : HttpRequest.BodyPublishers.ofString(body));
        if (!body.isEmpty()) {
            request.setHeader("Content-Type", "application/json");
        }
        for (int i = 0; i < headers.length; i += 2) {
            request.setHeader(headers[i], headers[i + 1]);
        }
        try {
            HttpResponse<byte[]> response = CLIENT.send(request.build(), HttpResponse.BodyHandlers.ofByteArray());
            return new Answer(response.statusCode(), response.headers().map(), response.body());
        } catch (IOException e) {
            throw new IllegalStateException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }

    /** Looks. */
    public Answer get(String path) {
        return send("GET", path, "");
    }
}
