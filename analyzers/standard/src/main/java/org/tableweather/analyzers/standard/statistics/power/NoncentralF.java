package org.tableweather.analyzers.standard.statistics.power;

import org.hipparchus.special.Beta;

/**
 * F when there is an effect: {@code P(F > f) = Σ e^(−λ/2) (λ/2)^j/j! · (1 − I_x(j + d₁/2, d₂/2))},
 * {@code x = d₁f/(d₁f + d₂)}.
 *
 * @param upperDf d₁, above 0
 * @param lowerDf d₂, above 0
 * @param noncentrality λ, at least 0
 * @source Benton2003
 */
public record NoncentralF(double upperDf, double lowerDf, double noncentrality) {

    /**
     * Checks the bounds.
     *
     * @throws IllegalArgumentException outside them
     */
    public NoncentralF {
        boolean finite = Double.isFinite(upperDf) && Double.isFinite(lowerDf) && Double.isFinite(noncentrality);
        if (!(finite && upperDf > 0 && lowerDf > 0 && noncentrality >= 0)) {
            throw new IllegalArgumentException("noncentral F needs df > 0 and noncentrality >= 0, got " + upperDf + ", "
                    + lowerDf + " and " + noncentrality);
        }
    }

    /** P(F ≤ f). */
    public double below(double f) {
        if (f <= 0) {
            return 0;
        }
        double part = upperDf * f / (upperDf * f + lowerDf);
        return PoissonSum.over(noncentrality / 2, 1, j -> Beta.regularizedBeta(part, j + upperDf / 2, lowerDf / 2));
    }

    /** P(F > f). */
    public double above(double f) {
        if (f <= 0) {
            return 1;
        }
        double part = lowerDf / (upperDf * f + lowerDf);
        return PoissonSum.over(noncentrality / 2, 1, j -> Beta.regularizedBeta(part, lowerDf / 2, j + upperDf / 2));
    }
}
