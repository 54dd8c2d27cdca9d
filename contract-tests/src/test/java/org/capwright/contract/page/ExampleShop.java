package org.capwright.contract.page;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.capwright.contract.RunningService;

/** {@code examples/shop} on a port of its own, and so on an origin of its own, as its README serves it. */
final class ExampleShop implements AutoCloseable {

    private static final Path FOLDER = RunningService.root().resolve("examples/shop");

    private static final Map<String, String> TYPES =
            Map.of("html", "text/html; charset=utf-8", "css", "text/css", "js", "text/javascript");

    private final HttpServer server;
    private volatile String service = "";
    private volatile String key = "";

    ExampleShop() throws IOException {
        server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
        server.createContext("/", this::answer);
        server.start();
    }

    String origin() {
        return "http://localhost:" + server.getAddress().getPort();
    }

    /** Writes the address of the service and the publishable key into the page, as the README tells. */
    void open(String serviceAddress, String publishableKey) {
        service = serviceAddress;
        key = publishableKey;
    }

    private void answer(HttpExchange exchange) throws IOException {
        String path = exchange.getRequestURI().getPath();
        String name = path.equals("/") ? "index.html" : path.substring(1);
        Path file = FOLDER.resolve(name).normalize();
        boolean there = file.startsWith(FOLDER) && Files.isRegularFile(file);
        byte[] body = there
                ? Files.readString(file)
                        .replace("http://localhost:8080", service)
                        .replace("key=\"\"", "key=\"" + key + "\"")
                        .getBytes(StandardCharsets.UTF_8)
                : new byte[0];
        exchange.getResponseHeaders()
                .set("Content-Type", TYPES.getOrDefault(name.substring(name.lastIndexOf('.') + 1), "text/plain"));
        exchange.sendResponseHeaders(there ? 200 : 404, body.length == 0 ? -1 : body.length);
        exchange.getResponseBody().write(body);
        exchange.close();
    }

    @Override
    public void close() {
        server.stop(0);
    }
}
