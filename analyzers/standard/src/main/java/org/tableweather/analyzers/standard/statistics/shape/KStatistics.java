package org.tableweather.analyzers.standard.statistics.shape;

/**
 * Unbiased cumulants of one sample from its sums of powers of deviations {@code S_r = Σ (x − x̄)^r}:
 *
 * <pre>
 * k₂ = S₂/(n−1)      k₃ = n S₃/((n−1)(n−2))      k₄ = (n(n+1) S₄ − 3(n−1) S₂²)/((n−1)(n−2)(n−3))
 * </pre>
 *
 * @param n size, at least 4
 * @param second S₂
 * @param third S₃
 * @param fourth S₄
 * @source Fisher1930
 */
public record KStatistics(long n, double second, double third, double fourth) {

    /**
     * Checks the size.
     *
     * @throws IllegalArgumentException below 4
     */
    public KStatistics {
        if (n < 4) {
            throw new IllegalArgumentException("k-statistics need n >= 4, got " + n);
        }
    }

    /** k₂, the variance. */
    public double k2() {
        return second / (n - 1);
    }

    /** k₃, its expectation 0 for a symmetric distribution. */
    public double k3() {
        return n * third / ((n - 1.0) * (n - 2));
    }

    /** k₄, its expectation 0 for a normal distribution, below for one cut off on both sides. */
    public double k4() {
        double m = n;
        return (m * (m + 1) * fourth - 3 * (m - 1) * second * second) / ((m - 1) * (m - 2) * (m - 3));
    }

    /** Variance of k₃ over σ⁶ in samples of a normal distribution: {@code 6n/((n−1)(n−2))}. */
    public double varianceOfK3() {
        return 6.0 * n / ((n - 1.0) * (n - 2));
    }

    /** Variance of k₄ over σ⁸ in samples of a normal distribution: {@code 24n(n+1)/((n−1)(n−2)(n−3))}. */
    public double varianceOfK4() {
        double m = n;
        return 24 * m * (m + 1) / ((m - 1) * (m - 2) * (m - 3));
    }
}
