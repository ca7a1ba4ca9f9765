package org.tableweather.analyzers.standard.numeric;

import org.hipparchus.distribution.continuous.TDistribution;

/** Quantiles of Student's t distribution. */
public final class StudentT {

    private static final double ACCURACY = 1e-13;

    private StudentT() {}

    /**
     * Half width of a central interval in standard errors: the quantile at {@code (1 + coverage) / 2}.
     *
     * @param coverage in (0, 1), 0.95 for a 95 % interval
     * @param df degrees of freedom, at least 1; fractions are allowed
     */
    public static double halfWidth(double coverage, double df) {
        return new TDistribution(df, ACCURACY).inverseCumulativeProbability((1 + coverage) / 2);
    }
}
