package org.capwright.contract;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.ServerSocket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/** The packaged service, started once for all tests as a user starts it: the jar, by the java command, on a free port. */
public final class RunningService {

    private static final Duration PATIENCE = Duration.ofSeconds(120);

    private static final RunningService ONLY = started();

    private final String address;
    private final Path log;
    private final Process process;

    private RunningService(String address, Path log, Process process) {
        this.address = address;
        this.log = log;
        this.process = process;
    }

    /** The address of one of several services. */
    public String url() {
        return address;
    }

    /** Whether it still runs. */
    boolean alive() {
        return process.isAlive();
    }

    /** Ends a service that was started for one test alone. */
    public void stop() {
        process.destroy();
    }

    /** What the service has logged so far. */
    static String log() {
        return ONLY.logged();
    }

    /** What one of several services has logged so far. */
    public String logged() {
        try {
            return Files.readString(log);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The address of the service, for example {@code http://localhost:41234}. */
    public static String address() {
        return ONLY.address;
    }

    /** The root folder of the project. */
    public static Path root() {
        return Path.of("").toAbsolutePath().getParent();
    }

    /** Starts another service, with options for the virtual machine. The quick compiler alone is used: most code runs a few times only, and the tests take half the processor time so. */
    public static RunningService started(String... options) {
        try {
            Path log = Files.createTempFile("capwright", ".log");
            int port = freePort();
            List<String> line = new ArrayList<>();
            line.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
            line.add("-XX:TieredStopAtLevel=1");
            line.addAll(List.of(options));
            line.addAll(List.of("-jar", jar().toString()));
            ProcessBuilder command = new ProcessBuilder(line);
            command.environment().put("PORT", Integer.toString(port));
            command.environment()
                    .put(
                            "CAPWRIGHT_STORE",
                            Files.createTempDirectory("capwright-store").toString());
            Process process = command.redirectErrorStream(true)
                    .redirectOutput(log.toFile())
                    .start();
            Runtime.getRuntime().addShutdownHook(new Thread(process::destroy));
            String address = "http://localhost:" + port;
            await(process, address, log);
            return new RunningService(address, log, process);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Path jar() throws IOException {
        Path target = root().resolve("grading-service/target");
        try (var files = Files.list(target)) {
            List<Path> jars = files.filter(f -> f.getFileName().toString().matches("grading-service-.*-exec\\.jar"))
                    .toList();
            if (jars.size() != 1) {
                throw new IllegalStateException("expected one packaged service in " + target + ", found " + jars);
            }
            return jars.get(0);
        }
    }

    private static int freePort() throws IOException {
        try (ServerSocket socket = new ServerSocket(0)) {
            return socket.getLocalPort();
        }
    }

    private static void await(Process process, String address, Path log) throws IOException {
        HttpClient client = HttpClient.newHttpClient();
        HttpRequest health =
                HttpRequest.newBuilder(URI.create(address + "/actuator/health")).build();
        Instant end = Instant.now().plus(PATIENCE);
        while (Instant.now().isBefore(end)) {
            if (!process.isAlive()) {
                throw new IllegalStateException("the service stopped:\n" + Files.readString(log));
            }
            try {
                if (client.send(health, HttpResponse.BodyHandlers.ofString()).statusCode() == 200) {
                    return;
                }
                Thread.sleep(200);
            } catch (IOException e) {
                pause();
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                throw new IllegalStateException(e);
            }
        }
        process.destroyForcibly();
        throw new IllegalStateException("the service does not answer:\n" + Files.readString(log));
    }

    private static void pause() {
        try {
            Thread.sleep(200);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
