package org.capwright.tables;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.apache.commons.math3.fitting.PolynomialCurveFitter;
import org.apache.commons.math3.fitting.WeightedObservedPoints;
import org.capwright.quantity.Unit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Every figure that can be had a second way is checked against that second way. */
class SecondTranscriptionTest {

    private static SizeTable table(String id) {
        return SizeTables.find(id).orElseThrow();
    }

    private static double mm(SizeTable table, String size, TableDimension dimension) {
        return table.value(size, dimension).orElseThrow().millimetres();
    }

    /** Source: summary files of ANSUR 1988 (NATICK/TR-89/044) and ANSUR II 2012 (NATICK/TR-15/007), men and women. */
    @Test
    void classMeansEqualTheSummaryFilesOfTheSurveys() {
        int checked = 0;
        for (Map<String, String> line : TestCsv.read("class-means-summary-files.csv")) {
            SizeTable table = table(line.get("table"));
            String size = line.get("size");
            double expected = Double.parseDouble(line.get("value"));
            if (line.get("dimension").equals("people")) {
                assertEquals(expected, table.people().get(size).doubleValue(), line.toString());
            } else {
                TableDimension dimension =
                        TableDimension.find(line.get("dimension")).orElseThrow();
                assertEquals(expected, mm(table, size, dimension), 1e-9, line.toString());
            }
            checked++;
        }
        int figures = SizeTables.all().stream()
                .filter(t -> t.id().startsWith("ansur"))
                .mapToInt(t -> t.people().size()
                        + t.rows().stream()
                                .filter(r -> t.info().key().orElseThrow() != r.dimension())
                                .mapToInt(r -> r.values().size())
                                .sum())
                .sum();
        assertEquals(figures, checked, "every figure of the eight survey tables has its counterpart");
    }

    /** Recomputed from the surveys' per-person rows, read here by a plain line splitter. */
    @ParameterizedTest
    @CsvSource({
        "ansur-1988-women-by-bust, ansur-1988-women, bustGirth, 20",
        "ansur-1988-women-by-stature, ansur-1988-women, stature, 40",
        "ansur-2012-women-by-bust, ansur-2012-women, bustGirth, 20",
        "ansur-2012-women-by-stature, ansur-2012-women, stature, 40",
    })
    void womensClassMeansEqualTheMeansOverThePeople(String id, String survey, String key, double half) {
        List<Map<String, String>> people = TestCsv.read("survey/" + survey + ".csv.gz");
        SizeTable table = table(id);
        for (String size : table.sizes()) {
            double centre = Double.parseDouble(size);
            List<Map<String, String>> members = people.stream()
                    .filter(person -> {
                        double value = Double.parseDouble(person.get(key));
                        return value >= centre - half && value < centre + half;
                    })
                    .toList();
            assertEquals(members.size(), table.people().get(size), id + " " + size);
            assertTrue(members.size() >= 15, "classes of fewer than 15 people are left out");
            for (Row row : table.rows()) {
                if (row.dimension().id().equals(key)) {
                    continue;
                }
                double mean = members.stream()
                        .mapToDouble(person ->
                                Double.parseDouble(person.get(row.dimension().id())))
                        .average()
                        .orElseThrow();
                assertEquals(
                        mean,
                        mm(table, size, row.dimension()),
                        0.05 + 1e-9,
                        id + " " + size + " " + row.dimension().id());
            }
        }
    }

    /** Source: NHANES 2015-2016 summary, women of 20 years and over: class means by stature, typed a second time from the summary; in cm. */
    @ParameterizedTest
    @CsvSource({
        "148, 382, 31.3, 33.3",
        "156, 1055, 31.9, 34.9",
        "164, 992, 33.1, 36.6",
        "172, 334, 33.3, 37.9",
        "180, 27, 33.0, 39.2",
    })
    void armsByStatureAreThoseOfTheHealthSurvey(String size, int people, double girth, double length) {
        SizeTable table = table("nhanes-2015-2016-women-by-stature");
        assertEquals(people, table.people().get(size));
        assertEquals(10 * girth, mm(table, size, BodyDimension.UPPER_ARM_GIRTH), 1e-9);
        assertEquals(10 * length, mm(table, size, BodyDimension.UPPER_ARM_LENGTH), 1e-9);
        assertEquals(
                new Interval(10 * Integer.parseInt(size) - 40, 10 * Integer.parseInt(size) + 40),
                table.limits(size, BodyDimension.STATURE).orElseThrow());
    }

    /**
     * The class means against what the same summary states apart from them: means of all women (arm girth 32.42 cm, arm length 35.66 cm) and slopes on stature (0.11142 with a
     * standard error of 0.01483, 0.21618 with 0.00470).
     */
    @ParameterizedTest
    @CsvSource({"upperArmGirth, 324.2, 0.11142, 0.01483", "upperArmLength, 356.6, 0.21618, 0.00470"})
    void armsByStatureGiveTheMeanAndTheSlopeOfTheSummary(String id, double mean, double slope, double error) {
        SizeTable table = table("nhanes-2015-2016-women-by-stature");
        TableDimension dimension = TableDimension.find(id).orElseThrow();
        WeightedObservedPoints points = new WeightedObservedPoints();
        double people = 0;
        double sum = 0;
        for (String size : table.sizes()) {
            int n = table.people().get(size);
            points.add(n, mm(table, size, BodyDimension.STATURE), mm(table, size, dimension));
            people += n;
            sum += n * mm(table, size, dimension);
        }
        // 35 of 2825 women are in classes too small to be kept, and means have one digit.
        assertEquals(mean, sum / people, 1);
        double[] line = PolynomialCurveFitter.create(1).fit(points.toList());
        // The people of the outer classes are nearer the middle than the centres of their classes, by about a tenth.
        assertTrue(line[1] < slope + 1.5 * error && line[1] > 0.9 * slope - 1.5 * error, "mm per mm: " + line[1]);
    }

    /** Source: rule of bustSizesStandard, R package Anthropometry: 74 to 102 by 4 cm, then 107 to 131 by 6 cm. */
    @Test
    void bustClassesOfEn134023FollowTheRule() {
        List<Double> limits = new ArrayList<>();
        for (int cm = 74; cm <= 102; cm += 4) {
            limits.add(cm * 10.0);
        }
        for (int cm = 107; cm <= 131; cm += 6) {
            limits.add(cm * 10.0);
        }
        for (String id :
                List.of("en-13402-3-women-bust-classes", "women-en-13402-3-bust", "women-en-13402-3-bust-2012")) {
            SizeTable table = table(id);
            assertEquals(12, table.sizes().size());
            for (int i = 0; i < 12; i++) {
                Interval limit = table.limits(table.sizes().get(i), BodyDimension.BUST_GIRTH)
                        .orElseThrow();
                assertEquals(limits.get(i), limit.lower(), id);
                assertEquals(limits.get(i + 1), limit.upper(), id);
            }
        }
    }

    /** Source: JIS L 4005 as its association prints it: steps of 3 cm from 74 to 92, of 4 cm from 92 to 104. */
    @Test
    void bustStepsOfJisFollowTheRule() {
        SizeTable table = table("jis-l-4005-women-bust");
        double bust = 740;
        for (String size : table.sizes()) {
            assertEquals(bust, mm(table, size, BodyDimension.BUST_GIRTH));
            bust += bust < 920 ? 30 : 40;
        }
        assertEquals(1080, bust, "the last size is 104");
        assertEquals(910, mm(table, "83", BodyDimension.HIP_GIRTH), "figure 9AR: 83, 91, 158");
        assertEquals(
                1, table.row(BodyDimension.HIP_GIRTH).orElseThrow().values().size(), "the rest stays a gap");
    }

    /**
     * Source: GOST 12.4.111-82, as the increments noted apart from the table. Per 8 cm of chest: top of sleeve +3.2 cm
     * round, cuff +1.6 cm round, body half width +4.0 cm, back +2.8 cm; sleeve +3.0 cm per 12 cm of height.
     */
    @ParameterizedTest
    @CsvSource({
        "gost-12-4-111-82-jacket-by-chest, garmentSleeveWidthTopHalf, 80, 16, 5",
        "gost-12-4-111-82-jacket-by-chest, garmentSleeveWidthHemHalfTypeACuff, 80, 8, 5",
        "gost-12-4-111-82-jacket-by-chest, garmentSleeveWidthHemHalfTypeB, 80, 8, 5",
        "gost-12-4-111-82-jacket-by-chest, garmentWidthAtArmholeDepthHalf, 80, 40, 10",
        "gost-12-4-111-82-jacket-by-chest, garmentBackWidth, 80, 28, 10",
        "gost-12-4-111-82-jacket-by-height, garmentSleeveLength, 120, 30, 10",
    })
    void jacketGrowsByTheIncrementsOfGost(String id, String name, double keyStep, double growth, double tolerance) {
        SizeTable table = table(id);
        TableDimension dimension = TableDimension.find(name).orElseThrow();
        for (Increment step : table.increments(table.info().key().orElseThrow())) {
            assertEquals(keyStep, step.millimetres(), 1e-9);
        }
        List<Increment> steps = table.increments(dimension);
        assertEquals(table.sizes().size() - 1, steps.size());
        for (Increment step : steps) {
            assertEquals(growth, step.millimetres(), 1e-9, step.toString());
        }
        assertEquals(tolerance, table.row(dimension).orElseThrow().tolerance().orElseThrow(), 1e-9);
    }

    /** Source: GOST 25295-2003: the size is half the bust in centimetres, all at the stature of 164 cm. */
    @Test
    void womensSizesOfGostAreHalfTheBust() {
        SizeTable table = table("gost-25295-2003-women-outerwear");
        for (String size : table.sizes()) {
            assertEquals(Integer.parseInt(size) * 20.0, mm(table, size, BodyDimension.BUST_GIRTH));
            assertEquals(1640, mm(table, size, BodyDimension.STATURE));
        }
    }

    /** The paired sizes of GOST 31396-2009 print as name the two bust figures themselves; so do the EN classes here. */
    @Test
    void namesOfPairedSizesAreTheirLimits() {
        for (String id : List.of(
                "gost-31396-2009-women-paired-sizes",
                "gost-31396-2009-women-statures",
                "gost-12-4-111-82-jacket-by-chest",
                "gost-12-4-111-82-jacket-by-height",
                "gost-knit-undershirt-men-by-height",
                "en-13402-3-women-bust-classes")) {
            SizeTable table = table(id);
            for (String size : table.sizes()) {
                String[] ends = size.split("-");
                Interval limits =
                        table.limits(size, table.info().key().orElseThrow()).orElseThrow();
                assertEquals(Integer.parseInt(ends[0]) * 10.0, limits.lower(), id);
                assertEquals(Integer.parseInt(ends[1]) * 10.0, limits.upper(), id);
            }
        }
    }

    /** ASTM D5585-11e1 prints eighths of an inch, so a digit lost in telling run-together digits apart would show. */
    @Test
    void torsoRowsOfAstmAreEighthsOfAnInch() {
        SizeTable table = table("astm-d5585-11e1-misses");
        assertEquals(12, table.sizes().size());
        assertEquals(Unit.INCH, table.info().unit());
        for (Row row : table.rows()) {
            assertEquals(12, row.values().size());
            for (TableValue value : row.values().values()) {
                double eighths = value.millimetres() / 25.4 * 8;
                assertEquals(Math.rint(eighths), eighths, 1e-9);
            }
        }
        assertEquals(31.125 * 25.4, mm(table, "00", BodyDimension.BUST_GIRTH), 1e-9);
        assertEquals(46 * 25.4, mm(table, "20", BodyDimension.BUST_GIRTH), 1e-9);
        assertTrue(table.row(BodyDimension.UPPER_ARM_GIRTH).isEmpty(), "no arm row could be read");
    }

    /** The women's tables take their arm rows from the surveys and nowhere else. */
    @ParameterizedTest
    @CsvSource({
        "women-en-13402-3-bust, ansur-1988-women-by-bust",
        "women-en-13402-3-bust-2012, ansur-2012-women-by-bust"
    })
    void womensTableHoldsTheSurveyMeansOrSaysThatItInterpolates(String id, String surveyId) {
        SizeTable table = table(id);
        SizeTable survey = table(surveyId);
        double least = mm(survey, survey.sizes().get(0), BodyDimension.BUST_GIRTH);
        double greatest = mm(survey, survey.sizes().get(survey.sizes().size() - 1), BodyDimension.BUST_GIRTH);
        for (Row row : survey.rows()) {
            if (row.dimension() == BodyDimension.BUST_GIRTH) {
                continue;
            }
            DimensionCurve curve = survey.curve(row.dimension());
            for (String size : table.sizes()) {
                double centre = mm(table, size, BodyDimension.BUST_GIRTH);
                var value = table.value(size, row.dimension());
                String what = id + " " + size + " " + row.dimension().id();
                assertEquals(
                        centre >= least && centre <= greatest, value.isPresent(), "gap exactly beyond survey: " + what);
                if (value.isEmpty()) {
                    continue;
                }
                boolean sameClass = table.limits(size, BodyDimension.BUST_GIRTH)
                                .orElseThrow()
                                .width()
                        == 40;
                assertEquals(
                        sameClass ? Provenance.MEASURED : Provenance.INTERPOLATED,
                        value.get().provenance(),
                        what);
                assertEquals(curve.at(centre).millimetres(), value.get().millimetres(), 0.05 + 1e-9, what);
            }
        }
    }
}
