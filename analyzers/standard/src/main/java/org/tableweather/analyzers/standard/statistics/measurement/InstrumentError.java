package org.tableweather.analyzers.standard.statistics.measurement;

/**
 * Error of a measured covariate, in its unit: {@code w = x + offset[instrument] + reading[session]}.
 *
 * @param offsetSd of instruments' constant errors, at least 0; it shifts all of an instrument's sessions alike
 * @param readingSd of what differs from session to session, at least 0
 * @source Carroll2006
 */
public record InstrumentError(double offsetSd, double readingSd) {

    /**
     * Checks the bounds.
     *
     * @throws IllegalArgumentException below 0 or not finite
     */
    public InstrumentError {
        if (!(offsetSd >= 0 && readingSd >= 0 && Double.isFinite(offsetSd + readingSd))) {
            throw new IllegalArgumentException(
                    "errors must be at least 0 and finite, got " + offsetSd + " and " + readingSd);
        }
    }

    /**
     * From a stated accuracy {@code ± limit} without distribution: taken as even over the limits, {@code sd = limit/√3}, all
     * of it offset, because a stated accuracy is mostly the calibration's.
     *
     * @param limit at least 0
     * @source JCGM100
     */
    public static InstrumentError ofAccuracy(double limit) {
        return new InstrumentError(limit / Math.sqrt(3), 0);
    }

    /** The same with this error of readings. */
    public InstrumentError withReadingSd(double other) {
        return new InstrumentError(offsetSd, other);
    }
}
