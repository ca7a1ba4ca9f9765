/**
 * What an inexact hygrometer does to a humidity slope, and the slope with that taken out: regression calibration and
 * simulation–extrapolation.
 */
package org.tableweather.analyzers.standard.statistics.measurement;
