package org.tableweather.analyzers.standard.statistics.shape;

import java.util.List;
import org.tableweather.analyzers.standard.statistics.answer.Answer;
import org.tableweather.analyzers.standard.statistics.answer.Refusal.Cause;

/**
 * Shape of the scatter within groups of equal variance and any means: the groups' k-statistics, weighted by the inverse of
 * their variances under the normal distribution, over powers of the pooled standard deviation.
 *
 * @param skewness γ₁, 0 for a normal distribution
 * @param excessKurtosis γ₂, 0 for a normal distribution, −1.2 for a uniform one
 * @param skewnessZ γ₁ over its standard error under the normal distribution
 * @param kurtosisZ γ₂ likewise
 * @param n observations used
 * @source Fisher1930
 */
public record PooledShape(double skewness, double excessKurtosis, double skewnessZ, double kurtosisZ, long n) {

    /** Pools; refused without a group, or when nothing scatters. */
    public static Answer<PooledShape> of(List<KStatistics> groups) {
        double squares = 0;
        double third = 0;
        double thirdWeight = 0;
        double fourth = 0;
        double fourthWeight = 0;
        long n = 0;
        for (KStatistics group : groups) {
            n += group.n();
            squares += group.second();
            third += group.k3() / group.varianceOfK3();
            thirdWeight += 1 / group.varianceOfK3();
            fourth += group.k4() / group.varianceOfK4();
            fourthWeight += 1 / group.varianceOfK4();
        }
        if (groups.isEmpty()) {
            return Answer.refuse(Cause.TOO_FEW, "no group of at least 4: the shape of the scatter is unknown");
        }
        double variance = squares / (n - groups.size());
        if (!(variance > 0)) {
            return Answer.refuse(Cause.NO_VARIATION, "nothing scatters within the " + groups.size() + " groups");
        }
        double gamma1 = third / thirdWeight / (variance * Math.sqrt(variance));
        double gamma2 = fourth / fourthWeight / (variance * variance);
        return Answer.of(
                new PooledShape(gamma1, gamma2, gamma1 * Math.sqrt(thirdWeight), gamma2 * Math.sqrt(fourthWeight), n));
    }
}
