package org.tableweather.analyzers.standard.statistics.decay;

/**
 * Observations at one time after a step.
 *
 * @param hours since the step, at least 0
 * @param n how many, at least 1
 * @param mean of them
 * @param squares sum of their squared deviations from the mean
 */
public record DecayPoint(double hours, long n, double mean, double squares) {

    /**
     * Checks.
     *
     * @throws IllegalArgumentException outside the bounds
     */
    public DecayPoint {
        if (!(hours >= 0 && n >= 1 && squares >= 0 && Double.isFinite(mean))) {
            throw new IllegalArgumentException("a point needs hours >= 0, n >= 1, squares >= 0 and a finite mean, got "
                    + hours + ", " + n + ", " + squares + " and " + mean);
        }
    }

    /** One observation. */
    public static DecayPoint of(double hours, double value) {
        return new DecayPoint(hours, 1, value, 0);
    }
}
