package org.capwright.tables;

import static org.capwright.tables.SizeTableTest.row;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.stream.LongStream;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Violation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class TableDraftTest {

    private static TableDraft draft(String unit, List<String> sizes, RowDraft... rows) {
        return new TableDraft(
                "house-women",
                "House table",
                "the workshop's own measuring",
                "own",
                "women",
                "customers",
                unit,
                TableKind.BODY,
                "bustGirth",
                sizes,
                List.of(rows));
    }

    private static List<Violation> violations(TableDraft draft) {
        return assertThrows(InvalidMeasuresException.class, draft::build).violations();
    }

    @Test
    void buildsATableInMillimetresMarkedAsTheUsersOwn() {
        SizeTable table = draft(
                        "in", List.of("S", "M"), row("bustGirth", 34, 36), row("upperArmGirth", 11.5, Double.NaN))
                .build();
        assertEquals(
                new TableValue(292.1, Provenance.USER_SUPPLIED),
                table.value("S", BodyDimension.UPPER_ARM_GIRTH).orElseThrow());
        assertTrue(table.value("M", BodyDimension.UPPER_ARM_GIRTH).isEmpty());
        assertEquals(Confidence.NOT_JUDGED, table.info().confidence());
    }

    @Test
    void collectsEveryViolation() {
        TableDraft bad = new TableDraft(
                "House Table",
                " ",
                "s",
                "l",
                "f",
                "p",
                "furlong",
                TableKind.BODY,
                "bust",
                List.of("S", "S"),
                List.of(
                        row("bustGirth", 84),
                        row("bustGirth", 84, 88),
                        row("nose", 1, 2),
                        row("garmentCollarLength", 40, 41)));
        assertEquals(
                List.of(
                        TableSubject.Field.ID,
                        TableSubject.Field.TITLE,
                        new TableSubject.Size(1),
                        TableSubject.Field.UNIT,
                        TableSubject.Field.KEY,
                        new TableSubject.RowValues(0),
                        new TableSubject.RowDimension(1),
                        new TableSubject.RowDimension(2),
                        new TableSubject.RowDimension(3)),
                violations(bad).stream().map(Violation::subject).toList());
    }

    /** Centimetres given as millimetres, the commonest slip. */
    @Test
    void namesTheValueAndTheRangeOfAUnitMistake() {
        List<Violation> found =
                violations(draft("mm", List.of("S", "M"), row("bustGirth", 840, 880), row("upperArmGirth", 27.1, 283)));
        assertEquals(1, found.size());
        assertEquals(new TableSubject.Figure(1, 0), found.get(0).subject());
        assertEquals(Optional.of("27.1 mm"), found.get(0).given());
        assertEquals(
                "upperArmGirth from 100.0 to 700.0 mm would work",
                found.get(0).reason().toString());
    }

    @Test
    void refusesAKeyThatDoesNotGrowAndAGirthThatShrinks() {
        List<Violation> found = violations(draft(
                "cm",
                List.of("S", "M", "L"),
                row("bustGirth", 84, 84, 92),
                row("upperArmGirth", 27, 26, 29),
                row("armLength", 55, 54, 56)));
        assertEquals(
                List.of(new TableSubject.Figure(0, 1), new TableSubject.Figure(1, 1)),
                found.stream().map(Violation::subject).toList());
        assertTrue(found.get(0).reason().toString().contains("above 84.0 cm"), found.toString());
    }

    @Test
    void refusesAKeyWithAGapOrOutsideTheRowsAndAWristWiderThanTheArm() {
        List<Violation> gap = violations(draft("cm", List.of("S", "M"), row("bustGirth", 84, Double.NaN)));
        assertEquals(new TableSubject.Figure(0, 1), gap.get(0).subject());
        List<Violation> missing = violations(draft("cm", List.of("S"), row("upperArmGirth", 27)));
        assertEquals(TableSubject.Field.KEY, missing.get(0).subject());
        List<Violation> wrist = violations(
                draft("cm", List.of("S"), row("bustGirth", 84), row("upperArmGirth", 20), row("wristGirth", 22)));
        assertEquals(new TableSubject.Figure(2, 0), wrist.get(0).subject());
    }

    @Test
    void refusesThePublishedIdsAndHugeInput() {
        TableDraft taken = new TableDraft(
                "women-en-13402-3-bust",
                "t",
                "s",
                "l",
                "f",
                "p",
                "cm",
                TableKind.BODY,
                "bustGirth",
                List.of("S"),
                List.of(row("bustGirth", 84)));
        assertEquals(TableSubject.Field.ID, violations(taken).get(0).subject());
        List<String> sizes = new ArrayList<>();
        for (int i = 0; i < 101; i++) {
            sizes.add("s" + i);
        }
        assertTrue(violations(draft("cm", sizes, new RowDraft("bustGirth", List.of()))).stream()
                .anyMatch(v -> v.subject() == TableSubject.Field.SIZES
                        && v.reason().toString().contains("100")));
    }

    static LongStream seeds() {
        return LongStream.range(0, 200);
    }

    /** One slip put into a good table is found, at its place; the good table passes. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void findsASeededSlipAtItsPlace(long seed) {
        Random random = new Random(seed);
        int n = 2 + random.nextInt(9);
        List<String> sizes = new ArrayList<>();
        List<OptionalDouble> bust = new ArrayList<>();
        List<OptionalDouble> arm = new ArrayList<>();
        double b = 76 + 10 * random.nextDouble();
        for (int i = 0; i < n; i++) {
            sizes.add(Integer.toString(34 + 2 * i));
            bust.add(OptionalDouble.of(b));
            arm.add(OptionalDouble.of(b * 0.32));
            b += 3 + 3 * random.nextDouble();
        }
        draft("cm", sizes, new RowDraft("bustGirth", bust), new RowDraft("upperArmGirth", arm))
                .build();
        int place = random.nextInt(n);
        double value = arm.get(place).getAsDouble();
        double slip = switch (random.nextInt(5)) {
            case 0 -> value * 10;
            case 1 -> value / 10;
            case 2 -> -value;
            case 3 -> Double.NaN;
            default -> Double.POSITIVE_INFINITY;
        };
        arm.set(place, OptionalDouble.of(slip));
        List<Violation> found =
                violations(draft("cm", sizes, new RowDraft("bustGirth", bust), new RowDraft("upperArmGirth", arm)));
        assertTrue(
                found.stream().anyMatch(v -> v.subject().equals(new TableSubject.Figure(1, place))),
                "seed " + seed + ": " + slip + " at " + place + " gave " + found);
    }
}
