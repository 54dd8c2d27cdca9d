package org.capwright.service.http;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Held against Jackson's own writing of numbers. */
class FiguresWriterTest {

    private static final JsonMapper PLAIN = JsonMapper.builder().build();
    private static final JsonMapper QUICK = JsonMapping.mapper();

    private static void requireSame(Object figures) {
        String expected = PLAIN.writeValueAsString(Map.of("a", figures));
        assertEquals(expected, new String(QUICK.writeValueAsBytes(Map.of("a", figures)), StandardCharsets.UTF_8));
        assertEquals(expected, QUICK.writeValueAsString(Map.of("a", figures)));
        JsonNode tree = PLAIN.valueToTree(figures);
        JsonNode same = QUICK.valueToTree(figures);
        assertEquals(tree, same);
    }

    @ParameterizedTest
    @ValueSource(
            doubles = {
                0,
                -0.0,
                1,
                -36.25,
                1e-3,
                9.9e-4,
                1e5,
                1e7,
                1.0 / 3,
                123.4567890123,
                Double.MIN_VALUE,
                Double.MAX_VALUE
            })
    void aFigureIsWrittenAsEver(double figure) {
        requireSame(new double[] {figure, 1});
    }

    @Test
    void emptyListsStayEmpty() {
        requireSame(new double[0]);
        requireSame(new double[][] {{}, {1, 2}});
        requireSame(new double[0][][]);
    }

    @Test
    void longLinesAreWrittenAsEver() {
        Random random = new Random(11);
        double[][] line = new double[5000][];
        double[][][] segments = new double[500][][];
        for (int i = 0; i < line.length; i++) {
            double grid = i % 2 == 0 ? 1e6 : 1e10;
            line[i] = new double[] {Math.rint(random.nextGaussian() * 300 * grid) / grid, random.nextGaussian()};
        }
        for (int i = 0; i < segments.length; i++) {
            segments[i] = new double[][] {line[i], line[i + 1], line[i + 2], line[i + 3]};
        }
        requireSame(line);
        requireSame(segments);
        requireSame(new Object[] {line[0], segments, line[1]});
    }
}
