package org.tableweather.analyzers.standard.statistics.decay;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.hipparchus.distribution.continuous.FDistribution;
import org.tableweather.analyzers.standard.statistics.answer.Answer;
import org.tableweather.analyzers.standard.statistics.answer.Interval;
import org.tableweather.analyzers.standard.statistics.answer.Refusal.Cause;

/**
 * Least squares of {@code y = a_s + d_s e^(−t/τ)}: one τ for all steps s, levels for each. The levels are linear, so they are
 * eliminated: for each τ they follow by linear least squares, and one search over log τ remains. It looks at a grid first, then
 * finds the zero of the derivative to all digits.
 *
 * @source Golub1973
 */
public final class DecayModel {

    private static final double COVERAGE = 0.95;
    private static final int GRID = 240;
    private static final double SHORTEST = 0.02;
    private static final double LONGEST = 200;
    private static final int HALVINGS = 200;

    private final List<List<DecayPoint>> steps;
    private final DecayStart start;
    private final long observations;
    private final double from;
    private final double to;

    private DecayModel(List<List<DecayPoint>> steps, DecayStart start) {
        this.steps = steps.stream().map(List::copyOf).toList();
        this.start = start;
        observations =
                steps.stream().flatMap(List::stream).mapToLong(DecayPoint::n).sum();
        double longest = steps.stream()
                .flatMap(List::stream)
                .mapToDouble(DecayPoint::hours)
                .max()
                .orElse(0);
        from = StrictMath.log(SHORTEST * shortest(longest));
        to = StrictMath.log(LONGEST * longest);
    }

    /** Shortest positive time after a step. */
    private double shortest(double otherwise) {
        return steps.stream()
                .flatMap(List::stream)
                .mapToDouble(DecayPoint::hours)
                .filter(hours -> hours > 0)
                .min()
                .orElse(otherwise);
    }

    /**
     * Fits.
     *
     * @param steps the points of each, in any order; each step needs one time more than it has levels
     * @param start what is known of where they begin
     * @return refused when there are too few observations, no time passes, or they lie on such curves exactly
     */
    public static Answer<DecayFit> fit(List<List<DecayPoint>> steps, DecayStart start) {
        DecayModel model = new DecayModel(steps, start);
        long df = model.observations - (long) start.columns * steps.size() - 1;
        if (steps.isEmpty() || df < 1) {
            return Answer.refuse(
                    Cause.TOO_FEW,
                    model.observations + " observations for " + (start.columns * steps.size() + 1)
                            + " parameters: add attempts at other times");
        }
        if (!(model.to > model.from)) {
            return Answer.refuse(Cause.NO_VARIATION, "all observations are at the time of the step: go on for longer");
        }
        return model.fitted(df);
    }

    private Answer<DecayFit> fitted(long df) {
        double best = best();
        Sums least = new Sums(best);
        double constant = constant();
        if (!(least.rest > 1e-20 * constant)) {
            return Answer.refuse(
                    Cause.NO_VARIATION, "the observations lie on such curves exactly: no scatter to judge by");
        }
        double rate = StrictMath.exp(-best);
        double error = Math.sqrt(least.rest / df / least.information) / rate;
        double bound = least.rest * (1 + new FDistribution(1, df).inverseCumulativeProbability(COVERAGE) / df);
        return Answer.of(new DecayFit(
                StrictMath.exp(best),
                error,
                new Interval(lower(best, bound), upper(best, bound)),
                least.levels,
                df,
                least.rest,
                constant));
    }

    /** The levels at a time constant, summed over steps. */
    private final class Sums {
        final List<double[]> levels;
        final double rest;
        final double slope;
        final double information;

        Sums(double logTau) {
            double rate = StrictMath.exp(-logTau);
            List<StepLevels> each = steps.stream()
                    .map(step -> new StepLevels(step, start, rate))
                    .toList();
            levels = each.stream().map(step -> step.levels).toList();
            rest = each.stream().mapToDouble(step -> step.rest).sum();
            // by log τ: dk = −k d log τ
            slope = -rate * each.stream().mapToDouble(step -> step.restSlope).sum();
            information = each.stream().mapToDouble(StepLevels::information).sum();
        }
    }

    private double at(int i) {
        return from + (to - from) * i / GRID;
    }

    private double best() {
        int lowest = 0;
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i <= GRID; i++) {
            double rest = new Sums(at(i)).rest;
            if (rest < least) {
                least = rest;
                lowest = i;
            }
        }
        if (lowest == 0 || lowest == GRID) {
            return at(lowest);
        }
        return crossing(logTau -> new Sums(logTau).slope, at(lowest - 1), at(lowest + 1));
    }

    /** Where an increasing function passes zero, by halving. */
    private static double crossing(DoubleUnaryOperator function, double below, double above) {
        double low = below;
        double high = above;
        for (int i = 0; i < HALVINGS && high > low; i++) {
            double middle = low + (high - low) / 2;
            if (function.applyAsDouble(middle) < 0) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low + (high - low) / 2;
    }

    private double upper(double best, double bound) {
        double step = (to - from) / GRID;
        for (double logTau = best; logTau < to; logTau += step) {
            if (new Sums(logTau + step).rest > bound) {
                return StrictMath.exp(crossing(at -> new Sums(at).rest - bound, logTau, logTau + step));
            }
        }
        return Double.POSITIVE_INFINITY;
    }

    private double lower(double best, double bound) {
        double step = (to - from) / GRID;
        for (double logTau = best; logTau > from; logTau -= step) {
            if (new Sums(logTau - step).rest > bound) {
                return StrictMath.exp(-crossing(at -> new Sums(-at).rest - bound, -logTau, -(logTau - step)));
            }
        }
        return 0;
    }

    private double constant() {
        double rest = 0;
        for (List<DecayPoint> step : steps) {
            long n = step.stream().mapToLong(DecayPoint::n).sum();
            double mean = start == DecayStart.ZERO
                    ? 0
                    : step.stream()
                                    .mapToDouble(point -> point.n() * point.mean())
                                    .sum()
                            / n;
            rest += step.stream()
                    .mapToDouble(point -> point.squares() + point.n() * (point.mean() - mean) * (point.mean() - mean))
                    .sum();
        }
        return rest;
    }
}
