/**
 * Do rooms agree? Random-effects meta-analysis of one estimate and its variance per room: heterogeneity, intervals,
 * prediction for a new room, regression on moderators, leaving rooms out, small-study asymmetry.
 */
package org.tableweather.analyzers.standard.statistics.meta;
