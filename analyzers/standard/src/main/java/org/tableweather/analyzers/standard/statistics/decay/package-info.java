/** First-order approach to a new level: one time constant for several steps, each with levels of its own. */
package org.tableweather.analyzers.standard.statistics.decay;
