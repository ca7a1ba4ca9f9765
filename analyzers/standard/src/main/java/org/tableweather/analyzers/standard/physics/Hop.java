package org.tableweather.analyzers.standard.physics;

/**
 * A ball off the cloth.
 *
 * @param upMps speed up when it leaves, at least 0, m/s
 */
public record Hop(double upMps) {

    /** {@code v²/(2g)}: how high its lowest point comes over the cloth, m. */
    public double heightM() {
        return upMps * upMps / (2 * ClothFriction.GRAVITY);
    }

    /** {@code 2v/g}: how long until it touches the cloth again, s. */
    public double secondsAloft() {
        return 2 * upMps / ClothFriction.GRAVITY;
    }

    /** The hop after it: the bed gives back the speed times a restitution, so the height times its square. */
    public Hop next(double bedRestitution) {
        return new Hop(bedRestitution * upMps);
    }

    /** The hop that comes this high, m. */
    public static Hop ofHeightM(double heightM) {
        return new Hop(Math.sqrt(2 * ClothFriction.GRAVITY * heightM));
    }
}
