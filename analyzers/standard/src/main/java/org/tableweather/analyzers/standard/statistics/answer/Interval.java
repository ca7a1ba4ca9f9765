package org.tableweather.analyzers.standard.statistics.answer;

/**
 * An interval, ends included.
 *
 * @param lower may be −∞
 * @param upper at least {@code lower}; may be ∞
 */
public record Interval(double lower, double upper) {

    /**
     * Checks the order.
     *
     * @throws IllegalArgumentException when an end is not a number or the ends are crossed
     */
    public Interval {
        if (!(lower <= upper)) {
            throw new IllegalArgumentException("interval needs lower <= upper, got " + lower + " and " + upper);
        }
    }

    /**
     * {@code centre ± halfWidth}.
     *
     * @param halfWidth at least 0
     */
    public static Interval around(double centre, double halfWidth) {
        return new Interval(centre - halfWidth, centre + halfWidth);
    }

    /** Whether the value lies inside or on an end. */
    public boolean contains(double value) {
        return lower <= value && value <= upper;
    }

    /** {@code upper − lower}. */
    public double width() {
        return upper - lower;
    }
}
