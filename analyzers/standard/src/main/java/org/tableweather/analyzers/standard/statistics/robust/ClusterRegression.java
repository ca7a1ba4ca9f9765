package org.tableweather.analyzers.standard.statistics.robust;

import java.util.List;
import org.tableweather.analyzers.standard.statistics.answer.Answer;
import org.tableweather.analyzers.standard.statistics.answer.Coverage;
import org.tableweather.analyzers.standard.statistics.answer.Interval;
import org.tableweather.analyzers.standard.statistics.answer.Refusal.Cause;

/**
 * Least squares of y on a constant and columns, {@code β = (X'X)⁻¹X'y}, with the cluster-robust covariance
 * {@code (X'X)⁻¹ (Σ Xⱼ'Aⱼeⱼ eⱼ'AⱼXⱼ) (X'X)⁻¹}. Only each cluster's moments are needed: {@code Xⱼ'f(I − H_jj)eⱼ} is a
 * function of {@code Xⱼ'Xⱼ} and {@code Xⱼ'eⱼ}, because the nonzero eigenvalues of {@code H_jj} are those of
 * {@code L⁻¹Xⱼ'XⱼL⁻ᵀ} with {@code X'X = LL'}.
 *
 * @param correction of the residuals
 * @param coverage of intervals
 * @source Liang1986
 * @source Bell2002
 * @source Pustejovsky2018
 */
public record ClusterRegression(Correction correction, Coverage coverage) {

    /** CR2 with Bell–McCaffrey degrees of freedom, 95 %. */
    public static ClusterRegression withDefaults() {
        return new ClusterRegression(Correction.CR2, Coverage.DEFAULT);
    }

    /** The same with another correction. */
    public ClusterRegression with(Correction other) {
        return new ClusterRegression(other, coverage);
    }

    /** The same at another coverage. */
    public ClusterRegression with(Coverage other) {
        return new ClusterRegression(correction, other);
    }

    /**
     * Fits.
     *
     * @param clusters of the same columns; refused below 2, with no more rows than coefficients, with columns that
     *     determine each other, and when the fit is exact
     * @throws IllegalArgumentException when clusters differ in their number of columns
     */
    public Answer<RobustFit> fit(List<Cluster> clusters) {
        if (clusters.size() < 2) {
            return Answer.refuse(Cause.TOO_FEW, clusters.size() + " clusters: 2 are needed to see how they differ");
        }
        int coefficients = clusters.get(0).moments().columns();
        long rows =
                clusters.stream().mapToLong(cluster -> cluster.moments().n()).sum();
        if (clusters.stream().anyMatch(cluster -> cluster.moments().columns() != coefficients)) {
            throw new IllegalArgumentException("clusters differ in their number of columns");
        }
        if (rows <= coefficients) {
            return Answer.refuse(Cause.TOO_FEW, rows + " rows for " + coefficients + " coefficients");
        }
        return ClusterSums.of(clusters).then(sums -> Answer.of(new RobustFit(sums, this)));
    }

    RobustEffect effect(double value, double error, double df, double naive) {
        if (!(df > 0)) {
            Interval anything = new Interval(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);
            return new RobustEffect(value, error, df, Double.NaN, Double.NaN, anything, naive);
        }
        return new RobustEffect(
                value,
                error,
                df,
                value / error,
                Coverage.twoSided(value / error, df),
                Interval.around(value, coverage.halfWidth(df) * error),
                naive);
    }
}
