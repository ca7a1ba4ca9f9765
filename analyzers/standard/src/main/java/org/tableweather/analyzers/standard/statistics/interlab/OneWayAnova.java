package org.tableweather.analyzers.standard.statistics.interlab;

import java.util.List;
import org.hipparchus.special.Beta;
import org.tableweather.analyzers.standard.statistics.answer.Answer;
import org.tableweather.analyzers.standard.statistics.answer.Refusal.Cause;

/**
 * One-way analysis of variance, balanced or not: {@code SSB = Σ nᵢ (ȳᵢ − ȳ)²}, {@code SSW = Σ SSᵢ}, ȳ weighted by nᵢ,
 * {@code F = (SSB / (p − 1)) / (SSW / (N − p))}.
 *
 * @param groups p
 * @param results N
 * @param mean ȳ
 * @param between SSB
 * @param within SSW
 * @param replicates {@code n̄ = (N − Σnᵢ²/N) / (p − 1)}, the n of every group when balanced
 * @source Searle1992
 */
public record OneWayAnova(int groups, long results, double mean, double between, double within, double replicates) {

    /**
     * Analyses groups of results.
     *
     * @param groups refused below 2, and when no group has two results
     */
    public static Answer<OneWayAnova> of(List<Laboratory> groups) {
        long results = groups.stream().mapToLong(Laboratory::n).sum();
        if (groups.size() < 2 || results <= groups.size()) {
            return Answer.refuse(
                    Cause.TOO_FEW,
                    groups.size() + " groups with " + results
                            + " results: 2 groups, and one with 2 results, are needed");
        }
        double mean = weightedMean(groups, results);
        double between = 0;
        double within = 0;
        double squaredCounts = 0;
        for (Laboratory group : groups) {
            double apart = group.mean() - mean;
            between += group.n() * apart * apart;
            within += group.sumOfSquares();
            squaredCounts += (double) group.n() * group.n();
        }
        double replicates = (results - squaredCounts / results) / (groups.size() - 1);
        return Answer.of(new OneWayAnova(groups.size(), results, mean, between, within, replicates));
    }

    /** About the first group's mean, so that a large common offset costs no digits. */
    private static double weightedMean(List<Laboratory> groups, long results) {
        double origin = groups.get(0).mean();
        double sum = 0;
        for (Laboratory group : groups) {
            sum += group.n() * (group.mean() - origin);
        }
        return origin + sum / results;
    }

    /** p − 1. */
    public int betweenDf() {
        return groups - 1;
    }

    /** N − p. */
    public long withinDf() {
        return results - groups;
    }

    /** SSB / (p − 1). */
    public double betweenMeanSquare() {
        return between / betweenDf();
    }

    /** SSW / (N − p). */
    public double withinMeanSquare() {
        return within / withinDf();
    }

    /** F; infinite when nothing varies within groups but they differ, NaN when nothing varies at all. */
    public double f() {
        return betweenMeanSquare() / withinMeanSquare();
    }

    /** Chance of an F at least this large if groups do not differ: {@code I(SSW/(SSW+SSB); (N−p)/2, (p−1)/2)}. */
    public double pValue() {
        return Beta.regularizedBeta(within / (within + between), withinDf() / 2.0, betweenDf() / 2.0);
    }

    /** {@code SSB / (SSB + SSW)}. */
    public double rSquared() {
        return between / (between + within);
    }

    /** √(SSW / (N − p)). */
    public double residualSd() {
        return Math.sqrt(withinMeanSquare());
    }

    /** {@code (MSB − MSW) / n̄}: the moment estimate of the variance between groups, which may be negative. */
    public double rawBetweenVariance() {
        return (betweenMeanSquare() - withinMeanSquare()) / replicates;
    }
}
