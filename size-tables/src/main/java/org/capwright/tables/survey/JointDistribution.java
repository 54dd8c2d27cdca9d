package org.capwright.tables.survey;

import java.util.List;
import java.util.Map;
import org.apache.commons.math3.distribution.FDistribution;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.DecompositionSolver;
import org.apache.commons.math3.linear.RealVector;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.tables.BodyDimension;

/**
 * How several dimensions of the people of a survey go together: their means and their covariance, on n - 1 degrees of freedom.
 *
 * <p>With S the covariance, the squared distance of Mahalanobis is (x - mean)' S^-1 (x - mean). Of a person whose dimensions a are taken as they are, what the other q
 * dimensions b add to it is d2(a and b) - d2(a); with v = n - 1 - |a| and h = 1 / n + d2(a) / (n - 1), T2 = v / (n - 1) (d2(a and b) - d2(a)) / (1 + h) is Hotelling's, so
 * that T2 (v - q + 1) / (v q) follows F on q and v - q + 1 degrees of freedom. Source: Mahalanobis, On the generalised distance in statistics, 1936; Hotelling, The
 * generalization of Student's ratio, 1931; Anderson, An Introduction to Multivariate Statistical Analysis, chapter 5 (all from memory; the formulas are common to the handbooks).
 */
public final class JointDistribution {

    private final Survey survey;
    private final List<BodyDimension> dimensions;
    private final int people;
    private final DecompositionSolver covariance;

    JointDistribution(Survey survey, List<BodyDimension> dimensions) {
        SufficientStatistics statistics = survey.statistics();
        this.survey = survey;
        this.dimensions = List.copyOf(dimensions);
        this.people = statistics.people();
        int n = dimensions.size();
        double[][] products = new double[n][n];
        for (int a = 0; a < n; a++) {
            for (int b = 0; b < n; b++) {
                products[a][b] = statistics.centredProduct(dimensions.get(a), dimensions.get(b)) / (people - 1);
            }
        }
        this.covariance = new CholeskyDecomposition(new Array2DRowRealMatrix(products, false)).getSolver();
    }

    /**
     * The dimensions.
     *
     * @return in the order they were asked for
     */
    public List<BodyDimension> dimensions() {
        return dimensions;
    }

    /**
     * How far a person lies from the mean of everybody, the spread and the likeness of the dimensions reckoned in.
     *
     * @param person value in millimetres of every dimension, finite; others are not used
     * @return the squared distance of Mahalanobis, 0 or more
     * @throws InvalidMeasuresException when a dimension is missing or not finite
     */
    public double squaredDistance(Map<BodyDimension, Double> person) {
        double[] deviation = new double[dimensions.size()];
        for (int i = 0; i < deviation.length; i++) {
            deviation[i] = Regression.finite(person, dimensions.get(i))
                    - survey.statistics().mean(dimensions.get(i));
        }
        RealVector d = new ArrayRealVector(deviation, false);
        return covariance.solve(d).dotProduct(d);
    }

    /**
     * How rare a person's other dimensions are, all together, among people who share some. Where a shared one lies beyond the surveyed range, people are taken to scatter
     * {@value Regression#SCATTER_BEYOND} times as far, as in {@link Regression#newPersonBeyond}.
     *
     * @param person value in millimetres of every dimension, finite
     * @param shared the dimensions that are taken as they are; may be empty
     * @return share of people alike whose other dimensions lie at least as far out, 0 to 1; 1 where there are no others
     * @throws InvalidMeasuresException when a dimension is missing or not finite
     */
    public double rarity(Map<BodyDimension, Double> person, List<BodyDimension> shared) {
        List<BodyDimension> taken = dimensions.stream().filter(shared::contains).toList();
        int q = dimensions.size() - taken.size();
        if (q == 0) {
            return 1;
        }
        double ofTaken = taken.isEmpty() ? 0 : survey.joint(taken).squaredDistance(person);
        boolean beyond = taken.stream()
                .anyMatch(dimension -> !survey.range(dimension).contains(Regression.finite(person, dimension)));
        double spread = beyond ? Regression.SCATTER_BEYOND * Regression.SCATTER_BEYOND : 1;
        int v = people - 1 - taken.size();
        double h = 1.0 / people + ofTaken / (people - 1);
        double hotelling = Math.max(0, squaredDistance(person) - ofTaken) * v / (people - 1) / (1 + h) / spread;
        FDistribution f = new FDistribution(null, q, v - q + 1);
        return 1 - f.cumulativeProbability(hotelling * (v - q + 1) / (v * (double) q));
    }
}
