/** Nonlinear mixed models whose nonlinear part has few parameters: rooms, sessions in rooms, groups of equal trials in sessions. */
package org.tableweather.analyzers.standard.statistics.nonlinear;
