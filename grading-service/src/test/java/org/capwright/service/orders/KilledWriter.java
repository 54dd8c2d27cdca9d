package org.capwright.service.orders;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.Logger;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.capwright.service.http.JsonMapping;
import org.capwright.service.http.RequestBodies;
import org.capwright.service.http.access.Caller;
import org.capwright.service.jobs.Scheduling;
import org.capwright.service.store.Store;
import org.capwright.service.webhooks.Announcements;
import org.slf4j.LoggerFactory;
import org.springframework.context.annotation.AnnotationConfigApplicationContext;
import org.springframework.core.env.MapPropertySource;
import tools.jackson.databind.json.JsonMapper;

/** A program that takes orders until it is killed, and says of each what it has acknowledged. It is the service without its web server. */
final class KilledWriter {

    static final String STYLE = "killed-gown";

    static final int LINES_OF_A_JOB = 40;

    private static final int DESKS = 3;

    private KilledWriter() {}

    static AnnotationConfigApplicationContext service(String store) {
        // Without Spring Boot everything would be said.
        ((Logger) LoggerFactory.getLogger(org.slf4j.Logger.ROOT_LOGGER_NAME)).setLevel(Level.ERROR);
        AnnotationConfigApplicationContext context = new AnnotationConfigApplicationContext();
        context.getEnvironment()
                .getPropertySources()
                .addFirst(new MapPropertySource(
                        "test",
                        Map.of(
                                "capwright.store",
                                store,
                                "capwright.sign-of-life",
                                "PT1S",
                                "capwright.keep-batches",
                                "P7D")));
        context.register(
                JsonMapping.class,
                RequestBodies.class,
                Store.class,
                OrderDesk.class,
                OrderOnLine.class,
                BatchDesk.class,
                BatchParts.class,
                BatchEnd.class,
                Scheduling.class,
                Announcements.class);
        context.scan("org.capwright.service.sizerun");
        context.refresh();
        return context;
    }

    /** Takes the setting of the store and the number of the round. */
    public static void main(String[] arguments) {
        AnnotationConfigApplicationContext context = service(arguments[0]);
        OrderDesk desk = context.getBean(OrderDesk.class);
        JsonMapper mapper = context.getBean(JsonMapper.class);
        PrintStream out = System.out;
        AtomicInteger next = new AtomicInteger();
        out.println("job " + arguments[1] + " " + job(context, arguments[1]));
        for (int i = 0; i < DESKS; i++) {
            new Thread(() -> {
                        while (true) {
                            String key = "round-" + arguments[1] + "-order-" + next.incrementAndGet();
                            OrderDesk.Taken taken =
                                    desk.take(Caller.LOCAL, STYLE, mapper.readTree("{\"size\":\"40\"}"), key(key));
                            out.println("taken " + key + " " + taken.id());
                            desk.change(Caller.LOCAL, taken.id(), OrderState.CUT);
                            out.println("cut " + key + " " + taken.id());
                        }
                    })
                    .start();
        }
    }

    /** A batch that runs as a job beside the orders. Every line has a key, as every order has here. */
    private static String job(AnnotationConfigApplicationContext context, String round) {
        String lines = IntStream.range(0, LINES_OF_A_JOB)
                .mapToObj(i -> "{\"style\":\"" + STYLE + "\",\"size\":\"40\",\"idempotencyKey\":\"round-" + round
                        + "-line-" + i + "\"}")
                .collect(Collectors.joining("\n"));
        try {
            return context.getBean(BatchDesk.class)
                    .receive(
                            Caller.LOCAL,
                            new BatchLines(
                                    new ByteArrayInputStream(lines.getBytes(StandardCharsets.UTF_8)),
                                    OrderOnLine.LONGEST),
                            Optional.empty())
                    .id();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static Optional<IdempotencyKey> key(String text) {
        return IdempotencyKey.of(Optional.of(text), STYLE, new byte[0]);
    }
}
