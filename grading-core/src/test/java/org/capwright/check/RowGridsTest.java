package org.capwright.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.capwright.Sample;
import org.capwright.tables.SizeTables;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Straight-line grades that a room has rounded to its ruler. The grids are those of rulers and tapes: common practice, no source. Invented figures, seeded. */
class RowGridsTest {

    private static final int SHEETS = Sample.of(50, 2000);

    /** A grade that follows bodies: straight lines over five to eight sizes. */
    private static double[][] straight(Random random, int sizes) {
        double bicep = between(random, 320, 380);
        double jump = between(random, 12.2, 14.5);
        double armhole = between(random, 420, 480);
        double ease = between(random, 30, 42);
        double armholeJump = between(random, 14, 18);
        double[][] lines = {
            {bicep, jump},
            {bicep * between(random, 0.34, 0.42), jump * 0.38},
            {between(random, 570, 620), between(random, 1, 4)},
            {armhole, armholeJump},
            {armhole + ease, armholeJump},
            {bicep * 0.8, between(random, 7, 9)},
            {bicep * 0.55, between(random, 3, 6)}
        };
        double[][] figures = new double[lines.length][sizes];
        for (int r = 0; r < lines.length; r++) {
            for (int i = 0; i < sizes; i++) {
                figures[r][i] = lines[r][0] + (i - 2) * lines[r][1];
            }
        }
        return figures;
    }

    /** Draws until the grade itself, unrounded, raises no alarm. */
    private static double[][] sound(Random random) {
        double[][] figures = straight(random, 5 + random.nextInt(3));
        while (!SeededFaults.alarms(rounded(figures, 1e-6)).isEmpty()) {
            figures = straight(random, 5 + random.nextInt(3));
        }
        return figures;
    }

    private static double between(Random random, double least, double most) {
        return least + (most - least) * random.nextDouble();
    }

    private static final List<CheckedMeasure> ROWS = List.of(
            CheckedMeasure.BICEP,
            CheckedMeasure.CAP_HEIGHT,
            CheckedMeasure.LENGTH,
            CheckedMeasure.ARMHOLE,
            CheckedMeasure.CAP_LINE,
            CheckedMeasure.ELBOW,
            CheckedMeasure.WRIST);

    private static CheckedGrade rounded(double[][] figures, double grid) {
        List<CheckedSize> sizes = new ArrayList<>();
        for (int i = 0; i < figures[0].length; i++) {
            Map<CheckedMeasure, Double> values = new EnumMap<>(CheckedMeasure.class);
            for (int r = 0; r < ROWS.size(); r++) {
                values.put(ROWS.get(r), grid * Math.rint(figures[r][i] / grid));
            }
            sizes.add(new CheckedSize(Integer.toString(34 + 2 * i), values));
        }
        return new CheckedGrade(sizes, 2, Optional.empty(), RowGrids.of(sizes, Map.of()))
                .against(SizeTables.find("women-en-13402-3-bust"));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.5, 1, 2, 2.5, 5, 25.4 / 16, 25.4 / 8, 25.4 / 4})
    void aRoomThatRoundsIsNotScolded(double grid) {
        List<String> alarms = new ArrayList<>();
        for (int seed = 0; seed < SHEETS; seed++) {
            CheckedGrade grade = rounded(sound(new Random(seed)), grid);
            List<Finding> found = SeededFaults.alarms(grade);
            if (!found.isEmpty()) {
                alarms.add("seed " + seed + " " + found.get(0));
            }
        }
        assertTrue(alarms.size() < 0.01 * SHEETS, alarms.size() + " of " + SHEETS + ": " + alarms);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.5, 1, 2, 2.5, 5, 25.4 / 16, 25.4 / 8, 25.4 / 4})
    void aSlipLargerThanTheGridIsNamed(double grid) {
        List<String> missed = new ArrayList<>();
        for (int seed = 0; seed < SHEETS; seed++) {
            Random random = new Random(seed);
            double[][] figures = sound(random);
            int row = random.nextInt(ROWS.size());
            int size = random.nextInt(figures[0].length);
            figures[row][size] += (random.nextBoolean() ? 1 : -1) * (2 * grid + between(random, 3, 8));
            CheckedGrade grade = rounded(figures, grid);
            List<Finding> found = SeededFaults.alarms(grade);
            boolean named = found.stream()
                    .anyMatch(finding -> finding.subject() == ROWS.get(row)
                            && finding.sizes().contains(grade.label(size)));
            if (!named) {
                missed.add("seed " + seed + " " + ROWS.get(row) + " of " + grade.label(size) + ": " + found);
            }
        }
        assertTrue(missed.size() <= 0.02 * SHEETS, missed.size() + " of " + SHEETS + ": " + missed);
    }

    @Test
    void aRowShowsTheGridThatNearlyAllOfItLiesOn() {
        List<CheckedSize> sizes = new ArrayList<>();
        double[] bicep = {13.75, 14.25, 14.5, 15, 15.25};
        double[] length = {23, 23.125, 23.25, 23.5, 23.75};
        for (int i = 0; i < bicep.length; i++) {
            sizes.add(new CheckedSize(
                    "" + i, Map.of(CheckedMeasure.BICEP, bicep[i] * 25.4, CheckedMeasure.LENGTH, length[i] * 25.4)));
        }
        assertEquals(25.4 / 4, RowGrids.of(sizes, Map.of()).steps().get(CheckedMeasure.LENGTH), 1e-9);
        assertEquals(0, RowGrids.of(sizes, Map.of()).leeway(CheckedMeasure.LENGTH, 23.125 * 25.4), 1e-9);
        assertEquals(25.4 / 8, RowGrids.of(sizes, Map.of()).leeway(CheckedMeasure.LENGTH, 23.75 * 25.4), 1e-9);
    }
}
