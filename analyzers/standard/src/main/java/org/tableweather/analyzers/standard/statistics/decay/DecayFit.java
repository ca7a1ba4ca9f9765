package org.tableweather.analyzers.standard.statistics.decay;

import java.util.List;
import org.tableweather.analyzers.standard.statistics.answer.Interval;

/**
 * A fitted approach to new levels.
 *
 * @param timeConstantHours τ = 1/k
 * @param relativeError standard error of log τ, and of log k, from the linearised model
 * @param profile values of τ whose residual sum of squares is no more than {@code 1 + F/ν} times the least, F the 95 % point of
 *     F(1, ν); from 0 or to ∞ where the data set no bound
 * @param levels of each step, in the order of {@link DecayStart}: for an unknown start the level approached and the change left
 *     at time 0
 * @param residualDf ν: observations less levels less one
 * @param residualSumOfSquares the least
 * @param constantSumOfSquares without any approach: each step at its mean, or at zero for a start at zero
 * @source Golub1973
 * @source Bates1988
 */
public record DecayFit(
        double timeConstantHours,
        double relativeError,
        Interval profile,
        List<double[]> levels,
        long residualDf,
        double residualSumOfSquares,
        double constantSumOfSquares) {

    public DecayFit {
        levels = List.copyOf(levels);
    }

    /** Residual standard deviation. */
    public double residualDeviation() {
        return Math.sqrt(residualSumOfSquares / residualDf);
    }

    /** F of the approach against none: the fall of the sum of squares for each parameter that it needs, over the variance. */
    public double approachF() {
        return (constantSumOfSquares - residualSumOfSquares) / approachDf() / (residualSumOfSquares / residualDf);
    }

    /** Parameters that the approach needs: a change for each step and the time constant. */
    public long approachDf() {
        return levels.size() + 1L;
    }
}
