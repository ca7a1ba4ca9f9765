/** The shape of scatter within groups: skewness and tails, free of the groups' means. */
package org.tableweather.analyzers.standard.statistics.shape;
