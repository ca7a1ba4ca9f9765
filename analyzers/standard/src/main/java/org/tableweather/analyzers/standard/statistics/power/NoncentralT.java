package org.tableweather.analyzers.standard.statistics.power;

import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.special.Beta;

/**
 * Student's t when there is an effect: {@code T = (Z + δ) / √(χ²/ν)}. For {@code t ≥ 0} and {@code x = t²/(t² + ν)},
 * {@code P(T > t) = ½ Σ e^(−λ) λ^s/Γ(s+1) · (1 − I_x(s + ½, ν/2))} over s = 0, ½, 1 ..., {@code λ = δ²/2}, with the odd terms
 * negative for a negative δ.
 *
 * @param df ν, above 0
 * @param noncentrality δ
 * @source Lenth1989
 * @source Benton2003
 */
public record NoncentralT(double df, double noncentrality) {

    /**
     * Checks the bounds.
     *
     * @throws IllegalArgumentException for degrees of freedom not above 0, or numbers that are not finite
     */
    public NoncentralT {
        if (!(df > 0 && Double.isFinite(df) && Double.isFinite(noncentrality))) {
            throw new IllegalArgumentException(
                    "noncentral t needs df > 0 and a finite noncentrality, got " + df + " and " + noncentrality);
        }
    }

    /** P(T ≤ t). */
    public double below(double t) {
        if (t < 0) {
            return new NoncentralT(df, -noncentrality).above(-t);
        }
        double rest = new NormalDistribution().cumulativeProbability(-noncentrality);
        return Math.min(1, rest + half(t, false));
    }

    /** P(T > t). */
    public double above(double t) {
        if (t < 0) {
            return new NoncentralT(df, -noncentrality).below(-t);
        }
        return Math.max(0, half(t, true));
    }

    /** ½ Σ over the incomplete beta functions or their complements. */
    private double half(double t, boolean complement) {
        double lambda = noncentrality * noncentrality / 2;
        double part = df / (t * t + df);
        double sign = noncentrality < 0 ? -1 : 1;
        return PoissonSum.over(lambda, 0.5, s -> {
                    double beta = complement
                            ? Beta.regularizedBeta(part, df / 2, s + 0.5)
                            : Beta.regularizedBeta(t * t / (t * t + df), s + 0.5, df / 2);
                    return s == Math.rint(s) ? beta : sign * beta;
                })
                / 2;
    }
}
