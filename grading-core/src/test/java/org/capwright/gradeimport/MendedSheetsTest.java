package org.capwright.gradeimport;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import org.capwright.Sample;
import org.capwright.check.Cause;
import org.capwright.check.CheckedGrade;
import org.capwright.check.CheckedMeasure;
import org.capwright.check.Finding;
import org.capwright.check.GradeChecks;
import org.capwright.check.Severity;
import org.capwright.check.Thresholds;
import org.capwright.check.WhatIf;
import org.capwright.exchange.ForeignFile;
import org.capwright.exchange.ForeignInputException;
import org.capwright.quantity.Rounding;
import org.capwright.quantity.Unit;
import org.capwright.tables.SizeTable;
import org.capwright.tables.SizeTables;
import org.junit.jupiter.api.Test;

/** One wrong figure in a sheet: it is named first, and written anew as proposed, or anywhere between the bounds, the sheet has no finding. Each sheet is read from its text before and after. */
class MendedSheetsTest {

    private static final List<String> LABELS = List.of("36", "38", "40", "42", "44", "46");

    private static final List<CheckedMeasure> ROWS = List.of(
            CheckedMeasure.BICEP,
            CheckedMeasure.LENGTH,
            CheckedMeasure.CAP_HEIGHT,
            CheckedMeasure.ARMHOLE,
            CheckedMeasure.ELBOW,
            CheckedMeasure.WRIST);

    private static final List<Double> GRIDS = List.of(1.0, 0.5, 25.4 / 16, 2.0, 25.4 / 8, 5.0);

    private static final Optional<SizeTable> WOMEN = SizeTables.find("women-en-13402-3-bust");

    private record Sheet(Map<CheckedMeasure, double[]> rows, double grid) {

        /** In inches where the grid is one of inches. */
        Unit unit() {
            return Math.abs(grid / 25.4 * 16 - Math.rint(grid / 25.4 * 16)) < 1e-9 ? Unit.INCH : Unit.CENTIMETRE;
        }

        Sheet with(CheckedMeasure measure, int size, double value) {
            Map<CheckedMeasure, double[]> copy = new EnumMap<>(CheckedMeasure.class);
            rows.forEach((row, values) -> copy.put(row, values.clone()));
            copy.get(measure)[size] = value;
            return new Sheet(copy, grid);
        }

        CheckedGrade read(Optional<SizeTable> table) {
            StringBuilder text = new StringBuilder("measure (" + unit().symbol() + ")");
            LABELS.forEach(label -> text.append(',').append(label));
            rows.forEach((row, values) -> {
                text.append('\n').append(row.code());
                for (double value : values) {
                    text.append(String.format(Locale.ROOT, ",%.4f", unit().fromMillimetres(value)));
                }
            });
            ForeignFile file = ForeignFile.of("sheet.csv", text.toString().getBytes(StandardCharsets.UTF_8));
            try {
                return SpecTableReader.read(file, new ForeignOptions(Optional.empty(), Optional.of("40"), Map.of()))
                        .grade()
                        .against(table);
            } catch (ForeignInputException e) {
                throw new AssertionError(text.toString(), e);
            }
        }
    }

    /** Straight rows with jumps as bodies ask for them, rounded to the grid (jumps and figures invented). */
    private static Sheet clean(Random random) {
        double grid = GRIDS.get(random.nextInt(GRIDS.size()));
        double[][] rows = {
            {360, 12.5 + random.nextInt(4)},
            {600, random.nextInt(6)},
            {135, 3.5 + random.nextInt(3)},
            {446, 14 + random.nextInt(4)},
            {300, 8 + random.nextInt(4)},
            {220, 4 + random.nextInt(3)}
        };
        Map<CheckedMeasure, double[]> values = new EnumMap<>(CheckedMeasure.class);
        for (int row = 0; row < rows.length; row++) {
            double[] row1 = new double[LABELS.size()];
            for (int i = 0; i < row1.length; i++) {
                row1[i] = grid * Math.rint((rows[row][0] + (i - 2) * rows[row][1]) / grid);
            }
            values.put(ROWS.get(row), row1);
        }
        return new Sheet(values, grid);
    }

    private static List<Finding> alarms(CheckedGrade grade) {
        return GradeChecks.run(grade, Thresholds.usual()).stream()
                .filter(finding -> finding.severity() != Severity.INFO)
                .toList();
    }

    private static String key(Finding finding) {
        return finding.code() + finding.subject().code() + finding.sizes();
    }

    private static String told(List<WhatIf.Cure> cures, List<Finding> before) {
        return cures.stream()
                        .map(cure -> cure.place().code() + cure.sizes() + " " + cure.before() + " to " + cure.after()
                                + " in " + cure.passing())
                        .toList()
                + " for "
                + before.stream().map(finding -> finding.text(Unit.MILLIMETRE)).toList();
    }

    @Test
    void oneFigureMendsASingleSlip() throws IOException {
        int wanted = Sample.of(12, 300);
        int slips = 0;
        int mended = 0;
        List<String> missed = new ArrayList<>();
        for (long seed = 1; slips < wanted; seed++) {
            Random random = new Random(seed);
            Optional<SizeTable> table = seed % 2 == 0 ? WOMEN : Optional.empty();
            Sheet clean = clean(random);
            CheckedMeasure measure = ROWS.get(random.nextInt(ROWS.size()));
            int size = random.nextInt(LABELS.size());
            double meant = clean.rows.get(measure)[size];
            double wrong = switch (random.nextInt(4)) {
                case 0 ->
                    meant
                            + (random.nextBoolean() ? 1 : -1)
                                    * clean.grid
                                    * Math.rint((6 + random.nextInt(24)) / clean.grid);
                case 1 -> meant / 10;
                case 2 -> meant + (random.nextBoolean() ? 100 : -100);
                default -> meant + (random.nextBoolean() ? 10 : -10);
            };
            if (!(wrong > 0) || !alarms(clean.read(table)).isEmpty()) {
                continue;
            }
            Sheet slipped = clean.with(measure, size, wrong);
            CheckedGrade grade = slipped.read(table);
            List<Finding> before = alarms(grade);
            if (before.isEmpty()) {
                continue;
            }
            slips++;
            Set<String> known = before.stream().map(MendedSheetsTest::key).collect(Collectors.toSet());
            List<WhatIf.Cure> cures =
                    WhatIf.mended(grade, Thresholds.usual(), new Rounding(1)).cures();
            String slip = "seed " + seed + ", grid " + clean.grid + ", " + measure.code() + " of " + LABELS.get(size)
                    + ", " + wrong + " for " + meant;
            if (cures.size() != 1
                    || cures.get(0).place() != measure
                    || !cures.get(0).sizes().equals(List.of(LABELS.get(size)))) {
                missed.add(slip + ": " + told(cures, before));
                continue;
            }
            WhatIf.Cure cure = cures.get(0);
            assertEquals(wrong, cure.before(), 0.01, slip);
            boolean cured = true;
            for (double value : new double[] {
                cure.after(),
                cure.passing().lower(),
                cure.passing().upper(),
                (cure.passing().lower() + cure.passing().upper()) / 2
            }) {
                List<Finding> after = alarms(slipped.with(measure, size, value).read(table));
                assertTrue(
                        after.stream().map(MendedSheetsTest::key).allMatch(known::contains),
                        slip + ": " + value + " creates " + after);
                cured &= after.isEmpty();
            }
            cured &= cure.passing().lower() <= meant + 1e-6 && cure.passing().upper() >= meant - 1e-6;
            Cause first = Cause.of(cures, before).get(0);
            cured &= first.cure().isPresent();
            if (cured) {
                mended++;
            } else {
                missed.add(slip + ": " + told(cures, before));
            }
        }
        Path tables = Path.of("target", "check-bars");
        Files.createDirectories(tables);
        Files.writeString(
                tables.resolve("mended-sheets.txt"), mended + " of " + slips + "\n" + String.join("\n", missed));
        assertTrue(mended >= 0.97 * slips, mended + " of " + slips + ":\n" + String.join("\n", missed));
    }
}
