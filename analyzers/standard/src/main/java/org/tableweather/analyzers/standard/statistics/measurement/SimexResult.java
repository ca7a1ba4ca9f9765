package org.tableweather.analyzers.standard.statistics.measurement;

import java.util.List;
import java.util.OptionalDouble;

/**
 * A slope followed back to no error.
 *
 * @param naive on the covariate as measured
 * @param corrected at ζ = −1
 * @param standardError of the corrected slope; empty when its variance cannot be followed back above 0
 * @param curve the mean slope at each amount of added error, the naive one first: for a plot
 * @source Stefanski1995
 */
public record SimexResult(SlopeEstimate naive, double corrected, OptionalDouble standardError, List<Point> curve) {

    /**
     * One amount of added error.
     *
     * @param factor ζ: the added variance over the error's own
     * @param slope mean over the replicates
     */
    public record Point(double factor, double slope) {}
}
