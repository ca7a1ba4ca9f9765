package org.tableweather.schema.geometry;

import java.util.Arrays;

/** Covariance of the coordinates x₀, y₀, x₁, y₁ ... of marks, m². */
final class MarkCovariance {

    private final double[] variances;
    private final double[][] full;

    private MarkCovariance(double[] variances, double[][] full) {
        this.variances = variances;
        this.full = full;
    }

    /** Independent coordinates of equal standard uncertainty. */
    static MarkCovariance independent(int marks, double standardUncertaintyM) {
        double[] variances = new double[2 * marks];
        Arrays.fill(variances, standardUncertaintyM * standardUncertaintyM);
        return new MarkCovariance(variances, new double[0][]);
    }

    /** Coordinates that share a source of error. */
    static MarkCovariance of(double[][] covarianceM2) {
        double[][] copy = new double[covarianceM2.length][];
        for (int i = 0; i < copy.length; i++) {
            copy[i] = covarianceM2[i].clone();
        }
        return new MarkCovariance(new double[0], copy);
    }

    /**
     * Law of propagation of uncertainty: {@code u² = gᵀ C g}.
     *
     * @param gradient derivative of a figure to each coordinate
     * @return variance of the figure
     * @source JCGM100
     */
    double variance(double[] gradient) {
        double sum = 0;
        for (int i = 0; i < gradient.length; i++) {
            sum += gradient[i] * (full.length == 0 ? variances[i] * gradient[i] : rowTimes(full[i], gradient));
        }
        // Rounding can leave a tiny negative sum where the terms cancel.
        return Math.max(sum, 0);
    }

    private static double rowTimes(double[] row, double[] gradient) {
        double sum = 0;
        for (int j = 0; j < gradient.length; j++) {
            sum += row[j] * gradient[j];
        }
        return sum;
    }
}
