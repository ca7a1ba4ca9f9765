package org.tableweather.analyzers.standard.statistics.interlab;

/**
 * One laboratory's results on one material: all that the analysis of variance needs of them.
 *
 * @param label the room
 * @param n number of results, at least 1
 * @param mean of the results
 * @param sumOfSquares {@code Σ (y − mean)²}, at least 0, and 0 when n is 1
 */
public record Laboratory(String label, long n, double mean, double sumOfSquares) {

    /**
     * Checks the bounds.
     *
     * @throws IllegalArgumentException outside the bounds
     */
    public Laboratory {
        if (n < 1 || !Double.isFinite(mean)) {
            throw new IllegalArgumentException(
                    "laboratory " + label + " needs at least 1 result and a finite mean, got " + n + " and " + mean);
        }
        if (!(sumOfSquares >= 0 && Double.isFinite(sumOfSquares)) || n == 1 && sumOfSquares > 0) {
            throw new IllegalArgumentException("sum of squares of laboratory " + label
                    + " must be at least 0, and 0 for one result, got " + sumOfSquares);
        }
    }

    /**
     * Reduces results in two passes, about their first value, so that a large common offset costs no digits.
     *
     * @param results at least 1, finite
     */
    public static Laboratory of(String label, double... results) {
        double origin = results[0];
        double departures = 0;
        for (double result : results) {
            departures += result - origin;
        }
        double offset = departures / results.length;
        double squares = 0;
        double rest = 0;
        for (double result : results) {
            double apart = result - origin - offset;
            squares += apart * apart;
            rest += apart;
        }
        return new Laboratory(
                label, results.length, origin + offset, Math.max(0, squares - rest * rest / results.length));
    }

    /** {@code √(Σ (y − mean)² / (n − 1))}; NaN for one result. */
    public double standardDeviation() {
        return n == 1 ? Double.NaN : Math.sqrt(sumOfSquares / (n - 1));
    }
}
