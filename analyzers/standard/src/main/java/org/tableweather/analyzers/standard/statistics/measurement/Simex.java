package org.tableweather.analyzers.standard.statistics.measurement;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import org.hipparchus.random.RandomGenerator;
import org.hipparchus.random.Well19937c;
import org.tableweather.analyzers.standard.statistics.answer.Answer;
import org.tableweather.analyzers.standard.statistics.answer.Refusal.Cause;

/**
 * Simulation and extrapolation: add error of ζ times the instrument's own variance, see how the slope flattens, and follow
 * that curve back to ζ = −1, where there is none. Works for any estimator. The variance is
 * {@code mean variance − variance of the slopes over replicates}, followed back in the same way.
 *
 * @param factors ζ, ascending above 0, at least 2
 * @param replicates sets of added errors for each ζ, at least 2; the same normal numbers at every ζ
 * @param extrapolant how the curve is followed
 * @param seed of the added errors
 * @source Cook1994
 * @source Stefanski1995
 * @source Carroll2006
 */
public record Simex(double[] factors, int replicates, Extrapolant extrapolant, long seed) {

    /**
     * Checks and copies.
     *
     * @throws IllegalArgumentException outside the bounds
     */
    public Simex {
        factors = factors.clone();
        double last = 0;
        for (double factor : factors) {
            if (!(factor > last)) {
                throw new IllegalArgumentException("factors must rise from above 0, got " + Arrays.toString(factors));
            }
            last = factor;
        }
        if (factors.length < 2 || replicates < 2) {
            throw new IllegalArgumentException(
                    "at least 2 factors and 2 replicates are needed, got " + factors.length + " and " + replicates);
        }
    }

    /** ζ of ½, 1, 1½ and 2, 200 replicates, quadratic. */
    public static Simex withDefaults(long seed) {
        return new Simex(new double[] {0.5, 1, 1.5, 2}, 200, Extrapolant.QUADRATIC, seed);
    }

    @Override
    public double[] factors() {
        return factors.clone();
    }

    /** The same with another extrapolant. */
    public Simex with(Extrapolant other) {
        return new Simex(factors, replicates, other, seed);
    }

    /** The same with another number of replicates. */
    public Simex withReplicates(int other) {
        return new Simex(factors, other, extrapolant, seed);
    }

    /** How often {@link #correct} asks its estimator. */
    public int evaluations() {
        return 1 + factors.length * replicates;
    }

    /**
     * Follows a slope back.
     *
     * @param instruments for each session the number of its instrument, from 0
     * @param error of the instruments
     * @param estimator of the slope
     * @return refused when the curve cannot be followed, or the estimator gives no finite number
     */
    public Answer<SimexResult> correct(int[] instruments, InstrumentError error, ShiftedSlope estimator) {
        SlopeEstimate naive = estimator.at(new double[instruments.length]);
        double[] zeta = new double[factors.length + 1];
        double[] slopes = new double[zeta.length];
        double[] variances = new double[zeta.length];
        slopes[0] = naive.slope();
        variances[0] = naive.variance();
        List<double[]> errors = drawn(instruments, error);
        for (int i = 1; i < zeta.length; i++) {
            zeta[i] = factors[i - 1];
            Spread spread = new Spread(errors, Math.sqrt(zeta[i]), estimator);
            slopes[i] = spread.slope;
            variances[i] = spread.variance;
        }
        return follow(naive, zeta, slopes, variances);
    }

    private Answer<SimexResult> follow(SlopeEstimate naive, double[] zeta, double[] slopes, double[] variances) {
        if (!Arrays.stream(slopes).allMatch(Double::isFinite)) {
            return Answer.refuse(Cause.NOT_CONVERGED, "the estimator gave no finite slope under added error");
        }
        OptionalDouble corrected = extrapolant.atNoError(zeta, slopes);
        if (corrected.isEmpty()) {
            return Answer.refuse(
                    Cause.NOT_CONVERGED, "the rational curve has its pole too near: use the quadratic one");
        }
        OptionalDouble variance = Extrapolant.QUADRATIC.atNoError(zeta, variances);
        List<SimexResult.Point> curve = new ArrayList<>();
        for (int i = 0; i < zeta.length; i++) {
            curve.add(new SimexResult.Point(zeta[i], slopes[i]));
        }
        OptionalDouble standardError = variance.getAsDouble() > 0
                ? OptionalDouble.of(Math.sqrt(variance.getAsDouble()))
                : OptionalDouble.empty();
        return Answer.of(new SimexResult(naive, corrected.getAsDouble(), standardError, List.copyOf(curve)));
    }

    private List<double[]> drawn(int[] instruments, InstrumentError error) {
        RandomGenerator random = new Well19937c(seed);
        int count = Arrays.stream(instruments).max().orElse(-1) + 1;
        List<double[]> errors = new ArrayList<>();
        for (int replicate = 0; replicate < replicates; replicate++) {
            double[] offsets = new double[count];
            for (int k = 0; k < count; k++) {
                offsets[k] = error.offsetSd() * random.nextGaussian();
            }
            double[] added = new double[instruments.length];
            for (int s = 0; s < added.length; s++) {
                added[s] = offsets[instruments[s]] + error.readingSd() * random.nextGaussian();
            }
            errors.add(added);
        }
        return errors;
    }

    /** Mean slope under added error, and mean variance less the slopes' own. */
    private static final class Spread {

        private final double slope;
        private final double variance;

        Spread(List<double[]> errors, double scale, ShiftedSlope estimator) {
            double mean = 0;
            double squares = 0;
            double ofEstimator = 0;
            int n = 0;
            for (double[] error : errors) {
                SlopeEstimate estimate =
                        estimator.at(Arrays.stream(error).map(e -> scale * e).toArray());
                n++;
                double apart = estimate.slope() - mean;
                mean += apart / n;
                squares += apart * (estimate.slope() - mean);
                ofEstimator += (estimate.variance() - ofEstimator) / n;
            }
            slope = mean;
            variance = ofEstimator - squares / (n - 1);
        }
    }
}
