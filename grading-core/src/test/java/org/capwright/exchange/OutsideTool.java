package org.capwright.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
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

    /**
     * Runs a Python script of the tests to its end, and fails where it does.
     *
     * @param debianPackage the package to install where what it imports is missing
     * @param test the class beside which the script lies
     * @param script its name
     * @param folder where it is put
     * @param arguments what it is given
     */
    public static void runScript(
            String debianPackage, Class<?> test, String script, Path folder, List<String> arguments) {
        Path file = folder.resolve(script);
        try (InputStream in = test.getResourceAsStream(script)) {
            Files.write(file, in.readAllBytes());
        } catch (IOException e) {
            throw new AssertionError(e);
        }
        List<String> command = new ArrayList<>(List.of("/usr/bin/python3", file.toString()));
        command.addAll(arguments);
        Answer answer = run(debianPackage, command);
        assertEquals(0, answer.exit(), answer.output());
    }

    private static String missing(String debianPackage, List<String> command) {
        return command.get(0) + " cannot run: install the Debian package " + debianPackage + " (apt-get install "
                + debianPackage + ")";
    }
}
