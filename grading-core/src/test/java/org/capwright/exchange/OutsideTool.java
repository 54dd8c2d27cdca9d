package org.capwright.exchange;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.concurrent.TimeUnit;

/** Runs a program that this project did not write. A missing program fails the test and says what to install. */
public final class OutsideTool {

    /** What the program wrote, both streams together. */
    public record Answer(int exit, String output) {}

    private OutsideTool() {}

    /**
     * Runs a program to its end.
     *
     * @param debianPackage the package to install where the program is missing
     * @param command program and arguments
     */
    public static Answer run(String debianPackage, List<String> command) {
        try {
            Process process =
                    new ProcessBuilder(command).redirectErrorStream(true).start();
            process.getOutputStream().close();
            String output = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
            if (!process.waitFor(5, TimeUnit.MINUTES)) {
                process.destroyForcibly();
                throw new AssertionError(command.get(0) + " does not end");
            }
            if (output.contains("ModuleNotFoundError")) {
                throw new AssertionError(missing(debianPackage, command));
            }
            return new Answer(process.exitValue(), output);
        } catch (IOException e) {
            throw new AssertionError(missing(debianPackage, command), e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new AssertionError(e);
        }
    }

    private static String missing(String debianPackage, List<String> command) {
        return command.get(0) + " cannot run: install the Debian package " + debianPackage + " (apt-get install "
                + debianPackage + ")";
    }
}
