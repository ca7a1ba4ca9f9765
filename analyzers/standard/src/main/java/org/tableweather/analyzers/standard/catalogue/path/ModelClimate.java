package org.tableweather.analyzers.standard.catalogue.path;

/**
 * A climate as the rail's model takes it.
 *
 * @param x humidity in the measure's steps from its origin
 * @param t temperature, (T − 21 °C)/5 K
 */
record ModelClimate(double x, double t) {}
