package org.capwright.report;

import static org.junit.jupiter.api.Assertions.fail;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** A program that reads PDF and that is not ours. A missing one fails the test. */
record Tool(String command, String debianPackage) {

    static final Tool PDFTOPPM = new Tool("pdftoppm", "poppler-utils");
    static final Tool PDFINFO = new Tool("pdfinfo", "poppler-utils");
    static final Tool PDFTOTEXT = new Tool("pdftotext", "poppler-utils");
    static final Tool PDFFONTS = new Tool("pdffonts", "poppler-utils");
    static final Tool QPDF = new Tool("qpdf", "qpdf");
    static final Tool MUTOOL = new Tool("mutool", "mupdf-tools");

    /** What a program printed, and how it ended. */
    record Result(int code, byte[] out, String errors) {
        String text() {
            return new String(out, StandardCharsets.UTF_8);
        }
    }

    Result run(Path folder, String... arguments) throws IOException, InterruptedException {
        List<String> line = new java.util.ArrayList<>(List.of(command));
        line.addAll(List.of(arguments));
        Path errors = Files.createTempFile(folder, command, ".err");
        Process process;
        try {
            process = new ProcessBuilder(line)
                    .directory(folder.toFile())
                    .redirectError(errors.toFile())
                    .start();
        } catch (IOException e) {
            return fail(command + " is missing: install the Debian package " + debianPackage, e);
        }
        process.getOutputStream().close();
        byte[] out = process.getInputStream().readAllBytes();
        return new Result(process.waitFor(), out, Files.readString(errors));
    }
}
