package org.tableweather.analyzers.standard.statistics.answer;

import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.distribution.continuous.TDistribution;
import org.tableweather.analyzers.standard.numeric.StudentT;

/**
 * How sure a central interval is, and the quantiles and tail chances that go with it.
 *
 * @param probability in (0, 1); 0.95 for a 95 % interval
 */
public record Coverage(double probability) {

    /** 95 %. */
    public static final Coverage DEFAULT = new Coverage(0.95);

    /**
     * Checks the bound.
     *
     * @throws IllegalArgumentException outside (0, 1)
     */
    public Coverage {
        if (!(probability > 0 && probability < 1)) {
            throw new IllegalArgumentException("coverage must be in (0, 1), got " + probability);
        }
    }

    /** {@code (1 − probability) / 2}, the chance beyond one end. */
    public double tail() {
        return (1 - probability) / 2;
    }

    /** {@code (1 + probability) / 2}, the level of the upper end. */
    public double upperLevel() {
        return (1 + probability) / 2;
    }

    /**
     * Half width of a central interval in standard errors: the quantile of Student's t at {@link #upperLevel()}.
     *
     * @param df above 0; infinite for the normal distribution
     */
    public double halfWidth(double df) {
        if (Double.isInfinite(df)) {
            return new NormalDistribution().inverseCumulativeProbability(upperLevel());
        }
        return StudentT.halfWidth(probability, df);
    }

    /**
     * Two-sided chance of a t statistic at least this large.
     *
     * @param statistic t, or z when {@code df} is infinite
     * @param df above 0; infinite for the normal distribution
     */
    public static double twoSided(double statistic, double df) {
        double below = -Math.abs(statistic);
        double tail = Double.isInfinite(df)
                ? new NormalDistribution().cumulativeProbability(below)
                : new TDistribution(df).cumulativeProbability(below);
        return Math.min(1, 2 * tail);
    }
}
