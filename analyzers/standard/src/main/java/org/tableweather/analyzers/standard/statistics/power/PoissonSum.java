package org.tableweather.analyzers.standard.statistics.power;

import java.util.function.DoubleUnaryOperator;
import org.hipparchus.special.Gamma;

/**
 * {@code Σ e^(−λ) λ^s / Γ(s + 1) · term(s)} over s = 0, step, 2 step ..., summed outwards from the largest weight, so that
 * neither a large λ nor a far tail loses digits.
 *
 * @source Benton2003
 */
final class PoissonSum {

    private static final double NEGLIGIBLE = 1e-20;

    private PoissonSum() {}

    /**
     * The sum.
     *
     * @param lambda λ, at least 0
     * @param step 1, or ½ for both parities at once
     * @param term between 0 and 1
     */
    static double over(double lambda, double step, DoubleUnaryOperator term) {
        if (lambda == 0) {
            return term.applyAsDouble(0);
        }
        long middle = (long) Math.floor(lambda / step);
        double sum = 0;
        for (long k = middle; k >= 0; k--) {
            double weight = weight(lambda, k * step);
            sum += weight * term.applyAsDouble(k * step);
            if (weight < NEGLIGIBLE) {
                break;
            }
        }
        double weight = 1;
        for (long k = middle + 1; weight >= NEGLIGIBLE; k++) {
            weight = weight(lambda, k * step);
            sum += weight * term.applyAsDouble(k * step);
        }
        return sum;
    }

    private static double weight(double lambda, double s) {
        return StrictMath.exp(s * StrictMath.log(lambda) - lambda - Gamma.logGamma(s + 1));
    }
}
