package org.tableweather.analyzers.standard.statistics.meta;

import org.tableweather.analyzers.standard.statistics.answer.Interval;

/**
 * One coefficient of a meta-analysis.
 *
 * @param value the pooled mean, or the slope on a moderator
 * @param standardError by the interval method
 * @param df of its t distribution; infinite for {@link IntervalMethod#NORMAL}
 * @param statistic value over standard error
 * @param pValue two-sided
 * @param interval at the coverage asked for
 */
public record PooledEffect(
        double value, double standardError, double df, double statistic, double pValue, Interval interval) {}
