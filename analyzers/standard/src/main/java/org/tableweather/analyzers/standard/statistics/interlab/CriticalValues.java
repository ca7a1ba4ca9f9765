package org.tableweather.analyzers.standard.statistics.interlab;

import org.hipparchus.distribution.continuous.FDistribution;
import org.hipparchus.distribution.continuous.TDistribution;

/**
 * Bounds that consistent laboratories stay within, from the distributions behind the printed tables.
 *
 * <p>{@code p} is the number of laboratories, {@code n} that of results in each, {@code alpha} the chance that consistent
 * laboratories exceed the bound.
 *
 * @source Wilrich2013
 */
public final class CriticalValues {

    private static final double ACCURACY = 1e-13;

    private CriticalValues() {}

    /**
     * Of Mandel's |h|, for one laboratory: {@code (p−1) t / √(p (t² + p − 2))}, t the quantile 1 − α/2 on p − 2 degrees of
     * freedom.
     *
     * @param p at least 3
     * @source Mandel1985
     */
    public static double mandelH(double alpha, int p) {
        requireAlpha(alpha);
        requireAtLeast("laboratories", 3, p);
        double t = new TDistribution(p - 2, ACCURACY).inverseCumulativeProbability(1 - alpha / 2);
        return (p - 1) * t / Math.sqrt(p * (t * t + p - 2));
    }

    /**
     * Of Mandel's k, for one laboratory: {@code √(p F / (p − 1 + F))}, F the quantile 1 − α on n − 1 and (p − 1)(n − 1).
     *
     * @param p at least 2
     * @param n at least 2
     * @source Mandel1985
     */
    public static double mandelK(double alpha, int p, long n) {
        double f = upperF(alpha, p, n);
        return Math.sqrt(p * f / (p - 1 + f));
    }

    /**
     * Of Cochran's C: {@code F / (F + p − 1)}, F the quantile 1 − α/p on n − 1 and (p − 1)(n − 1).
     *
     * @param p at least 2
     * @param n at least 2
     * @source Cochran1941
     */
    public static double cochran(double alpha, int p, long n) {
        double f = upperF(alpha / p, p, n);
        return f / (f + p - 1);
    }

    /**
     * Of Grubbs' G for one suspect at either end: {@code (p−1)/√p · √(t² / (p − 2 + t²))}, t the quantile 1 − α/(2p) on
     * p − 2 degrees of freedom.
     *
     * @param p at least 3
     * @source Grubbs1969
     */
    public static double grubbs(double alpha, int p) {
        requireAlpha(alpha);
        requireAtLeast("laboratories", 3, p);
        double t = new TDistribution(p - 2, ACCURACY).inverseCumulativeProbability(1 - alpha / (2 * p));
        return (p - 1) / Math.sqrt(p) * Math.sqrt(t * t / (p - 2 + t * t));
    }

    /**
     * Of Grubbs' ratio for two suspects at one end, the other end tested as well: the quantile α/2 of
     * {@link TwoOutlierRatio}. Smaller ratios are outlying.
     *
     * @param p 4 to 100
     * @source Grubbs1950
     */
    public static double grubbsPair(double alpha, int p) {
        requireAlpha(alpha);
        requireAtLeast("laboratories", 4, p);
        if (p > TwoOutlierRatio.MOST) {
            throw new IllegalArgumentException("laboratories must be at most " + TwoOutlierRatio.MOST + ", got " + p);
        }
        return new TwoOutlierRatio(p).quantile(alpha / 2);
    }

    private static double upperF(double alpha, int p, long n) {
        requireAlpha(alpha);
        requireAtLeast("laboratories", 2, p);
        requireAtLeast("results in each", 2, n);
        return new FDistribution(n - 1.0, (p - 1.0) * (n - 1.0), ACCURACY).inverseCumulativeProbability(1 - alpha);
    }

    private static void requireAlpha(double alpha) {
        if (!(alpha > 0 && alpha < 1)) {
            throw new IllegalArgumentException("alpha must be in (0, 1), got " + alpha);
        }
    }

    private static void requireAtLeast(String what, long least, long got) {
        if (got < least) {
            throw new IllegalArgumentException(what + " must be at least " + least + ", got " + got);
        }
    }
}
