package org.capwright.gradeimport;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.analysis.integration.IterativeLegendreGaussIntegrator;
import org.capwright.check.CheckedGrade;
import org.capwright.check.CheckedMeasure;
import org.capwright.check.NestLine;
import org.capwright.exchange.ForeignFile;
import org.capwright.exchange.ForeignInputException;
import org.capwright.exchange.OutsideTool;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Three sleeves of known measures, written in many ways by ezdxf (Debian package python3-ezdxf) in releases 12 to 2018 of DXF. */
class DrawnElsewhereTest {

    /** Half width, cap height, depth of the hem below the bicep line, half width of the hem, as in the script. */
    private static final double[][] SIZES = {{170, 125, 440, 100}, {180, 130, 450, 105}, {192, 136, 455, 110}};

    @TempDir
    static Path folder;

    @BeforeAll
    static void write() {
        OutsideTool.runScript(
                "python3-ezdxf", DrawnElsewhereTest.class, "write_outlines.py", folder, List.of(folder.toString()));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "lwpolyline-layers",
                "arcs-in-blocks",
                "fold-r12",
                "left-half",
                "scaled-mirrored-nested",
                "grouped",
                "sheet",
                "seen-from-behind",
                "open-at-fold"
            })
    void isMeasuredRight(String name) throws IOException, ForeignInputException {
        check(read(name));
    }

    @Test
    void oneFilePerSizeInInches() throws IOException, ForeignInputException {
        check(read("splines-36", "splines-38", "splines-40"));
    }

    /** Corners whose edges end a little apart, or cross a little, are corners, and no edge of their own. */
    @Test
    void looseCorners() throws IOException, ForeignInputException {
        ForeignGrade read = read("loose-corners");
        for (int i = 0; i < SIZES.length; i++) {
            equal(read, i, CheckedMeasure.BICEP, 2 * SIZES[i][0], 0.7);
            equal(read, i, CheckedMeasure.CAP_HEIGHT, SIZES[i][1], 0.7);
            equal(read, i, CheckedMeasure.LENGTH, SIZES[i][1] + SIZES[i][2], 0.7);
            equal(read, i, CheckedMeasure.WRIST, 2 * SIZES[i][3], 0.7);
        }
    }

    /** Sizes that are listed beside a nest are not given to its outlines by guess. */
    @Test
    void sizesThatNoOutlineIsGiven() throws IOException, ForeignInputException {
        ForeignGrade read = read("unassigned");
        equal(read, 0, CheckedMeasure.BICEP, 2 * SIZES[0][0], 1e-4);
        assertTrue(
                Unread.of(read).get(0).message().toString().contains("36, 38, 40"),
                Unread.of(read).toString());
    }

    @Test
    void splinesWithoutWeights() throws IOException, ForeignInputException {
        ForeignGrade read = read("cubic-splines");
        for (int i = 0; i < SIZES.length; i++) {
            double w = SIZES[i][0];
            double h = SIZES[i][1];
            // B(t) = (3/2 w t (1-t)^2 + 3/2 w t^2 (1-t) + w t^3, h ((1-t)^3 + 3 t (1-t)^2)); its speed integrated.
            double half = new IterativeLegendreGaussIntegrator(8, 1e-12, 1e-12)
                    .integrate(
                            100_000,
                            t -> {
                                double dx = 1.5 * w * (1 - t) * (1 - t) + 3 * w * t * t / 2;
                                double dy = -6 * h * t * (1 - t);
                                return Math.hypot(dx, dy);
                            },
                            0,
                            1);
            assertEquals(
                    2 * half, read.grade().value(i, CheckedMeasure.CAP_LINE).orElseThrow(), 0.02);
            assertEquals(2 * w, read.grade().value(i, CheckedMeasure.BICEP).orElseThrow(), 1e-6);
            assertEquals(h, read.grade().value(i, CheckedMeasure.CAP_HEIGHT).orElseThrow(), 1e-6);
        }
    }

    /** Layers, texts and blocks as workrooms of other countries name them: common practice, no source. */
    @ParameterizedTest
    @CsvSource({
        "hyphened-layers, 36 38 40",
        "underlined-layers, 36 38 40",
        "joined-layers, S M XL",
        "joined-numbers, 104 110 116",
        "numbered-layers, 1 2 3",
        "texts-of-piece-and-size, 36 38 40",
        "texts-in-blocks, 36 38 40",
        "layers-in-blocks, 36 38 40"
    })
    void sizesThatAreNamedOtherwise(String name, String labels) throws IOException, ForeignInputException {
        check(read(name), List.of(labels.split(" ")));
    }

    @Test
    void aSizeWhosePieceHasNoNameIsTold() throws IOException, ForeignInputException {
        assertTrue(says(read("partly-named"), "the drawing names size 38, but not its piece"));
    }

    @Test
    void sleevesOfBothArmsAreOne() throws IOException, ForeignInputException {
        ForeignGrade read = read("pairs");
        assertEquals(List.of(), Unread.of(read));
        assertTrue(says(read, "drawn again"));
        equal(read, 2, CheckedMeasure.BICEP, 2 * SIZES[2][0], 1e-4);
    }

    @Test
    void tellsHowItWasFound() throws IOException, ForeignInputException {
        ForeignGrade fold = read("fold-r12");
        assertEquals(2, fold.grade().base(), "SAMPLE SIZE: 40");
        assertTrue(says(fold, "the fold"));
        assertTrue(says(fold, "sew line on layer 14"));
        assertTrue(says(fold, "UNITS"));
        ForeignGrade whole = read("arcs-in-blocks");
        assertTrue(says(whole, "drawn whole"));
        assertTrue(says(whole, "include the seam allowance"));
        assertTrue(says(read("open-at-fold"), "closed by the fold line"));
    }

    private static boolean says(ForeignGrade read, String words) {
        return read.traces().stream().anyMatch(trace -> trace.words().toString().contains(words));
    }

    private static ForeignGrade read(String... names) throws IOException, ForeignInputException {
        List<ForeignFile> files = new ArrayList<>();
        for (String name : names) {
            files.add(ForeignFile.of(name + ".dxf", Files.readAllBytes(folder.resolve(name + ".dxf"))));
        }
        return OutlineReader.read(files, ForeignOptions.none());
    }

    private static void check(ForeignGrade read) {
        check(read, List.of("36", "38", "40"));
    }

    private static void check(ForeignGrade read, List<String> labels) {
        CheckedGrade grade = read.grade();
        assertEquals(labels, grade.sizes().stream().map(s -> s.label()).toList());
        for (int i = 0; i < SIZES.length; i++) {
            double w = SIZES[i][0];
            double h = SIZES[i][1];
            double radius = (w * w + h * h) / (4 * h);
            double cap = 4 * radius * 2 * Math.atan(h / w);
            equal(read, i, CheckedMeasure.BICEP, 2 * w, 1e-4);
            equal(read, i, CheckedMeasure.CAP_HEIGHT, h, 1e-4);
            equal(read, i, CheckedMeasure.LENGTH, h + SIZES[i][2], 1e-4);
            equal(read, i, CheckedMeasure.WRIST, 2 * SIZES[i][3], 1e-4);
            equal(read, i, CheckedMeasure.FRONT_WIDTH, w, 1e-3);
            equal(read, i, CheckedMeasure.BACK_WIDTH, w, 1e-3);
            equal(read, i, CheckedMeasure.CAP_LINE, cap, 0.02);
            NestLine line = grade.sizes().get(i).line(NestLine.Kind.CAP_LINE).orElseThrow();
            // Every vertex lies on one of the four arcs.
            line.points().forEach(p -> {
                double x = Math.abs(p.x());
                double off = x <= w / 2 + 1e-6
                        ? Math.hypot(x, p.y() - h + radius) - radius
                        : Math.hypot(x - w, p.y() - radius) - radius;
                assertEquals(0, off, 1e-4, () -> p.toString());
            });
        }
    }

    private static void equal(ForeignGrade read, int size, CheckedMeasure measure, double meant, double tolerance) {
        assertEquals(
                meant,
                read.grade().value(size, measure).orElse(Double.NaN),
                tolerance,
                () -> measure + " of size " + size + ": " + read.traces());
    }
}
