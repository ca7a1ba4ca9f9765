package org.tableweather.analyzers.standard.statistics.spread;

/**
 * What a random scatter shows: expected mean distance to the nearest neighbour, and its standard error, both in the unit of
 * the rectangle.
 *
 * @param meanDistance expected
 * @param standardError of a scatter's mean distance
 * @source Clark1954
 * @source Donnelly1978
 */
public record ScatterExpectation(double meanDistance, double standardError) {

    /**
     * Of this many balls on a rectangle.
     *
     * @param balls at least 2
     * @param length that positions can reach, above 0
     * @param width likewise
     * @param correction for the edges
     * @throws IllegalArgumentException outside the bounds
     */
    public static ScatterExpectation of(int balls, double length, double width, EdgeCorrection correction) {
        if (!(balls >= 2 && length > 0 && width > 0)) {
            throw new IllegalArgumentException("a scatter needs 2 balls, a length and a width above 0, got " + balls
                    + ", " + length + " and " + width);
        }
        double area = length * width;
        double perimeter = 2 * (length + width);
        return new ScatterExpectation(
                correction.mean(balls, area, perimeter), correction.standardError(balls, area, perimeter));
    }
}
