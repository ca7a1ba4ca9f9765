package org.tableweather.analyzers.standard.statistics.spread;

/**
 * What the cloth takes from a rolling ball.
 *
 * @param coefficient μ, deceleration by the cloth over g, the air taken out
 * @param naiveCoefficient the same with the air's share left in
 * @param airShare part of the lost energy that the air took, in [0, 1)
 */
public record RollingResistance(double coefficient, double naiveCoefficient, double airShare) {

    /** {@code 7/5 μ}: resisting force over weight. */
    public double forceCoefficient() {
        return 1.4 * coefficient;
    }
}
