package org.capwright.service;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.util.List;
import java.util.Objects;
import org.springframework.boot.SpringApplication;
import org.springframework.boot.autoconfigure.condition.ConditionalOnProperty;
import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.boot.web.server.context.WebServerApplicationContext;
import org.springframework.context.ApplicationListener;
import org.springframework.stereotype.Component;

/**
 * With {@code --capwright.rehearsal}, the service answers one request of each form to itself and ends. The virtual machine notes which classes that takes, and keeps them in an archive from which later starts
 * are quick (JEP 350).
 */
@Component
@ConditionalOnProperty("capwright.rehearsal")
final class Rehearsal implements ApplicationListener<ApplicationReadyEvent> {

    private static final List<String> FORMS = List.of("application/json", "image/svg+xml", "image/vnd.dxf", "text/csv");

    @Override
    public void onApplicationEvent(ApplicationReadyEvent event) {
        WebServerApplicationContext context = (WebServerApplicationContext) event.getApplicationContext();
        URI address = URI.create("http://127.0.0.1:"
                + Objects.requireNonNull(context.getWebServer()).getPort());
        HttpClient client = HttpClient.newHttpClient();
        try (InputStream example = Rehearsal.class.getResourceAsStream("http/description/example-cm.json")) {
            byte[] body = example == null ? new byte[0] : example.readAllBytes();
            for (String form : FORMS) {
                client.send(
                        HttpRequest.newBuilder(address.resolve("/v1/size-runs"))
                                .header("Content-Type", "application/json")
                                .header("Accept", form)
                                .POST(HttpRequest.BodyPublishers.ofByteArray(body))
                                .build(),
                        HttpResponse.BodyHandlers.discarding());
            }
            client.send(
                    HttpRequest.newBuilder(address.resolve("/actuator/health")).build(),
                    HttpResponse.BodyHandlers.discarding());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        System.exit(SpringApplication.exit(event.getApplicationContext()));
    }
}
