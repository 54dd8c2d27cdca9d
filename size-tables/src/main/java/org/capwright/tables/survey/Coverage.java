package org.capwright.tables.survey;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.apache.commons.math3.stat.interval.ConfidenceInterval;
import org.apache.commons.math3.stat.interval.WilsonScoreInterval;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Violation;
import org.capwright.tables.BodyDimension;
import org.capwright.tables.Interval;
import org.capwright.tables.TableSubject;
import org.capwright.words.Text;

/**
 * How many of the people surveyed find a size in a run whose arm girth and arm length both fit them.
 *
 * @param survey the survey
 * @param girth the girth that was compared, relaxed or flexed upper arm
 * @param people people of the survey
 * @param covered people whom at least one size fits
 * @param peopleBySize people whom each size fits; someone whom two sizes fit counts in both
 * @param gaps stretches of girth and of length that no size fits, with the people in them, smallest first
 */
public record Coverage(
        Survey survey,
        BodyDimension girth,
        int people,
        int covered,
        Map<String, Integer> peopleBySize,
        List<CoverageGap> gaps) {

    private static final int MOST_SIZES = 200;

    /**
     * Copies the collections, keeping their order.
     *
     * @param survey the survey
     * @param girth the girth that was compared, relaxed or flexed upper arm
     * @param people people of the survey
     * @param covered people whom at least one size fits
     * @param peopleBySize people whom each size fits; someone whom two sizes fit counts in both
     * @param gaps stretches of girth and of length that no size fits, with the people in them, smallest first
     */
    public Coverage {
        peopleBySize = Collections.unmodifiableMap(new LinkedHashMap<>(peopleBySize));
        gaps = List.copyOf(gaps);
    }

    /**
     * Counts the people whom a run fits. Reads the per-person rows at the first call.
     *
     * @param survey the survey
     * @param girth {@link BodyDimension#UPPER_ARM_GIRTH} or {@link BodyDimension#UPPER_ARM_GIRTH_FLEXED}, as far as the
     *     survey has it
     * @param run the sizes, 1 to 200, each name once, in any order; intervals may overlap or leave gaps
     * @return the count
     * @throws InvalidMeasuresException when the survey has no single people or lacks the girth, or the run is empty, too long or repeats a name
     */
    public static Coverage of(Survey survey, BodyDimension girth, List<SizeInterval> run) {
        if (girth != BodyDimension.UPPER_ARM_GIRTH && girth != BodyDimension.UPPER_ARM_GIRTH_FLEXED) {
            throw new InvalidMeasuresException(Violation.other(
                    new TableSubject.Argument("girth"), girth.id(), "upperArmGirth or upperArmGirthFlexed"));
        }
        if (!survey.hasPeople()) {
            throw new InvalidMeasuresException(Violation.other(
                    new TableSubject.Argument("survey"), survey.id(), "a survey whose people are with the library"));
        }
        survey.required("girth", girth);
        check(run);
        People people = People.of(survey);
        short[] girths = people.column(girth);
        short[] lengths = people.column(BodyDimension.ARM_LENGTH);
        int[] bySize = new int[run.size()];
        int covered = 0;
        for (int i = 0; i < girths.length; i++) {
            boolean fits = false;
            for (int s = 0; s < bySize.length; s++) {
                SizeInterval size = run.get(s);
                if (size.armGirth().contains(girths[i]) && size.armLength().contains(lengths[i])) {
                    bySize[s]++;
                    fits = true;
                }
            }
            if (fits) {
                covered++;
            }
        }
        Map<String, Integer> peopleBySize = new LinkedHashMap<>();
        for (int s = 0; s < bySize.length; s++) {
            peopleBySize.put(run.get(s).size(), bySize[s]);
        }
        List<CoverageGap> gaps = new ArrayList<>();
        gaps(gaps, survey, girth, run.stream().map(SizeInterval::armGirth).toList(), girths);
        gaps(
                gaps,
                survey,
                BodyDimension.ARM_LENGTH,
                run.stream().map(SizeInterval::armLength).toList(),
                lengths);
        return new Coverage(survey, girth, girths.length, covered, peopleBySize, gaps);
    }

    /**
     * The share of the people surveyed whom the run fits.
     *
     * @return covered divided by people, 0 to 1
     */
    public double share() {
        return (double) covered / people;
    }

    /**
     * Where the share lies in the population that the survey was drawn from: Wilson's score interval. It takes the people
     * for a random sample of that population, and says nothing of any other.
     *
     * @param confidence between 0 and 1, such as 0.95
     * @return range of the share, within 0 to 1
     * @throws InvalidMeasuresException when the confidence is out of range
     */
    public Interval shareInterval(double confidence) {
        StudentT.requireShare("confidence", confidence);
        ConfidenceInterval wilson = new WilsonScoreInterval().createInterval(people, covered, confidence);
        return new Interval(Math.max(0, wilson.getLowerBound()), Math.min(1, wilson.getUpperBound()));
    }

    private static void check(List<SizeInterval> run) {
        List<Violation> violations = new ArrayList<>();
        if (run.isEmpty() || run.size() > MOST_SIZES) {
            violations.add(Violation.other(
                    new TableSubject.Argument("run"),
                    run.size() + " sizes",
                    Text.of("1 to {most} sizes").with("most", MOST_SIZES)));
        }
        Set<String> names = new HashSet<>();
        for (int i = 0; i < run.size(); i++) {
            if (!names.add(run.get(i).size())) {
                violations.add(
                        Violation.other(new TableSubject.Size(i), run.get(i).size(), "each size once"));
            }
        }
        if (!violations.isEmpty()) {
            throw new InvalidMeasuresException(violations);
        }
    }

    /** Walks the intervals from the least person up; whatever lies between what is fitted so far and the next is a gap. */
    private static void gaps(
            List<CoverageGap> gaps, Survey survey, BodyDimension dimension, List<Interval> fitted, short[] values) {
        Interval surveyed = survey.range(dimension);
        List<Interval> sorted = fitted.stream()
                .sorted(Comparator.comparingDouble(Interval::lower))
                .toList();
        double smallest = sorted.get(0).lower();
        if (surveyed.lower() < smallest) {
            Interval range = new Interval(surveyed.lower(), Math.min(smallest, surveyed.upper()));
            gaps.add(new CoverageGap(
                    dimension, CoverageGap.Place.BELOW, range, count(values, Double.NEGATIVE_INFINITY, smallest)));
        }
        double reached = sorted.get(0).upper();
        for (Interval next : sorted) {
            if (next.lower() > reached) {
                gaps.add(new CoverageGap(
                        dimension,
                        CoverageGap.Place.BETWEEN,
                        new Interval(reached, next.lower()),
                        count(values, reached, next.lower())));
            }
            reached = Math.max(reached, next.upper());
        }
        if (surveyed.upper() > reached) {
            Interval range = new Interval(Math.max(reached, surveyed.lower()), surveyed.upper());
            gaps.add(new CoverageGap(
                    dimension, CoverageGap.Place.ABOVE, range, count(values, reached, Double.POSITIVE_INFINITY)));
        }
    }

    private static int count(short[] values, double above, double below) {
        int count = 0;
        for (short value : values) {
            if (value > above && value < below) {
                count++;
            }
        }
        return count;
    }
}
