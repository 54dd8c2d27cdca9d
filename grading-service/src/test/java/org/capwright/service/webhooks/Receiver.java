package org.capwright.service.webhooks;

import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Queue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.Executors;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;

/** A receiver of webhooks as a shop would write one after the text of Standard Webhooks 1.0.0, with nothing of the service's own. */
final class Receiver implements AutoCloseable {

    /** What came. */
    record Message(String id, String timestamp, List<String> signatures, String body) {

        /** Whether one of the signatures was made by a secret. */
        boolean signedBy(String secret) {
            try {
                Mac mac = Mac.getInstance("HmacSHA256");
                mac.init(new SecretKeySpec(Base64.getDecoder().decode(secret.replace("whsec_", "")), "HmacSHA256"));
                mac.update(id.getBytes(StandardCharsets.UTF_8));
                mac.update((byte) '.');
                mac.update(timestamp.getBytes(StandardCharsets.UTF_8));
                mac.update((byte) '.');
                mac.update(body.getBytes(StandardCharsets.UTF_8));
                return signatures.contains("v1," + Base64.getEncoder().encodeToString(mac.doFinal()));
            } catch (GeneralSecurityException e) {
                throw new IllegalStateException(e);
            }
        }
    }

    private final BlockingQueue<Message> came = new LinkedBlockingQueue<>();
    private final Queue<Integer> answers = new ConcurrentLinkedQueue<>();
    private final HttpServer server;

    /** Answers 204 once the given answers have been given. */
    Receiver(Integer... first) {
        answers.addAll(List.of(first));
        try {
            server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        server.setExecutor(Executors.newCachedThreadPool());
        server.createContext("/", exchange -> {
            String body = new String(exchange.getRequestBody().readAllBytes(), StandardCharsets.UTF_8);
            came.add(new Message(
                    exchange.getRequestHeaders().getFirst("webhook-id"),
                    exchange.getRequestHeaders().getFirst("webhook-timestamp"),
                    new ArrayList<>(List.of(exchange.getRequestHeaders()
                            .getFirst("webhook-signature")
                            .split(" "))),
                    body));
            Integer answer = answers.poll();
            if (answer != null && answer / 100 == 3) {
                exchange.getResponseHeaders().set("Location", url("/elsewhere"));
            }
            exchange.sendResponseHeaders(answer == null ? 204 : answer, -1);
            exchange.close();
        });
        server.start();
    }

    String url(String path) {
        return "http://127.0.0.1:" + server.getAddress().getPort() + path;
    }

    /** The next message; waits for it. */
    Message next() {
        try {
            Message message = came.poll(60, TimeUnit.SECONDS);
            if (message == null) {
                throw new AssertionError("nothing came");
            }
            return message;
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    boolean isEmpty() {
        return came.isEmpty();
    }

    @Override
    public void close() {
        server.stop(0);
    }
}
