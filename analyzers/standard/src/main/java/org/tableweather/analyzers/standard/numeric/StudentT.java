package org.tableweather.analyzers.standard.numeric;

import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.distribution.continuous.TDistribution;

/** Quantiles of Student's t distribution. */
public final class StudentT {

    private static final double ACCURACY = 1e-15;
    private static final NormalDistribution NORMAL = new NormalDistribution();
    private static final int MOST_STEPS = 200;

    private StudentT() {}

    /**
     * Half width of a central interval in standard errors: the quantile at {@code (1 + coverage) / 2}. Newton's method from the
     * normal distribution's quantile, which lies below: the distribution function is concave there, so that no step goes too far.
     *
     * @param coverage in (0, 1), 0.95 for a 95 % interval
     * @param df degrees of freedom, at least 1; fractions are allowed
     */
    public static double halfWidth(double coverage, double df) {
        double wanted = (1 + coverage) / 2;
        TDistribution distribution = new TDistribution(df);
        double at = NORMAL.inverseCumulativeProbability(wanted);
        for (int i = 0; i < MOST_STEPS; i++) {
            double step = (wanted - distribution.cumulativeProbability(at)) / distribution.density(at);
            at += step;
            if (!(step > ACCURACY * at)) {
                return at;
            }
        }
        return at;
    }
}
