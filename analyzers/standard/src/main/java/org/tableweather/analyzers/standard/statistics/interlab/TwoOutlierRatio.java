package org.tableweather.analyzers.standard.statistics.interlab;

import java.util.function.DoubleUnaryOperator;
import org.hipparchus.analysis.integration.gauss.GaussIntegrator;
import org.hipparchus.analysis.integration.gauss.GaussIntegratorFactory;
import org.hipparchus.analysis.solvers.BrentSolver;

/**
 * Distribution of Grubbs' ratio for the two largest of p normal values: sum of squares without them, over that of all.
 *
 * <p>Exactly one pair is the largest two, so {@code P(ratio ≤ c) = C(p,2) P(Q/(Q + R²) ≤ c, both above the rest)} for a
 * fixed pair: Q is the rest's sum of squares, and the pair's half difference and its lead over the rest are
 * {@code R sin θ/√2} and {@code a R cos θ} with {@code a = √(p/(2(p−2)))} and θ uniform. The ratio q of a fixed pair has
 * {@code P(q ≤ c) = c^((p−3)/2)}; the smaller of the pair leads when the rest's largest deviate is at most
 * {@code (a cos θ − sin|θ|/√2) / √(q/(1−q))}. Two integrals remain, over θ and q.
 *
 * @source Grubbs1950
 */
final class TwoOutlierRatio {

    /** Beyond this the recursion over sizes loses its digits. */
    static final int MOST = 100;

    private static final int POINTS = 64;
    private static final double ACCURACY = 1e-10;

    private final int p;
    private final LargestDeviate rest;
    private final double lead;
    private final double widest;
    private final GaussIntegrator rule = new GaussIntegratorFactory().legendre(POINTS);

    /**
     * For p values.
     *
     * @param p 4 to {@link #MOST}
     */
    TwoOutlierRatio(int p) {
        this.p = p;
        this.rest = LargestDeviate.of(p - 2);
        this.lead = Math.sqrt(p / (2.0 * (p - 2)));
        this.widest = StrictMath.atan(lead * Math.sqrt(2));
    }

    /** Chance of a ratio of at most c, in [0, 1]. */
    double chance(double c) {
        double pairs = p * (p - 1) / 2.0;
        return pairs / Math.PI * integrate(theta -> alongAngle(theta, c), 0, widest);
    }

    /**
     * The inner integral over q up to c. Below one ratio the pair leads whatever the rest, above another it cannot, where the
     * rest's deviate would fall below its least value {@code 1/√(m(m−1))}.
     */
    private double alongAngle(double theta, double c) {
        double ahead = lead * StrictMath.cos(theta) - StrictMath.sin(theta) / Math.sqrt(2);
        double certain = upTo(ahead / Math.sqrt((p - 3.0) / (p - 2)), c);
        double possible = upTo(ahead * Math.sqrt((p - 2.0) * (p - 3)), c);
        double power = (p - 3) / 2.0;
        if (possible <= certain) {
            return StrictMath.pow(certain, power);
        }
        double between = integrate(
                q -> power * StrictMath.pow(q, power - 1) * LargestDeviate.chance(rest, ahead / Math.sqrt(q / (1 - q))),
                certain,
                possible);
        return StrictMath.pow(certain, power) + between;
    }

    private double integrate(DoubleUnaryOperator function, double low, double high) {
        double half = (high - low) / 2;
        return half * rule.integrate(at -> function.applyAsDouble(low + half * (1 + at)));
    }

    /** The smaller of c and the q with {@code √(q/(1−q)) = bound}. */
    private double upTo(double bound, double c) {
        double square = Math.max(0, bound) * Math.max(0, bound);
        return Math.min(c, square / (1 + square));
    }

    /** The ratio with this chance of a smaller one. */
    double quantile(double chance) {
        BrentSolver solver = new BrentSolver(ACCURACY, ACCURACY * 1e-4);
        return solver.solve(200, c -> chance(c) - chance, 0, 1 - 1e-9);
    }
}
