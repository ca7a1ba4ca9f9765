package org.tableweather.schema.geometry;

/**
 * A figure with its standard uncertainty, in the same unit.
 *
 * @param value the figure
 * @param standardUncertainty ≥ 0
 */
public record Measured(double value, double standardUncertainty) {}
