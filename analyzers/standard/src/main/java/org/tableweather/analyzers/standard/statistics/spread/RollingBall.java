package org.tableweather.analyzers.standard.statistics.spread;

import org.tableweather.analyzers.standard.statistics.answer.Answer;
import org.tableweather.analyzers.standard.statistics.answer.Refusal.Cause;

/**
 * A ball that rolls without sliding against the cloth's resistance and the air: {@code dv/dt = −(μg + bv²)} with
 * {@code b = ½ρC_d(πD²/4) / (7m/5)}, because a rolling ball carries 7/5 of its mass. Along the path
 * {@code v² = (v₀² + μg/b) e^(−2bx) − μg/b}, so rolling resistance follows in closed form from what was measured.
 *
 * <p>μ is the deceleration by the cloth over g, as in {@code v²/(2gd)}; {@link RollingResistance#forceCoefficient()} is the
 * force over weight. Valid between cushions only: a cushion takes far more than the roll.
 *
 * @param massKg m, kg
 * @param diameterM D, m
 * @param dragCoefficient C_d, about 0.5; 0 leaves the air out
 * @param airDensityKgPerM3 ρ, kg/m³
 */
public record RollingBall(double massKg, double diameterM, double dragCoefficient, double airDensityKgPerM3) {

    /** Standard gravity, m/s². */
    static final double GRAVITY = 9.80665;

    private static final double ROLLING_INERTIA = 1.4;

    /**
     * Checks the bounds.
     *
     * @throws IllegalArgumentException unless mass and diameter are above 0, the others at least 0
     */
    public RollingBall {
        if (!(massKg > 0 && diameterM > 0 && dragCoefficient >= 0 && airDensityKgPerM3 >= 0)) {
            throw new IllegalArgumentException("ball needs mass and diameter > 0, drag and density >= 0, got " + massKg
                    + ", " + diameterM + ", " + dragCoefficient + ", " + airDensityKgPerM3);
        }
    }

    /** {@code ½ρC_d(πD²/4)v²}, N. */
    public double dragForceN(double speedMps) {
        double area = Math.PI * diameterM * diameterM / 4;
        return 0.5 * airDensityKgPerM3 * dragCoefficient * area * speedMps * speedMps;
    }

    /** b, 1/m. */
    private double dragRate() {
        return dragForceN(1) / (ROLLING_INERTIA * massKg);
    }

    /**
     * Distance to rest, {@code log(1 + bv²/(μg)) / 2b}, m.
     *
     * @param coefficient μ, above 0
     * @param speedMps rolling speed at the start, m/s
     */
    public double distanceM(double coefficient, double speedMps) {
        double a = coefficient * GRAVITY;
        double b = dragRate();
        double square = speedMps * speedMps;
        return b == 0 ? square / (2 * a) : StrictMath.log1p(b * square / a) / (2 * b);
    }

    /** Time to rest, {@code atan(v√(b/(μg))) / √(bμg)}, s. */
    public double timeS(double coefficient, double speedMps) {
        double a = coefficient * GRAVITY;
        double b = dragRate();
        return b == 0 ? speedMps / a : StrictMath.atan(speedMps * Math.sqrt(b / a)) / Math.sqrt(a * b);
    }

    /** Speed after a distance, m/s; 0 beyond the point of rest. */
    public double speedMps(double coefficient, double startMps, double travelledM) {
        double a = coefficient * GRAVITY;
        double left = startMps * startMps * StrictMath.exp(-2 * dragRate() * travelledM) - 2 * a * reach(travelledM);
        return Math.sqrt(Math.max(0, left));
    }

    /** {@code (1 − e^(−2bx)) / 2b}, which is x without air. */
    private double reach(double travelledM) {
        double b = dragRate();
        return b == 0 ? travelledM : -StrictMath.expm1(-2 * b * travelledM) / (2 * b);
    }

    /**
     * From a start speed and the distance to rest: {@code μg = b v₀² / (e^(2bd) − 1)}.
     *
     * @param startMps rolling speed, above 0
     * @param distanceM of the centre, above 0; {@link CentreTravel}
     */
    public RollingResistance fromDistance(double startMps, double distanceM) {
        requirePositive("start speed", startMps);
        requirePositive("distance", distanceM);
        double b = dragRate();
        double square = startMps * startMps;
        double a = b == 0 ? square / (2 * distanceM) : b * square / StrictMath.expm1(2 * b * distanceM);
        return resistance(a, square / (2 * distanceM), startMps, distanceM);
    }

    /**
     * From the distance to rest and the time it took: {@code μg = (atan √(e^(2bd) − 1) / T)² / b}.
     *
     * @param distanceM of the centre, above 0
     * @param timeS above 0
     */
    public RollingResistance fromTime(double distanceM, double timeS) {
        requirePositive("distance", distanceM);
        requirePositive("time", timeS);
        double b = dragRate();
        double plain = 2 * distanceM / (timeS * timeS);
        double angle = StrictMath.atan(Math.sqrt(StrictMath.expm1(2 * b * distanceM))) / timeS;
        double a = b == 0 ? plain : angle * angle / b;
        double start = b == 0 ? 2 * distanceM / timeS : Math.sqrt(a * StrictMath.expm1(2 * b * distanceM) / b);
        return resistance(a, plain, start, distanceM);
    }

    /**
     * From the speeds at two points: {@code μg = (v₀² e^(−2bx) − v₁²) b / (1 − e^(−2bx))}.
     *
     * @param startMps at the first, above 0
     * @param endMps at the second, at least 0
     * @param distanceM between them, above 0
     * @return refused when the ball lost no more than the air takes
     */
    public Answer<RollingResistance> fromGates(double startMps, double endMps, double distanceM) {
        requirePositive("start speed", startMps);
        requirePositive("distance", distanceM);
        double left = startMps * startMps * StrictMath.exp(-2 * dragRate() * distanceM);
        double a = (left - endMps * endMps) / (2 * reach(distanceM));
        if (!(a > 0)) {
            return Answer.refuse(
                    Cause.ERROR_SWAMPS,
                    "from " + startMps + " to " + endMps + " m/s over " + distanceM
                            + " m the ball lost no more than the air takes: measure over a longer way");
        }
        double plain = (startMps * startMps - endMps * endMps) / (2 * distanceM);
        double lost = startMps * startMps - endMps * endMps;
        return Answer.of(new RollingResistance(a / GRAVITY, plain / GRAVITY, 1 - 2 * a * distanceM / lost));
    }

    private static RollingResistance resistance(double a, double plain, double startMps, double distanceM) {
        double byAir = 1 - 2 * a * distanceM / (startMps * startMps);
        return new RollingResistance(a / GRAVITY, plain / GRAVITY, byAir);
    }

    private static void requirePositive(String what, double value) {
        if (!(value > 0 && Double.isFinite(value))) {
            throw new IllegalArgumentException(what + " must be above 0, got " + value);
        }
    }
}
