package org.capwright.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Random;
import org.capwright.tables.BodyDimension;
import org.capwright.tables.DimensionCurve;
import org.capwright.tables.SizeTable;
import org.capwright.tables.SizeTables;
import org.capwright.tables.TableKind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Every size beside the body it is made for: not how it grows, but whether the arm passes and the sleeve reaches. */
class AbsoluteFitTest {

    private static final List<String> CODES =
            List.of("bicep-ease", "elbow-ease", "wrist-ease", "armhole-ease", "sleeve-length");

    /** An arm of 31.5 cm, elbow 24.0, wrist 15.2, armscye 37.4, length 55 cm. */
    private static final SizeTable WEARER = WearerBody.of(
            "one",
            new EnumMap<>(Map.of(
                    BodyDimension.UPPER_ARM_GIRTH, 315.0,
                    BodyDimension.ELBOW_GIRTH, 240.0,
                    BodyDimension.WRIST_GIRTH, 152.0,
                    BodyDimension.ARMSCYE_GIRTH, 374.0,
                    BodyDimension.ARM_LENGTH, 550.0)));

    private static final Map<CheckedMeasure, Double> SLEEVE = Map.of(
            CheckedMeasure.BICEP, 380.0,
            CheckedMeasure.ELBOW, 285.0,
            CheckedMeasure.WRIST, 200.0,
            CheckedMeasure.ARMHOLE, 440.0,
            CheckedMeasure.LENGTH, 570.0);

    private static List<Finding> fit(CheckedGrade grade) {
        return GradeChecks.run(grade, Thresholds.usual()).stream()
                .filter(finding -> CODES.contains(finding.code()) && finding.severity() != Severity.INFO)
                .toList();
    }

    private static CheckedGrade one(CheckedMeasure measure, double value) {
        return new CheckedGrade(
                        List.of(new CheckedSize("one", SLEEVE).with(measure, value)), 0, java.util.Optional.empty())
                .against(BodyReference.of(WEARER));
    }

    /** Cloth does not pass over what is larger than it, and a sleeve reaches the wrist or it does not; the eases beyond that are common practice, no source. */
    @ParameterizedTest
    @CsvSource({
        "BICEP, 252, bicep-ease, STOP",
        "BICEP, 345, bicep-ease, CAUTION",
        "ELBOW, 235, elbow-ease, STOP",
        "ELBOW, 250, elbow-ease, CAUTION",
        "WRIST, 140, wrist-ease, STOP",
        "WRIST, 158, wrist-ease, CAUTION",
        "ARMHOLE, 365, armhole-ease, STOP",
        "ARMHOLE, 390, armhole-ease, CAUTION",
        "LENGTH, 490, sleeve-length, CAUTION",
        "LENGTH, 640, sleeve-length, CAUTION",
        "LENGTH, 750, sleeve-length, STOP",
        "LENGTH, 390, sleeve-length, CAUTION",
    })
    void whatDoesNotFitIsFound(CheckedMeasure measure, double value, String code, Severity severity) {
        List<Finding> found = fit(one(measure, value));
        assertEquals(List.of(code), found.stream().map(Finding::code).toList());
        assertEquals(severity, found.get(0).severity());
        assertEquals(measure, found.get(0).subject());
        assertTrue(
                found.get(0).expected().least().isPresent()
                        && !found.get(0)
                                .expected()
                                .contains(found.get(0).value().orElseThrow()),
                "the ease that is asked is told");
        assertTrue(
                found.get(0).source().toString().contains("common practice, no source")
                        || found.get(0).source().toString().contains("Santa Rosa")
                        || found.get(0).source().toString().contains("TM 10-227"),
                found.get(0).source().toString());
    }

    @Test
    void whatFitsIsNot() {
        assertEquals(List.of(), fit(one(CheckedMeasure.BICEP, 380)));
        assertEquals(List.of(), fit(one(CheckedMeasure.LENGTH, 530)), "2 cm short of the wrist");
        CheckedGrade shortSleeve = new CheckedGrade(
                        List.of(new CheckedSize(
                                "one",
                                Map.of(
                                        CheckedMeasure.BICEP,
                                        380.0,
                                        CheckedMeasure.LENGTH,
                                        250.0,
                                        CheckedMeasure.WRIST,
                                        350.0))),
                        0,
                        java.util.Optional.empty())
                .against(BodyReference.of(WEARER));
        assertEquals(List.of(), fit(shortSleeve), "a short sleeve is meant to be short");
    }

    @Test
    void theDemoFits() {
        assertEquals(List.of(), fit(ChoirGown.grade()));
    }

    private static final Map<CheckedMeasure, double[]> EASES = new EnumMap<>(Map.of(
            CheckedMeasure.BICEP, new double[] {51, 120},
            CheckedMeasure.ELBOW, new double[] {25, 80},
            CheckedMeasure.WRIST, new double[] {20, 90},
            CheckedMeasure.ARMHOLE, new double[] {40, 110},
            CheckedMeasure.LENGTH, new double[] {-15, 50}));

    /** Runs that are the table's bodies with the usual eases, as in SOURCES.md; every served table of bodies that has an arm row. Rounded to a room's grid, up to 1/4 in. */
    private static List<CheckedGrade> fitting(long seed, int perTable) {
        List<CheckedGrade> runs = new ArrayList<>();
        for (SizeTable table : SizeTables.all()) {
            if (table.info().kind() != TableKind.BODY || table.info().key().isEmpty()) {
                continue;
            }
            Random random = new Random(seed + table.id().hashCode());
            for (int run = 0; run < perTable; run++) {
                double grid = List.of(0.5, 1.0, 2.0, 25.4 / 8, 5.0, 25.4 / 4).get(random.nextInt(6));
                Map<CheckedMeasure, Double> ease = new EnumMap<>(CheckedMeasure.class);
                EASES.forEach(
                        (measure, range) -> ease.put(measure, range[0] + random.nextDouble() * (range[1] - range[0])));
                BodyReference body = BodyReference.of(table);
                List<CheckedSize> sizes = new ArrayList<>();
                for (String label : table.sizes()) {
                    Map<CheckedMeasure, Double> values = new EnumMap<>(CheckedMeasure.class);
                    ease.forEach((measure, more) -> {
                        OptionalDouble figure = body.value(label, JumpBounds.dimension(body, measure));
                        figure.ifPresent(f -> values.put(measure, Math.rint((f + more) / grid) * grid));
                    });
                    if (!values.isEmpty()) {
                        sizes.add(new CheckedSize(label, values));
                    }
                }
                if (!sizes.isEmpty()) {
                    runs.add(new CheckedGrade(sizes, sizes.size() / 2, java.util.Optional.of(body)));
                }
            }
        }
        return runs;
    }

    @Test
    void sleevesWithTheUsualEaseRaiseNoAlarm() {
        List<CheckedGrade> runs = fitting(20261126, 40);
        assertTrue(runs.size() >= 400, "only " + runs.size());
        for (CheckedGrade run : runs) {
            assertEquals(
                    List.of(), fit(run), () -> run.body().orElseThrow().table().id());
        }
    }

    /**
     * Standards that print no arm: the arm of the size is that of the people with its bust, here the class means of 1988 (NATICK/TR-89/044), read off apart from the regression. A sleeve with the
     * usual ease passes, one narrower than the arm by a hand's breadth of cloth stops the grade.
     */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "astm-d5585-11e1-misses",
                "gost-25295-2003-women-outerwear",
                "jis-l-4005-women-bust",
                "en-13402-3-women-bust-classes"
            })
    void standardsWithoutArmsAreHeldAgainstThePeopleOfTheirBust(String id) {
        SizeTable standard = SizeTables.find(id).orElseThrow();
        DimensionCurve arms =
                SizeTables.find("ansur-1988-women-by-bust").orElseThrow().curve(BodyDimension.UPPER_ARM_GIRTH);
        int compared = 0;
        for (String label : standard.sizes()) {
            double bust = standard.value(label, BodyDimension.BUST_GIRTH)
                    .orElseThrow()
                    .millimetres();
            if (!arms.ranges().get(0).contains(bust)) {
                continue;
            }
            double arm = arms.at(bust).millimetres();
            for (double ease : new double[] {55, 90, -25, -60}) {
                CheckedGrade grade = new CheckedGrade(
                                List.of(new CheckedSize(label, Map.of(CheckedMeasure.BICEP, arm + ease))),
                                0,
                                java.util.Optional.empty())
                        .against(BodyReference.of(standard));
                List<Finding> found = fit(grade);
                if (ease > 0) {
                    assertEquals(List.of(), found, id + " " + label);
                } else {
                    assertEquals(1, found.size(), id + " " + label + " " + ease);
                    assertEquals(Severity.STOP, found.get(0).severity());
                    assertTrue(
                            found.get(0).source().toString().contains("NATICK/TR-89/044"),
                            found.get(0).source().toString());
                }
            }
            compared++;
        }
        assertTrue(compared > 4, "only " + compared);
    }

    /** One figure of one size is made as small as the body, or the sleeve ends on the hand: found in that size, of that measure, each time. */
    @Test
    void oneFigureThatDoesNotFitIsFoundInItsSize() {
        Random random = new Random(7);
        int seeded = 0;
        for (CheckedGrade run : fitting(3, 12)) {
            BodyReference body = run.body().orElseThrow();
            int at = random.nextInt(run.sizes().size());
            List<CheckedMeasure> known =
                    List.copyOf(run.sizes().get(at).values().keySet());
            CheckedMeasure measure = known.get(random.nextInt(known.size()));
            if (measure == CheckedMeasure.CAP_EASE) {
                continue;
            }
            double figure = body.value(run.label(at), JumpBounds.dimension(body, measure))
                    .orElseThrow();
            double wrong = measure == CheckedMeasure.LENGTH ? figure + 160 : figure - random.nextInt(20) - 1;
            List<CheckedSize> sizes = new ArrayList<>(run.sizes());
            sizes.set(at, sizes.get(at).with(measure, wrong));
            CheckedGrade faulty = run.with(sizes);
            List<Finding> found = new ArrayList<>();
            BodyEaseCheck.ALL.forEach(check -> found.addAll(check.check(faulty, Thresholds.usual())));
            found.addAll(new SleeveLengthCheck().check(faulty, Thresholds.usual()));
            assertEquals(
                    1,
                    found.stream()
                            .filter(finding -> finding.severity() == Severity.STOP
                                    && finding.subject() == measure
                                    && finding.sizes().equals(List.of(run.label(at))))
                            .count(),
                    () -> body.table().id() + " " + run.label(at) + " " + measure + " " + found);
            seeded++;
        }
        assertTrue(seeded > 100, "only " + seeded);
    }
}
