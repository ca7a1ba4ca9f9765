package org.tableweather.analyzers.standard.statistics.meta;

import org.tableweather.analyzers.standard.statistics.answer.Interval;

/**
 * How much rooms differ beyond their sampling errors.
 *
 * @param tauSquared τ², variance of the true effects between rooms, at least 0
 * @param tauSquaredInterval all τ² that the Q-profile does not reject; both ends 0 when even 0 is too large
 * @param q Cochran's Q at τ² = 0
 * @param df its degrees of freedom, k − p
 * @param qPValue chance of a Q at least this large if rooms do not differ
 * @param iSquaredPct I², share of the total variation that lies between rooms, %
 * @param hSquared H², total over typical sampling variance, at least 1 unless the method is FIXED
 * @source Cochran1954
 * @source Higgins2002
 * @source Viechtbauer2007
 */
public record Heterogeneity(
        double tauSquared,
        Interval tauSquaredInterval,
        double q,
        int df,
        double qPValue,
        double iSquaredPct,
        double hSquared) {}
