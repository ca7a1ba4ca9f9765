package org.tableweather.analyzers.standard.statistics.measurement;

/**
 * A slope with its variance, as some estimator gives it.
 *
 * @param slope in its unit
 * @param variance square of its standard error, at least 0
 */
public record SlopeEstimate(double slope, double variance) {}
