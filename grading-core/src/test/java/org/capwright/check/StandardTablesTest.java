package org.capwright.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.zip.GZIPInputStream;
import org.apache.commons.math3.distribution.TDistribution;
import org.apache.commons.math3.stat.regression.OLSMultipleLinearRegression;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.capwright.quantity.Unit;
import org.capwright.tables.BodyDimension;
import org.capwright.tables.Confidence;
import org.capwright.tables.Provenance;
import org.capwright.tables.Row;
import org.capwright.tables.SizeTable;
import org.capwright.tables.SizeTables;
import org.capwright.tables.Statistic;
import org.capwright.tables.TableInfo;
import org.capwright.tables.TableKind;
import org.capwright.tables.TableValue;
import org.capwright.tables.survey.Survey;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Standards print no arm; a grade is compared with their step of bust girth or stature times the growth of the arms of a survey. The bounds are computed here again by Commons Math from the
 * single women of ANSUR 1988, NATICK/TR-89/044.
 */
class StandardTablesTest {

    private static final List<Map<BodyDimension, Double>> WOMEN = women();

    private static List<Map<BodyDimension, Double>> women() {
        try (BufferedReader lines = new BufferedReader(new InputStreamReader(
                new GZIPInputStream(Survey.class.getResourceAsStream("ansur-1988-women.csv.gz")),
                StandardCharsets.US_ASCII))) {
            BodyDimension[] columns = Arrays.stream(lines.readLine().split(","))
                    .map(id -> BodyDimension.find(id).orElseThrow())
                    .toArray(BodyDimension[]::new);
            List<Map<BodyDimension, Double>> women = new ArrayList<>();
            for (String line = lines.readLine(); line != null; line = lines.readLine()) {
                String[] figures = line.split(",");
                Map<BodyDimension, Double> woman = new java.util.EnumMap<>(BodyDimension.class);
                for (int i = 0; i < columns.length; i++) {
                    woman.put(columns[i], Double.valueOf(figures[i]));
                }
                women.add(woman);
            }
            return women;
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    /** A sheet of one row that grows evenly. */
    private static CheckedGrade growing(BodyReference body, CheckedMeasure measure, double start, double jump) {
        List<String> labels = body.table().sizes();
        List<CheckedSize> sizes = new ArrayList<>();
        for (int i = 0; i < labels.size(); i++) {
            sizes.add(new CheckedSize(labels.get(i), Map.of(measure, start + i * jump)));
        }
        return new CheckedGrade(sizes, labels.size() / 2, Optional.of(body));
    }

    private static List<Finding> jumps(CheckedGrade grade) {
        return new BodyJumpCheck().check(grade, Thresholds.usual());
    }

    private static SizeTable table(String id) {
        return SizeTables.find(id).orElseThrow();
    }

    /** No arm grows by 2 mm, nor by 40 mm, over a step of 25 to 80 mm of bust girth or of 80 to 120 mm of stature. */
    @ParameterizedTest
    @CsvSource({
        "astm-d5585-11e1-misses, D5585",
        "gost-25295-2003-women-outerwear, GOST 25295",
        "gost-31396-2009-women-paired-sizes, GOST 31396",
        "gost-31396-2009-women-statures, GOST 31396",
        "jis-l-4005-women-bust, JIS L 4005",
        "jis-l-4005-women-stature, JIS L 4005",
        "en-13402-3-women-bust-classes, EN 13402-3"
    })
    void aBicepThatGrowsFarTooLittleOrTooMuchIsTold(String id, String standard) {
        BodyReference body = BodyReference.of(table(id));
        for (double jump : new double[] {2, 40}) {
            List<Finding> found = jumps(growing(body, CheckedMeasure.BICEP, 300, jump));
            // A small step of a standard, half an inch of bust girth, asks for less.
            assertTrue(found.size() >= body.table().sizes().size() - 2, id + " " + jump + ": " + found);
            for (Finding finding : found) {
                assertEquals("body-jump", finding.code());
                assertTrue(finding.severity().compareTo(Severity.CAUTION) >= 0, finding.toString());
                assertTrue(
                        finding.source().toString().contains(standard),
                        finding.source().toString());
                assertTrue(
                        finding.source().toString().contains("NATICK/TR-89/044"),
                        finding.source().toString());
            }
            // Pairs of sizes lie 80 mm of bust girth apart, over which an arm grows by 25 mm.
            assertTrue(
                    jump < 40
                            || id.contains("paired")
                            || found.stream().anyMatch(finding -> finding.severity() == Severity.STOP),
                    id + " " + jump);
        }
    }

    /** The least is the lower end of the interval, the greatest its upper end and the growth of ease. */
    @ParameterizedTest
    @CsvSource({"BICEP, BICEP_EASE_GROWTH", "ELBOW, ELBOW_EASE_GROWTH", "WRIST, WRIST_EASE_GROWTH"})
    void boundsAreTheStepTimesTheGrowthOfTheSurveysArms(CheckedMeasure measure, Threshold easeGrowth) {
        BodyDimension response = measure.body().orElseThrow();
        SimpleRegression line = new SimpleRegression();
        WOMEN.forEach(woman -> line.addData(woman.get(BodyDimension.BUST_GIRTH), woman.get(response)));
        BodyReference astm = BodyReference.of(table("astm-d5585-11e1-misses"));
        List<Finding> found = jumps(growing(astm, measure, 150, 40));
        // From 14 to 16 the standard's bust grows by 1 3/4 in: 40 3/8 to 42 1/8.
        double step = 1.75 * 25.4;
        Finding finding = found.stream()
                .filter(one -> one.sizes().equals(List.of("14", "16")))
                .findFirst()
                .orElseThrow();
        double half = step * line.getSlopeConfidenceInterval(0.05);
        assertEquals(step * line.getSlope() - half, finding.expected().least().orElseThrow(), 1e-6);
        assertEquals(
                step * line.getSlope() + half + step / 40 * easeGrowth.usual(),
                finding.expected().greatest().orElseThrow(),
                1e-6);
    }

    /** Length follows the stature: with a table of both, the growth is that of the plane through the people. */
    @Test
    void lengthFollowsBustAndStatureWhereTheTableGivesBoth() {
        double[][] x = WOMEN.stream()
                .map(woman -> new double[] {woman.get(BodyDimension.BUST_GIRTH), woman.get(BodyDimension.STATURE)})
                .toArray(double[][]::new);
        double[] y = WOMEN.stream()
                .mapToDouble(woman -> woman.get(BodyDimension.ARM_LENGTH))
                .toArray();
        OLSMultipleLinearRegression plane = new OLSMultipleLinearRegression();
        plane.newSampleData(y, x);
        double[] slopes = plane.estimateRegressionParameters();
        double[][] variance = plane.estimateRegressionParametersVariance();
        double noise = plane.estimateErrorVariance();
        double error =
                Math.sqrt(noise * (40 * 40 * variance[1][1] + 2 * 40 * 60 * variance[1][2] + 60 * 60 * variance[2][2]));
        double half = error * new TDistribution(WOMEN.size() - 3).inverseCumulativeProbability(0.975);
        double growth = 40 * slopes[1] + 60 * slopes[2];
        BodyReference own = BodyReference.of(own("women of a choir", 860, 40, 1600, 60));
        SurveyedGrowth found = own.growth("A", "B", BodyDimension.ARM_LENGTH).orElseThrow();
        assertEquals(growth, found.mean().estimate(), 1e-6);
        assertEquals(growth - half, found.mean().interval().lower(), 1e-6);
        assertEquals(growth + half, found.mean().interval().upper(), 1e-6);
        // 22 mm of arm per 60 mm of stature; a sleeve that grows by 40 mm is far too long, one by 20 mm is not.
        assertEquals(
                Severity.STOP,
                jumps(growing(own, CheckedMeasure.LENGTH, 560, 40)).get(0).severity());
        assertEquals(List.of(), jumps(growing(own, CheckedMeasure.LENGTH, 560, 20)));
    }

    /** Men: slope and error as computed from the 1774 men of ANSUR 1988 apart from this project: 0.32397 and 0.00528 mm per mm of chest. */
    @Test
    void menAreHeldAgainstTheMenOfTheSurvey() {
        BodyReference men = BodyReference.of(own("men", 960, 40, 1750, 0));
        Finding finding = jumps(growing(men, CheckedMeasure.BICEP, 400, 40)).get(0);
        double half = 40 * 0.00555 * new TDistribution(1771).inverseCumulativeProbability(0.975);
        assertEquals(40 * 0.32856 - half, finding.expected().least().orElseThrow(), 0.02);
        assertEquals(40 * 0.32856 + half + 4, finding.expected().greatest().orElseThrow(), 0.02);
        assertTrue(
                finding.source().toString().contains("NATICK/TR-89/044, 1989; men"),
                finding.source().toString());
        BodyReference byBust = BodyReference.of(table("ansur-1988-men-by-bust"));
        assertEquals(
                40 * 0.32397,
                byBust.growth("960", "1000", BodyDimension.UPPER_ARM_GIRTH)
                        .orElseThrow()
                        .mean()
                        .estimate(),
                0.005);
    }

    /** Nobody of the survey has a bust of more than 1176 mm: beyond, its line is a hint that stops nothing. */
    @Test
    void plusSizesBeyondTheSurveyAreSaidToBeExtrapolated() {
        BodyReference gost = BodyReference.of(table("gost-25295-2003-women-outerwear"));
        double widest = WOMEN.stream()
                .mapToDouble(woman -> woman.get(BodyDimension.BUST_GIRTH))
                .max()
                .orElseThrow();
        int beyond = 0;
        for (Finding finding : jumps(growing(gost, CheckedMeasure.BICEP, 300, 40))) {
            double bust =
                    gost.value(finding.sizes().get(1), BodyDimension.BUST_GIRTH).orElseThrow();
            assertEquals(bust > widest, finding.message().toString().contains("extrapolated"), finding.toString());
            assertEquals(bust > widest ? Severity.CAUTION : Severity.STOP, finding.severity(), finding.toString());
            beyond += bust > widest ? 1 : 0;
        }
        assertEquals(5, beyond, "1200 to 1360 mm");
    }

    /** No survey of children's arms is at hand; that is said, and nothing is judged by grown people. */
    @ParameterizedTest
    @ValueSource(strings = {"girls", "boys", "children of both sexes", "not stated"})
    void whatIsNotKnownIsSaid(String figureType) {
        BodyReference body = BodyReference.of(own(figureType, 560, 40, 1040, 60));
        assertEquals(Optional.empty(), body.survey());
        List<Finding> found = jumps(growing(body, CheckedMeasure.BICEP, 220, 40));
        assertTrue(!found.isEmpty());
        for (Finding finding : found) {
            assertEquals("body-figure-missing", finding.code());
            assertEquals(Severity.INFO, finding.severity());
            assertTrue(
                    finding.message().toString().contains("no survey of such people's arms is at hand"),
                    finding.message().toString());
        }
    }

    /** Sizes A, B, C by bust girth and stature. */
    private static SizeTable own(String figureType, double bust, double bustStep, double stature, double statureStep) {
        List<String> sizes = List.of("A", "B", "C");
        List<Row> rows = new ArrayList<>();
        rows.add(row(BodyDimension.BUST_GIRTH, bust, bustStep));
        rows.add(row(BodyDimension.STATURE, stature, statureStep));
        TableInfo info = new TableInfo(
                "own",
                "Table of a workroom",
                "measured in the workroom",
                "own",
                "own",
                Confidence.HIGH,
                figureType,
                "not stated",
                Unit.MILLIMETRE,
                TableKind.BODY,
                Statistic.STANDARD_FIGURE,
                Optional.of(BodyDimension.BUST_GIRTH),
                List.of());
        return new SizeTable(info, sizes, Map.of(), Map.of(), rows);
    }

    private static Row row(BodyDimension dimension, double first, double step) {
        return new Row(
                dimension,
                Map.of(
                        "A", new TableValue(first, Provenance.PUBLISHED),
                        "B", new TableValue(first + step, Provenance.PUBLISHED),
                        "C", new TableValue(first + 2 * step, Provenance.PUBLISHED)),
                Map.of(),
                java.util.OptionalDouble.empty());
    }
}
