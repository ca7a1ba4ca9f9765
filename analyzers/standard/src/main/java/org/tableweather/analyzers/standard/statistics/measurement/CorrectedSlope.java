package org.tableweather.analyzers.standard.statistics.measurement;

import org.tableweather.analyzers.standard.statistics.answer.Interval;

/**
 * A slope with the instrument's error taken out, beside the naive one.
 *
 * @param naive least squares on the measured covariate: too flat on average
 * @param naiveStandardError jackknife over rooms
 * @param reliability part of the measured spread that is true, in (0, 1]
 * @param corrected {@code naive / reliability}
 * @param standardError jackknife over rooms, the reliability worked out anew each time
 * @param df rooms − 1
 * @param interval of the corrected slope, Student's t
 */
public record CorrectedSlope(
        double naive,
        double naiveStandardError,
        double reliability,
        double corrected,
        double standardError,
        int df,
        Interval interval) {}
