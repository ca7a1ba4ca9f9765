package org.tableweather.analyzers.standard.statistics.interlab;

import java.util.List;
import org.hipparchus.distribution.continuous.ChiSquaredDistribution;
import org.tableweather.analyzers.standard.statistics.answer.Answer;
import org.tableweather.analyzers.standard.statistics.answer.Coverage;
import org.tableweather.analyzers.standard.statistics.answer.Interval;
import org.tableweather.analyzers.standard.statistics.answer.Refusal.Cause;

/**
 * Repeatability and reproducibility standard deviations: {@code s_r² = MSW}, {@code s_L² = max(0, (MSB − MSW)/n̄)},
 * {@code s_R² = s_r² + s_L²}. For equal numbers of results this is also {@code s_R = max(s_r, √(s_x̄² + s_r²(n−1)/n))} with
 * {@code s_x̄} the standard deviation of the means.
 *
 * @param anova the sums that it stands on
 * @param repeatabilitySd s_r, same room, same climate, short time
 * @param betweenSd s_L, of rooms' true means; 0 when the moment estimate is negative
 * @param reproducibilitySd s_R, another room
 * @source ISO57252
 * @source ASTME691
 */
public record Precision(OneWayAnova anova, double repeatabilitySd, double betweenSd, double reproducibilitySd) {

    private static final double LIMIT_FACTOR = 2.8;

    /**
     * Estimates precision.
     *
     * @param laboratories refused below 2, when none has two results, or when no laboratory's results vary
     */
    public static Answer<Precision> of(List<Laboratory> laboratories) {
        return OneWayAnova.of(laboratories).then(Precision::from);
    }

    private static Answer<Precision> from(OneWayAnova anova) {
        if (anova.within() == 0) {
            return Answer.refuse(
                    Cause.NO_VARIATION, "results never vary within a room: rounded too coarsely, or copied");
        }
        double between = Math.max(0, anova.rawBetweenVariance());
        double within = anova.withinMeanSquare();
        return Answer.of(new Precision(anova, Math.sqrt(within), Math.sqrt(between), Math.sqrt(within + between)));
    }

    /** {@code r = 2.8 s_r}: two results in one room differ by less, 95 times in 100. */
    public double repeatabilityLimit() {
        return LIMIT_FACTOR * repeatabilitySd;
    }

    /** {@code R = 2.8 s_R}: two results in different rooms differ by less, 95 times in 100. */
    public double reproducibilityLimit() {
        return LIMIT_FACTOR * reproducibilitySd;
    }

    /** Interval of s_r: {@code √(SSW / χ²)} at both tails, N − p degrees of freedom. */
    public Interval repeatabilityInterval(Coverage coverage) {
        ChiSquaredDistribution chiSquared = new ChiSquaredDistribution(anova.withinDf(), 1e-13);
        return new Interval(
                Math.sqrt(anova.within() / chiSquared.inverseCumulativeProbability(coverage.upperLevel())),
                Math.sqrt(anova.within() / chiSquared.inverseCumulativeProbability(coverage.tail())));
    }
}
