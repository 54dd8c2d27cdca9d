package org.capwright.exchange.dxf;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.capwright.exchange.OutsideTool;
import org.capwright.geometry.Point;

/** Drawings as ezdxf (Debian package python3-ezdxf) reads them. */
final class EzdxfReader {

    record Line(String block, String layer, int closed, int count, double area, double[] box, List<Point> points) {}

    record Words(String block, String layer, Point at, String text) {}

    record Dot(String block, String layer, Point at) {}

    record Insert(String block, Point at) {}

    record Drawing(
            String file,
            String version,
            List<String> errors,
            List<String> fixes,
            List<Line> lines,
            List<Words> words,
            List<Dot> dots,
            List<Insert> inserts,
            List<double[]> extents) {}

    private EzdxfReader() {}

    /** Reads areas and boxes of many drawings in one process. */
    static List<Drawing> measure(List<Path> files) {
        return read("measure", files);
    }

    /** Reads every point of many drawings. */
    static List<Drawing> points(List<Path> files) {
        return read("points", files);
    }

    /** Reads every point of one drawing. */
    static Drawing points(byte[] drawing, Path folder) throws IOException {
        Path file = folder.resolve("drawing.dxf");
        Files.write(file, drawing);
        return points(List.of(file)).get(0);
    }

    private static List<Drawing> read(String mode, List<Path> files) {
        List<String> command = new ArrayList<>(List.of("/usr/bin/python3", script().toString(), mode));
        files.forEach(file -> command.add(file.toString()));
        OutsideTool.Answer answer = OutsideTool.run("python3-ezdxf", command);
        if (answer.exit() != 0) {
            throw new AssertionError(answer.output());
        }
        List<Drawing> drawings = new ArrayList<>();
        for (String line : answer.output().split("\n")) {
            String[] f = line.split("\t", -1);
            if (f[0].equals("FILE")) {
                drawings.add(new Drawing(
                        f[1],
                        f[2],
                        new ArrayList<>(),
                        new ArrayList<>(),
                        new ArrayList<>(),
                        new ArrayList<>(),
                        new ArrayList<>(),
                        new ArrayList<>(),
                        new ArrayList<>()));
            } else {
                add(drawings.get(drawings.size() - 1), f);
            }
        }
        return drawings;
    }

    private static void add(Drawing drawing, String[] f) {
        switch (f[0]) {
            case "ERROR" -> drawing.errors.add(f[1]);
            case "FIX" -> drawing.fixes.add(f[1] + " " + f[2]);
            case "POLYLINE" ->
                drawing.lines.add(new Line(
                        f[1],
                        f[2],
                        Integer.parseInt(f[3]),
                        Integer.parseInt(f[4]),
                        Double.parseDouble(f[5]),
                        numbers(f, 6),
                        new ArrayList<>()));
            case "VERTEX" -> drawing.lines.get(drawing.lines.size() - 1).points.add(point(f, 1));
            case "TEXT" -> drawing.words.add(new Words(f[1], f[2], point(f, 3), f[5]));
            case "POINT" -> drawing.dots.add(new Dot(f[1], f[2], point(f, 3)));
            case "INSERT" -> drawing.inserts.add(new Insert(f[1], point(f, 2)));
            case "EXTENTS" -> drawing.extents.add(numbers(f, 1));
            default -> throw new AssertionError(String.join(" ", f));
        }
    }

    private static double[] numbers(String[] fields, int from) {
        double[] numbers = new double[4];
        for (int i = 0; i < 4; i++) {
            numbers[i] = Double.parseDouble(fields[from + i]);
        }
        return numbers;
    }

    private static Point point(String[] fields, int from) {
        return new Point(Double.parseDouble(fields[from]), Double.parseDouble(fields[from + 1]));
    }

    private static Path script() {
        try (InputStream in = EzdxfReader.class.getResourceAsStream("read_drawings.py")) {
            Path file = Files.createTempFile("read_drawings", ".py");
            Files.write(file, in.readAllBytes());
            file.toFile().deleteOnExit();
            return file;
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }
}
