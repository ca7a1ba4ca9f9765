package org.tableweather.analyzers.standard.physics;

/**
 * What the cloth does to a ball.
 *
 * @param sliding μ: friction of a sliding ball over its weight; 0 for none
 * @param rolling μ_r: deceleration of a rolling ball over g; the force over weight is 7/5 of it; 0 for none
 * @param spinDecayRadps2 α: how fast spin about the vertical goes, rad/s²; 0 for never
 */
public record ClothFriction(double sliding, double rolling, double spinDecayRadps2) {

    /** No friction at all. */
    public static final ClothFriction NONE = new ClothFriction(0, 0, 0);

    /**
     * Sliding 0.2, rolling 0.01, spin decay 10 rad/s²: inside the published ranges, {@link PublishedRange}.
     *
     * @source AlciatorePhysics
     */
    public static final ClothFriction TYPICAL = new ClothFriction(
            PublishedRange.CLOTH_SLIDING.typical,
            PublishedRange.CLOTH_ROLLING.typical,
            PublishedRange.CLOTH_SPIN_DECAY_RADPS2.typical);

    /** Standard gravity, m/s². */
    public static final double GRAVITY = 9.80665;

    /**
     * Checks the bounds.
     *
     * @throws IllegalArgumentException unless all are finite and at least 0
     */
    public ClothFriction {
        if (!(sliding >= 0 && rolling >= 0 && spinDecayRadps2 >= 0)
                || !Double.isFinite(sliding + rolling + spinDecayRadps2)) {
            throw new IllegalArgumentException("cloth friction needs finite numbers >= 0, got " + sliding + ", "
                    + rolling + " and " + spinDecayRadps2 + " rad/s²");
        }
    }

    /** The same cloth with another sliding friction. */
    public ClothFriction withSliding(double other) {
        return new ClothFriction(other, rolling, spinDecayRadps2);
    }

    /** The same cloth with another rolling resistance, as roll-outs measure it. */
    public ClothFriction withRolling(double other) {
        return new ClothFriction(sliding, other, spinDecayRadps2);
    }

    /** The same cloth with another decay of spin, rad/s². */
    public ClothFriction withSpinDecayRadps2(double other) {
        return new ClothFriction(sliding, rolling, other);
    }
}
