package org.tableweather.analyzers.standard.statistics.binomial;

import org.tableweather.analyzers.standard.statistics.answer.Interval;

/**
 * A coefficient on the log odds, or a mixture of them.
 *
 * @param value change of log(p / (1 − p)) in an average room
 * @param standardError from the observed information of all parameters
 * @param statistic value over standard error
 * @param pValue two-sided, normal
 * @param interval at the coverage asked for, normal
 */
public record BinomialEffect(double value, double standardError, double statistic, double pValue, Interval interval) {

    /** exp(value): the factor on the odds. */
    public double oddsRatio() {
        return StrictMath.exp(value);
    }
}
