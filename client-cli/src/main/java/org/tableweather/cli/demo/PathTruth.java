package org.tableweather.cli.demo;

import org.tableweather.analyzers.standard.physics.ClothFriction;
import org.tableweather.analyzers.standard.physics.PublishedRange;

/**
 * What the invented kicks off two rails are made from, beside {@link RailTruth}: the ball library follows a ball that rolls from the
 * shot's start towards its aim, and every rail on its way is that of the room and the climate, with the scatter of angle and speed that
 * a single rebound has. Aim and speed scatter from attempt to attempt. Each room's cloth is drawn from a triangle over the
 * published range that peaks at the typical value, and does not feel the climate. All figures are invented.
 *
 * @param aimSdDia SD of the aim along the first rail, diamonds
 * @param speedSdShare SD of the speed, as a part of it
 */
public record PathTruth(double aimSdDia, double speedSdShare) {

    /** The truth of the demonstration. */
    public static PathTruth ofTheDemo() {
        return new PathTruth(0.02, 0.01);
    }

    /** A room's cloth. */
    ClothFriction cloth(SeededDraws draws) {
        return new ClothFriction(
                drawn(PublishedRange.CLOTH_SLIDING, draws),
                drawn(PublishedRange.CLOTH_ROLLING, draws),
                drawn(PublishedRange.CLOTH_SPIN_DECAY_RADPS2, draws));
    }

    // the inverse of a triangle's distribution function
    private static double drawn(PublishedRange range, SeededDraws draws) {
        double share = draws.uniform(0, 1);
        double width = range.high - range.low;
        double rising = range.typical - range.low;
        return share * width < rising
                ? range.low + Math.sqrt(share * width * rising)
                : range.high - Math.sqrt((1 - share) * width * (range.high - range.typical));
    }
}
