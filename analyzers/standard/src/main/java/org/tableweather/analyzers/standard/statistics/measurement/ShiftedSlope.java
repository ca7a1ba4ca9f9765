package org.tableweather.analyzers.standard.statistics.measurement;

/** An estimator that can look at sessions whose covariate is shifted; any model on session summaries can. */
@FunctionalInterface
public interface ShiftedSlope {

    /**
     * The slope with a constant added to every session's covariate.
     *
     * @param shifts one per session
     * @throws RuntimeException of the caller's own, when the estimator cannot
     */
    SlopeEstimate at(double[] shifts);
}
