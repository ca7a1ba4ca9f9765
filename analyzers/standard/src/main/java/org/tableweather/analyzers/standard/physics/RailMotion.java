package org.tableweather.analyzers.standard.physics;

/**
 * A ball's motion at a rail, in the rail's frame: along it, into it, up; right-handed. Spin as surface speed Rω.
 *
 * @param alongMps of the centre, m/s
 * @param intoMps of the centre, towards the rail; above 0 before an impact, below 0 after it, m/s
 * @param upMps of the centre; above 0 when the ball leaves the cloth, m/s
 * @param spinAlongMps Rω about the direction along, m/s; {@code −into} when rolling
 * @param spinIntoMps Rω about the direction into, m/s; {@code along} when rolling
 * @param spinUpMps Rω about the vertical, m/s
 */
public record RailMotion(
        double alongMps, double intoMps, double upMps, double spinAlongMps, double spinIntoMps, double spinUpMps) {

    /** A ball on the cloth that rolls, with side spin. */
    public static RailMotion rolling(double alongMps, double intoMps, double spinUpMps) {
        return new RailMotion(alongMps, intoMps, 0, -intoMps, alongMps, spinUpMps);
    }

    /** {@code ½ (v² + 2/5 (Rω)²)}, J/kg. */
    public double energyPerKg() {
        double speed = alongMps * alongMps + intoMps * intoMps + upMps * upMps;
        double spin = spinAlongMps * spinAlongMps + spinIntoMps * spinIntoMps + spinUpMps * spinUpMps;
        return 0.5 * (speed + Ball.INERTIA * spin);
    }

    /** Speed of the centre over the bed, m/s. */
    public double speedMps() {
        return Math.sqrt(alongMps * alongMps + intoMps * intoMps);
    }

    /** Angle of the path to the rail's normal, degrees, 0 to 90. */
    public double angleDeg() {
        return Math.toDegrees(StrictMath.atan2(Math.abs(alongMps), Math.abs(intoMps)));
    }

    /** The mirror image in a plane across the rail. */
    RailMotion mirrored() {
        return new RailMotion(-alongMps, intoMps, upMps, spinAlongMps, -spinIntoMps, -spinUpMps);
    }
}
