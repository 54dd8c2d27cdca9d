package org.capwright.service.http.traces;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.protobuf.ByteString;
import com.sun.net.httpserver.HttpServer;
import io.micrometer.tracing.Tracer;
import io.opentelemetry.proto.collector.trace.v1.ExportTraceServiceRequest;
import io.opentelemetry.proto.collector.trace.v1.ExportTraceServiceResponse;
import io.opentelemetry.proto.trace.v1.Span;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.capwright.service.KeptService;
import org.capwright.service.store.Databases;
import org.junit.jupiter.api.Test;

/** Spans as a collector gets them: OTLP by HTTP, decoded by the protocol's own published classes. */
class TracesTest {

    /** The example of W3C Trace Context, section 3.2.4. */
    private static final String TRACE = "4bf92f3577b34da6a3ce929d0e0e4736";

    private static final String PARENT = "00f067aa0ba902b7";

    private static final String GOWN = """
        {"units":"cm","baseSize":"40","sizes":["38","40"],
         "sleeve":{"bicep":36.171,"length":60.183,"capHeight":13.5,"capOutward":1.9,"capInward":1.2},
         "underSleeve":{"wrist":19}}
        """;

    @Test
    void withoutTheSettingThereAreNone() {
        assertFalse(KeptService.on(Databases.EMBEDDED).has(Tracer.class));
    }

    @Test
    void aRequestIsASpanOfItsCallersTraceAndHoldsNoMeasurement() throws IOException, InterruptedException {
        BlockingQueue<ExportTraceServiceRequest> received = new LinkedBlockingQueue<>();
        HttpServer collector = collector(received);
        KeptService service = KeptService.started(
                "off",
                "--management.opentelemetry.tracing.export.otlp.endpoint=http://127.0.0.1:"
                        + collector.getAddress().getPort() + "/v1/traces",
                "--management.opentelemetry.tracing.export.schedule-delay=50ms");
        try {
            String traced = "00-" + TRACE + "-" + PARENT + "-01";
            assertTrue(service.has(Tracer.class));
            Span drawn = span(service, received, 200, GOWN, traced);
            assertEquals(TRACE, hex(drawn.getTraceId()));
            assertEquals(PARENT, hex(drawn.getParentSpanId()));
            assertEquals(Span.SpanKind.SPAN_KIND_SERVER, drawn.getKind());
            assertTrue(drawn.getName().contains("/v1/size-runs"), drawn.getName());
            assertTrue(drawn.getEndTimeUnixNano() > drawn.getStartTimeUnixNano());
            Span refused = span(service, received, 422, GOWN.replace("13.5", "-7.239"), traced);
            for (Span span : List.of(drawn, refused)) {
                assertEquals(0, span.getEventsCount(), "no exception, whose message could tell a measurement");
                for (String figure : List.of("36.171", "60.183", "7.239", "361.71")) {
                    assertFalse(span.toString().contains(figure), span.toString());
                }
            }
        } finally {
            service.stop();
            collector.stop(0);
        }
    }

    private static int send(KeptService service, String body, String traced) {
        return service.send("POST", "/v1/size-runs", body, "traceparent", traced)
                .status();
    }

    /** The span of a request that is answered so. */
    private static Span span(
            KeptService service,
            BlockingQueue<ExportTraceServiceRequest> received,
            int status,
            String body,
            String traced)
            throws InterruptedException {
        assertEquals(status, send(service, body, traced));
        for (ExportTraceServiceRequest request = next(received); request != null; request = next(received)) {
            assertTrue(
                    request.getResourceSpans(0).getResource().getAttributesList().stream()
                            .anyMatch(one -> one.getKey().equals("service.name")
                                    && one.getValue().getStringValue().equals("capwright")),
                    "the resource says whose it is");
            Optional<Span> found = request.getResourceSpansList().stream()
                    .flatMap(resource -> resource.getScopeSpansList().stream())
                    .flatMap(scope -> scope.getSpansList().stream())
                    .filter(span -> span.getAttributesList().stream()
                            .anyMatch(one -> one.getValue().getStringValue().equals(Integer.toString(status))))
                    .findFirst();
            if (found.isPresent()) {
                return found.get();
            }
        }
        throw new AssertionError("no span came of a request that was answered " + status);
    }

    private static ExportTraceServiceRequest next(BlockingQueue<ExportTraceServiceRequest> received)
            throws InterruptedException {
        return received.poll(60, TimeUnit.SECONDS);
    }

    private static HttpServer collector(BlockingQueue<ExportTraceServiceRequest> received) throws IOException {
        HttpServer server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
        server.createContext("/v1/traces", exchange -> {
            received.add(ExportTraceServiceRequest.parseFrom(exchange.getRequestBody()));
            byte[] answer = ExportTraceServiceResponse.getDefaultInstance().toByteArray();
            exchange.getResponseHeaders().set("Content-Type", "application/x-protobuf");
            exchange.sendResponseHeaders(200, answer.length == 0 ? -1 : answer.length);
            exchange.close();
        });
        server.start();
        return server;
    }

    private static String hex(ByteString bytes) {
        return HexFormat.of().formatHex(bytes.toByteArray());
    }
}
