package org.tableweather.analyzers.standard.statistics.robust;

import org.tableweather.analyzers.standard.statistics.answer.Interval;

/**
 * One coefficient, or a mixture of them.
 *
 * @param value least squares
 * @param standardError cluster-robust
 * @param df for CR2 the Bell–McCaffrey degrees of freedom, else clusters − 1; NaN when no two clusters can be compared, and
 *     then statistic and chance with it
 * @param statistic value over standard error
 * @param pValue two-sided, Student's t
 * @param interval at the coverage asked for
 * @param naiveStandardError as if every row were independent: for contrast only
 */
public record RobustEffect(
        double value,
        double standardError,
        double df,
        double statistic,
        double pValue,
        Interval interval,
        double naiveStandardError) {}
