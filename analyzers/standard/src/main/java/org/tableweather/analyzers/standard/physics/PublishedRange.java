package org.tableweather.analyzers.standard.physics;

/**
 * What has been published of each coefficient; all can be set otherwise. The typical value is printed where the source prints one,
 * else it is the middle of the range.
 *
 * @source AlciatorePhysics
 */
public enum PublishedRange {
    /** Friction of a sliding ball on cloth over its weight; a typical 0.2 is printed. */
    CLOTH_SLIDING(0.15, 0.4, 0.2),
    /** Deceleration of a rolling ball over g. */
    CLOTH_ROLLING(0.005, 0.015, 0.01),
    /** Decay of spin about the vertical, rad/s². */
    CLOTH_SPIN_DECAY_RADPS2(5, 15, 10),
    /** Speed off a rail over speed onto it, straight on. */
    RAIL_RESTITUTION(0.6, 0.9, 0.75);

    /** Lower end. */
    public final double low;
    /** Upper end. */
    public final double high;
    /** What is taken when nothing is known. */
    public final double typical;

    PublishedRange(double low, double high, double typical) {
        this.low = low;
        this.high = high;
        this.typical = typical;
    }

    /** Whether a value lies inside. */
    public boolean contains(double value) {
        return value >= low && value <= high;
    }
}
