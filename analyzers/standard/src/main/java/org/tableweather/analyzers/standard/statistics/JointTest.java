package org.tableweather.analyzers.standard.statistics;

import java.util.Optional;
import org.hipparchus.distribution.continuous.FDistribution;
import org.tableweather.analyzers.standard.numeric.SymmetricEigen;
import org.tableweather.analyzers.standard.statistics.NestedFit.Quantity;

/**
 * Whether several contrasts are zero together: the covariance {@code LCL' = U diag(d) U'} parts them into uncorrelated ones,
 * {@code F = (1/q) Σ tᵢ²}, and the denominator's degrees of freedom follow from those of each,
 * {@code 2E/(E − q), E = Σ νᵢ/(νᵢ − 2)} over those above 2.
 *
 * @param statistic F
 * @param numerator q
 * @param denominator degrees of freedom; 2 when they are hardly known
 * @param pValue chance of a larger F when all are zero
 * @source Kuznetsova2017
 */
public record JointTest(double statistic, int numerator, double denominator, double pValue) {

    private static final double LEAST_SHARE = 1e-10;

    /**
     * Tests contrasts of a fit.
     *
     * @param rows over all given columns, the constant first
     * @return empty when they are determined by each other, or by dropped columns
     */
    public static Optional<JointTest> of(NestedFit fit, double[][] rows) {
        int q = rows.length;
        SymmetricEigen eigen = SymmetricEigen.of(covariance(fit, rows));
        double sum = 0;
        double expected = 0;
        for (int m = 0; m < q; m++) {
            if (!(eigen.values()[m] > LEAST_SHARE * eigen.largestMagnitude())) {
                return Optional.empty();
            }
            Quantity part = fit.contrast(mixed(rows, eigen.vectors()[m]));
            double t = part.value() / part.standardError();
            sum += t * t;
            if (q == 1) {
                expected = Math.max(1, part.df());
            } else if (part.df() > 2) {
                expected += part.df() / (part.df() - 2);
            }
        }
        double denominator = q == 1 ? expected : expected > q ? 2 * expected / (expected - q) : 2;
        double tail = 1 - new FDistribution(q, denominator).cumulativeProbability(sum / q);
        return Optional.of(new JointTest(sum / q, q, denominator, Math.max(0, tail)));
    }

    private static double[][] covariance(NestedFit fit, double[][] rows) {
        double[][] covariance = new double[rows.length][rows.length];
        for (int i = 0; i < rows.length; i++) {
            double[] first = fit.reduced(rows[i]);
            for (int j = 0; j < rows.length; j++) {
                double[] second = fit.reduced(rows[j]);
                for (int a = 0; a < first.length; a++) {
                    for (int b = 0; b < first.length; b++) {
                        covariance[i][j] += first[a] * fit.inverse[a * first.length + b] * second[b];
                    }
                }
            }
        }
        return covariance;
    }

    private static double[] mixed(double[][] rows, double[] weights) {
        double[] mixed = new double[rows[0].length];
        for (int i = 0; i < rows.length; i++) {
            for (int k = 0; k < mixed.length; k++) {
                mixed[k] += weights[i] * rows[i][k];
            }
        }
        return mixed;
    }
}
