package org.tableweather.analyzers.standard.statistics.meta;

/**
 * One room's estimate with its sampling variance.
 *
 * @param label the room
 * @param estimate for example its humidity slope
 * @param variance square of the standard error, above 0, taken as known
 */
public record StudyEffect(String label, double estimate, double variance) {

    /**
     * Checks the bounds.
     *
     * @throws IllegalArgumentException for an estimate that is not finite, or a variance that is not finite and above 0
     */
    public StudyEffect {
        if (!Double.isFinite(estimate)) {
            throw new IllegalArgumentException("estimate of " + label + " must be finite, got " + estimate);
        }
        if (!(variance > 0 && Double.isFinite(variance))) {
            throw new IllegalArgumentException("variance of " + label + " must be above 0, got " + variance);
        }
    }

    /** √variance. */
    public double standardError() {
        return Math.sqrt(variance);
    }
}
