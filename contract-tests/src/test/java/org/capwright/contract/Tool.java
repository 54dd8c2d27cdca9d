package org.capwright.contract;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;

/** A command of the system that reads our files. A missing one fails the test: test.sh installs it. */
public final class Tool {

    private Tool() {}

    /**
     * Runs a command.
     *
     * @param debianPackage where it comes from
     * @param command with its arguments
     * @return what it printed
     */
    public static String run(String debianPackage, List<String> command) {
        try {
            Path out = java.nio.file.Files.createTempFile("tool", ".out");
            Process process = new ProcessBuilder(command)
                    .redirectErrorStream(true)
                    .redirectOutput(out.toFile())
                    .start();
            if (!process.waitFor(120, TimeUnit.SECONDS)) {
                process.destroyForcibly();
                throw new AssertionError(command + " does not end");
            }
            String printed = java.nio.file.Files.readString(out, StandardCharsets.UTF_8);
            if (process.exitValue() != 0) {
                throw new AssertionError(command + " says " + process.exitValue() + ": " + printed
                        + " (is the Debian package " + debianPackage + " installed?)");
            }
            return printed;
        } catch (IOException e) {
            throw new UncheckedIOException("install the Debian package " + debianPackage, e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }
}
