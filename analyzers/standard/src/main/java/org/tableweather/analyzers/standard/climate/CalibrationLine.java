package org.tableweather.analyzers.standard.climate;

import org.tableweather.analyzers.standard.uncertainty.UncertainValue;

/**
 * Corrections as a straight line over the reading, by least squares: {@code b(t) = y₁ + y₂ (t − t₀)}.
 *
 * @param origin t₀
 * @param intercept y₁, correction at t₀
 * @param slope y₂, per unit of the reading
 * @param interceptUncertainty standard uncertainty of y₁
 * @param slopeUncertainty standard uncertainty of y₂
 * @param correlation of y₁ and y₂
 * @param scatter standard deviation of a correction about the line
 * @param degreesOfFreedom points less two
 * @source JCGM100
 */
public record CalibrationLine(
        double origin,
        double intercept,
        double slope,
        double interceptUncertainty,
        double slopeUncertainty,
        double correlation,
        double scatter,
        int degreesOfFreedom) {

    /**
     * Fits the line.
     *
     * @param readings at least three, not all alike
     * @param corrections one per reading
     * @param origin t₀, where the intercept is wanted
     * @throws IllegalArgumentException of fewer points, or readings all alike
     */
    public static CalibrationLine fit(double[] readings, double[] corrections, double origin) {
        int n = readings.length;
        if (n < 3 || corrections.length != n) {
            throw new IllegalArgumentException(
                    "points " + n + " < 3: a line through fewer leaves no scatter to judge it by");
        }
        double meanReading = mean(readings);
        double meanCorrection = mean(corrections);
        double spread = together(readings, meanReading, readings, meanReading);
        if (!(spread > 0)) {
            throw new IllegalArgumentException("readings are all " + meanReading + ": no slope");
        }
        double slope = together(readings, meanReading, corrections, meanCorrection) / spread;
        double intercept = meanCorrection - slope * (meanReading - origin);
        double scatter = scatter(readings, corrections, intercept - slope * origin, slope);
        double away = meanReading - origin;
        double ofIntercept = scatter * Math.sqrt(1.0 / n + away * away / spread);
        double ofSlope = scatter / Math.sqrt(spread);
        double correlation = -away / Math.sqrt(spread / n + away * away);
        return new CalibrationLine(origin, intercept, slope, ofIntercept, ofSlope, correlation, scatter, n - 2);
    }

    /** The predicted correction of a reading: {@code u² = u²(y₁) + (t−t₀)² u²(y₂) + 2 (t−t₀) u(y₁) u(y₂) r}. */
    public UncertainValue correctionAt(double reading) {
        double away = reading - origin;
        double slopePart = away * slopeUncertainty;
        double variance = interceptUncertainty * interceptUncertainty
                + slopePart * slopePart
                + 2 * interceptUncertainty * slopePart * correlation;
        return new UncertainValue(intercept + slope * away, Math.sqrt(Math.max(0, variance)), degreesOfFreedom);
    }

    private static double scatter(double[] readings, double[] corrections, double atZero, double slope) {
        double squares = 0;
        for (int i = 0; i < readings.length; i++) {
            double rest = corrections[i] - atZero - slope * readings[i];
            squares += rest * rest;
        }
        return Math.sqrt(squares / (readings.length - 2));
    }

    private static double together(double[] x, double meanX, double[] y, double meanY) {
        double sum = 0;
        for (int i = 0; i < x.length; i++) {
            sum += (x[i] - meanX) * (y[i] - meanY);
        }
        return sum;
    }

    private static double mean(double[] values) {
        double mean = 0;
        for (int i = 0; i < values.length; i++) {
            mean += (values[i] - mean) / (i + 1);
        }
        return mean;
    }
}
