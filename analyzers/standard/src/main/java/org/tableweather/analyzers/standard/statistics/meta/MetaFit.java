package org.tableweather.analyzers.standard.statistics.meta;

import java.util.List;
import java.util.Optional;
import org.tableweather.analyzers.standard.statistics.answer.Interval;

/**
 * A pooled mean over rooms.
 *
 * @param studies k, number of rooms
 * @param mean the pooled mean
 * @param heterogeneity between rooms
 * @param prediction where a new room's true effect is expected; empty for FIXED, and with fewer than 3 rooms
 * @param logLikelihood restricted for REML, else of ML, at the estimates
 * @param weightsPct share of each room in the mean, %, in the order given
 */
public record MetaFit(
        int studies,
        PooledEffect mean,
        Heterogeneity heterogeneity,
        Optional<Interval> prediction,
        double logLikelihood,
        List<Double> weightsPct) {}
