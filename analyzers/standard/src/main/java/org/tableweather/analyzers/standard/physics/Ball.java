package org.tableweather.analyzers.standard.physics;

/**
 * A uniform solid sphere, {@code I = 2/5 m R²}.
 *
 * @param diameterM 2R, m, &gt; 0
 * @param massKg m, kg, &gt; 0
 */
public record Ball(double diameterM, double massKg) {

    /**
     * 57.15 mm and 163 g, the middle of the specification's 5.5 to 6 oz.
     *
     * @source WpaEquipment
     */
    public static final Ball POOL = new Ball(0.05715, 0.163);

    /** {@code I/(mR²)} of a solid sphere. */
    static final double INERTIA = 0.4;

    /**
     * Checks the bounds.
     *
     * @throws IllegalArgumentException unless both are finite and above 0
     */
    public Ball {
        if (!(diameterM > 0 && massKg > 0 && Double.isFinite(diameterM) && Double.isFinite(massKg))) {
            throw new IllegalArgumentException(
                    "ball needs diameter and mass above 0, got " + diameterM + " m and " + massKg + " kg");
        }
    }

    /** R, m. */
    public double radiusM() {
        return diameterM / 2;
    }

    /** {@code ½ m (v² + 2/5 (Rω)²)}, J. */
    public double energyJ(BallState state) {
        double spin = square(state.spinXMps()) + square(state.spinYMps()) + square(state.spinZMps());
        return 0.5 * massKg * (square(state.vxMps()) + square(state.vyMps()) + INERTIA * spin);
    }

    private static double square(double number) {
        return number * number;
    }
}
