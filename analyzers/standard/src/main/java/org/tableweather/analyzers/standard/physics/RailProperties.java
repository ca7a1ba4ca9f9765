package org.tableweather.analyzers.standard.physics;

/**
 * A rail as a ball feels it.
 *
 * @param restitution by the speed at which the ball compresses the nose
 * @param friction of ball on rail, at least 0
 * @param noseSine sine of the angle by which the nose meets the ball above its middle, {@code 2h/D − 1} of the height h
 * @param bedFriction of the ball on the cloth during the impact, at least 0; used by the stepped impact alone
 */
public record RailProperties(RestitutionLaw restitution, double friction, double noseSine, double bedFriction) {

    /**
     * {@code sin θ = 2·0.635 − 1}: a nose at 63.5 % of the ball's diameter.
     *
     * @source WpaEquipment
     */
    public static final double POOL_NOSE_SINE = 0.27;

    private static final double STEEPEST = 0.9;

    /**
     * Checks the bounds.
     *
     * @throws IllegalArgumentException for a friction below 0 or so large that the nose would wedge the ball
     *     ({@code μ tan θ} at least 1), or a sine outside [0, 0.9]
     */
    public RailProperties {
        if (!(friction >= 0 && bedFriction >= 0 && noseSine >= 0 && noseSine <= STEEPEST)) {
            throw new IllegalArgumentException("a rail needs frictions >= 0 and a nose sine in [0, 0.9], got "
                    + friction + ", " + bedFriction + " and " + noseSine);
        }
        if (!(friction * noseSine < Math.sqrt(1 - noseSine * noseSine))) {
            throw new IllegalArgumentException("rail friction " + friction + " would wedge a ball under a nose of sine "
                    + noseSine + ": lower the friction or the nose");
        }
    }

    /** {@code cos θ}. */
    public double noseCosine() {
        return Math.sqrt(1 - noseSine * noseSine);
    }

    /** The sine of a nose at a height, both in the same unit: {@code 2h/D − 1}. */
    public static double noseSine(double noseHeight, double ballDiameter) {
        return 2 * noseHeight / ballDiameter - 1;
    }
}
