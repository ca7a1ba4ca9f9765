package org.tableweather.schema.geometry;

/**
 * Where a ball came down on the target rail.
 *
 * @param offsetDia distance along the rail from the shot's target, diamonds, positive long (farther in the direction in
 *     which the shot travels along that rail), negative short
 * @param extendedM how far the last leg was drawn on to reach the rail's line, m; 0 when the landing itself was marked,
 *     negative when the leg was cut where it crossed the line
 */
public record Landing(Measured offsetDia, double extendedM) {}
