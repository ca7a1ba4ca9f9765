package org.tableweather.analyzers.standard.statistics.binomial;

/**
 * One room's departure from the average room.
 *
 * @param cluster the room
 * @param value most probable departure of the log odds, given the data and the estimates
 * @param standardDeviation conditional, by the curvature there
 * @param made how many went in
 * @param attempts of how many
 */
public record ClusterMode(String cluster, double value, double standardDeviation, long made, long attempts) {}
