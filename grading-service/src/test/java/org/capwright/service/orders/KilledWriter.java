package org.capwright.service.orders;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.Logger;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.SequenceInputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Enumeration;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Executors;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.capwright.service.http.JsonMapping;
import org.capwright.service.http.RequestBodies;
import org.capwright.service.http.access.Caller;
import org.capwright.service.jobs.Scheduling;
import org.capwright.service.store.Store;
import org.capwright.service.webhooks.Announcements;
import org.capwright.words.Language;
import org.slf4j.LoggerFactory;
import org.springframework.boot.convert.ApplicationConversionService;
import org.springframework.context.annotation.AnnotationConfigApplicationContext;
import org.springframework.core.env.MapPropertySource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** A program that takes orders until it is killed, and says of each what it has acknowledged. It is the service without its web server. */
final class KilledWriter {

    static final String STYLE = "killed-gown";

    static final int LINES_OF_A_JOB = 40;

    static final String SIZE = "{\"size\":\"40\"}";

    private static final String WEARER = """
        {"wearer":{"bustGirth":96,"stature":168,"upperArmGirth":%.2f,"armLength":59,"elbowGirth":26},
         "ease":{"bicep":7,"elbow":"15%%","wrist":6,"length":1,"armhole":"14%%","capEase":"4%%"}}
        """;

    private static final int HANDS = 2;

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
                                "PT0.5S",
                                "capwright.keep-batches",
                                "P7D",
                                "capwright.finished-runs",
                                "0B")));
        context.getBeanFactory().setConversionService(ApplicationConversionService.getSharedInstance());
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
        String round = "round-" + arguments[1];
        say("job", round, job(context, arguments[1]));
        new Thread(() -> bySize(context, round + "-size-")).start();
        new Thread(() -> byMeasurements(context, round + "-wearer-")).start();
        new Thread(() -> asAStream(context, round + "-stream-")).start();
    }

    private static void say(String what, String key, String id) {
        System.out.println(what + " " + key + " " + id);
    }

    private static void bySize(AnnotationConfigApplicationContext context, String keys) {
        OrderDesk desk = context.getBean(OrderDesk.class);
        for (int i = 1; ; i++) {
            String id = take(context, keys + i, SIZE).id();
            say("taken", keys + i, id);
            desk.change(Caller.LOCAL, id, OrderState.CUT);
            say("cut", keys + i, id);
        }
    }

    /** No two have the same files. */
    private static void byMeasurements(AnnotationConfigApplicationContext context, String keys) {
        for (int i = 1; ; i++) {
            say(
                    "taken",
                    keys + i,
                    take(context, keys + i, String.format(Locale.ROOT, WEARER, 29 + i % 500 / 100.0))
                            .id());
        }
    }

    static OrderDesk.Taken take(AnnotationConfigApplicationContext context, String key, String order) {
        return context.getBean(OrderDesk.class)
                .take(Caller.LOCAL, STYLE, context.getBean(JsonMapper.class).readTree(order), key(key));
    }

    /** A batch that never ends; an order is acknowledged when its line has been answered. */
    private static void asAStream(AnnotationConfigApplicationContext context, String keys) {
        JsonMapper mapper = context.getBean(JsonMapper.class);
        OrderBatch batch = new OrderBatch(
                context.getBean(OrderOnLine.class), mapper, Executors.newFixedThreadPool(HANDS), 2 * HANDS);
        InputStream lines = new SequenceInputStream(new Enumeration<>() {
            private int sent;

            @Override
            public boolean hasMoreElements() {
                return true;
            }

            @Override
            public InputStream nextElement() {
                return new ByteArrayInputStream((line(keys + ++sent) + "\n").getBytes(StandardCharsets.UTF_8));
            }
        });
        OutputStream answers = new ByteArrayOutputStream() {
            @Override
            public void flush() {
                for (String answer : toString(StandardCharsets.UTF_8).split("\n")) {
                    JsonNode read = mapper.readTree(answer);
                    say(
                            "taken",
                            keys + read.path("line").asInt(),
                            read.path("order").asString("none"));
                }
                reset();
            }
        };
        try {
            batch.take(Caller.LOCAL, new BatchLines(lines, OrderOnLine.LONGEST), Language.ENGLISH, answers);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String line(String key) {
        return "{\"style\":\"" + STYLE + "\",\"size\":\"38\",\"idempotencyKey\":\"" + key + "\"}";
    }

    /** A batch that runs as a job beside the orders. Every line has a key, as every order has here. */
    private static String job(AnnotationConfigApplicationContext context, String round) {
        String lines = IntStream.range(0, LINES_OF_A_JOB)
                .mapToObj(i -> line("round-" + round + "-line-" + i))
                .collect(Collectors.joining("\n"));
        try {
            return context.getBean(BatchDesk.class)
                    .receive(
                            Caller.LOCAL,
                            new BatchLines(
                                    new ByteArrayInputStream(lines.getBytes(StandardCharsets.UTF_8)),
                                    OrderOnLine.LONGEST),
                            Language.ENGLISH,
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
