package org.tableweather.analyzers.standard.statistics.power;

/**
 * Scatter to plan with, from a pool or stated, in the unit of the response.
 *
 * @param roomSlopeSd of rooms' true slopes, at least 0
 * @param sessionSd of sessions in one room and climate, at least 0
 * @param trialSd of trials in one session, at least 0
 */
public record ScatterAssumption(double roomSlopeSd, double sessionSd, double trialSd) {

    /**
     * Checks the bounds.
     *
     * @throws IllegalArgumentException for a negative one, or when session and trial scatter are both 0
     */
    public ScatterAssumption {
        if (!(roomSlopeSd >= 0 && sessionSd >= 0 && trialSd >= 0 && sessionSd + trialSd > 0)) {
            throw new IllegalArgumentException(
                    "scatter must be at least 0, and that of sessions or trials above it, got " + roomSlopeSd + ", "
                            + sessionSd + ", " + trialSd);
        }
    }

    /** Variance of a session's mean about its room's line: {@code σ_s² + σ²/n}. */
    double ofSessionMean(int trials) {
        return sessionSd * sessionSd + trialSd * trialSd / trials;
    }
}
