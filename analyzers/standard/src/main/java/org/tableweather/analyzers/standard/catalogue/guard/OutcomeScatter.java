package org.tableweather.analyzers.standard.catalogue.guard;

/**
 * How one outcome of one shot scatters within a session, and how it goes with the order of the attempts.
 *
 * @param outcome name of the outcome
 * @param n trials that have it
 * @param mean of the outcome
 * @param rhPct mean relative humidity of those of them that know it, %; NaN when none does
 * @param second sum of squared deviations from the mean
 * @param third sum of cubed deviations
 * @param fourth sum of deviations to the fourth
 * @param orderSquares sum of squared deviations of the attempt's place in the session, counted in attempts
 * @param orderProduct sum of products of both deviations
 */
public record OutcomeScatter(
        String outcome,
        long n,
        double mean,
        double rhPct,
        double second,
        double third,
        double fourth,
        double orderSquares,
        double orderProduct) {}
