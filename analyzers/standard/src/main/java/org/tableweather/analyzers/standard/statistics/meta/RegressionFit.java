package org.tableweather.analyzers.standard.statistics.meta;

import java.util.List;

/**
 * Effects of rooms regressed on moderators.
 *
 * @param studies k, number of rooms
 * @param intercept at moderators of 0
 * @param slopes one for each moderator
 * @param heterogeneity what the moderators leave unexplained
 * @param logLikelihood restricted for REML, else of ML, at the estimates
 */
public record RegressionFit(
        int studies,
        PooledEffect intercept,
        List<PooledEffect> slopes,
        Heterogeneity heterogeneity,
        double logLikelihood) {}
