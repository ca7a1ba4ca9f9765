package org.tableweather.analyzers.standard.statistics.robust;

import java.util.List;

/** Least squares with a cluster-robust covariance. */
public final class RobustFit {

    private final ClusterSums sums;
    private final ClusterRegression options;
    private final Meat meat;

    RobustFit(ClusterSums sums, ClusterRegression options) {
        this.sums = sums;
        this.options = options;
        this.meat = new Meat(sums, options.correction());
    }

    /** Number of clusters. */
    public int clusters() {
        return sums.clusters();
    }

    /** Number of rows. */
    public long rows() {
        return sums.rows();
    }

    /** Number of coefficients, the intercept included. */
    public int coefficients() {
        return sums.coefficients();
    }

    /** Residual sum of squares over N − p. */
    public double residualVariance() {
        return sums.residualVariance();
    }

    /**
     * Clusters without which some coefficient could not be estimated: their share of its error cannot be seen, and the
     * standard error is too small.
     */
    public List<String> decisive() {
        return meat.decisive();
    }

    /**
     * One coefficient.
     *
     * @param index 0 for the intercept, then the columns in their order
     */
    public RobustEffect coefficient(int index) {
        double[] weights = new double[coefficients()];
        weights[index] = 1;
        return contrast(weights);
    }

    /**
     * A mixture {@code w'β}.
     *
     * @param weights one per coefficient, the intercept first; not all 0
     */
    public RobustEffect contrast(double... weights) {
        if (weights.length != coefficients()) {
            throw new IllegalArgumentException("contrast needs " + coefficients() + " weights, got " + weights.length);
        }
        double[] direction = sums.whiten(weights);
        double value = sums.value(weights);
        double error = Math.sqrt(meat.variance(direction));
        double df = options.correction() == Correction.CR2 ? meat.satterthwaite(direction) : clusters() - 1;
        return options.effect(value, error, df, Math.sqrt(residualVariance() * Meat.square(direction)));
    }

    /** Robust covariance of two coefficients. */
    public double covariance(int i, int j) {
        double[] first = new double[coefficients()];
        double[] second = new double[coefficients()];
        first[i] = 1;
        second[j] = 1;
        return meat.covariance(sums.whiten(first), sums.whiten(second));
    }
}
