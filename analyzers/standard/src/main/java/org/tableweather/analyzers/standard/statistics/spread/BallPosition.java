package org.tableweather.analyzers.standard.statistics.spread;

/**
 * Where a ball lies.
 *
 * @param x along the bed, from a corner of the rectangle that centres can reach
 * @param y across, in the same unit
 */
public record BallPosition(double x, double y) {

    double distance(BallPosition other) {
        return StrictMath.hypot(x - other.x, y - other.y);
    }
}
