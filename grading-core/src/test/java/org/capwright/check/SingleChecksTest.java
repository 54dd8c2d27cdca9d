package org.capwright.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.capwright.draft.BaseSleeve;
import org.capwright.draft.StyleSpace;
import org.capwright.geometry.Point;
import org.capwright.quantity.Subject;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** Every check has a case that triggers it and one that does not. Thresholds without a publication are common practice, no source. */
class SingleChecksTest {

    private static Finding only(GradeCheck check, CheckedGrade grade) {
        List<Finding> found = CheckCases.of(check, grade);
        assertEquals(1, found.size(), () -> found.toString());
        assertEquals(check.code(), found.get(0).code());
        return found.get(0);
    }

    @Nested
    class UnevenJump {
        private final UnevenJumpCheck check = new UnevenJumpCheck();

        @Test
        void passesUniformRulesAndRulesThatBreak() {
            assertEquals(
                    List.of(),
                    CheckCases.of(check, CheckCases.row(CheckedMeasure.BICEP, 300, 312, 324, 336, 348, 360)));
            assertEquals(
                    List.of(),
                    CheckCases.of(check, CheckCases.row(CheckedMeasure.BICEP, 300, 308, 316, 324, 334, 344, 354)));
            assertEquals(
                    List.of(),
                    CheckCases.of(check, CheckCases.row(CheckedMeasure.BICEP, 300, 308, 316, 331, 346, 361)));
            assertEquals(
                    List.of(),
                    CheckCases.of(check, CheckCases.row(CheckedMeasure.ARMHOLE, 418, 434, 450, 468, 486, 506)));
        }

        @Test
        void namesTheSizeThatIsOff() {
            Finding found = only(check, CheckCases.row(CheckedMeasure.BICEP, 300, 312, 324, 339, 348, 360, 372));
            assertEquals(List.of("size D"), found.sizes());
            assertEquals(Severity.CAUTION, found.severity());
            assertEquals(
                    336,
                    (found.expected().least().orElseThrow()
                                    + found.expected().greatest().orElseThrow())
                            / 2,
                    1e-9);
            assertEquals(
                    List.of("size A"),
                    only(check, CheckCases.row(CheckedMeasure.BICEP, 297, 312, 324, 336, 348))
                            .sizes());
            assertEquals(
                    List.of("size F"),
                    only(check, CheckCases.row(CheckedMeasure.BICEP, 300, 312, 324, 336, 348, 363))
                            .sizes());
            assertEquals(
                    Severity.STOP,
                    only(check, CheckCases.row(CheckedMeasure.BICEP, 300, 312, 324, 350, 348, 360))
                            .severity());
        }

        @Test
        void findsTwoSizesThatAreOff() {
            List<Finding> found = CheckCases.of(
                    check, CheckCases.row(CheckedMeasure.BICEP, 300, 312, 327, 336, 348, 360, 368, 384, 396, 408));
            assertEquals(
                    List.of("size C", "size G"),
                    found.stream().map(f -> f.sizes().get(0)).sorted().toList());
        }
    }

    @Nested
    class CapEase {
        private CheckedGrade ease(double... values) {
            return CheckCases.sizes(
                    values.length,
                    i -> new CheckedSize(
                            "size " + (char) ('A' + i),
                            Map.of(
                                    CheckedMeasure.CAP_LINE,
                                    450 + 10.0 * i + values[i],
                                    CheckedMeasure.ARMHOLE,
                                    450 + 10.0 * i)));
        }

        @Test
        void driftsWhereArmholeAndCapGrowApart() {
            assertEquals(List.of(), CheckCases.of(new CapEaseDriftCheck(), ease(30, 31, 32, 33, 34)));
            assertEquals(
                    Severity.CAUTION,
                    only(new CapEaseDriftCheck(), ease(30, 28, 26, 24, 22)).severity());
            Finding stop = only(new CapEaseDriftCheck(), ease(10, 18, 26, 34, 42));
            assertEquals(Severity.STOP, stop.severity());
            assertEquals(32, stop.value().orElseThrow(), 1e-9);
            assertTrue(stop.message().toString().startsWith("the cap line grows faster"));
        }

        /** Taught 1 to 1 7/8 in, 25.4 to 47.6 mm: Santa Rosa Junior College, course 74936, 7.2. Industrial view 0 to 1/2 in: Design Loft, 2007. */
        @Test
        void isHeldAgainstWhatIsTaught() {
            CapEaseRangeCheck check = new CapEaseRangeCheck();
            assertEquals(List.of(), CheckCases.of(check, ease(25.4, 30, 35, 40, 47.6)));
            assertEquals(Severity.INFO, only(check, ease(10, 10, 10)).severity());
            Finding negative = only(check, ease(-3, -4, -3));
            assertEquals(Severity.CAUTION, negative.severity());
            assertEquals(-4, negative.value().orElseThrow(), 1e-9);
            assertEquals(List.of("size A", "size C"), negative.sizes());
            assertEquals(Severity.STOP, only(check, ease(-14, 30, 30)).severity());
            assertEquals(Severity.CAUTION, only(check, ease(30, 30, 50)).severity());
            assertEquals(Severity.STOP, only(check, ease(30, 30, 70)).severity());
            assertTrue(only(check, ease(30, 30, 70)).source().toString().contains("Santa Rosa"));
        }
    }

    /** Ease over the arm: 2 in advised (Threads, 2021), 1 1/2 in least (Santa Rosa Junior College). The arm of size 40 is 294.5 mm (ANSUR 1988). */
    @Test
    void bicepEaseIsHeldAgainstTheArm() {
        BodyEaseCheck check = BodyEaseCheck.BICEP;
        assertEquals(List.of(), CheckCases.of(check, ChoirGown.grade()));
        assertEquals(
                Severity.INFO,
                only(check, CheckCases.gownWith(2, s -> s.with(CheckedMeasure.BICEP, 340)))
                        .severity());
        assertEquals(
                Severity.CAUTION,
                only(check, CheckCases.gownWith(2, s -> s.with(CheckedMeasure.BICEP, 330)))
                        .severity());
        Finding tight = only(check, CheckCases.gownWith(2, s -> s.with(CheckedMeasure.BICEP, 300)));
        assertEquals(Severity.STOP, tight.severity());
        assertEquals(5.5, tight.value().orElseThrow(), 1e-9);
    }

    @Test
    void pleatsGetDeeperOrOverlap() {
        assertEquals(
                List.of(),
                CheckCases.of(new PleatDepthDriftCheck(), CheckCases.row(CheckedMeasure.PLEAT_DEPTH, 20, 21, 22, 23)));
        assertEquals(
                Severity.CAUTION,
                only(new PleatDepthDriftCheck(), CheckCases.row(CheckedMeasure.PLEAT_DEPTH, 20, 22, 24))
                        .severity());
        assertEquals(
                Severity.STOP,
                only(new PleatDepthDriftCheck(), CheckCases.row(CheckedMeasure.PLEAT_DEPTH, 20, 26, 32))
                        .severity());
        assertEquals(
                List.of(), CheckCases.of(new PleatLayersCheck(), CheckCases.row(CheckedMeasure.PLEAT_LAYERS, 3, 3, 3)));
        assertEquals(
                List.of("size B", "size C"),
                only(new PleatLayersCheck(), CheckCases.row(CheckedMeasure.PLEAT_LAYERS, 3, 5, 5))
                        .sizes());
        assertEquals(
                Severity.STOP,
                only(new PleatLayersCheck(), CheckCases.row(CheckedMeasure.PLEAT_LAYERS, 3, 3, 9))
                        .severity());
    }

    @Test
    void proportionDrifts() {
        ProportionCheck check = new ProportionCheck();
        assertEquals(List.of(), CheckCases.of(check, ChoirGown.grade()));
        Finding found = only(check, CheckCases.gownWith(5, s -> s.with(CheckedMeasure.CAP_HEIGHT, 135)));
        assertEquals(Severity.CAUTION, found.severity());
        assertEquals(135.0 / 396, found.value().orElseThrow(), 1e-9);
        assertEquals(
                Severity.STOP,
                only(check, CheckCases.gownWith(5, s -> s.with(CheckedMeasure.CAP_HEIGHT, 110)))
                        .severity());
    }

    @Test
    void frontAndBackGrowApart() {
        BalanceCheck check = new BalanceCheck();
        assertEquals(List.of(), CheckCases.of(check, ChoirGown.grade()));
        CheckedGrade backOnly = CheckCases.sizes(
                5,
                i -> new CheckedSize(
                        "size " + i,
                        Map.of(CheckedMeasure.FRONT_WIDTH, 175.0, CheckedMeasure.BACK_WIDTH, 185.0 + 12 * (i - 2))));
        Finding found = only(check, backOnly);
        assertEquals(Severity.CAUTION, found.severity());
        assertTrue(Math.abs(found.value().orElseThrow()) > 11
                && Math.abs(found.value().orElseThrow()) < 13);
    }

    @Nested
    class Lines {
        private CheckedGrade withCap(int size, java.util.function.UnaryOperator<Point> move) {
            return CheckCases.gownWith(size, s -> {
                List<NestLine> lines = new ArrayList<>();
                lines.add(new NestLine(
                        NestLine.Kind.CAP_LINE,
                        s.line(NestLine.Kind.CAP_LINE).orElseThrow().points().stream()
                                .map(move)
                                .toList()));
                return s.withLines(lines);
            });
        }

        @Test
        void nestOrCross() {
            CrossingLinesCheck check = new CrossingLinesCheck();
            assertEquals(List.of(), CheckCases.of(check, ChoirGown.grade()));
            Finding found =
                    only(check, withCap(3, p -> p.plus(new Point(0, -12 * Math.exp(-Math.pow((p.x() - 60) / 25, 2))))));
            assertEquals(List.of("40", "42"), found.sizes());
            assertEquals(Severity.STOP, found.severity());
            // Where the bicep shrinks while the cap grows the lines must cross; that is no stop.
            Finding narrower = only(check, withCap(5, p -> new Point(p.x() * 0.93, p.y())));
            assertEquals(Severity.CAUTION, narrower.severity());
        }

        @Test
        void areFairOrWobble() {
            CurvatureCheck check = new CurvatureCheck();
            assertEquals(List.of(), CheckCases.of(check, ChoirGown.grade()));
            CheckedGrade wobbling = CheckCases.sizes(1, i -> {
                CheckedSize s = ChoirGown.grade().baseSize();
                return new CheckedSize(
                        "40",
                        Map.of(),
                        List.of(new NestLine(
                                NestLine.Kind.CAP_LINE,
                                s.line(NestLine.Kind.CAP_LINE).orElseThrow().points().stream()
                                        .map(p ->
                                                p.plus(new Point(0, p.x() > 50 ? 6 * Math.sin((p.x() - 50) / 12) : 0)))
                                        .toList())));
            });
            Finding found = only(check, wobbling);
            assertEquals("backInflections", found.subject().code());
        }

        /** An outline alone must not be said to wobble: the flattened cap lines of random styles, whose curves have one inflection each. */
        @Test
        void flatteningIsNoWobble() {
            for (long seed = 1; seed <= 300; seed++) {
                List<Point> points = BaseSleeve.draft(StyleSpace.of(seed).dimensions())
                        .capLine()
                        .flattened(0.05);
                for (boolean front : new boolean[] {true, false}) {
                    int changes = CurvatureCheck.signChanges(CurvatureCheck.half(points, front));
                    assertTrue(changes <= 1, "seed " + seed + ": " + changes);
                }
            }
        }
    }

    @Nested
    class Slips {
        @Test
        void unitsAreMistaken() {
            UnitMistakeCheck check = new UnitMistakeCheck();
            assertEquals(List.of(), CheckCases.of(check, ChoirGown.grade()));
            Finding one = only(check, CheckCases.gownWith(1, s -> s.with(CheckedMeasure.BICEP, 34.8)));
            assertEquals(List.of("38"), one.sizes());
            assertEquals("bicep", one.subject().code());
            Finding whole = only(
                    check,
                    CheckCases.gownWith(
                            4,
                            s -> s.with(CheckedMeasure.BICEP, 384 / 25.4)
                                    .with(CheckedMeasure.LENGTH, 610 / 25.4)
                                    .with(CheckedMeasure.CAP_HEIGHT, 143 / 25.4)));
            assertEquals(List.of("44"), whole.sizes());
            assertEquals("size", whole.subject().code());
            Finding row = only(check, CheckCases.row(CheckedMeasure.BICEP, 33.6, 34.8, 36, 37.2));
            assertTrue(row.message().toString().contains("row"));
        }

        @Test
        void sizesAreSwapped() {
            SizesSwappedCheck check = new SizesSwappedCheck();
            assertEquals(List.of(), CheckCases.of(check, ChoirGown.grade()));
            CheckedGrade gown = ChoirGown.grade();
            List<CheckedSize> sizes = new ArrayList<>(gown.sizes());
            sizes.set(1, gown.sizes().get(4).labelled("38"));
            sizes.set(4, gown.sizes().get(1).labelled("44"));
            Finding whole = only(check, gown.with(sizes));
            assertEquals(List.of("38", "44"), whole.sizes());
            assertEquals("size", whole.subject().code());
            Finding figure = only(check, CheckCases.gownWith(CheckedMeasure.BICEP, 336, 360, 348, 372, 384, 396));
            assertEquals(List.of("38", "40"), figure.sizes());
            assertEquals("bicep", figure.subject().code());
            assertTrue(only(check, CheckCases.row(CheckedMeasure.BICEP, 372, 360, 348))
                    .message()
                    .toString()
                    .contains("large to small"));
        }

        @Test
        void sizesOrFiguresAreMissing() {
            MissingSizeCheck check = new MissingSizeCheck();
            assertEquals(List.of(), CheckCases.of(check, ChoirGown.grade()));
            Finding figure = only(check, CheckCases.gownWith(1, s -> s.without(CheckedMeasure.WRIST)));
            assertEquals("wrist", figure.subject().code());
            Finding blank = only(check, CheckCases.gownWith(1, s -> new CheckedSize("38", Map.of())));
            assertEquals("size", blank.subject().code());
            CheckedGrade gown = ChoirGown.grade();
            List<CheckedSize> sizes = new ArrayList<>(gown.sizes());
            sizes.remove(3);
            Finding leftOut = only(check, new CheckedGrade(sizes, 2, Optional.empty()));
            assertEquals(List.of("40", "44"), leftOut.sizes());
            // A plus range that goes by larger steps of label, with jumps to match none of them twice, is no gap.
            CheckedGrade names = CheckCases.sizes(
                    5,
                    i -> new CheckedSize(
                            List.of("tiny", "small", "medium", "large", "grand").get(i),
                            Map.of(
                                    CheckedMeasure.BICEP, 300 + 12.0 * i + (i > 2 ? 12 : 0),
                                    CheckedMeasure.ARMHOLE, 400 + 16.0 * i + (i > 2 ? 16 : 0))));
            assertEquals(List.of("medium", "large"), only(check, names).sizes());
        }

        @Test
        void aPieceIsMirrored() {
            MirroredPieceCheck check = new MirroredPieceCheck();
            assertEquals(List.of(), CheckCases.of(check, ChoirGown.grade()));
            CheckedGrade grade = CheckCases.sizes(5, i -> {
                double front = i == 3 ? 188 + 6.0 * i : 176 + 6.0 * i;
                double back = i == 3 ? 176 + 6.0 * i : 188 + 6.0 * i;
                return new CheckedSize(
                        "size " + i, Map.of(CheckedMeasure.FRONT_WIDTH, front, CheckedMeasure.BACK_WIDTH, back));
            });
            assertEquals(List.of("size 3"), only(check, grade).sizes());
        }

        /** What a slip makes of the other checks is not told a second time. */
        @Test
        void aSlipIsToldOnce() {
            CheckedGrade grade = CheckCases.gownWith(1, s -> s.with(CheckedMeasure.BICEP, 34.8));
            List<String> stops = GradeChecks.run(grade, Thresholds.usual()).stream()
                    .filter(f -> f.severity() == Severity.STOP)
                    .map(Finding::code)
                    .toList();
            assertEquals(List.of("unit-mistake"), stops);
        }
    }

    /** One figure that fell behind is one wrong figure, not two exchanged ones, wherever it stands and however far it is off. */
    @Test
    void oneWrongFigureIsNoExchange() {
        for (int size = 1; size < 6; size++) {
            for (double off = 1; off <= 9; off++) {
                for (int sign = -1; sign <= 1; sign += 2) {
                    double[] wrists = {180, 182, 184, 186, 188, 190};
                    wrists[size] += sign * off;
                    // Off by one jump a figure equals its neighbour, and off by one and a half both lie as far off the
                    // line.
                    if (off != 3 && off != 4) {
                        assertEquals(
                                List.of(),
                                CheckCases.of(new SizesSwappedCheck(), CheckCases.row(CheckedMeasure.WRIST, wrists)),
                                size + " off by " + sign * off);
                    }
                }
            }
        }
    }

    @Test
    void twoFiguresOfARowExchangedAreStillTold() {
        assertEquals(
                List.of("sizes-swapped"),
                CheckCases.of(
                                new SizesSwappedCheck(),
                                CheckCases.row(CheckedMeasure.WRIST, 180, 182, 186, 184, 188, 190))
                        .stream()
                        .map(Finding::code)
                        .toList());
    }

    /** A row with the wrong sign falls as steadily as the others grow; a row that stands still, or steps down once, is meant. */
    @Test
    void aRowThatFallsWhileTheOthersGrowIsTold() {
        for (CheckedMeasure measure : PlausibilityCheck.GROWING) {
            assertEquals(List.of(measure), fallingBeside(measure, -5, -5, -5, -5, -5), "all the way");
            assertEquals(List.of(measure), fallingBeside(measure, -2, -2, -2, 0, -2), "a little");
            assertEquals(List.of(), fallingBeside(measure, 0, 0, 0, 0, 0), "level");
            assertEquals(List.of(), fallingBeside(measure, 0, 0, -5, 0, 0), "one step");
        }
    }

    private static List<Subject> fallingBeside(CheckedMeasure falling, double... jumps) {
        CheckedGrade grade = CheckCases.sizes(jumps.length + 1, i -> {
            Map<CheckedMeasure, Double> figures = new EnumMap<>(CheckedMeasure.class);
            figures.put(CheckedMeasure.RISE, 140.0);
            for (CheckedMeasure measure : List.of(CheckedMeasure.BICEP, CheckedMeasure.WRIST, CheckedMeasure.LENGTH)) {
                figures.put(measure, 300.0 + 6 * i);
            }
            figures.put(falling, 300 + Arrays.stream(jumps).limit(i).sum());
            return new CheckedSize("size " + i, figures);
        });
        return CheckCases.alarms(new SizesSwappedCheck(), grade).stream()
                .map(Finding::subject)
                .toList();
    }
}
