package org.tableweather.analyzers.standard.statistics.meta;

import java.util.function.DoubleUnaryOperator;
import org.hipparchus.analysis.solvers.BrentSolver;
import org.hipparchus.distribution.continuous.ChiSquaredDistribution;
import org.tableweather.analyzers.standard.statistics.answer.Coverage;
import org.tableweather.analyzers.standard.statistics.answer.Interval;

/**
 * Solves for τ² to rounding, whatever the method; an iteration that stops early moves the fourth digit.
 *
 * @source Viechtbauer2005
 * @source Viechtbauer2007
 */
final class TauSquared {

    private static final int SCAN = 64;
    private static final int MOST_EVALUATIONS = 1000;
    private static final double RELATIVE = 1e-15;

    private final WeightedModel model;
    private final double residual;

    TauSquared(WeightedModel model) {
        this.model = model;
        this.residual = model.unweighted().q;
    }

    double estimate(HeterogeneityMethod method) {
        return switch (method) {
            case FIXED -> 0;
            case DERSIMONIAN_LAIRD -> moments();
            case PAULE_MANDEL -> whereQIs(model.df());
            case REML -> mostLikely(WeightedModel.At::restrictedScore, WeightedModel.At::restrictedLogLikelihood);
            case ML -> mostLikely(WeightedModel.At::score, WeightedModel.At::logLikelihood);
        };
    }

    private double moments() {
        WeightedModel.At fixed = model.at(0);
        return Math.max(0, (fixed.q - model.df()) / fixed.traceOfP());
    }

    /**
     * The τ² at which Q(τ²) takes a value; 0 when Q(0) is below it. Q falls as τ² grows, and {@code Q(τ²) ≤ RSS / τ²}.
     */
    private double whereQIs(double target) {
        if (model.at(0).q <= target) {
            return 0;
        }
        return root(tau -> model.at(tau).q - target, 0, residual / target);
    }

    /** All τ² with {@code χ²(tail) ≤ Q(τ²) ≤ χ²(1 − tail)}. */
    Interval profile(Coverage coverage) {
        ChiSquaredDistribution chiSquared = new ChiSquaredDistribution(model.df(), 1e-13);
        double lower = whereQIs(chiSquared.inverseCumulativeProbability(coverage.upperLevel()));
        double upper = whereQIs(chiSquared.inverseCumulativeProbability(coverage.tail()));
        return new Interval(lower, upper);
    }

    /** The best of 0 and every root where the score falls through 0: the likelihood may have more than one top. */
    private double mostLikely(Measure score, Measure logLikelihood) {
        double best = 0;
        double highest = logLikelihood.of(model.at(0));
        double bound = scoreBound();
        double previous = 0;
        double before = score.of(model.at(0));
        for (int i = 1; i <= SCAN; i++) {
            double here = bound * StrictMath.pow((double) i / SCAN, 3);
            double after = score.of(model.at(here));
            if (before > 0 && after <= 0) {
                double top = root(tau -> score.of(model.at(tau)), previous, here);
                double height = logLikelihood.of(model.at(top));
                if (height > highest) {
                    highest = height;
                    best = top;
                }
            }
            previous = here;
            before = after;
        }
        return best;
    }

    /**
     * Beyond this τ² the score is negative: {@code y'PPy ≤ RSS / τ⁴} and {@code tr P ≥ (k − p) / (τ² + max v)}, so
     * {@code τ⁴ > s (τ² + max v)} with {@code s = RSS / (k − p)} is enough.
     */
    private double scoreBound() {
        double s = residual / model.df();
        return (s + Math.sqrt(s * s + 4 * s * model.largestVariance())) / 2 * 1.01;
    }

    private static double root(DoubleUnaryOperator function, double low, double high) {
        BrentSolver solver = new BrentSolver(RELATIVE, RELATIVE * RELATIVE * high);
        if (function.applyAsDouble(high) >= 0) {
            return high;
        }
        return solver.solve(MOST_EVALUATIONS, function::applyAsDouble, low, high);
    }

    /** A figure of the model at one τ². */
    private interface Measure {
        double of(WeightedModel.At at);
    }
}
