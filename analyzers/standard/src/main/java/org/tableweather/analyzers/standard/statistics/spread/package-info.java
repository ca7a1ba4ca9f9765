/** Measures with published definitions: how far a break spreads the balls, and what a roll-out says of the cloth. */
package org.tableweather.analyzers.standard.statistics.spread;
