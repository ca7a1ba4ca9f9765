package org.tableweather.analyzers.standard.statistics.robust;

/**
 * How a cluster's residuals, too small because the fit bent towards them, are corrected. With {@code H_jj} the cluster's
 * block of the hat matrix, m clusters, N rows, p coefficients.
 */
public enum Correction {
    /**
     * None: too sure with few clusters.
     *
     * @source Liang1986
     */
    CR0,
    /** Covariance times {@code m/(m−1)}. */
    CR1,
    /** Covariance times {@code m/(m−1) · (N−1)/(N−p)}. */
    CR1S,
    /**
     * Residuals times {@code (I − H_jj)^(−1/2)}: unbiased if rows were independent after all.
     *
     * @source Bell2002
     */
    CR2,
    /**
     * Residuals times {@code (I − H_jj)⁻¹}: near the jackknife, cautious.
     *
     * @source Bell2002
     */
    CR3;

    private static final double ALONE = 1e-8;

    /** What a component of the residuals with hat value λ is multiplied by; 0 where the cluster alone decides it. */
    double factor(double hat) {
        double left = 1 - hat;
        return switch (this) {
            case CR0, CR1, CR1S -> 1;
            case CR2 -> left > ALONE ? 1 / Math.sqrt(left) : 0;
            case CR3 -> left > ALONE ? 1 / left : 0;
        };
    }

    static boolean decidesAlone(double hat) {
        return 1 - hat <= ALONE;
    }

    /** What the covariance is multiplied by. */
    double scale(int clusters, long rows, int coefficients) {
        double few = clusters / (clusters - 1.0);
        return switch (this) {
            case CR0, CR2, CR3 -> 1;
            case CR1 -> few;
            case CR1S -> few * (rows - 1) / (rows - coefficients);
        };
    }
}
