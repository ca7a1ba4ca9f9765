package org.tableweather.analyzers.standard.statistics.measurement;

/**
 * One session in a plot of response against a measured covariate.
 *
 * @param room where
 * @param instrument that measured the covariate
 * @param measured the covariate as measured, finite
 * @param response mean of the session's trials, finite
 */
public record SessionPoint(String room, String instrument, double measured, double response) {

    /**
     * Checks the bounds.
     *
     * @throws IllegalArgumentException for numbers that are not finite
     */
    public SessionPoint {
        if (!(Double.isFinite(measured) && Double.isFinite(response))) {
            throw new IllegalArgumentException(
                    "session in " + room + " needs finite numbers, got " + measured + " and " + response);
        }
    }
}
