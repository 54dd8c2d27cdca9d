package org.capwright.service.webhooks;

import java.io.IOException;
import java.net.ConnectException;
import java.net.SocketTimeoutException;
import java.net.UnknownHostException;
import java.time.Instant;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import javax.net.ssl.SSLException;
import org.apache.hc.client5.http.SystemDefaultDnsResolver;
import org.apache.hc.client5.http.classic.methods.HttpPost;
import org.apache.hc.client5.http.config.ConnectionConfig;
import org.apache.hc.client5.http.config.RequestConfig;
import org.apache.hc.client5.http.impl.classic.CloseableHttpClient;
import org.apache.hc.client5.http.impl.classic.HttpClients;
import org.apache.hc.client5.http.impl.io.PoolingHttpClientConnectionManagerBuilder;
import org.apache.hc.core5.http.ClassicHttpResponse;
import org.apache.hc.core5.http.ContentType;
import org.apache.hc.core5.http.io.entity.StringEntity;
import org.apache.hc.core5.util.Timeout;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.stereotype.Component;

/** Sends a message to a webhook. It follows no redirection, reads nothing of an answer but its status, and gives up in good time however slowly the receiver speaks. */
@Component
final class Sender implements AutoCloseable {

    private static final Timeout CONNECTS_WITHIN = Timeout.ofSeconds(5);

    /** Standard Webhooks asks for 15 to 30 s. */
    private static final int ANSWERS_WITHIN = 15;

    private static final int MOST_CONNECTIONS = 32;

    private final boolean anywhere;
    private final ScheduledExecutorService clock = Executors.newSingleThreadScheduledExecutor(work -> {
        Thread thread = new Thread(work, "webhook-deadline");
        thread.setDaemon(true);
        return thread;
    });
    private @Nullable CloseableHttpClient client;

    Sender(@Value("${capwright.webhooks-to-private-networks}") boolean anywhere) {
        this.anywhere = anywhere;
    }

    /** Whether private networks and addresses without TLS are allowed. */
    boolean anywhere() {
        return anywhere;
    }

    /**
     * What came of it.
     *
     * @param status HTTP status code; 0 without an answer
     * @param words in words
     */
    record Outcome(int status, String words) {

        private static final int GONE = 410;

        boolean taken() {
            return status / 100 == 2;
        }

        /** The receiver wants nothing any more. */
        boolean gone() {
            return status == GONE;
        }
    }

    private synchronized CloseableHttpClient client() {
        CloseableHttpClient known = client;
        if (known == null) {
            known = HttpClients.custom()
                    .setConnectionManager(PoolingHttpClientConnectionManagerBuilder.create()
                            .setDnsResolver(anywhere ? SystemDefaultDnsResolver.INSTANCE : new PublicAddresses())
                            .setMaxConnTotal(MOST_CONNECTIONS)
                            .setMaxConnPerRoute(MOST_CONNECTIONS)
                            .setDefaultConnectionConfig(ConnectionConfig.custom()
                                    .setConnectTimeout(CONNECTS_WITHIN)
                                    .setSocketTimeout(Timeout.ofSeconds(ANSWERS_WITHIN))
                                    .build())
                            .build())
                    .setDefaultRequestConfig(RequestConfig.custom()
                            .setConnectionRequestTimeout(CONNECTS_WITHIN)
                            .setResponseTimeout(Timeout.ofSeconds(ANSWERS_WITHIN))
                            .build())
                    .setConnectionReuseStrategy((request, response, context) -> false)
                    .setUserAgent("Capwright")
                    .disableRedirectHandling()
                    .disableAutomaticRetries()
                    .disableCookieManagement()
                    .disableAuthCaching()
                    .disableContentCompression()
                    .build();
            client = known;
        }
        return known;
    }

    Outcome send(Webhook webhook, Delivery delivery) {
        long now = Instant.now().getEpochSecond();
        HttpPost request = new HttpPost(webhook.url());
        request.setHeader("webhook-id", delivery.id());
        request.setHeader("webhook-timestamp", Long.toString(now));
        request.setHeader(
                "webhook-signature",
                webhook.secrets().stream()
                        .map(secret -> WebhookSecret.signature(secret, delivery.id(), now, delivery.payload()))
                        .collect(Collectors.joining(" ")));
        request.setEntity(new StringEntity(delivery.payload(), ContentType.APPLICATION_JSON));
        Future<?> deadline = clock.schedule(request::cancel, ANSWERS_WITHIN, TimeUnit.SECONDS);
        try (ClassicHttpResponse response = client().executeOpen(null, request, null)) {
            return new Outcome(response.getCode(), "answered " + response.getCode());
        } catch (IOException e) {
            return new Outcome(0, request.isCancelled() ? "did not answer in time" : words(e));
        } finally {
            deadline.cancel(false);
        }
    }

    /** In words of our own: a library's may hold addresses. */
    private static String words(IOException e) {
        if (e instanceof UnknownHostException) {
            return "the name is not known, or leads into a private network";
        } else if (e instanceof SocketTimeoutException) {
            return "did not answer in time";
        } else if (e instanceof SSLException) {
            return "no TLS connection: the certificate is not trusted, or not for this name";
        }
        return e instanceof ConnectException ? "nobody listens there" : "the connection broke";
    }

    @Override
    public synchronized void close() throws IOException {
        clock.shutdownNow();
        if (client != null) {
            client.close();
        }
    }
}
