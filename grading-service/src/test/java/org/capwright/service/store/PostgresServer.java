package org.capwright.service.store;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;

/**
 * A real PostgreSQL server of Debian's package, started once for all tests on a free port with its data in a temporary folder. The server refuses to run as root, who starts it as the user
 * postgres. A missing package fails the test: test.sh installs it.
 */
public final class PostgresServer {

    private static final Path PACKAGE = Path.of("/usr/lib/postgresql");
    private static final AtomicInteger DATABASES = new AtomicInteger();
    private static final long PATIENCE = TimeUnit.SECONDS.toNanos(30);

    private static final PostgresServer ONLY = started();

    private final int port;

    private PostgresServer(int port) {
        this.port = port;
    }

    /** The address of a new, empty database. */
    public static String newDatabase() {
        String name = "store_" + DATABASES.incrementAndGet();
        try (Connection connection = DriverManager.getConnection(ONLY.url("postgres"))) {
            connection.createStatement().execute("CREATE DATABASE " + name);
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
        return ONLY.url(name);
    }

    private String url(String database) {
        return "jdbc:postgresql://127.0.0.1:" + port + "/" + database + "?user=capwright";
    }

    private static PostgresServer started() {
        try {
            Path folder = Files.createTempDirectory("capwright-postgres");
            Path data = folder.resolve("data");
            if (root()) {
                run(List.of("chown", "postgres", folder.toString()));
            }
            Path log = folder.resolve("log");
            run(asServerUser(
                    "initdb", "-D", data.toString(), "-U", "capwright", "-A", "trust", "-E", "UTF8", "--no-sync"));
            int port = freePort();
            // Without fsync: what is killed in the tests is the service, never this server.
            Process server = new ProcessBuilder(asServerUser(
                            "postgres",
                            "-D",
                            data.toString(),
                            "-p",
                            Integer.toString(port),
                            "-k",
                            "",
                            "-c",
                            "listen_addresses=127.0.0.1",
                            "-c",
                            "max_connections=400", // many services of the tests at once, each with its own ten
                            "-c",
                            "fsync=off"))
                    .directory(folder.toFile())
                    .redirectErrorStream(true)
                    .redirectOutput(log.toFile())
                    .start();
            Runtime.getRuntime().addShutdownHook(new Thread(() -> end(server, folder)));
            PostgresServer started = new PostgresServer(port);
            started.await(server, log);
            return started;
        } catch (IOException e) {
            throw new UncheckedIOException("install the Debian package postgresql", e);
        }
    }

    private static boolean root() {
        return System.getProperty("user.name").equals("root");
    }

    private static List<String> asServerUser(String program, String... arguments) throws IOException {
        List<String> command = new ArrayList<>();
        if (root()) {
            command.addAll(List.of("setpriv", "--reuid=postgres", "--regid=postgres", "--clear-groups", "--"));
        }
        command.add(programs().resolve(program).toString());
        command.addAll(List.of(arguments));
        return command;
    }

    /** The newest version there is. */
    private static Path programs() throws IOException {
        try (Stream<Path> versions = Files.list(PACKAGE)) {
            return versions.max(Comparator.comparingInt(
                            version -> Integer.parseInt(version.getFileName().toString())))
                    .orElseThrow()
                    .resolve("bin");
        }
    }

    private static void run(List<String> command) throws IOException {
        Process process = new ProcessBuilder(command)
                .directory(Path.of("/tmp").toFile())
                .redirectErrorStream(true)
                .start();
        String said = new String(process.getInputStream().readAllBytes());
        try {
            if (process.waitFor() != 0) {
                throw new IllegalStateException(command + ": " + said);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }

    private static int freePort() throws IOException {
        try (ServerSocket socket = new ServerSocket(0)) {
            return socket.getLocalPort();
        }
    }

    private void await(Process server, Path log) throws IOException {
        long end = System.nanoTime() + PATIENCE;
        while (System.nanoTime() < end && server.isAlive()) {
            try (Connection connection = DriverManager.getConnection(url("postgres"))) {
                connection.createStatement().execute("SELECT 1");
                return;
            } catch (SQLException e) {
                pause();
            }
        }
        throw new IllegalStateException("PostgreSQL does not answer:\n" + Files.readString(log));
    }

    private static void pause() {
        try {
            Thread.sleep(50);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private static void end(Process server, Path folder) {
        server.destroy();
        try {
            if (!server.waitFor(5, TimeUnit.SECONDS)) {
                server.destroyForcibly();
            }
            try (Stream<Path> files = Files.walk(folder)) {
                for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
                    Files.deleteIfExists(file);
                }
            }
        } catch (IOException e) {
            // The system clears its temporary folder.
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
