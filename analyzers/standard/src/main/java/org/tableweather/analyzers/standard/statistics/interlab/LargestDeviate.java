package org.tableweather.analyzers.standard.statistics.interlab;

import org.hipparchus.special.Gamma;

/**
 * Distribution of the largest standardised deviate of m normal values, {@code b = (x_max − x̄) / √Σ(x − x̄)²}.
 *
 * <p>The deviate of one value is {@code b = √((m−1)/m) sin φ} with density of φ proportional to {@code cos^(m−3) φ}; the
 * other m − 1 values are free of it, and it is the largest when their own largest deviate is at most
 * {@code √(m/(m−1)) tan φ}. So {@code F_m(φ) = m ∫ g(φ') F_{m−1}(..) dφ'}, started from {@code F_2}, which is a step at
 * {@code b = 1/√2}. Kept on a grid in φ and interpolated by cubics that match log value and slope.
 *
 * @source Grubbs1950
 */
final class LargestDeviate {

    private static final int CELLS = 2000;
    private static final double TINY = 1e-250;
    private static final double STEEPEST = 1e6;
    private static final double[] NODES = {
        -0.8611363115940526, -0.3399810435848563, 0.3399810435848563, 0.8611363115940526
    };
    private static final double[] WEIGHTS = {
        0.3478548451374538, 0.6521451548625461, 0.6521451548625461, 0.3478548451374538
    };

    private final int m;
    private final double start;
    private final double step;
    private final double[] chance;
    private final double[] density;

    private LargestDeviate(int m, LargestDeviate smaller) {
        this.m = m;
        this.start = StrictMath.asin(1.0 / (m - 1));
        this.step = (Math.PI / 2 - start) / CELLS;
        this.chance = new double[CELLS + 1];
        this.density = new double[CELLS + 1];
        double scale = m / bell(m);
        for (int i = 0; i <= CELLS; i++) {
            density[i] = scale * integrand(smaller, start + i * step);
            if (i > 0) {
                chance[i] = chance[i - 1] + scale * cell(smaller, start + (i - 0.5) * step);
            }
        }
    }

    /**
     * For m values.
     *
     * @param m at least 2
     */
    static LargestDeviate of(int m) {
        LargestDeviate distribution = null;
        for (int size = 3; size <= m; size++) {
            distribution = new LargestDeviate(size, distribution);
        }
        return distribution;
    }

    /**
     * Chance of a largest deviate of at most b, for m values.
     *
     * @param distribution null for m = 2
     */
    static double chance(LargestDeviate distribution, double b) {
        if (distribution == null) {
            return b >= Math.sqrt(0.5) - 1e-12 ? 1 : 0;
        }
        double sine = b / Math.sqrt((distribution.m - 1.0) / distribution.m);
        return sine >= 1 ? 1 : distribution.at(StrictMath.asin(Math.max(-1, sine)));
    }

    /** {@code ∫ cos^(m−3) φ dφ} over (−π/2, π/2). */
    private static double bell(int m) {
        return Math.sqrt(Math.PI) * StrictMath.exp(Gamma.logGamma((m - 2) / 2.0) - Gamma.logGamma((m - 1) / 2.0));
    }

    private double integrand(LargestDeviate smaller, double phi) {
        double bound = Math.sqrt(m / (m - 1.0)) * StrictMath.tan(phi);
        return StrictMath.pow(StrictMath.cos(phi), m - 3) * chance(smaller, bound);
    }

    private double cell(LargestDeviate smaller, double middle) {
        double sum = 0;
        for (int k = 0; k < NODES.length; k++) {
            sum += WEIGHTS[k] * integrand(smaller, middle + NODES[k] * step / 2);
        }
        return sum * step / 2;
    }

    /** Log chance by cubics, so that a tail keeps its relative precision: the next size multiplies it by m. */
    private double at(double phi) {
        if (phi <= start) {
            return 0;
        }
        int i = Math.min(CELLS - 1, (int) ((phi - start) / step));
        double t = (phi - start) / step - i;
        if (chance[i] < TINY) {
            return chance[i + 1] * StrictMath.pow(t, m - 2);
        }
        double low = StrictMath.log(chance[i]);
        double rise = StrictMath.log(chance[i + 1]) - low;
        double left = Math.min(STEEPEST, step * density[i] / chance[i]) - rise;
        double right = rise - Math.min(STEEPEST, step * density[i + 1] / chance[i + 1]);
        double height = low + t * rise + t * (1 - t) * ((1 - t) * left + t * right);
        return StrictMath.exp(Math.max(low, Math.min(low + rise, height)));
    }
}
