package org.tableweather.analyzers.standard.physics;

/**
 * Restitution by the speed at which the ball comes at the nose: {@code e = at1Mps + perMps (v − 1)}, held constant above
 * {@code topMps} and inside [0, 1].
 *
 * @param at1Mps e at 1 m/s
 * @param perMps change of e per m/s
 * @param topMps speed beyond which e stays as it is, m/s
 */
public record RestitutionLaw(double at1Mps, double perMps, double topMps) {

    /** The same e at every speed. */
    public static RestitutionLaw constant(double e) {
        return new RestitutionLaw(e, 0, Double.POSITIVE_INFINITY);
    }

    /**
     * e at a speed.
     *
     * @param speedMps at least 0
     */
    public double at(double speedMps) {
        double e = perMps == 0 ? at1Mps : at1Mps + perMps * (Math.min(speedMps, topMps) - 1);
        return Math.max(0, Math.min(1, e));
    }
}
